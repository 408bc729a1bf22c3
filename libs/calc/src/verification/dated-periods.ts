import type { MeteredPeriod } from './metered-period.js';

/** Use between two readings; ISO days, the end not included. */
export interface DatedUse {
  readonly start: string;
  readonly end: string;
  readonly use_kWh: number;
}

/** Mean outdoor temperature by ISO day. */
export type DailyTemperatures = ReadonlyMap<string, number>;

const DAY_MS = 86_400_000;

function dayOf(name: string, iso: string): number {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(iso) ? Date.parse(`${iso}T00:00:00Z`) : Number.NaN;
  if (!Number.isFinite(ms)) throw new RangeError(`${name} must be a day as YYYY-MM-DD, got ${iso}`);
  return ms / DAY_MS;
}

/**
 * Periods of a meter joined to the weather of their days.
 *
 *   days = end − start by the calendar; temperature = mean of the daily means of those days
 *
 * @param uses readings with start and end, the end not included
 * @param temperatures mean of each day, °C; every day of every period must be there
 * @returns periods with the mean of each day
 * @throws RangeError when a day cannot be read, the end is not after the start, or a day has no temperature
 * @source definition
 */
export function datedPeriods(uses: readonly DatedUse[], temperatures: DailyTemperatures): MeteredPeriod[] {
  return uses.map(({ start, end, use_kWh }) => {
    const [first, last] = [dayOf('start', start), dayOf('end', end)];
    if (!(last > first)) throw new RangeError(`end must be after start, got ${start} to ${end}`);
    const daily_degC = Array.from({ length: last - first }, (_, i) => {
      const day = new Date((first + i) * DAY_MS).toISOString().slice(0, 10);
      const mean = temperatures.get(day);
      if (mean === undefined) throw new RangeError(`temperatures must hold every day of the period, ${day} is missing`);
      return mean;
    });
    return { use_kWh, days: daily_degC.length, daily_degC, outdoor_degC: daily_degC.reduce((a, b) => a + b, 0) / daily_degC.length };
  });
}
