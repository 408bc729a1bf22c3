import type { FilmOption, PhaseValue } from '../options/option.js';
import type { PlanTerms } from '../plan/terms.js';

/** An option in a phase with its value there: one candidate of the selection. */
export interface Candidate {
  readonly option: FilmOption;
  readonly phase: number;
  readonly value: PhaseValue;
  /** Whole elevations this line belongs to: they come and go together. */
  readonly bundle?: string;
}

/** Paid cost of an option: own labour that is not cash does not count against a cap. */
export function cash_cents(option: FilmOption, terms: Pick<PlanTerms, 'labourIsCash'>): number {
  const unpaid = terms.labourIsCash || option.crew === 'contractor' ? 0 : option.cost.labour_cents + option.cost.removal_cents + option.cost.labourTax_cents;
  return option.cost.total_cents - unpaid;
}
