import { HOURS_OF_YEAR, MONTH_FIRST_DAY, MONTH_OF_DAY, sundayOfMonth } from './calendar.js';
import type { PeriodTable, Tariff } from './tariff.js';

/** A tariff laid over the hours of a year, worked out once and used for every bill. */
export interface TariffClock {
  readonly tariff: Tariff;
  /** Month 0…11 of each hour on the tariff's clock. */
  readonly month: Uint8Array;
  /** Month × number of energy periods + period, for each hour. */
  readonly energyBin: Uint16Array;
  /** The same for demand by period; `null` where the tariff has none. */
  readonly demandBin: Uint16Array | null;
  /** First hours of the runs over which month and periods stay the same, closed by 8760: a run is summed in one go. */
  readonly runs: Uint16Array;
}

const SPRING_HOUR = 2;
// Daylight time ends at 2:00 daylight, which is 1:00 standard.
const AUTUMN_HOUR = 1;

function daylightHours(tariff: Tariff, startWeekday: number): (hour: number) => boolean {
  if (tariff.time.kind === 'standard') return () => false;
  const { dates } = tariff.time;
  const dayOf = ([month, day]: readonly [number, number]): number => MONTH_FIRST_DAY[month]! + day - 1;
  const first = (dates === null ? sundayOfMonth(2, 2, startWeekday) : dayOf(dates.first)) * 24 + SPRING_HOUR;
  const last = (dates === null ? sundayOfMonth(10, 1, startWeekday) : dayOf(dates.last)) * 24 + AUTUMN_HOUR;
  return first < last ? (hour) => hour >= first && hour < last : (hour) => hour >= first || hour < last;
}

function periodOf(table: PeriodTable, isWeekend: boolean, cell: number): number {
  return (isWeekend ? table.weekend : table.weekday)[cell]!;
}

/**
 * The price period and billing month of every hour of the year under a tariff.
 *
 *   clock hour = standard hour, or standard hour + 1 while daylight time holds; Saturday and Sunday take the weekend table
 *
 * Hours that daylight time carries over midnight count to the next day and, on the last day, the next month. Public holidays
 * are ordinary weekdays: the open form has no field for them.
 *
 * @param tariff a usable tariff
 * @param startWeekday weekday of 1 January, 0 = Monday … 6 = Sunday
 * @returns period and month by hour, 8760 hours of local standard time
 * @throws RangeError when the tariff has errors or startWeekday is not 0…6
 * @source daylight dates where none are given: second Sunday of March to first Sunday of November, 15 U.S.C. 260a (from memory)
 */
export function tariffClock(tariff: Tariff, startWeekday = 0): TariffClock {
  if (!tariff.usable) throw new RangeError(`tariff must be free of errors, got ${tariff.label}: ${firstError(tariff)}`);
  if (!(Number.isInteger(startWeekday) && startWeekday >= 0 && startWeekday <= 6)) {
    throw new RangeError(`startWeekday must be 0…6, got ${startWeekday}`);
  }
  const isDaylight = daylightHours(tariff, startWeekday);
  const month = new Uint8Array(HOURS_OF_YEAR);
  const energyBin = new Uint16Array(HOURS_OF_YEAR);
  const demandBin = tariff.demand === null ? null : new Uint16Array(HOURS_OF_YEAR);
  for (let hour = 0; hour < HOURS_OF_YEAR; hour++) {
    const clockHour = (hour + (isDaylight(hour) ? 1 : 0)) % HOURS_OF_YEAR;
    const day = Math.floor(clockHour / 24);
    const isWeekend = (startWeekday + day) % 7 >= 5;
    const inMonth = MONTH_OF_DAY[day]!;
    const cell = inMonth * 24 + (clockHour % 24);
    month[hour] = inMonth;
    energyBin[hour] = inMonth * tariff.energy.length + periodOf(tariff.energyTable, isWeekend, cell);
    if (demandBin !== null && tariff.demand !== null) {
      demandBin[hour] = inMonth * tariff.demand.steps.length + periodOf(tariff.demand.table, isWeekend, cell);
    }
  }
  return { tariff, month, energyBin, demandBin, runs: runsOf(month, energyBin, demandBin) };
}

function runsOf(month: Uint8Array, energyBin: Uint16Array, demandBin: Uint16Array | null): Uint16Array {
  const starts = [0];
  for (let hour = 1; hour < HOURS_OF_YEAR; hour++) {
    const isSame = month[hour] === month[hour - 1] && energyBin[hour] === energyBin[hour - 1] && demandBin?.[hour] === demandBin?.[hour - 1];
    if (!isSame) starts.push(hour);
  }
  return Uint16Array.from([...starts, HOURS_OF_YEAR]);
}

function firstError(tariff: Tariff): string {
  const error = tariff.findings.find((finding) => finding.weight === 'error');
  return error === undefined ? 'unknown' : `${error.place} ${error.seen}, expected ${error.expected}`;
}
