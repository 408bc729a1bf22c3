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
  const { tariff, energyBin, demandBin, month, runs } = clock;
  const bins = 12 * tariff.energy.length;
  const bought_kWh = new Float64Array(bins);
  const sold_kWh = new Float64Array(bins);
  const periodPeak_kW = new Float64Array(tariff.demand === null ? 0 : 12 * tariff.demand.steps.length);
  const peak_kW = new Float64Array(12);
  let check = 0;
  // Within a run all hours go into one place, so the sums stay in registers.
  for (let run = 1; run < runs.length; run++) {
    const first = runs[run - 1]!;
    const end = runs[run]!;
    let bought = 0;
    let sold = 0;
    let peak = 0;
    for (let hour = first; hour < end; hour++) {
      const use = use_kWh[hour]!;
      if (use < 0) {
        sold -= use;
      } else {
        bought += use;
        if (use > peak) peak = use;
      }
    }
    const bin = energyBin[first]!;
    bought_kWh[bin] = bought_kWh[bin]! + bought;
    sold_kWh[bin] = sold_kWh[bin]! + sold;
    raise(peak_kW, month[first]!, peak);
    if (demandBin !== null) raise(periodPeak_kW, demandBin[first]!, peak);
    check += bought + sold;
  }
  if (!Number.isFinite(check)) throw new RangeError('use_kWh must hold finite values');
  if (tariff.netting === 'month') netWithinMonth(bought_kWh, sold_kWh);
  return { bought_kWh, sold_kWh, periodPeak_kW, peak_kW };
}

function raise(peaks: Float64Array, at: number, peak: number): void {
  if (peak > peaks[at]!) peaks[at] = peak;
}
