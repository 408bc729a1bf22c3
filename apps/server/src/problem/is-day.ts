import { ValidateBy } from 'class-validator';

/** Whether the text is a day that is in the calendar: the 31st of February reads well and is none. */
export function isDay(value: unknown): boolean {
  if (typeof value !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(value)) return false;
  const at = new Date(`${value}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(value);
}

/** Whether the text is a day and a time of the clock, to the minute. */
export function isClockTime(value: unknown): boolean {
  return typeof value === 'string' && /T([01]\d|2[0-3]):[0-5]\d$/.test(value) && isDay(value.slice(0, value.indexOf('T')));
}

/** Refuses what is no day of the calendar, written year-month-day. */
export const IsDay = (message: string): PropertyDecorator => ValidateBy({ name: 'isDay', validator: { validate: isDay } }, { message });

/** Refuses what is no time of the clock, written YYYY-MM-DDTHH:MM. */
export const IsClockTime = (message: string): PropertyDecorator => ValidateBy({ name: 'isClockTime', validator: { validate: isClockTime } }, { message });
