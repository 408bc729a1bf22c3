import { type Bill, billDays, type BillGap, type HourlyYear, type MeteredPeriod, type Portfolio, usableBills } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import { daysBetween, daysWeather, type TemperaturesByPlace, typicalDays, type WeatherOfBills } from './day-weather.js';
import { type InstalledDays, installedDays } from './installed-days.js';

/** A bill joined to the weather of its days. */
export interface BilledPeriod extends MeteredPeriod {
  readonly firstDay: string;
  readonly lastDay: string;
}

export interface LeftOutPeriod {
  readonly firstDay: string;
  readonly lastDay: string;
  readonly use_kWh: number;
  readonly why: string;
}

/** The bills of one meter, ready to be compared. */
export interface MeterBills {
  readonly meter: string;
  readonly building: string;
  readonly use: 'all' | 'cooling' | 'heating' | 'common';
  readonly dwellings: readonly string[];
  readonly periods: readonly BilledPeriod[];
  readonly leftOut: readonly LeftOutPeriod[];
  readonly gaps: readonly BillGap[];
  readonly weather: WeatherOfBills;
  /** Standard error of degree days as a share of them; 0 with the weather of the days billed. */
  readonly weatherError: number;
  /** Film went on a dwelling of the meter on these days; null where none did. */
  readonly installed: InstalledDays | null;
  /** Dwellings of the meter that were filmed. */
  readonly filmed: number;
}

export interface BillsAt {
  readonly weather: ReadonlyMap<string, HourlyYear>;
  readonly temperatures: TemperaturesByPlace | null;
  /** Of a typical year that stands in. */
  readonly typicalWeatherError: number;
}

/** So many bills with the weather of their own days are worth leaving the others out. */
const ENOUGH_BILLS = 9;

function periodOf(bill: Bill, daily_degC: readonly number[] | null): BilledPeriod | null {
  if (daily_degC === null) return null;
  const days = billDays(bill);
  return { firstDay: bill.firstDay, lastDay: bill.lastDay, use_kWh: bill.use_kWh, days, daily_degC, outdoor_degC: daily_degC.reduce((a, b) => a + b, 0) / days };
}

const left = (bill: Bill, why: string): LeftOutPeriod => ({ firstDay: bill.firstDay, lastDay: bill.lastDay, use_kWh: bill.use_kWh, why });

function joined(used: readonly Bill[], building: string, at: BillsAt): Pick<MeterBills, 'periods' | 'leftOut' | 'weather' | 'weatherError'> {
  const spans = used.map((bill) => ({ bill, days: daysBetween(bill.firstDay, bill.lastDay) }));
  const actual = at.temperatures?.get(building) ?? at.temperatures?.get('*');
  if (actual !== undefined) {
    const own = spans.map(({ bill, days }) => ({ bill, period: periodOf(bill, daysWeather(days, { actual })) }));
    const periods = own.flatMap(({ period }) => (period === null ? [] : [period]));
    const leftOut = own.flatMap(({ bill, period }) => (period === null ? [left(bill, 'temperatures.csv does not hold all its days')] : []));
    if (periods.length >= ENOUGH_BILLS || leftOut.length === 0) return { periods, leftOut, weather: 'days of the bills', weatherError: 0 };
  }
  const year = at.weather.get(building);
  if (year === undefined) throw new RangeError(`building must have weather, got ${building}`);
  const typical = typicalDays(year);
  return { periods: spans.flatMap(({ bill, days }) => periodOf(bill, daysWeather(days, { typical })) ?? []), leftOut: [], weather: 'typical year', weatherError: at.typicalWeatherError };
}

function spanOf(days: readonly (InstalledDays | undefined)[]): InstalledDays | null {
  const known = days.filter((d) => d !== undefined);
  if (known.length === 0) return null;
  return { first: known.map((d) => d.first).sort()[0]!, last: known.map((d) => d.last).sort().at(-1)! };
}

/** The bills of every meter that has some, each joined to the weather of its days; what is left out keeps its reason. */
export function meterBills(portfolio: Pick<Portfolio, 'bills' | 'meters' | 'dwellingMeters' | 'siteRecords'>, at: BillsAt): MeterBills[] {
  const meters = new Map(portfolio.meters.map((m) => [m.id, m]));
  const served = grouped(portfolio.dwellingMeters, (d) => d.meter);
  const installed = installedDays(portfolio.siteRecords);
  const found = [...grouped(portfolio.bills, (b) => b.meter)].flatMap(([id, bills]): MeterBills[] => {
    const meter = meters.get(id);
    if (meter === undefined) return [];
    const usable = usableBills(bills);
    const dwellings = (served.get(id) ?? []).map((d) => d.dwelling).sort();
    const done = dwellings.map((d) => installed.get(d));
    const of = joined(usable.used, meter.building, at);
    return [{ meter: id, building: meter.building, use: meter.use, dwellings, ...of, leftOut: [...usable.leftOut.map((l) => left(l.bill, l.why)), ...of.leftOut], gaps: usable.gaps, installed: spanOf(done), filmed: done.filter((d) => d !== undefined).length }];
  });
  return sortedBy(found, (m) => m.meter);
}

/** Bills that end before film went on; all of them where none did. */
export function before(bills: MeterBills, day: string | null = bills.installed?.first ?? null): BilledPeriod[] {
  return day === null ? [...bills.periods] : bills.periods.filter((p) => p.lastDay < day);
}

/** Bills that start after the last film went on. */
export function after(bills: MeterBills, day: string | null = bills.installed?.last ?? null): BilledPeriod[] {
  return day === null ? [] : bills.periods.filter((p) => p.firstDay > day);
}
