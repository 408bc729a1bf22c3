import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

type Part = readonly [beam: number, sky: number, ground: number];
type Row = readonly [hour: number, global: number, direct: number, diffuse: number, zenith: number, azimuth: number, ...walls: Part[]];
interface Given { readonly hour: number; readonly globalHorizontal_W_m2: number; readonly directNormal_W_m2: number; readonly diffuseHorizontal_W_m2: number; readonly sunAltitude_deg: number; readonly sunAzimuth_deg: number }

const values = readValues<Row>('sky-denver-hours.json');

/** 88 measured-like hours of seven days on eight walls. */
export const denverHours: ReferenceTable<Given, readonly Part[]> = {
  of: 'calc/sky/facade-hour',
  source: `${values.source}. ${values.how}`,
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.05, why: 'light printed to 0.01 W/m², the sun to 0.0001°; the light given is in whole W/m² as the file has it' },
  rows: values.rows.map(([hour, globalHorizontal_W_m2, directNormal_W_m2, diffuseHorizontal_W_m2, zenith, sunAzimuth_deg, ...walls]) => ({
    given: { hour, globalHorizontal_W_m2, directNormal_W_m2, diffuseHorizontal_W_m2, sunAltitude_deg: 90 - zenith, sunAzimuth_deg },
    expect: walls,
    place: `hour ${hour} of the year`,
  })),
};
