import { type Building, labour_cents } from '#calc';
import type { PlanTerms } from '../plan/terms.js';
import type { DefaultOf } from './assumption-book.js';

/** What bringing a crew to a building once costs, and the person-minutes it takes of the own crew; a contractor with a price takes none. */
export function visitCost(building: Building, of: { readonly terms: Pick<PlanTerms, 'labour_cents_h' | 'labourIsCash'>; readonly defaultOf: DefaultOf }): { readonly cents: number; readonly minutes: number } {
  const { terms, defaultOf } = of;
  const contractor = building.crew === 'contractor' ? building.contractorVisit_cents : null;
  if (contractor !== null) return { minutes: 0, cents: contractor };
  const minutes = building.visitMinutes ?? defaultOf<number>('visitMinutes').value;
  const own = terms.labourIsCash ? labour_cents(minutes, terms.labour_cents_h) : 0;
  return { minutes, cents: (building.visit_cents ?? defaultOf<number>('visit_cents').value) + own };
}
