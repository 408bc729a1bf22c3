import type { DailyTemperatures, HourlyYear, MeteredPeriod } from '#calc';
import { parse } from 'csv-parse/sync';

/** Mean outdoor temperature by building and day; `*` stands for every building that has none of its own. */
export type TemperaturesByPlace = ReadonlyMap<string, DailyTemperatures>;

/** Which weather bills are compared with. */
export type WeatherOfBills = 'days of the bills' | 'typical year';

const DAYS_OF_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const isoDay = (year: number, month: number, day: number): string => `${String(year)}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;

/**
 * Reads `temperatures.csv`: columns building (blank for all), day (year-month-day), and mean_degC or mean_degF.
 *
 * @throws RangeError that names the line, for a day or a temperature that cannot be read or stands twice
 */
export function readTemperatures(text: string): TemperaturesByPlace {
  const rows: Record<string, string | undefined>[] = parse(text, { columns: (head: string[]) => head.map((h) => h.trim().toLowerCase()), bom: true, skip_empty_lines: true, trim: true });
  const places = new Map<string, Map<string, number>>();
  rows.forEach((row, i) => {
    const [day, celsius, fahrenheit] = [row.day ?? '', row.mean_degc ?? '', row.mean_degf ?? ''];
    const mean = celsius !== '' ? Number(celsius) : fahrenheit !== '' ? ((Number(fahrenheit) - 32) * 5) / 9 : Number.NaN;
    if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || !(mean > -60 && mean < 60)) throw new RangeError(`temperatures.csv line ${String(i + 2)} must have a day as YYYY-MM-DD and a mean_degC, got ${day} and ${celsius}${fahrenheit}`);
    const place = row.building === undefined || row.building === '' ? '*' : row.building;
    const days = places.get(place) ?? new Map<string, number>();
    if (days.has(day)) throw new RangeError(`temperatures.csv line ${String(i + 2)} must not name a day twice, got ${day} of ${place}`);
    places.set(place, days.set(day, mean));
  });
  return places;
}

/** Mean of each day of a typical year, by `MM-DD`. */
export function typicalDays(year: HourlyYear): ReadonlyMap<string, number> {
  const days = new Map<string, number>();
  let hour = 0;
  DAYS_OF_MONTH.forEach((count, month) => {
    for (let day = 1; day <= count; day++, hour += 24) {
      let sum = 0;
      for (let h = hour; h < hour + 24; h++) sum += year.outdoor_degC[h]!;
      days.set(isoDay(2001, month + 1, day).slice(5), sum / 24);
    }
  });
  return days;
}

/** The twelve months of a typical year as periods: the weather results are stated for. */
export function typicalMonths(year: HourlyYear): MeteredPeriod[] {
  const days = typicalDays(year);
  return DAYS_OF_MONTH.map((count, month) => {
    const daily_degC = Array.from({ length: count }, (_, d) => days.get(isoDay(2001, month + 1, d + 1).slice(5))!);
    return { use_kWh: 0, days: count, daily_degC, outdoor_degC: daily_degC.reduce((a, b) => a + b, 0) / count };
  });
}

/** Days of a span, both ends included. */
export function daysBetween(firstDay: string, lastDay: string): string[] {
  const days: string[] = [];
  for (let ms = Date.parse(`${firstDay}T00:00:00Z`); ms <= Date.parse(`${lastDay}T00:00:00Z`); ms += 86_400_000) days.push(new Date(ms).toISOString().slice(0, 10));
  return days;
}

/** Mean temperatures of the days of a span; null where one is not known. The 29 February of a typical year is its 28. */
export function daysWeather(days: readonly string[], of: { readonly typical: ReadonlyMap<string, number> } | { readonly actual: DailyTemperatures }): number[] | null {
  const means = days.map((day) => ('actual' in of ? of.actual.get(day) : of.typical.get(day.slice(5) === '02-29' ? '02-28' : day.slice(5))));
  return means.every((m) => m !== undefined) ? means : null;
}
