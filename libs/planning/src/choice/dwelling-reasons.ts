import { explain, type OptionReason, wholeDollarsText } from '#calc';
import { grouped } from '../grouped.js';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { FilmOption } from '../options/option.js';
import { phaseYear } from '../options/value.js';
import { type Candidate, cash_cents } from './candidate.js';
import type { ChosenUnderCaps } from './choose-under-caps.js';
import type { CapCurve, DwellingReason, ReasonedWay, ToEnter } from './explanations.js';
import { inView } from './selection-problem.js';

export interface ReasonQuestion {
  readonly chosen: ChosenUnderCaps;
  /** Lines of the finished plan. */
  readonly lines: readonly Candidate[];
  readonly options: readonly FilmOption[];
  readonly settings: Pick<PlanSettingsInForce, 'terms' | 'phases' | 'valueIn' | 'ownerOf'>;
  readonly curves: readonly CapCurve[];
}

/** A candidate with what the prices say of it. */
export interface PricedWay {
  readonly candidate: Candidate;
  readonly reason: OptionReason;
  /** Cent of cap in its phase, in value. */
  readonly cent: number;
}

const MOST_WAYS = 4;
const dollars = wholeDollarsText;

/** All ways of all dwellings at the prices of the choice, best first; a line of whole elevations stands with the figures of the whole. */
export function pricedWays(chosen: ChosenUnderCaps): ReadonlyMap<string, readonly PricedWay[]> {
  const { record } = chosen.choice.proof;
  if (record === undefined || record.result.value === null) return new Map();
  const { cap } = record.result.certificate.multipliers;
  const ways = explain(record.problem, record.result).options.flatMap((reason) =>
    (chosen.posed.candidates.get(reason.option) ?? []).map((candidate): PricedWay => ({ candidate, reason, cent: cap[reason.phase] ?? 0 })),
  );
  const byDwelling = grouped(ways, (w) => w.candidate.option.dwelling);
  for (const own of byDwelling.values()) own.sort((a, b) => b.reason.reducedValue - a.reason.reducedValue || (a.reason.option < b.reason.option ? -1 : 1));
  return byDwelling;
}

/** Cost, film price and saving at which a gap closes: a cent less cost is worth itself today and the price of the cap it frees. */
function closing(option: FilmOption, at: { readonly short_cents: number; readonly cent: number; readonly discount: number; readonly saved_cents: number }): Pick<ToEnter, 'cost_cents' | 'filmShare' | 'savingShare'> {
  const cheaper = at.short_cents / (at.cent + at.discount);
  const film = option.cost.film_cents + (option.cost.film_cents * option.cost.materialTax_cents) / Math.max(1, option.cost.film_cents + option.cost.consumables_cents);
  const cost = option.cost.total_cents - cheaper;
  return {
    cost_cents: cost < 0 ? null : Math.floor(cost),
    filmShare: film > 0 && cheaper <= film ? 1 - cheaper / film : null,
    savingShare: at.saved_cents > 0 ? (at.saved_cents + at.short_cents) / at.saved_cents : null,
  };
}

/** The cap from which the curves hold the dwelling, if it is above today's. */
function capOf(dwelling: string, curves: readonly CapCurve[]): ToEnter['cap'] {
  for (const curve of curves) {
    let isIn = false;
    let entered: number | null = null;
    for (const point of curve.points) {
      if (!point.changes.includes(dwelling)) continue;
      isIn = !isIn || curve.basis === 'exact breakpoints';
      entered = isIn ? (entered ?? point.cap_cents) : null;
    }
    if (entered !== null) return { of: curve.of, cap_cents: entered, exact: curve.basis === 'exact breakpoints' };
  }
  return null;
}

/** What an option would need, whether or not the caps let it in: short of paying, or short of what its money brings elsewhere. */
function needs(option: FilmOption, phase: number, of: ReasonQuestion & { readonly short_cents: number; readonly cent: number }): ToEnter {
  const { settings } = of;
  const at = settings.phases[phase]!;
  const discount = 1 / (1 + settings.terms.realDiscountRate) ** phaseYear(at, settings.terms.studyStart);
  const saved_cents = inView(settings.valueIn(option, at), settings.terms) + option.cost.total_cents * discount;
  const letters = [...new Set(of.options.filter((o) => o.dwelling === option.dwelling).flatMap((o) => o.waitsFor))].sort();
  return { ...closing(option, { short_cents: of.short_cents, cent: of.cent, discount, saved_cents }), cap: capOf(option.dwelling, of.curves), letters };
}

const wayOf = ({ candidate, reason }: PricedWay, of: ReasonQuestion): ReasonedWay => ({
  option: candidate.option.id,
  phase: of.settings.phases[candidate.phase]!.id,
  value_cents: Math.round(inView(candidate.value, of.settings.terms)),
  cost_cents: Math.ceil(cash_cents(candidate.option, of.settings.terms)),
  ahead_cents: Math.round(reason.reducedValue),
});

