import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

const values = readValues<readonly [number, number, number, number]>('sun-extraterrestrial.json');

/** Sun outside the air for every day of the year, Spencer's series with 1367 W/m². */
export const extraterrestrialDays: ReferenceTable<number, number> = {
  of: 'calc/sun/extraterrestrial',
  source: `${values.source}. ${values.how}`,
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.0006, why: 'values are stated to 0.001 W/m²' },
  rows: values.rows.map(([dayOfYear, spencer_W_m2]) => ({ given: dayOfYear, expect: spencer_W_m2, place: `day ${dayOfYear}` })),
};
