import { billOfMonths, billOfSums, type MonthSums, readTariff, type TariffBill, tariffClock, type TariffText } from '#calc';
import type { MonthUse } from '../review/line-uses.js';

/** Twelve months of a meter as `tariff-bill` takes them. */
export interface MonthlyInput {
  readonly tariff: TariffText;
  readonly monthlyUse_kWh: readonly number[];
  readonly monthlyPeak_kW?: readonly number[];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const flat = (months: readonly MonthUse[], of: (month: MonthUse) => readonly number[]): Float64Array => Float64Array.from(months.flatMap(of));

/** The bills of a year from the sums that the plan keeps by month and price period. */
export function billOfUse(tariff: TariffText, months: readonly MonthUse[]): TariffBill {
  const sums: MonthSums = { bought_kWh: flat(months, (m) => m.bought_kWh), sold_kWh: flat(months, (m) => m.sold_kWh), periodPeak_kW: flat(months, (m) => m.periodPeak_kW), peak_kW: Float64Array.from(months, (m) => m.peak_kW) };
  return billOfSums(tariffClock(readTariff(tariff)), sums);
}

/** What `tariff-bill` takes where months alone decide the bill (one energy and one demand period a month, nothing sent out), or why they do not. */
export function monthlyInput(tariff: TariffText, months: readonly MonthUse[]): MonthlyInput | { readonly why: string } {
  if (months.some((m) => sum(m.sold_kWh) > 0)) return { why: 'electricity is sent out in some hours, which a month of net use does not tell' };
  const read = readTariff(tariff);
  const monthlyUse_kWh = months.map((m) => sum(m.bought_kWh));
  const monthlyPeak_kW = months.map((m) => m.peak_kW);
  const { assumed } = billOfMonths(read, { use_kWh: monthlyUse_kWh, peak_kW: monthlyPeak_kW });
  if (assumed.length > 0) return { why: 'the tariff has prices by the hour of the day, so months alone do not decide the bill' };
  return { tariff, monthlyUse_kWh, ...(read.demand === null && read.flatDemand === null ? {} : { monthlyPeak_kW }) };
}

/** Cents of a year before months are rounded: savings are differences of these. */
export const exactYear_cents = (bill: TariffBill): number => sum(bill.months.map((m) => m.exact_cents));

/** kWh bought in a month. */
export const monthUse_kWh = (month: MonthUse): number => sum(month.bought_kWh);