function whyIn(line: Candidate, ways: readonly PricedWay[], of: ReasonQuestion): string {
  const way = ways.find((w) => w.candidate.option.id === line.option.id && w.candidate.phase === line.phase);
  const worth = dollars(inView(line.value, of.settings.terms));
  if (way?.reason.taken !== true) return `worth ${worth}; added after the choice, because it fits the room that whole rolls leave`;
  const whole = line.bundle === undefined ? '' : ', with its whole elevation';
  const price = inView(line.value, of.settings.terms) - way.reason.reducedValue;
  if (line.bundle !== undefined) return `taken${whole}; all lines of it together are ${dollars(Math.abs(way.reason.reducedValue))} ${way.reason.reducedValue >= 0 ? 'ahead of' : 'behind'} what their money and hours bring elsewhere`;
  if (way.reason.reducedValue >= 0) return `worth ${worth}; the money and hours it uses would bring ${dollars(Math.max(0, price))} elsewhere, so it is ${dollars(way.reason.reducedValue)} ahead`;
  return `worth ${worth}; by the prices alone it is ${dollars(-way.reason.reducedValue)} behind, but whole dwellings must fit the caps and the plan with it is worth more`;
}

function whyOut(best: PricedWay, of: ReasonQuestion): string {
  const worth = dollars(inView(best.candidate.value, of.settings.terms));
  const phase = of.settings.phases[best.candidate.phase]!.id;
  const whole = best.candidate.bundle === undefined ? '' : ' with its whole elevation';
  if (best.reason.taken) return `the choice took it in ${phase}, but whole rolls pass the cap: first to come back if something drops out`;
  if (best.reason.reducedValue >= 0) return `would be worth ${worth}${whole} in ${phase}, but what is left of the caps does not hold it as a whole`;
  return `would be worth ${worth}${whole} in ${phase}; the money and hours it uses bring ${dollars(-best.reason.reducedValue)} more elsewhere`;
}

/** A dwelling none of whose options may be chosen: it waits, does not pay, is locked out, or has no phase. */
function notPosed(dwelling: string, options: readonly FilmOption[], of: ReasonQuestion): DwellingReason {
  const { settings } = of;
  const { building } = options[0]!;
  const own = settings.phases.map((phase, t) => ({ phase, t })).filter(({ phase }) => phase.ownerEntity === settings.ownerOf(building));
  const ready = options.filter((o) => o.waitsFor.length === 0);
  const valued = ready.flatMap((option) => own.filter(({ phase }) => option.from <= phase.lastDay).map(({ phase, t }) => ({ option, t, value: inView(settings.valueIn(option, phase), settings.terms) })));
  const best = valued.sort((a, b) => b.value - a.value || (a.option.id < b.option.id ? -1 : 1))[0];
  const base = { dwelling, building, phase: null, ways: [] };
  if (best === undefined) {
    const letters = [...new Set(options.flatMap((o) => o.waitsFor))].sort();
    const why = letters.length > 0 ? `every option waits for a letter or test without a date: ${letters.join('; ')}` : 'no phase of its owner is open to it';
    return { ...base, why, toEnter: { cost_cents: null, filmShare: null, savingShare: null, cap: null, letters } };
  }
  if (best.value > 0) return { ...base, why: `worth ${dollars(best.value)} at best, but a lock or the rule of whole elevations stands against it`, toEnter: null };
  return { ...base, why: `does not pay in this view: at best ${dollars(-best.value)} short over the life of the film`, toEnter: needs(best.option, best.t, { ...of, short_cents: -best.value, cent: 0 }) };
}

/** Why each dwelling with an option is in the plan or not, and what would have to be true for it to enter; in order of dwelling. */
export function dwellingReasons(of: ReasonQuestion): DwellingReason[] {
  const ways = pricedWays(of.chosen);
  const lineOf = new Map(of.lines.map((l) => [l.option.dwelling, l]));
  return [...grouped(of.options, (o) => o.dwelling)].sort(([a], [b]) => (a < b ? -1 : 1)).map(([dwelling, options]): DwellingReason => {
    const own = ways.get(dwelling) ?? [];
    const line = lineOf.get(dwelling);
    const shown = own.slice(0, MOST_WAYS).map((w) => wayOf(w, of));
    const { building } = options[0]!;
    if (line !== undefined) return { dwelling, building, phase: of.settings.phases[line.phase]!.id, why: whyIn(line, own, of), toEnter: null, ways: shown };
    const best = own[0];
    if (best === undefined) return notPosed(dwelling, options, of);
    const short_cents = Math.max(0, -best.reason.reducedValue);
    const toEnter = best.candidate.bundle === undefined ? needs(best.candidate.option, best.candidate.phase, { ...of, short_cents, cent: best.cent }) : null;
    return { dwelling, building, phase: null, why: whyOut(best, of), toEnter, ways: shown };
  });
}
