import { presentValue } from '#calc';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { FilmOption } from '../options/option.js';
import { optionFlows, phaseYear } from '../options/value.js';
import { type Candidate, cash_cents } from './candidate.js';
import type { ChosenUnderCaps } from './choose-under-caps.js';
import type { CapCurve, Closing, ToEnter, WithLetters } from './explanations.js';
import { optionWords } from './option-words.js';
import { inView } from './selection-problem.js';
import { visitWorth_cents } from './visit-worth.js';

export interface ReasonQuestion {
  readonly chosen: ChosenUnderCaps;
  /** Lines of the finished plan. */
  readonly lines: readonly Candidate[];
  readonly options: readonly FilmOption[];
  readonly settings: Pick<PlanSettingsInForce, 'terms' | 'phases' | 'valueIn' | 'ownerOf' | 'buildings' | 'visit'>;
  readonly curves: readonly CapCurve[];
}

/** Cost, film price and saving at which a gap closes: a cent less cost is worth itself today and the price of the cap it frees. */
function closing(option: FilmOption, at: { readonly short_cents: number; readonly cent: number; readonly discount: number; readonly saved_cents: number }): Closing {
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

function closingIn(option: FilmOption, phase: number, of: ReasonQuestion & { readonly short_cents: number; readonly cent: number }): Closing {
  const { settings } = of;
  const at = settings.phases[phase]!;
  const rate = settings.terms.realDiscountRate;
  const discount = 1 / (1 + rate) ** phaseYear(at, settings.terms.studyStart);
  const off = presentValue(optionFlows(option, at, { terms: settings.terms, endYear: settings.buildings.get(option.building)?.endYear ?? null }).removal_cents, rate);
  const saved_cents = inView(settings.valueIn(option, at), settings.terms) + option.cost.total_cents * discount + off;
  return closing(option, { short_cents: of.short_cents, cent: of.cent, discount, saved_cents });
}

/** What a visit of the building would take off the value in a phase the plan does not go there; null where it goes there anyway, or the visit costs nothing. */
function newVisit_cents(building: string, phase: number, { lines, settings }: ReasonQuestion): number | null {
  const known = settings.buildings.get(building);
  if (known === undefined || lines.some((l) => l.option.building === building && l.phase === phase)) return null;
  return Math.ceil(visitWorth_cents(known, settings.phases[phase]!, settings)) || null;
}

/** What the money and hours of an option bring elsewhere in a phase, by the prices of the choice. */
function priceOf(option: FilmOption, phase: number, { chosen, settings }: ReasonQuestion): number {
  const multipliers = chosen.choice.proof.record?.result.certificate?.multipliers;
  return cash_cents(option, settings.terms) * (multipliers?.cap[phase] ?? 0) + option.minutes.best * (multipliers?.crewMinutes[phase] ?? 0);
}

/** The best of the options that wait for letters, if it is better than what may go ahead without. */
export function withLetters(options: readonly FilmOption[], of: ReasonQuestion & { readonly ahead_cents: number }): WithLetters | null {
  const { settings } = of;
  const ways = options.filter((o) => o.waitsFor.length > 0).flatMap((option) =>
    settings.phases.flatMap((phase, t) => {
      if (phase.ownerEntity !== settings.ownerOf(option.building)) return [];
      const value = inView(settings.valueIn(option, phase), settings.terms);
      return [{ option, t, value, ahead: value - priceOf(option, t, of) }];
    }),
  );
  const best = ways.sort((a, b) => b.ahead - a.ahead || (a.option.id < b.option.id ? -1 : 1))[0];
  if (best === undefined || best.ahead <= of.ahead_cents) return null;
  const short_cents = Math.max(0, -best.ahead);
  const cent = of.chosen.choice.proof.record?.result.certificate?.multipliers.cap[best.t] ?? 0;
  return {
    way: optionWords(best.option),
    letters: [...best.option.waitsFor].sort(),
    phase: settings.phases[best.t]!.id,
    value_cents: Math.round(best.value),
    short_cents: Math.round(short_cents),
    visit_cents: newVisit_cents(best.option.building, best.t, of),
    ...closingIn(best.option, best.t, { ...of, short_cents, cent }),
  };
}

/** What an option would need, whether or not the caps let it in: short of paying, or short of what its money brings elsewhere. */
export function needs(option: FilmOption, phase: number, of: ReasonQuestion & { readonly short_cents: number; readonly cent: number; readonly isPosed: boolean }): ToEnter {
  return {
    way: optionWords(option),
    phase: of.settings.phases[phase]!.id,
    ...closingIn(option, phase, of),
    // At the prices of the choice the visit is in the gap already.
    visit_cents: of.isPosed ? null : newVisit_cents(option.building, phase, of),
    cap: capOf(option.dwelling, of.curves),
    withLetters: withLetters(of.options.filter((o) => o.dwelling === option.dwelling), { ...of, ahead_cents: -of.short_cents }),
  };
}
