import { wholeDollarsText } from '#calc';
import type { CapCurve, DwellingReason, Explanations, Plan } from '#planning';
import { tableText } from './said.js';

const dollars = wholeDollarsText;
const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

/** What would have to be true, one line each; every one alone is enough at the prices of the plan. */
function enterLines({ toEnter }: DwellingReason): string[] {
  if (toEnter === null) return [];
  const { cost_cents, filmShare, savingShare, cap, letters } = toEnter;
  const lines = [
    ...(cost_cents === null ? [] : [`installed for ${dollars(cost_cents)} or less`]),
    ...(filmShare === null ? [] : [`film at ${percent(filmShare)} of today's price or less`]),
    ...(savingShare === null ? [] : [`a yearly saving, or an energy price, ${savingShare.toFixed(2)} times today's or more`]),
    ...(cap === null ? [] : [`${cap.exact ? '' : 'about '}${dollars(cap.cap_cents)} of cap for ${cap.of}, film by the piece`]),
    ...(letters.length === 0 ? [] : [`for its options that wait: ${letters.join('; ')}`]),
  ];
  return lines.length === 0 ? [] : ['It would enter with one of these:', ...lines.map((l) => `  ${l}`)];
}

function priceLines({ prices }: Explanations): string[] {
  const binding = prices.filter((p) => p.nextDollar > 0 || (p.nextCrewHour_cents ?? 0) > 0);
  if (binding.length === 0) return ['No cap and no crew time binds: more money or hours would bring nothing.'];
  return binding.map((p) => {
    const hour = p.nextCrewHour_cents === null || p.nextCrewHour_cents === 0 ? '' : `, the next person-hour ${dollars(p.nextCrewHour_cents)}`;
    return `The next dollar of ${p.phase} brings $${p.nextDollar.toFixed(2)} of value${hour}.`;
  });
}

/** One dwelling: why in, why not, what would have to be true, and its ways at today's prices. */
export function dwellingText(plan: Plan, dwelling: string): string | null {
  const { explanations } = plan;
  const reason = explanations?.dwellings.find((d) => d.dwelling === dwelling);
  const not = plan.notRanked.find((n) => n.dwelling === dwelling);
  if (explanations === undefined || reason === undefined) return not === undefined ? null : `${dwelling}: not in the plan; ${not.why}.`;
  const reserve = explanations.reserve.find((r) => r.dwelling === dwelling);
  const ways = reason.ways.map((w) => [w.option, w.phase, dollars(w.value_cents), dollars(w.cost_cents), dollars(w.ahead_cents)]);
  return [
    `${dwelling}: ${reason.phase === null ? 'not in the plan' : `in the plan, ${reason.phase}`}; ${reason.why}.`,
    ...(reserve === undefined ? [] : [`Place ${reserve.place} of the reserve${reserve.newVisit ? ', with a visit of its own' : ''}.`]),
    ...enterLines(reason),
    ...(ways.length === 0 ? [] : ['', tableText(['option', 'phase', 'worth', 'paid cost', 'ahead of its price'], ways)]),
    '',
    ...priceLines(explanations),
  ].join('\n');
}

function curveLine(curve: CapCurve): string {
  const last = curve.points.at(-1);
  if (last === undefined) return `${curve.of}: ${curve.why}`;
  return `${curve.of}: value against cap ${curve.basis}, ${curve.points.length} points up to ${dollars(last.cap_cents)} for ${dollars(last.value_cents)}`;
}

/** Prices, the first of the reserve and the curves, for the page of the plan. */
export function explanationText(plan: Plan): string[] {
  const { explanations } = plan;
  if (explanations === undefined) return [];
  const next = explanations.reserve.slice(0, 5).map((r) => `  ${r.dwelling}, ${r.phase}: ${dollars(r.cost_cents)} for ${dollars(r.value_cents)} of value${r.newVisit ? ', and a visit' : ''}`);
  return [
    ...priceLines(explanations),
    ...(next.length === 0 ? [] : [`In reserve, ${explanations.reserve.length} dwellings; the first:`, ...next]),
    ...explanations.curves.map(curveLine),
    ...(explanations.wholeElevations === null ? [] : [`Rule: ${explanations.wholeElevations.text}.`]),
  ];
}
