import { billFitness, type BillFitness, modelledUse_kWh, type UseSplit } from '#calc';
import { grouped } from '../grouped.js';
import { daysBetween } from './day-weather.js';
import type { BilledPeriod } from './meter-bills.js';

/** A bill beside the model, both in the weather of a typical year, kWh a day. */
export interface BilledMonth {
  /** Calendar month in which the middle of the bill lies, YYYY-MM. */
  readonly month: string;
  readonly billed: number;
  readonly modelled: number;
}

const MONTH_STARTS = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
/** Day 0…364 of a typical year. */
export const dayOfYear = (iso: string): number => MONTH_STARTS[Number(iso.slice(5, 7)) - 1]! + Math.min(Number(iso.slice(8, 10)), iso.slice(5, 7) === '02' ? 28 : 31) - 1;

/**
 * The bills of a meter beside the model on the same calendar days. What the bill's own weather did beyond the typical year's is taken off
 * by the meter's own fit, so that what the fit does not explain stays in the bill.
 *
 * @param typical means of the days of a typical year, by MM-DD
 * @param days modelled use of the meter by day of a typical year
 */
export function billedMonths(periods: readonly BilledPeriod[], of: { readonly split: UseSplit; readonly typical: ReadonlyMap<string, number>; readonly days: Float64Array }): BilledMonth[] {
  return periods.map((period) => {
    const spanned = daysBetween(period.firstDay, period.lastDay);
    const daily_degC = spanned.map((day) => of.typical.get(day.slice(5) === '02-29' ? '02-28' : day.slice(5))!);
    const usual = { ...period, daily_degC, outdoor_degC: daily_degC.reduce((a, b) => a + b, 0) / daily_degC.length };
    const moved = modelledUse_kWh(of.split.fit, usual) - modelledUse_kWh(of.split.fit, period);
    const modelled = spanned.reduce((sum, day) => sum + of.days[dayOfYear(day)]!, 0);
    return { month: spanned[Math.floor(spanned.length / 2)]!.slice(0, 7), billed: (period.use_kWh + moved) / period.days, modelled: modelled / period.days };
  });
}

/** Fitness of several meters together: their days of one month summed on both sides. Null with fewer than two months. */
export function monthsFitness(months: readonly BilledMonth[]): BillFitness | null {
  const sums = [...grouped(months, (m) => m.month).values()].map((same) => ({ billed: same.reduce((sum, m) => sum + m.billed, 0), modelled: same.reduce((sum, m) => sum + m.modelled, 0) }));
  return sums.length < 2 ? null : billFitness(sums.map((s) => s.billed), sums.map((s) => s.modelled));
}
