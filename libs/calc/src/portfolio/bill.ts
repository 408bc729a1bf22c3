import type { InventoryRow, Known } from './row.js';

/** What a meter used between two readings. Days are those of the building's own calendar. */
export interface Bill {
  readonly meter: string;
  /** ISO dates of the first and the last day the use belongs to, both included. */
  readonly firstDay: string;
  readonly lastDay: string;
  readonly use_kWh: number;
  readonly peak_kW: Known<number>;
  readonly amount_cents: Known<number>;
  /** Read by nobody: the supplier's own guess. */
  readonly estimated: boolean;
  readonly inventoryRow: InventoryRow;
}
