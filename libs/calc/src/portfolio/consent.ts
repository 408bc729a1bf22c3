import type { InventoryRow, Known } from './row.js';

export type ConsentState = 'not-needed' | 'needed' | 'asked' | 'given' | 'refused';

/** A letter or test that must be there before film goes on; covers a glazing type × film of a building, a window, or a whole building. */
export interface Consent {
  readonly id: string;
  readonly building: string;
  /** Glass maker, film maker, owner, association, listing, glass test. */
  readonly kind: string;
  readonly glazing: Known<string>;
  readonly film: Known<string>;
  readonly window: Known<string>;
  readonly state: ConsentState;
  /** ISO date: given, or expected when asked. Needed or asked without a date waits in no phase. */
  readonly date: Known<string>;
  readonly reference: Known<string>;
  readonly inventoryRow: InventoryRow;
}

/** A choice fixed by hand. */
export interface Lock {
  readonly subject: string;
  readonly direction: 'in' | 'out';
  /** For a facade of a dwelling, its azimuth. */
  readonly azimuth_deg: Known<number>;
  readonly phase: Known<string>;
  readonly film: Known<string>;
  readonly reason: string;
  readonly role: string;
  readonly date: string;
}
