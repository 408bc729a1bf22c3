import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

type Row = readonly [climate: string, azimuth: number, beam: number, sky: number, ground: number, total: number, peak: number, months: readonly number[]];
interface Expect {
  readonly beam_kWh_m2: number; readonly sky_kWh_m2: number; readonly ground_kWh_m2: number; readonly total_kWh_m2: number;
  readonly peak_W_m2: number; readonly monthly_kWh_m2: readonly number[];
}

const values = readValues<Row>('sky-facade-year.json');

/** A year's light on 8 walls at 14 places, from their hourly files. Albedo 0.2. */
export const facadeYears: ReferenceTable<{ readonly climate: string; readonly azimuth_deg: number }, Expect> = {
  of: 'calc/sky/facade-year',
  source: `${values.source}. ${values.how}`,
  seen: 'computed from the stated formula',
  tolerance: { rel: 0.0005, why: 'short sun formula against the full one moves a year by at most 0.011 %; totals are printed to 0.1 kWh/m² (0.025 % of the least)' },
  rows: values.rows.map(([climate, azimuth_deg, beam_kWh_m2, sky_kWh_m2, ground_kWh_m2, total_kWh_m2, peak_W_m2, monthly_kWh_m2]) => ({
    given: { climate, azimuth_deg },
    expect: { beam_kWh_m2, sky_kWh_m2, ground_kWh_m2, total_kWh_m2, peak_W_m2, monthly_kWh_m2 },
    place: `${climate}, wall facing ${azimuth_deg}°`,
  })),
};
