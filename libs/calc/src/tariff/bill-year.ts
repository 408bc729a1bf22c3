import { billOfSums, type TariffBill } from './bill.js';
import { HOURS_OF_YEAR } from './calendar.js';
import { monthSums, type MonthSums } from './month-sums.js';
import type { Tariff } from './tariff.js';
import { tariffClock, type TariffClock } from './tariff-clock.js';

/** A clock as given, or one made of the tariff. */
const clockOf = (of: Tariff | TariffClock, startWeekday: number): TariffClock => ('tariff' in of ? of : tariffClock(of, startWeekday));

/**
 * The bills of a meter for a year of hourly use.
 *
 *   hours → kWh by month and period → steps → + demand + fixed → max(minimum, all of it) → rounded by month
 *
 * @param of a usable tariff, or the clock made of it
 * @param use_kWh use of each of 8760 hours of local standard time; below zero where more is sent out than drawn
 * @param startWeekday weekday of 1 January, 0 = Monday; not read when a clock is given
 * @returns twelve months with their lines, and the year
 * @throws RangeError when the tariff has errors or use_kWh does not hold 8760 finite values
 * @source U.S. Utility Rate Database, order of charges
 */
export function billYear(of: Tariff | TariffClock, use_kWh: Float64Array, startWeekday = 0): TariffBill {
  const clock = clockOf(of, startWeekday);
  return billOfSums(clock, monthSums(clock, use_kWh));
}

/** Use known by month only. */
export interface MonthlyUse {
  /** Twelve values; below zero where more was sent out than drawn. */
  readonly use_kWh: readonly number[];
  /** Greatest kW of each month, where the meter says. */
  readonly peak_kW?: readonly number[];
  /** For each month the share of its use in each energy period, summing to 1; without it use is spread evenly over the hours. */
  readonly periodShares?: readonly (readonly number[])[];
}

const MONTHS = 12;

function twelve(name: string, values: readonly unknown[]): void {
  if (values.length !== MONTHS) throw new RangeError(`${name} must hold 12 months, got ${values.length}`);
}

/** Hours of each month and bin. */
function hoursByBin(bin: Uint16Array, bins: number): Float64Array {
  const hours = new Float64Array(bins);
  for (let hour = 0; hour < HOURS_OF_YEAR; hour++) hours[bin[hour]!]! += 1;
  return hours;
}

function energyShares(clock: TariffClock, use: MonthlyUse, assumed: string[]): number[][] {
  const periods = clock.tariff.energy.length;
  if (use.periodShares !== undefined) {
    twelve('periodShares', use.periodShares);
    for (const shares of use.periodShares) {
      const sum = shares.reduce((a, b) => a + b, 0);
      if (shares.length !== periods || Math.abs(sum - 1) > 1e-9 || shares.some((share) => !(share >= 0))) {
        throw new RangeError(`periodShares must be ${periods} shares that sum to 1, got ${shares.join(', ')}`);
      }
    }
    return use.periodShares.map((shares) => [...shares]);
  }
  const hours = hoursByBin(clock.energyBin, MONTHS * periods);
  const shares = Array.from({ length: MONTHS }, (_, month) => {
    const ofMonth = [...hours.slice(month * periods, (month + 1) * periods)];
    const all = ofMonth.reduce((a, b) => a + b, 0);
    return ofMonth.map((each) => each / all);
  });
  if (shares.some((month) => month.filter((share) => share > 0).length > 1)) {
    assumed.push('use of a month is spread evenly over its hours to split it between price periods');
  }
  return shares;
}

function periodPeaks(clock: TariffClock, peak_kW: readonly number[], assumed: string[]): Float64Array {
  const periods = clock.tariff.demand?.steps.length ?? 0;
  if (clock.demandBin === null) return new Float64Array(0);
  const hours = hoursByBin(clock.demandBin, MONTHS * periods);
  const peaks = hours.map((count, bin) => (count > 0 ? peak_kW[Math.floor(bin / periods)]! : 0));
  const several = Array.from({ length: MONTHS }, (_, month) => hours.slice(month * periods, (month + 1) * periods).filter((count) => count > 0).length > 1);
  if (several.some(Boolean)) assumed.push('the peak of a month is taken to be reached in each of its demand periods');
  return peaks;
}

const isFree = (tariff: Tariff): boolean =>
  [...(tariff.demand?.steps ?? []), ...(tariff.flatDemand?.steps ?? [])].every((steps) => steps.every((step) => step.price_cents === 0));

/**
 * The bills of a meter whose use is known by month only.
 *
 * What hours would have told is assumed and said: use spread evenly over the hours between price periods, the peak reached in
 * each demand period. With one period a month nothing is assumed.
 *
 * @param of a usable tariff, or the clock made of it
 * @param use kWh of twelve months, with peaks where the tariff charges for them
 * @param startWeekday weekday of 1 January, 0 = Monday; not read when a clock is given
 * @returns twelve months with their lines, the year, and what was assumed
 * @throws RangeError when a list does not hold 12 finite values, or a demand charge has no peaks to bill
 * @source U.S. Utility Rate Database, order of charges
 */
export function billOfMonths(of: Tariff | TariffClock, use: MonthlyUse, startWeekday = 0): TariffBill {
  const clock = clockOf(of, startWeekday);
  const { tariff } = clock;
  const assumed: string[] = [];
  twelve('use_kWh', use.use_kWh);
  if (!use.use_kWh.every(Number.isFinite)) throw new RangeError('use_kWh must hold finite values');
  if (use.peak_kW === undefined && !isFree(tariff)) throw new RangeError(`peak_kW must be given: ${tariff.label} charges for demand`);
  const peak_kW = use.peak_kW ?? Array<number>(MONTHS).fill(0);
  twelve('peak_kW', peak_kW);
  if (!peak_kW.every((kW) => kW >= 0 && Number.isFinite(kW))) throw new RangeError('peak_kW must hold values of 0 or more');
  const byBin = energyShares(clock, use, assumed).flatMap((shares, month) => shares.map((share) => share * use.use_kWh[month]!));
  const sums: MonthSums = {
    bought_kWh: Float64Array.from(byBin, (kWh) => Math.max(kWh, 0)),
    sold_kWh: Float64Array.from(byBin, (kWh) => Math.max(-kWh, 0)),
    periodPeak_kW: periodPeaks(clock, peak_kW, assumed),
    peak_kW: Float64Array.from(peak_kW),
  };
  return billOfSums(clock, sums, assumed);
}
