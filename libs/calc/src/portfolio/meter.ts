import type { InventoryRow, Known } from './row.js';

export type Payer = 'owner' | 'tenant';
/** Who pays what a meter bills: shares of owner and tenant sum to 1. */
export interface PayerRule {
  readonly id: string;
  readonly kind: 'owner' | 'tenant' | 'sub-meter' | 'ratio' | 'common';
  /** Share of the bill that rests with the owner, 0…1; the tenant carries the rest. */
  readonly ownerShare: number;
  /** Years until a ratio bill follows a lower use; until then the owner keeps the saving. */
  readonly resetLag_yr: number;
  /** Share of the time the dwelling stands empty and the owner pays. */
  readonly vacancyShare: number;
}

/** A meter with its tariff; serves one dwelling, many, or common areas. */
export interface Meter {
  readonly id: string;
  readonly building: string;
  readonly tariff: Known<string>;
  readonly payerRule: Known<PayerRule>;
  readonly use: 'all' | 'cooling' | 'heating' | 'common';
  /** Electricity a year other than cooling and heating of ONE dwelling served; blank is assumed from floor area and occupants. */
  readonly baseLoad_kWh_yr: Known<number>;
  /** What the supplier's own files of readings call it; blank where nobody has looked. */
  readonly usagePoint: Known<string>;
  readonly inventoryRow: InventoryRow;
}

export interface DwellingMeter {
  readonly dwelling: string;
  readonly meter: string;
  readonly inventoryRow: InventoryRow;
}

/** One price step; `max_kWh` is cumulative within the month, the last step has none. */
export interface TariffTier {
  readonly rate: number;
  readonly adj?: number;
  readonly max?: number;
  readonly unit?: string;
  readonly sell?: number;
}

/** A tariff in the field names of the open rate database; unknown fields pass through untouched. Rates in dollars as there. */
export interface TariffText {
  readonly label: string;
  readonly name?: string;
  readonly energyratestructure: readonly (readonly TariffTier[])[];
  readonly energyweekdayschedule: readonly (readonly number[])[];
  readonly energyweekendschedule: readonly (readonly number[])[];
  readonly demandratestructure?: readonly (readonly TariffTier[])[];
  readonly demandweekdayschedule?: readonly (readonly number[])[];
  readonly demandweekendschedule?: readonly (readonly number[])[];
  readonly flatdemandstructure?: readonly (readonly TariffTier[])[];
  readonly flatdemandmonths?: readonly number[];
  readonly fixedchargefirstmeter?: number;
  readonly fixedchargeunits?: string;
  readonly mincharge?: number;
  readonly minchargeunits?: string;
  readonly clock?: 'standard' | 'daylight';
  readonly [field: string]: unknown;
}
