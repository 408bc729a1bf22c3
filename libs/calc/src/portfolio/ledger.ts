import type { InventoryRow, Known } from './row.js';

export type LedgerKind = 'quote' | 'committed' | 'invoiced' | 'paid' | 'stock';

/** One line of the money already spoken for, by owner entity and fiscal year. Invoiced and paid lines name the commitment they settle. */
export interface LedgerEntry {
  readonly id: string;
  readonly ownerEntity: string;
  readonly phase: string;
  readonly kind: LedgerKind;
  readonly day: string;
  /** Last day a quote holds. */
  readonly expires: Known<string>;
  readonly amount_cents: number;
  readonly freight_cents: Known<number>;
  readonly minimumOrder_cents: Known<number>;
  readonly film: Known<string>;
  /** Id of the committed line this one invoices or pays. */
  readonly settles: Known<string>;
  readonly note: Known<string>;
  readonly inventoryRow: InventoryRow;
}
