/** Days on which nothing is done, as the plan settings state them. */
export interface NoWork {
  readonly firstDay: string;
  readonly lastDay: string;
  readonly reason: string;
}

/** Weekdays worked, Monday = 0, by whole days a week: spread, so that a day lost can be made up. Common practice, no source. */
const WEEKDAYS: readonly (readonly number[])[] = [[], [1], [1, 3], [0, 2, 4], [0, 1, 3, 4], [0, 1, 2, 3, 4], [0, 1, 2, 3, 4, 5], [0, 1, 2, 3, 4, 5, 6]];

const DAY_ms = 86_400_000;
const WEEK_days = 7;
/** 5 January 1970 was a Monday. */
const FIRST_MONDAY = 4;

const numberOf = (day: string): number => {
  const ms = Date.parse(`${day}T00:00:00Z`);
  if (Number.isNaN(ms)) throw new RangeError(`day must be an ISO date, got ${day}`);
  return Math.round(ms / DAY_ms);
};
const dayOf = (n: number): string => new Date(n * DAY_ms).toISOString().slice(0, 10);

/** The day some days later, or earlier where `days` is below 0. */
export const daysAfter = (day: string, days: number): string => dayOf(numberOf(day) + days);

/** Days from one to another, both included; 0 where the last lies before the first. */
export const daysBetween = (first: string, last: string): number => Math.max(0, numberOf(last) - numberOf(first) + 1);

/**
 * Working days between two dates, both included. A broken number of days a week is spread over the weeks: 2.5 gives two, then three.
 *
 * @param days_wk 0…7
 */
export function workDays(first: string, last: string, days_wk: number): string[] {
  if (!(days_wk >= 0 && days_wk <= WEEK_days)) throw new RangeError(`days_wk must be 0…7, got ${String(days_wk)}`);
  const days: string[] = [];
  for (let n = numberOf(first); n <= numberOf(last); n++) {
    const week = Math.floor((n - FIRST_MONDAY) / WEEK_days);
    const count = Math.floor((week + 1) * days_wk) - Math.floor(week * days_wk);
    if (WEEKDAYS[count]!.includes((n - FIRST_MONDAY) % WEEK_days)) days.push(dayOf(n));
  }
  return days;
}

/**
 * Whether a block holds for a job: one that names exterior or outdoor work in its reason leaves film on the room side free; any other holds
 * for all work.
 */
export function blocks(block: NoWork, job: { readonly day: string; readonly isOutdoor: boolean }): boolean {
  if (job.day < block.firstDay || job.day > block.lastDay) return false;
  return job.isOutdoor || !/exterior|outdoor|outside/i.test(block.reason);
}
