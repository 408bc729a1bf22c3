import type { FilmOption, PhaseValue } from '../options/option.js';
import type { PlanTerms } from '../plan/plan.js';

/** An option in a phase with its value there: one candidate of the selection. */
export interface Candidate {
  readonly option: FilmOption;
  readonly phase: number;
  readonly value: PhaseValue;
}

/** Paid cost of an option: own labour that is not cash does not count against a cap. */
export function cash_cents(option: FilmOption, terms: Pick<PlanTerms, 'labourIsCash'>): number {
  return option.cost.total_cents - (terms.labourIsCash ? 0 : option.cost.labour_cents + option.cost.removal_cents + option.cost.labourTax_cents);
}
