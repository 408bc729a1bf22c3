import type { OptionWindow } from '../options/option.js';
import type { Plan } from '../plan/plan.js';
import type { ReceiptRow } from './receipt.js';

/** Rows of the windows a line films. */
export const windowRows = (windows: readonly OptionWindow[], columns: readonly string[]): ReceiptRow[] => windows.map((w) => ({ ...w.inventoryRow, columns, of: w.fromPlanType === null ? w.window : `${w.window}, from plan type ${w.fromPlanType}` }));

/** Row of a building. */
export function buildingRow(plan: Plan, id: string, columns: readonly string[]): ReceiptRow[] {
  const building = plan.buildings.find((b) => b.id === id);
  return building === undefined ? [] : [{ ...building.inventoryRow, columns, of: id }];
}

/** Row of a dwelling. */
export function dwellingRow(plan: Plan, id: string, columns: readonly string[]): ReceiptRow[] {
  const dwelling = plan.dwellings.find((d) => d.id === id);
  return dwelling === undefined ? [] : [{ ...dwelling.inventoryRow, columns, of: id }];
}

/** Rows of the rolls of a film that are on offer or in store. */
export const rollRows = (plan: Plan, film: string): ReceiptRow[] => plan.rolls.filter((r) => r.film === film).map((r) => ({ ...r.inventoryRow, columns: ['width', 'length', 'price', 'in_stock'], of: `roll ${r.id}` }));

/** Row of a film's sheet. */
export function filmRow(plan: Plan, id: string, columns: readonly string[]): ReceiptRow[] {
  const row = plan.films.find((f) => f.film.id === id)?.film.inventoryRow ?? null;
  return row === null ? [] : [{ ...row, columns, of: `film ${id}` }];
}
