import type { EspiLocalTime } from './espi-feed.js';

const DAY_s = 86_400;
const DISABLED = 0xffffffff;

/** Day of the week of a day since 1970, Monday = 1 … Sunday = 7. */
const weekday = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1;
const dayOf = (year: number, month: number, day: number): number => Date.UTC(year, month - 1, day) / 1000 / DAY_s;

/**
 * The instant of the year at which a rule falls, in seconds of the clock that holds just before.
 *
 * Bits 0-11 seconds, 12-16 hour, 17-19 day of the week (Monday 1), 20-24 day of the month, 25-27 which of them, 28-31 month.
 * Operator 0: that day of the month; 1: that weekday on or after it; 2…6: first … fifth such weekday; 7: the last.
 *
 * @source open energy-usage form (NAESB REQ.21), DstRuleType, from memory; 360E2000 is the second Sunday of March at two
 */
function ruleSeconds(rule: number, year: number): number {
  const part = (from: number, bits: number): number => Math.floor(rule / 2 ** from) % 2 ** bits;
  const [seconds, hour, ofWeek, ofMonth, which, month] = [part(0, 12), part(12, 5), part(17, 3), part(20, 5), part(25, 3), part(28, 4)];
  const first = dayOf(year, month, 1);
  const onOrAfter = (day: number): number => day + ((ofWeek - weekday(day) + 7) % 7);
  let day: number;
  if (which === 0) day = first + ofMonth - 1;
  else if (which === 1) day = onOrAfter(first + ofMonth - 1);
  else if (which === 7) {
    const last = dayOf(year, month + 1, 1) - 1;
    day = last - ((weekday(last) - ofWeek + 7) % 7);
  } else day = onOrAfter(first) + 7 * (which - 2);
  return day * DAY_s + hour * 3600 + seconds;
}

const ruleNumber = (text: string | null): number | null => {
  if (text === null || !/^[0-9a-f]{8}$/i.test(text)) return null;
  const rule = parseInt(text, 16);
  return rule === DISABLED || rule === 0 ? null : rule;
};

/** Days of a place's own calendar, from seconds in UTC. */
export interface LocalDays {
  /** ISO day an instant falls on. */
  readonly dayOf: (utc_s: number) => string;
  /** Length of an ISO day: 23 or 25 hours where the clock is turned. */
  readonly length_s: (day: string) => number;
}

/** The calendar that local-time parameters describe. */
export function localDays(of: EspiLocalTime): LocalDays {
  const [startRule, endRule] = [ruleNumber(of.dstStartRule), ruleNumber(of.dstEndRule)];
  const years = new Map<number, readonly [number, number] | null>();
  const turns = (year: number): readonly [number, number] | null => {
    if (startRule === null || endRule === null || of.dstOffset_s === 0) return null;
    let found = years.get(year);
    // The spring rule is read on the standard clock, the autumn rule on the daylight clock.
    if (found === undefined) years.set(year, (found = [ruleSeconds(startRule, year) - of.tzOffset_s, ruleSeconds(endRule, year) - of.tzOffset_s - of.dstOffset_s]));
    return found;
  };
  const offset_s = (utc_s: number): number => {
    const year = new Date((utc_s + of.tzOffset_s) * 1000).getUTCFullYear();
    const between = turns(year);
    if (between === null) return of.tzOffset_s;
    const [start, end] = between;
    const isDaylight = start < end ? utc_s >= start && utc_s < end : utc_s >= start || utc_s < end;
    return of.tzOffset_s + (isDaylight ? of.dstOffset_s : 0);
  };
  const midnight_s = (day: number): number => {
    const guess = day * DAY_s - of.tzOffset_s;
    // Clocks are turned after midnight, so what holds a moment before the guess holds at midnight unless the offset differs there.
    const exact = day * DAY_s - offset_s(guess);
    return day * DAY_s - offset_s(exact);
  };
  return {
    dayOf: (utc_s) => new Date((utc_s + offset_s(utc_s)) * 1000).toISOString().slice(0, 10),
    length_s: (iso) => {
      const day = Date.parse(`${iso}T00:00:00Z`) / 1000 / DAY_s;
      return midnight_s(day + 1) - midnight_s(day);
    },
  };
}
