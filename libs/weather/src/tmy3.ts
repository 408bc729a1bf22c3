import type { WeatherReading } from './finding.js';
import type { Column, HourRecord, StationHead } from './columns.js';
import { YearBuilder } from './year-builder.js';

// Column names as in the typical-year files of 2008 (Wilcox & Marion, Users Manual for TMY3 Data Sets, NREL/TP-581-43156), read in public
// documentation; places are taken from the file's own second line. Missing is −9900 (from memory).
const NAMES: Readonly<Record<Column, string>> = {
  dryBulb_degC: 'Dry-bulb (C)', dewPoint_degC: 'Dew-point (C)', relativeHumidity: 'RHum (%)', pressure_Pa: 'Pressure (mbar)',
  global_W_m2: 'GHI (W/m^2)', direct_W_m2: 'DNI (W/m^2)', diffuse_W_m2: 'DHI (W/m^2)', wind_m_s: 'Wspd (m/s)',
};
const SCALE: Partial<Record<Column, number>> = { relativeHumidity: 0.01, pressure_Pa: 100 };

/** Reads an hourly weather file in TMY3 comma-separated form line by line. */
export class Tmy3Reader {
  readonly #year = new YearBuilder();
  readonly #name: string;
  readonly #at = new Map<Column, number>();
  #row = 0;
  #head: StationHead | null = null;

  constructor(name: string) {
    this.#name = name;
  }

  take(line: string): void {
    this.#row++;
    if (line.trim() === '') return;
    if (this.#row === 1) this.#takeHead(line);
    else if (this.#row === 2) this.#takeNames(line.split(',').map((name) => name.trim().toLowerCase()));
    else this.#takeHour(line.split(','));
  }

  #takeHead(line: string): void {
    // Station number, "name", state, time zone, latitude, longitude, height; the name may hold commas.
    const parts = /^[^,]*,\s*"?(.*?)"?\s*,\s*([A-Za-z]*)\s*,\s*(-?[\d.]+)\s*,\s*(-?[\d.]+)\s*,\s*(-?[\d.]+)\s*,\s*(-?[\d.]+)/.exec(line);
    if (parts === null) return;
    const [timeZone_h = NaN, latitude_deg = NaN, longitude_deg = NaN, elevation_m = NaN] = parts.slice(3).map(Number);
    if (!(Math.abs(latitude_deg) <= 90 && Math.abs(longitude_deg) <= 180 && timeZone_h >= -12 && timeZone_h <= 14 && elevation_m > -500 && elevation_m < 9000)) return;
    this.#head = { site: { latitude_deg, longitude_deg, timeZone_h }, label: `${parts[1] ?? ''}, ${parts[2] ?? ''}`, source: `${this.#name} (TMY3)`, elevation_m };
  }

  #takeNames(names: readonly string[]): void {
    for (const [column, name] of Object.entries(NAMES) as [Column, string][]) {
      const at = names.indexOf(name.toLowerCase());
      if (at >= 0) this.#at.set(column, at);
      else this.#year.findings.push({ severity: 'doubtful', about: 'header', row: 2, text: `The file has no column "${name}"; its values count as missing.` });
    }
  }

  #takeHour(fields: readonly string[]): void {
    const record = Object.fromEntries(
      (Object.keys(NAMES) as Column[]).map((column) => {
        const text = fields[this.#at.get(column) ?? -1]?.trim() ?? '';
        const number = text === '' ? NaN : Number(text);
        return [column, number <= -990 ? NaN : number * (SCALE[column] ?? 1)];
      }),
    ) as HourRecord;
    const [month, day] = (fields[0] ?? '').split('/').map(Number);
    this.#year.take(this.#row, { month: month ?? NaN, day: day ?? NaN, hour: Number.parseInt(fields[1] ?? '', 10) }, record);
  }

  /** The year and all findings. */
  finish(): WeatherReading {
    return this.#year.finish(this.#head);
  }
}
