import { HOURS_OF_YEAR } from './calendar.js';
import type { TariffClock } from './tariff-clock.js';

/** What a bill is worked out from: kWh by month and energy period, peaks by month. Index = month × periods + period. */
export interface MonthSums {
  readonly bought_kWh: Float64Array;
  /** kWh sent out, positive. */
  readonly sold_kWh: Float64Array;
  /** Greatest kW by month and demand period; empty where the tariff has no such charge. */
  readonly periodPeak_kW: Float64Array;
  /** Greatest kW of each month. */
  readonly peak_kW: Float64Array;
}

function netWithinMonth(bought_kWh: Float64Array, sold_kWh: Float64Array): void {
  for (let bin = 0; bin < bought_kWh.length; bin++) {
    const net = bought_kWh[bin]! - sold_kWh[bin]!;
    bought_kWh[bin] = Math.max(net, 0);
    sold_kWh[bin] = Math.max(-net, 0);
  }
}

/**
 * kWh by month and price period, and the peaks of each month, from hourly use.
 *
 *   bought = Σ use of the hours with use ≥ 0; sold = −Σ use of the hours below zero; peak = the greatest hourly mean
 *
 * Where the tariff nets by the month, what is sold is set off against what is bought in the same month and period.
 *
 * @param clock the tariff laid over the year
 * @param use_kWh use of each of 8760 hours; below zero where more is sent out than drawn
 * @returns sums and peaks by month
 * @throws RangeError when use_kWh does not hold 8760 finite values
 */
export function monthSums(clock: TariffClock, use_kWh: Float64Array): MonthSums {
  if (use_kWh.length !== HOURS_OF_YEAR) throw new RangeError(`use_kWh must hold 8760 hours, got ${use_kWh.length}`);
  const { tariff, energyBin, demandBin, month } = clock;
  const bins = 12 * tariff.energy.length;
  const bought_kWh = new Float64Array(bins);
  const sold_kWh = new Float64Array(bins);
  let check = 0;
  for (let hour = 0; hour < HOURS_OF_YEAR; hour++) {
    const use = use_kWh[hour]!;
    check += use;
    if (use >= 0) bought_kWh[energyBin[hour]!]! += use;
    else sold_kWh[energyBin[hour]!]! -= use;
  }
  if (!Number.isFinite(check)) throw new RangeError('use_kWh must hold finite values');
  if (tariff.netting === 'month') netWithinMonth(bought_kWh, sold_kWh);
  const periodPeak_kW = new Float64Array(tariff.demand === null ? 0 : 12 * tariff.demand.steps.length);
  const peak_kW = new Float64Array(12);
  if (demandBin !== null) peaks(use_kWh, demandBin, periodPeak_kW);
  if (demandBin !== null || tariff.flatDemand !== null) peaks(use_kWh, month, peak_kW);
  return { bought_kWh, sold_kWh, periodPeak_kW, peak_kW };
}

function peaks(use_kWh: Float64Array, bin: Uint8Array | Uint16Array, into: Float64Array): void {
  for (let hour = 0; hour < HOURS_OF_YEAR; hour++) {
    const at = bin[hour]!;
    if (use_kWh[hour]! > into[at]!) into[at] = use_kWh[hour]!;
  }
}
