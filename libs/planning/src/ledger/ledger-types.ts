/** Money of one fiscal year of an owner entity that is already spoken for. Whole cents. */
export interface PhaseLedger {
  readonly ownerEntity: string;
  readonly phase: string;
  /** Null for a year the plan does not know. */
  readonly cap_cents: number | null;
  /** Quotes that still hold and that no commitment has taken up; they bind nobody. */
  readonly quoted_cents: number;
  readonly expiredQuotes_cents: number;
  /** Everything ordered, paid or not; what was invoiced above an order counts. */
  readonly committed_cents: number;
  readonly invoiced_cents: number;
  readonly paid_cents: number;
  /** Ordered or invoiced and not yet paid. */
  readonly open_cents: number;
  /** Worth of what lies in the store; an asset, not a payment of this year. */
  readonly stock_cents: number;
  /** Cap less paid less open; below zero where more is spoken for than the cap. Null without a cap. */
  readonly remaining_cents: number | null;
}

/** Film that lies in the store, by what the ledger says it is worth and what rolls.csv says can be cut from it. */
export interface StockOnHand {
  readonly film: string;
  readonly ownerEntity: string | null;
  readonly worth_cents: number;
  readonly rolls: readonly { readonly roll: string; readonly width_mm: number; readonly length_mm: number; readonly count: number }[];
}

/** Quotes with what a buyer must know. */
export interface QuoteState {
  readonly id: string;
  readonly phase: string;
  readonly amount_cents: number;
  readonly freight_cents: number | null;
  readonly minimumOrder_cents: number | null;
  readonly expires: string | null;
  readonly state: 'open' | 'expired' | 'taken up';
}

export interface LedgerFinding {
  readonly severity: 'error' | 'warning' | 'note';
  readonly subject: string;
  readonly text: string;
  readonly whatToDo: string;
}

/** The ledger as it stands on a day. */
export interface LedgerReport {
  readonly on: string;
  readonly phases: readonly PhaseLedger[];
  readonly quotes: readonly QuoteState[];
  readonly stock: readonly StockOnHand[];
  readonly findings: readonly LedgerFinding[];
}
