import { plainText } from './cell-text.js';
import { fault, known, lookAt, type CellReader, type DateOrder } from './reading.js';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const EXPECTED = 'a date written year-month-day, for example 2026-07-01';

function iso(year: number, month: number, day: number): string | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  const real = date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return real ? date.toISOString().slice(0, 10) : null;
}

/** Order of day and month a cell gives away ("13/04/2025"), or null when both readings are possible. */
export function dateOrderIn(text: string): DateOrder | null {
  const match = /^(\d{1,2})[/.](\d{1,2})[/.]\d{4}$/.exec(plainText(text));
  if (match === null) return null;
  if (Number(match[1]) > 12) return 'day-month';
  return Number(match[2]) > 12 ? 'month-day' : null;
}

function spelt(plain: string): string | null {
  const match = /^(\d{1,2})[ -]([a-z]{3,9})\.?,?[ -](\d{4})$/i.exec(plain) ?? /^([a-z]{3,9})\.? (\d{1,2}),? (\d{4})$/i.exec(plain);
  if (match === null) return null;
  const [first = '', second = '', year = ''] = match.slice(1);
  const [day, name] = /^\d/.test(first) ? [first, second] : [second, first];
  const month = MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
  return month === 0 ? null : iso(Number(year), month, Number(day));
}

/** An ISO date; day and month in figures need the order of the column to be known. */
export const dateCell: CellReader<string> = (text, { dateOrder }) => {
  const plain = plainText(text);
  const figures = /^(\d{4})-(\d{1,2})-(\d{1,2})(T.*)?$/.exec(plain);
  if (figures !== null) {
    const date = iso(Number(figures[1]), Number(figures[2]), Number(figures[3]));
    return date === null ? fault('not-a-date', EXPECTED, 'this day does not exist; correct it') : known(date);
  }
  const slashed = /^(\d{1,2})[/.](\d{1,2})[/.](\d{4})$/.exec(plain);
  if (slashed === null) {
    const date = spelt(plain);
    return date === null ? fault('not-a-date', EXPECTED, 'write the date as year-month-day, or leave it blank') : known(date);
  }
  const order = dateOrderIn(plain) ?? (slashed[1] === slashed[2] ? 'day-month' : dateOrder);
  if (order === null) {
    return fault('date-order-unclear', EXPECTED, 'say in plan.json "date_order": "day-month" or "month-day", or write year-month-day');
  }
  const [day, month] = order === 'day-month' ? [slashed[1], slashed[2]] : [slashed[2], slashed[1]];
  const date = iso(Number(slashed[3]), Number(month), Number(day));
  return date === null ? fault('not-a-date', EXPECTED, 'this day does not exist; correct it') : known(date);
};

/** A day, with the time of day where it is written behind it: "2026-05-12 15:10". */
export const momentCell: CellReader<string> = (text, context) => {
  const found = /^(.*?)[T ](\d{1,2}):(\d{2})(?::\d{2})?( ?[ap]\.?m\.?)?$/i.exec(plainText(text));
  const day = dateCell(found?.[1] ?? text, context);
  if (found === null || day.value === null) return day;
  const half = (found[4] ?? '').trim().charAt(0).toLowerCase();
  const hour = half === '' ? Number(found[2]) : (Number(found[2]) % 12) + (half === 'p' ? 12 : 0);
  if (hour > 23 || Number(found[3]) > 59) return fault('not-a-time', 'a time of day 0:00 to 23:59', 'correct the time, or leave it out');
  return { ...day, value: `${day.value}T${String(hour).padStart(2, '0')}:${found[3] ?? '00'}` };
};

/** A year; "1968?", "c.1931" and "60s" are read and flagged. */
export const yearCell: CellReader<number> = (text) => {
  const plain = plainText(text).toLowerCase();
  const expected = 'a year of four digits';
  const exact = /^(\d{4})$/.exec(plain);
  if (exact !== null) return yearWithin(Number(exact[1]));
  const about = /^(?:c\.?|ca\.?|circa|about|approx\.?|~)? ?(\d{4})(?:\/\d{4})? ?\??$/.exec(plain);
  const remark = lookAt('year-approximate', expected, 'taken as about this year; correct it if you know better');
  if (about !== null) return { ...yearWithin(Number(about[1])), remark };
  const decade = /^(?:19)?(\d0)'?s$/.exec(plain);
  if (decade !== null) return known(1900 + Number(decade[1]) + 5, remark);
  return fault('not-a-year', expected, 'write four digits, or leave the cell blank');
};

function yearWithin(year: number): ReturnType<CellReader<number>> {
  return year >= 1700 && year <= 2200 ? known(year) : fault('out-of-range', 'a year 1700…2200', 'correct the year');
}

/** Months as 1…12: "6;7;8", "Jun-Sep", "1-12". */
export const monthsCell: CellReader<readonly number[]> = (text) => {
  const found = new Set<number>();
  for (const part of plainText(text).toLowerCase().split(/[;,|]/)) {
    const ends = part.trim().split(/ ?- ?/).map((end) => (/^\d+$/.test(end) ? Number(end) : MONTHS.indexOf(end.slice(0, 3)) + 1));
    const [from = 0, to = from] = ends;
    if (ends.length > 2 || from < 1 || from > 12 || to < 1 || to > 12) {
      return fault('not-months', 'months 1…12 such as 6;7;8 or Jun-Sep', 'correct the months, or leave the cell blank for all');
    }
    for (let month = from; ; month = (month % 12) + 1) {
      found.add(month);
      if (month === to) break;
    }
  }
  return known([...found].sort((a, b) => a - b));
};
