import type { InventoryRow, Known } from './row.js';

export type SiteRecordKind = 'field-size' | 'done' | 'no-access' | 'defect' | 'broken-pane' | 'minutes' | 'film-used';

/** What the crew found or did on a day: a window's field size, a pane done, a door that stayed shut, real minutes, film used. */
export interface SiteRecord {
  /** `day|dwelling|window|pane|kind`, the same record when it is sent again. */
  readonly id: string;
  readonly day: string;
  readonly kind: SiteRecordKind;
  readonly dwelling: Known<string>;
  readonly window: Known<string>;
  /** Pane of the window, from 1; blank for all of them. */
  readonly pane: Known<number>;
  readonly film: Known<string>;
  /** Sight size as measured on the spot. */
  readonly width: Known<{ readonly entered: string; readonly mm: number }>;
  readonly height: Known<{ readonly entered: string; readonly mm: number }>;
  /** Person-minutes of the visit. */
  readonly personMinutes: Known<number>;
  /** Length run off a roll. */
  readonly rollWidth_mm: Known<number>;
  readonly rollLength_mm: Known<number>;
  readonly defect: Known<string>;
  readonly note: Known<string>;
  readonly inventoryRow: InventoryRow;
}
