import type { WeatherReading } from './finding.js';
import type { HourRecord, StationHead } from './columns.js';
import { YearBuilder } from './year-builder.js';

// Places of the columns and their codes for "missing": open weather file format of Crawley, Hand & Lawrie,
// "Improving the weather information available to simulation programs" (1999); from memory, confirmed on the files of 17 stations.
const AT = { month: 1, day: 2, hour: 3, dryBulb: 6, dewPoint: 7, humidity: 8, pressure: 9, global: 13, direct: 14, diffuse: 15, wind: 21 } as const;

const value = (fields: readonly string[], at: number, missingFrom: number): number => {
  const text = fields[at]?.trim() ?? '';
  const number = text === '' ? NaN : Number(text);
  return number >= missingFrom ? NaN : number;
};

/** Reads an hourly weather file in EPW form line by line; nothing but the year's own columns is kept. */
export class EpwReader {
  readonly #year = new YearBuilder();
  readonly #name: string;
  #row = 0;
  #head: StationHead | null = null;
  #inData = false;
  #stopped = false;

  constructor(name: string) {
    this.#name = name;
  }

  take(line: string): void {
    this.#row++;
    if (this.#stopped || line.trim() === '') return;
    if (this.#inData) this.#takeHour(line.split(','));
    else if (/^LOCATION,/i.test(line)) this.#takeHead(line.split(','));
    else if (/^DATA PERIODS,/i.test(line)) this.#takePeriods(line.split(','));
  }

  #takeHead(fields: readonly string[]): void {
    const [latitude_deg, longitude_deg, timeZone_h, elevation_m] = [6, 7, 8, 9].map((at) => value(fields, at, Infinity));
    if (latitude_deg === undefined || longitude_deg === undefined || timeZone_h === undefined || elevation_m === undefined) return;
    const told = Math.abs(latitude_deg) <= 90 && Math.abs(longitude_deg) <= 180 && timeZone_h >= -12 && timeZone_h <= 14 && elevation_m > -500 && elevation_m < 9000;
    if (!told) return;
    const [, city = '', region = '', , set = ''] = fields.map((field) => field.trim());
    this.#head = { site: { latitude_deg, longitude_deg, timeZone_h }, label: [city, region].filter((text) => text !== '' && text !== '-').join(', '), source: `${this.#name} (${set})`, elevation_m };
  }

  #takePeriods(fields: readonly string[]): void {
    this.#inData = true;
    const [periods, steps] = [Number(fields[1]), Number(fields[2])];
    if (periods === 1 && steps === 1) return;
    this.#stopped = true;
    this.#year.findings.push({
      severity: 'refused', about: 'steps', row: this.#row,
      text: `The file has ${periods} data periods with ${steps} records an hour; one period with one record an hour is expected.`,
    });
  }

  #takeHour(fields: readonly string[]): void {
    const humidity = value(fields, AT.humidity, 999);
    const record: HourRecord = {
      dryBulb_degC: value(fields, AT.dryBulb, 99.9), dewPoint_degC: value(fields, AT.dewPoint, 99.9), relativeHumidity: humidity / 100,
      pressure_Pa: value(fields, AT.pressure, 999_999), global_W_m2: value(fields, AT.global, 9999), direct_W_m2: value(fields, AT.direct, 9999),
      diffuse_W_m2: value(fields, AT.diffuse, 9999), wind_m_s: value(fields, AT.wind, 999),
    };
    this.#year.take(this.#row, { month: Number(fields[AT.month]), day: Number(fields[AT.day]), hour: Number(fields[AT.hour]) }, record);
  }

  /** The year and all findings. */
  finish(): WeatherReading {
    if (!this.#inData && this.#head !== null) {
      this.#year.findings.push({ severity: 'refused', about: 'header', row: null, text: 'The file has no line DATA PERIODS, so it is not known where its hours begin.' });
    }
    return this.#year.finish(this.#head);
  }
}
