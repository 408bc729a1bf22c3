import { HOURS_OF_YEAR } from './calendar.js';
import type { TariffClock } from './tariff-clock.js';

/**
 * Whether a bill under a tariff depends on nothing but kWh by month and price period, so that sums of parts of the use may be added.
 *
 *   no demand charge of either kind; the use itself must not fall below zero in any hour, which is the caller's to know
 *
 * @param clock the tariff laid over the year
 * @returns true where `partSums` and `partsCost_cents` give the bill
 * @source definition of the charges
 */
export function isBilledBySums({ tariff }: TariffClock): boolean {
  return tariff.demand === null && tariff.flatDemand === null;
}

/**
 * kWh of a part of the use (base load, cooling, heating) by month and price period.
 *
 *   Σ of the hours of each bin; bin = month × periods + period
 *
 * @param clock the tariff laid over the year
 * @param part_kWh 8760 hours, ≥ 0
 * @param out sums to fill, 12 × periods; new when absent
 * @returns kWh by bin
 * @throws RangeError when part_kWh does not hold 8760 finite values, 0 or more
 * @source definition
 */
export function partSums(clock: TariffClock, part_kWh: Float64Array, out: Float64Array = new Float64Array(12 * clock.tariff.energy.length)): Float64Array {
  if (part_kWh.length !== HOURS_OF_YEAR) throw new RangeError(`part_kWh must hold 8760 hours, got ${part_kWh.length}`);
  const { energyBin, runs } = clock;
  out.fill(0);
  let check = 0;
  let least = 0;
  for (let run = 1; run < runs.length; run++) {
    const first = runs[run - 1]!;
    const end = runs[run]!;
    // Two sums side by side: one would wait for itself every hour.
    let [even, odd] = [0, 0];
    let hour = first;
    for (; hour + 1 < end; hour += 2) {
      const [one, next] = [part_kWh[hour]!, part_kWh[hour + 1]!];
      if (one < least) least = one;
      if (next < least) least = next;
      even += one;
      odd += next;
    }
    if (hour < end) {
      if (part_kWh[hour]! < least) least = part_kWh[hour]!;
      even += part_kWh[hour]!;
    }
    const sum = even + odd;
    const bin = energyBin[first]!;
    out[bin] = out[bin]! + sum;
    check += sum;
  }
  if (!Number.isFinite(check) || least < 0) throw new RangeError('part_kWh must hold finite values, 0 or more');
  return out;
}
