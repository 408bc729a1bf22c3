import type { InventoryRow, Known } from './row.js';

/** A film as its sheet states it: figures of the film on 3 mm clear glass. */
export interface Film {
  readonly id: string;
  readonly name: string;
  readonly filmClass: Known<string>;
  readonly solarTransmittance: number;
  /** Seen from the side the light comes from (outdoors for a room-side film). */
  readonly frontReflectance: number;
  readonly backReflectance: number;
  readonly visibleTransmittance: Known<number>;
  readonly outsideVisibleReflectance: Known<number>;
  readonly insideVisibleReflectance: Known<number>;
  readonly roomEmissivity: Known<number>;
  readonly side: 'room' | 'outdoor';
  readonly life_yr: Known<number>;
  readonly mayRotate: Known<boolean>;
  readonly freight_cents: Known<number>;
  readonly minimumOrder_cents: Known<number>;
  /** Price by area where the film is sold by length; it counts where no roll of the film is on offer. */
  readonly price_cents_m2?: Known<number>;
  readonly quoteDate: Known<string>;
  readonly quoteEnds: Known<string>;
  /** How far the figures are to be trusted: measured, published, assumed. */
  readonly basis: 'measured' | 'published' | 'assumed';
  readonly source: string;
  readonly inventoryRow: Known<InventoryRow>;
}

/** A roll of film on offer (price) or in stock (a lot with a length left). */
export interface Roll {
  readonly id: string;
  readonly film: string;
  readonly width: { readonly entered: string; readonly mm: number };
  readonly length_mm: number;
  readonly price_cents: Known<number>;
  /** Sold by length: `price_cents` is that of a metre, `length_mm` does not matter. */
  readonly isByLength?: boolean;
  /** Rolls of this kind in the store room; 0 for a roll on offer only. */
  readonly inStock: number;
  readonly lot: Known<string>;
  readonly inventoryRow: InventoryRow;
}
