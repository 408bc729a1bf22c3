import { fixedOfMonth_cents, minimumOfMonth_cents, sellPrice_cents_kWh } from './bill.js';
import { MONTH_DAYS } from './calendar.js';
import { monthSums, type MonthSums } from './month-sums.js';
import { isBilledBySums } from './part-sums.js';
import { stepsCost_cents } from './steps-cost.js';
import type { Tariff } from './tariff.js';
import { tariffClock, type TariffClock } from './tariff-clock.js';

/**
 * What a year of hourly use costs, for the thousands of bills that options need.
 *
 *   Σ over months of max(minimum, energy − exported + demand + fixed), not rounded
 *
 * It is the sum of the months' `exact_cents` of `billYear`. Fractions are kept so that the difference of two bills is not
 * moved by rounding; a bill that is printed comes from `billYear`.
 *
 * @param of the clock of a tariff; a tariff alone is laid over the year first, which costs more than the bill itself
 * @param use_kWh use of each of 8760 hours of local standard time; below zero where more is sent out than drawn
 * @returns cents a year, with fractions
 * @throws RangeError when the tariff has errors or use_kWh does not hold 8760 finite values
 * @source U.S. Utility Rate Database, order of charges
 */
export function yearCost_cents(of: Tariff | TariffClock, use_kWh: Float64Array): number {
  const clock = 'tariff' in of ? of : tariffClock(of);
  return sumsCost_cents(clock.tariff, monthSums(clock, use_kWh));
}

/**
 * What a year costs whose use is made of parts that were summed apart: when only the cooling changes, the base load is not added up again.
 *
 *   as `yearCost_cents` on the sum of the parts
 *
 * @param clock the tariff laid over the year, without demand charges
 * @param bought_kWh sum of the parts by month and price period (`partSums`), ≥ 0
 * @returns cents a year, with fractions
 * @throws RangeError for a tariff with demand charges or another number of bins
 * @source U.S. Utility Rate Database, order of charges
 */
export function partsCost_cents(clock: TariffClock, bought_kWh: Float64Array): number {
  if (!isBilledBySums(clock)) throw new RangeError(`tariff must be without demand charges, got ${clock.tariff.label}`);
  const bins = 12 * clock.tariff.energy.length;
  if (bought_kWh.length !== bins) throw new RangeError(`bought_kWh must hold ${bins} sums, got ${bought_kWh.length}`);
  return sumsCost_cents(clock.tariff, { bought_kWh, sold_kWh: null, periodPeak_kW: null, peak_kW: null });
}

/** Sums a bill is made of; `null` is not in the use, or not charged by the tariff. */
type BilledSums = Pick<MonthSums, 'bought_kWh'> & { readonly [Part in Exclude<keyof MonthSums, 'bought_kWh'>]: Float64Array | null };

function sumsCost_cents(tariff: Tariff, sums: BilledSums): number {
  const periods = tariff.energy.length;
  let year_cents = 0;
  for (let month = 0; month < 12; month++) {
    const days = MONTH_DAYS[month]!;
    let charges_cents = fixedOfMonth_cents(tariff, days);
    if (sums.periodPeak_kW !== null) charges_cents += demand_cents(tariff, sums.periodPeak_kW, month);
    for (let period = 0; period < periods; period++) {
      const bin = month * periods + period;
      charges_cents += stepsCost_cents(tariff.energy[period]!, sums.bought_kWh[bin]!, days);
      const sold_kWh = sums.sold_kWh === null ? 0 : sums.sold_kWh[bin]!;
      if (sold_kWh > 0) charges_cents -= sold_kWh * sellPrice_cents_kWh(tariff, period);
    }
    if (tariff.flatDemand !== null && sums.peak_kW !== null) {
      charges_cents += stepsCost_cents(tariff.flatDemand.steps[tariff.flatDemand.months[month]!]!, sums.peak_kW[month]!, days);
    }
    const minimum_cents = minimumOfMonth_cents(tariff, days);
    year_cents += minimum_cents > 0 ? Math.max(minimum_cents, charges_cents) : charges_cents;
  }
  return year_cents;
}

function demand_cents(tariff: Tariff, periodPeak_kW: Float64Array, month: number): number {
  if (tariff.demand === null) return 0;
  const { steps } = tariff.demand;
  let sum = 0;
  for (let period = 0; period < steps.length; period++) {
    sum += stepsCost_cents(steps[period]!, periodPeak_kW[month * steps.length + period]!, MONTH_DAYS[month]!);
  }
  return sum;
}
