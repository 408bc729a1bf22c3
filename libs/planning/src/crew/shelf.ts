import type { Portfolio, Roll } from '#calc';
import type { Plan } from '../plan/plan.js';
import type { StockRoll } from '../rolls/cut-list.js';
import { startingStock } from '../rolls/price-by-rolls.js';

/**
 * Film on the shelf for some hours of work: the rolls somebody counted, else what the newest plan's work left, else what the inventory lists.
 *
 * @param counted rolls somebody counted just now, null where nobody did; a row without a number in stock is one roll
 * @param newest the newest kept plan, null where there is none
 */
export function filmOnShelf(portfolio: Pick<Portfolio, 'rolls'>, counted: readonly Roll[] | null, newest: Pick<Plan, 'settled' | 'rolls'> | null): readonly StockRoll[] {
  if (counted !== null) return startingStock(counted.map((r): Roll => ({ ...r, inStock: Math.max(1, r.inStock) })));
  // A revision after work keeps the store room as it was then, with rolls earlier revisions left.
  return startingStock(newest === null || newest.settled === null ? portfolio.rolls : newest.rolls);
}
