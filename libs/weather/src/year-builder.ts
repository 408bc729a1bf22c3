import { relativeHumidityOf, standardPressure_Pa, wetBulb_degC, type HourlyYear } from '#calc';
import { hourOfYear, momentText } from './calendar.js';
import { clockFindings, closureOf } from './clock-check.js';
import { COLUMNS, type Column, type HourRecord, type StationHead, type YearColumns } from './columns.js';
import type { WeatherFinding, WeatherReading } from './finding.js';
import { fillGaps, fillRadiation } from './gaps.js';

/** Least and greatest value that can be true; outside it the value counts as missing. */
const RANGES: Readonly<Record<Column, readonly [number, number]>> = {
  dryBulb_degC: [-60, 60], dewPoint_degC: [-80, 40], relativeHumidity: [0, 1.1], pressure_Pa: [60_000, 110_000],
  global_W_m2: [0, 1500], direct_W_m2: [0, 1400], diffuse_W_m2: [0, 1000], wind_m_s: [0, 60],
};

/** Takes hours of any weather format as they come and makes the year of them, with findings on the file as a whole. */
export class YearBuilder {
  readonly findings: WeatherFinding[] = [];
  readonly #columns: YearColumns = Object.fromEntries(COLUMNS.map((name) => [name, new Float64Array(8760).fill(NaN)])) as YearColumns;
  readonly #seen = new Uint8Array(8760);
  readonly #outside = new Map<Column, { count: number; row: number; value: number }>();
  #leapHours = 0;
  #leapRow: number | null = null;
  #twice: number | null = null;
  #strange: number | null = null;

  /** Takes the hour that ends at `hour` 1…24 of a date. */
  take(row: number, at: { readonly month: number; readonly day: number; readonly hour: number }, record: HourRecord): void {
    if (at.month === 2 && at.day === 29) {
      this.#leapHours++;
      this.#leapRow ??= row;
      return;
    }
    const index = hourOfYear(at.month, at.day, at.hour);
    if (index === null) {
      this.#strange ??= row;
      return;
    }
    if (this.#seen[index] === 1) this.#twice ??= row;
    this.#seen[index] = 1;
    for (const name of COLUMNS) this.#columns[name][index] = this.#inRange(name, record[name], row);
  }

  #inRange(name: Column, value: number, row: number): number {
    const [least, most] = RANGES[name];
    if (Number.isNaN(value) || (value >= least && value <= most)) return value;
    const outside = this.#outside.get(name) ?? { count: 0, row, value };
    outside.count++;
    this.#outside.set(name, outside);
    return NaN;
  }

  /** Adds a finding; `kind` is "severity about". */
  #find(kind: `${WeatherFinding['severity']} ${string}`, row: number | null, text: string): void {
    const [severity, about = ''] = kind.split(' ') as [WeatherFinding['severity'], string?];
    this.findings.push({ severity, about, row, text });
  }

  #checkHours(): void {
    const gaps = this.#seen.reduce((sum, seen) => sum + 1 - seen, 0);
    if (gaps > 0) {
      const first = this.#seen.indexOf(0);
      this.#find('refused hours', null, `The file has ${8760 - gaps} of the 8760 hours of a year; the first one missing is ${momentText(first)}. Give a whole year of hourly records.`);
    }
    if (this.#twice !== null) this.#find('refused hours', this.#twice, 'An hour stands in the file twice. Give each hour of one year once.');
    if (this.#strange !== null) this.#find('refused hours', this.#strange, 'A record has no date and hour of a year (month 1–12, day of the month, hour 1–24).');
    if (this.#leapHours > 0) this.#find('filled leap-day', this.#leapRow, `${this.#leapHours} hours of 29 February were left out; the year has 365 days.`);
    for (const [name, { count, row, value }] of this.#outside) {
      const [least, most] = RANGES[name];
      this.#find('doubtful range', row, `${name} is outside ${least} to ${most} in ${count} hours, first ${value}; taken as missing.`);
    }
  }

  /** The year, when nothing was refused. */
  finish(head: StationHead | null): WeatherReading {
    if (head === null) this.#find('refused header', 1, 'The head of the file does not say where the place is (latitude, longitude, time zone, height).');
    this.#checkHours();
    const refused = () => this.findings.some((finding) => finding.severity === 'refused');
    if (head === null || refused()) return { weather: null, dewPoint_degC: new Float64Array(0), findings: this.findings };
    this.findings.push(...fillGaps(this.#columns, head), ...fillRadiation(this.#columns, head.site));
    if (refused()) return { weather: null, dewPoint_degC: new Float64Array(0), findings: this.findings };
    const weather = this.#year(head);
    this.findings.push(...clockFindings(closureOf(weather)));
    return { weather, dewPoint_degC: this.#columns.dewPoint_degC, findings: this.findings };
  }

  #year(head: StationHead): HourlyYear {
    const { dryBulb_degC, dewPoint_degC, pressure_Pa, global_W_m2, direct_W_m2, diffuse_W_m2, wind_m_s } = this.#columns;
    const standard = standardPressure_Pa(head.elevation_m);
    const wet = Float64Array.from(dryBulb_degC, (dry, i) => {
      const pressure = pressure_Pa[i] ?? NaN;
      return wetBulb_degC(dry, relativeHumidityOf(dry, dewPoint_degC[i] ?? dry), Number.isNaN(pressure) ? standard : pressure);
    });
    return {
      ...head, outdoor_degC: dryBulb_degC, wetBulb_degC: wet, directNormal_W_m2: direct_W_m2,
      diffuseHorizontal_W_m2: diffuse_W_m2, globalHorizontal_W_m2: global_W_m2, wind_m_s,
    };
  }
}
