import type { Phase } from '#calc';
import type { FilmOption, LifeSegment, PhaseValue } from './option.js';
import type { PlanTerms } from './plan.js';

/** One year of the film's life in base-date prices, before film ageing and escalation. */
export interface StreamYear {
  /** Calendar year that holds the middle of this year of life. */
  readonly year: number;
  readonly cooling_cents: number;
  readonly heating_cents: number;
  readonly net_cents: number;
  readonly owner_cents: number;
}

const yearOf = (isoDate: string): number => Number(isoDate.slice(0, 4));
const monthOf = (isoDate: string): number => Number(isoDate.slice(5, 7));

/** Whole years from the study start to the first day of a phase; the cost falls there and savings come at the ends of the years after it. */
export function phaseYear(phase: Pick<Phase, 'firstDay'>, studyStart: string): number {
  const months = (yearOf(phase.firstDay) - yearOf(studyStart)) * 12 + monthOf(phase.firstDay) - monthOf(studyStart);
  return Math.max(0, Math.floor(months / 12));
}

/** Share of the saving that stays with the owner in a year of the film's life: all of it until a ratio bill is reset. */
export function ownerShareIn(payer: FilmOption['payer'], lifeYear: number): number {
  if (payer.kind === 'ratio' && lifeYear <= payer.resetLag_yr) return 1;
  return payer.ownerShare + (1 - payer.ownerShare) * payer.vacancyShare;
}

const segmentOf = (segments: readonly LifeSegment[], year: number): LifeSegment | undefined => segments.findLast((s) => s.firstYear <= year) ?? segments[0];

/**
 * The saving of an option by year of the film's life when it is installed at the start of a phase.
 *
 * @param endYear calendar year from which the building is no longer this portfolio's; null for none
 */
export function optionStream(option: Pick<FilmOption, 'segments' | 'filmLife_yr' | 'payer'>, phase: Pick<Phase, 'firstDay'>, endYear: number | null): StreamYear[] {
  const halfYear = monthOf(phase.firstDay) > 6 ? 1 : 0;
  return Array.from({ length: option.filmLife_yr }, (_, i) => {
    const year = yearOf(phase.firstDay) + i + halfYear;
    const saving = endYear !== null && year >= endYear ? undefined : segmentOf(option.segments, year)?.saving;
    const cooling_cents = saving?.cooling_cents ?? 0;
    const heating_cents = saving?.addedHeating_cents ?? 0;
    const net_cents = cooling_cents - heating_cents;
    return { year, cooling_cents, heating_cents, net_cents, owner_cents: net_cents * ownerShareIn(option.payer, i + 1) };
  });
}

/** What a cent of year `i` (0 = first year of life) of a stream is worth at the study start: film ageing, escalation, discount, end of year. */
export function worthOfYear(i: number, startYear: number, terms: Pick<PlanTerms, 'realDiscountRate' | 'realEscalation' | 'filmDegradation_1_yr'>): number {
  const n = startYear + i + 1;
  return ((1 - terms.filmDegradation_1_yr) ** i * (1 + terms.realEscalation) ** n) / (1 + terms.realDiscountRate) ** n;
}

/** Net present value of an option in a phase, whole building and owner; the owner pays the film in both. */
export function phaseValue(option: FilmOption, phase: Phase, at: { readonly terms: PlanTerms; readonly endYear: number | null }): PhaseValue {
  const start = phaseYear(phase, at.terms.studyStart);
  const cost = option.cost.total_cents / (1 + at.terms.realDiscountRate) ** start;
  let whole = -cost;
  let owner = -cost;
  optionStream(option, phase, at.endYear).forEach((year, i) => {
    const worth = worthOfYear(i, start, at.terms);
    whole += year.net_cents * worth;
    owner += year.owner_cents * worth;
  });
  return { phase: phase.id, whole_cents: whole, owner_cents: owner };
}

/** Years of saving that pay the installed cost, or why there are none. */
export function simplePayback(cost_cents: number, firstYear_cents: number): { readonly years: number | null; readonly why: string | null } {
  if (firstYear_cents <= 0) return { years: null, why: 'the first year saves nothing net of added heating' };
  return { years: cost_cents / firstYear_cents, why: null };
}
