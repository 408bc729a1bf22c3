import type { TariffText } from '../portfolio/index.js';

/** One step of a price: it holds up to an amount of the month, kWh in energy charges and kW in demand charges. */
export interface PriceStep {
  /** Upper end, cumulative in the month; the last step has no end (Infinity). */
  readonly upTo: number;
  /** The upper end is stated for a day and grows with the days of the month. */
  readonly daily: boolean;
  /** Cents per kWh or per kW, adjustment added. */
  readonly price_cents: number;
  /** Cents paid for an exported kWh; `null` where the tariff states none. */
  readonly sell_cents: number | null;
}

/** Which period of a charge holds in each hour: index = month × 24 + hour. */
export interface PeriodTable {
  readonly weekday: Uint8Array;
  readonly weekend: Uint8Array;
}

/** Demand charge by period of the day: the greatest kW of the month in each period. */
export interface PeriodDemand {
  readonly steps: readonly (readonly PriceStep[])[];
  readonly table: PeriodTable;
}

/** Demand charge on the greatest kW of the month, whenever it falls. */
export interface FlatDemand {
  readonly steps: readonly (readonly PriceStep[])[];
  /** Which of the step lists holds in each month. */
  readonly months: Uint8Array;
}

/** First and last day of daylight time as `[month 0…11, day 1…31]`. */
export interface DaylightDates {
  readonly first: readonly [number, number];
  readonly last: readonly [number, number];
}

/** The clock the schedules are written in: standard all year, or daylight time between two days (`null`: the usual Sundays). */
export type TariffTime = { readonly kind: 'standard' } | { readonly kind: 'daylight'; readonly dates: DaylightDates | null };

/**
 * How kWh sent out are set off: `hour` pays what is left over in an hour at the price of exported kWh;
 * `month` sets it off against use of the same month and period first. Nothing is carried into the next month.
 */
export type Netting = 'hour' | 'month';

/** What a tariff text does not say, says twice or says in a way that cannot be billed. */
export interface TariffFinding {
  /** An `error` stops billing, a `warning` moves the bill, a `note` names what was assumed. */
  readonly weight: 'error' | 'warning' | 'note';
  /** Place in the text, as a pointer. */
  readonly place: string;
  readonly seen: string;
  readonly expected: string;
}

/** A tariff ready to bill with; prices in cents. */
export interface Tariff {
  readonly label: string;
  readonly name: string;
  readonly energy: readonly (readonly PriceStep[])[];
  readonly energyTable: PeriodTable;
  readonly demand: PeriodDemand | null;
  readonly flatDemand: FlatDemand | null;
  readonly fixed_cents: number;
  readonly fixedPer: 'month' | 'day';
  readonly minimum_cents: number;
  readonly minimumPer: 'month' | 'day';
  readonly time: TariffTime;
  readonly netting: Netting;
  readonly findings: readonly TariffFinding[];
  /** False when a finding is an error: such a tariff is shown, never billed with. */
  readonly usable: boolean;
  /** The text as it came; fields not read here pass through in it. */
  readonly text: TariffText;
}
