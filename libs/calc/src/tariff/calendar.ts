/** Days of each month in the year of the hourly series (no 29 February). */
export const MONTH_DAYS: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export const HOURS_OF_YEAR = 8760;

/** Day of the year, from 0, on which each month begins. */
export const MONTH_FIRST_DAY: readonly number[] = MONTH_DAYS.map((_, month) =>
  MONTH_DAYS.slice(0, month).reduce((sum, days) => sum + days, 0),
);

/** The month, 0…11, of each of the 365 days. */
export const MONTH_OF_DAY: Uint8Array = Uint8Array.from(MONTH_DAYS.flatMap((days, month) => Array<number>(days).fill(month)));

/** The n-th Sunday of a month (n from 1) as a day of the year, where 1 January falls on `startWeekday` (0 = Monday). */
export function sundayOfMonth(month: number, nth: number, startWeekday: number): number {
  const first = MONTH_FIRST_DAY[month]!;
  const weekday = (startWeekday + first) % 7;
  return first + ((6 - weekday) % 7) + 7 * (nth - 1);
}
