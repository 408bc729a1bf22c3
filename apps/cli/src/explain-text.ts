import { wholeDollarsText } from '#calc';
import type { CapCurve, Closing, DwellingReason, Explanations, Plan, ToEnter, WithLetters } from '#planning';
import { counted, tableText } from './said.js';

const dollars = wholeDollarsText;

/** A saving so many times today's: a small step as per cent, rounded up so that it is enough. */
const times = (share: number): string => (share < 2 ? `${String(Math.ceil((share - 1) * 100))} % above today's` : `${(Math.ceil(share * 10) / 10).toFixed(1)} times today's`);

/** Ways to close a gap, each enough alone at the prices of the plan. */
function closingLines({ cost_cents, filmShare, savingShare }: Closing): string[] {
  return [
    ...(cost_cents === null ? [] : [`installed for ${dollars(Math.floor(cost_cents / 100) * 100)} or less`]),
    ...(filmShare === null ? [] : [`film at ${String(Math.floor(filmShare * 100))} % of today's price or less`]),
    ...(savingShare === null ? [] : [`a yearly saving, or an energy price, ${times(savingShare)} or more`]),
  ];
}

function capLine(plan: Plan, cap: ToEnter['cap']): string[] {
  if (cap === null) return [];
  const phases = plan.explanations?.curves.find((c) => c.of === cap.of)?.phases ?? [];
  const today = plan.phases.filter((p) => phases.includes(p.phase.id)).reduce((sum, p) => sum + p.phase.cap_cents, 0);
  return [`${phases.length > 1 ? `caps of ${cap.of} raised alike to` : `a cap of ${cap.of} of`} ${cap.exact ? '' : 'about '}${dollars(cap.cap_cents)}${phases.length > 1 ? ' in all' : ''}, today ${dollars(today)}; film priced by the piece`];
}

const visitNote = (visit_cents: number | null | undefined): string[] => (visit_cents == null ? [] : [`  The plan does not visit its building in that year: a visit comes on top, ${dollars(visit_cents)} of value, shared by all dwellings done on it.`]);

/** What letters are enough for, or what is needed beside them. */
function letterLines(waiting: WithLetters, isSecond: boolean): string[] {
  const { letters, way, phase, visit_cents, short_cents } = waiting;
  const beside = closingLines(waiting);
  const all = letters.map((l) => `  letter: ${l}`);
  const once = letters.length === 1 ? 'this letter is there' : `these ${String(letters.length)} letters are there`;
  if (short_cents > 0 && beside.length === 0) return [`No price and no saving would let ${way} enter, even when ${once}:`, ...all];
  const head = `It would ${isSecond ? 'also ' : ''}enter with ${way} in ${phase} once ${once}`;
  if (short_cents === 0) return [`${head}; nothing more is needed:`, ...all, ...visitNote(visit_cents)];
  return [`${head}, and with one of these beside:`, ...all, ...beside.map((l) => `  beside: ${l}`), ...visitNote(visit_cents)];
}

/** What would have to be true for it to enter. */
function enterLines(plan: Plan, { toEnter }: DwellingReason): string[] {
  if (toEnter === null) return [];
  const { way, phase, visit_cents, cap, withLetters } = toEnter;
  const alone = [...closingLines(toEnter), ...capLine(plan, cap)].map((l) => `  ${l}`);
  const how = way === undefined || phase === undefined ? '' : ` with ${way} in ${phase}`;
  const now = alone.length === 0 ? [] : [`It would enter${how}, with one of these:`, ...alone, ...visitNote(visit_cents)];
  return [...now, ...(withLetters == null ? [] : letterLines(withLetters, now.length > 0))];
}

function priceLines({ prices, reserve }: Explanations): string[] {
  const binding = prices.filter((p) => p.nextDollar > 0 || (p.nextCrewHour_cents ?? 0) > 0);
  if (binding.length === 0 && reserve.length > 0) return ['A single dollar more would bring nothing: no further dwelling fits into what is left. See the reserve for what a larger cap brings.'];
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
  const ways = reason.ways.map((w) => [w.words ?? w.option, w.phase, dollars(w.value_cents), dollars(w.cost_cents), dollars(w.ahead_cents)]);
  const done = plan.settled?.done.find((d) => d.dwelling === dwelling && d.panesDone > 0);
  return [
    ...(done === undefined ? [] : [`${dwelling}: film is on ${counted(done.panesDone, 'pane')}, done by ${done.lastDay}. For what is left:`]),
    `${dwelling}: ${reason.phase === null ? 'not in the plan' : `in the plan, ${reason.phase}`}; ${reason.why}.`,
    ...(reserve === undefined ? [] : [`Place ${reserve.place} of the reserve${reserve.newVisit ? ', with a visit of its own' : ''}.`]),
    ...enterLines(plan, reason),
    ...(ways.length === 0 ? [] : ['', tableText(['way', 'year', 'worth', 'paid cost', 'ahead of what its money brings elsewhere'], ways)]),
    '',
    ...priceLines(explanations),
  ].join('\n');
}

function curveLine(curve: CapCurve): string {
  const last = curve.points.at(-1);
  if (last === undefined) return `${curve.of}: ${curve.why}`;
  return `Value against caps of ${curve.of} (${curve.basis}): ${counted(curve.points.length, 'point')}, the last at ${dollars(last.cap_cents)} of cap for ${dollars(last.value_cents)} of value`;
}

/** Prices, the first of the reserve and the curves, for the page of the plan. */
export function explanationText(plan: Plan): string[] {
  const { explanations } = plan;
  if (explanations === undefined) return [];
  const next = explanations.reserve.slice(0, 5).map((r) => `  ${r.dwelling}, ${r.phase}: costs ${dollars(r.cost_cents)}, worth ${dollars(r.value_cents)}${r.newVisit ? ', and a visit of the building to be paid beside' : ''}`);
  return [
    ...priceLines(explanations),
    ...(next.length === 0 ? [] : [`In reserve: ${counted(explanations.reserve.length, 'dwelling')}${explanations.reserve.length > next.length ? '; the first' : ''}:`, ...next]),
    ...explanations.curves.map(curveLine),
    ...(explanations.wholeElevations === null ? [] : [`Rule: ${explanations.wholeElevations.text}.`]),
  ];
}
