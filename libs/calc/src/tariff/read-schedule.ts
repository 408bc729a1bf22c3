import type { PeriodTable, TariffFinding } from './tariff.js';

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

interface Reading {
  readonly periods: number;
  readonly place: string;
  readonly findings: TariffFinding[];
}

const isPeriod = (value: unknown, periods: number): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < periods;

function readRow(row: readonly unknown[], month: number, to: Reading): number[] {
  const name = MONTHS[month] ?? `month ${month + 1}`;
  const place = `${to.place}/${month}`;
  if (row.length < 24) {
    to.findings.push({ weight: 'error', place, seen: `gap: ${name} has no price from ${row.length}:00 to 24:00`, expected: '24 hours' });
  }
  if (row.length > 24) {
    to.findings.push({ weight: 'error', place, seen: `overlap: ${name} has ${row.length} hours`, expected: '24 hours' });
  }
  const wrong = row.slice(0, 24).flatMap((period, hour) => (isPeriod(period, to.periods) ? [] : [{ hour, period }]));
  if (wrong.length > 0) {
    const hours = wrong.map((each) => `${each.hour}:00`).join(', ');
    const kinds = [...new Set(wrong.map((each) => JSON.stringify(each.period)))].join(', ');
    to.findings.push({ weight: 'error', place, seen: `${name}, ${hours}: period ${kinds}`, expected: `a period from 0 to ${to.periods - 1}` });
  }
  return Array.from({ length: 24 }, (_, hour) => (isPeriod(row[hour], to.periods) ? row[hour] : 0));
}

function readTable(value: unknown, to: Reading): Uint8Array {
  const rows: readonly unknown[] = Array.isArray(value) ? value : [];
  if (rows.length > 12) to.findings.push({ weight: 'error', place: to.place, seen: `overlap: ${rows.length} months`, expected: '12 months' });
  const cells = MONTHS.flatMap((name, month) => {
    const row: unknown = rows[month];
    if (Array.isArray(row)) return readRow(row, month, to);
    to.findings.push({ weight: 'error', place: `${to.place}/${month}`, seen: `gap: nothing for ${name}`, expected: '24 hours' });
    return Array<number>(24).fill(0);
  });
  return Uint8Array.from(cells);
}

const names = {
  energy: ['energyweekdayschedule', 'energyweekendschedule'],
  demand: ['demandweekdayschedule', 'demandweekendschedule'],
} as const;

/** Reads the two tables month × hour of a charge; what is missing or points nowhere goes to `findings`, with month and hours. */
export function readSchedule(
  text: Readonly<Record<string, unknown>>,
  charge: 'energy' | 'demand',
  to: { readonly periods: number; readonly findings: TariffFinding[] },
): PeriodTable {
  const [weekdayField, weekendField] = names[charge];
  const weekday = text[weekdayField];
  const weekend = text[weekendField];
  if (weekday === undefined && weekend === undefined && to.periods === 1) {
    to.findings.push({ weight: 'note', place: `/${weekdayField}`, seen: 'nothing', expected: 'tables of months and hours; with one period it holds at all hours' });
    return { weekday: new Uint8Array(288), weekend: new Uint8Array(288) };
  }
  const weekdayTable = readTable(weekday, { ...to, place: `/${weekdayField}` });
  if (weekend === undefined) {
    to.findings.push({ weight: 'warning', place: `/${weekendField}`, seen: 'nothing', expected: '12 × 24 periods; the weekday table is used at weekends' });
    return { weekday: weekdayTable, weekend: weekdayTable };
  }
  return { weekday: weekdayTable, weekend: readTable(weekend, { ...to, place: `/${weekendField}` }) };
}
