import type { Building, Phase } from '#calc';
import { phaseYear } from '../options/value.js';
import type { PlanTerms } from '../plan/terms.js';

/** What is asked of a visit: its cost and minutes on the day. */
export type VisitOf = (building: Building) => { readonly cents: number; readonly minutes: number };

/** What a visit takes off the value of the plan: its cost brought to the study start like the cost of an option; the owner pays it in both views. */
export function visitWorth_cents(building: Building, phase: Pick<Phase, 'firstDay'>, of: { readonly visit: VisitOf; readonly terms: Pick<PlanTerms, 'realDiscountRate' | 'studyStart'> }): number {
  return of.visit(building).cents / (1 + of.terms.realDiscountRate) ** phaseYear(phase, of.terms.studyStart);
}
