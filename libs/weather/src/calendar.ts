import { MONTH_DAYS } from '#calc';

export const MONTH_NAMES = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'] as const;

const daysBefore = MONTH_DAYS.map((_, month) => MONTH_DAYS.slice(0, month).reduce((a, b) => a + b, 0));

/** Month 0…11 of every hour of the year without 29 February. */
export const MONTH_OF_HOUR: Uint8Array = Uint8Array.from({ length: 8760 }, (_, hour) => {
  const day = Math.floor(hour / 24);
  return daysBefore.findLastIndex((before) => before <= day);
});

/** Hour of the year 0…8759 that ends at `hour` 1…24 of a date, or null when there is no such date in a year without 29 February. */
export function hourOfYear(month: number, day: number, hour: number): number | null {
  const days = MONTH_DAYS[month - 1];
  if (days === undefined || !(day >= 1 && day <= days) || !(hour >= 1 && hour <= 24)) return null;
  return ((daysBefore[month - 1] ?? 0) + day - 1) * 24 + hour - 1;
}

/** "21 July, 14–15 h" of an hour of the year. */
export function momentText(hourIndex: number): string {
  const month = MONTH_OF_HOUR[hourIndex] ?? 0;
  const day = Math.floor(hourIndex / 24) - (daysBefore[month] ?? 0) + 1;
  return `${day} ${MONTH_NAMES[month] ?? ''}, ${hourIndex % 24}–${(hourIndex % 24) + 1} h`;
}
