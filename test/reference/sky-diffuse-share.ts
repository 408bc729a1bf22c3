import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

const values = readValues<readonly [number, number, number, number, number, number]>('sky-diffuse-fraction.json');

/** Diffuse light of 150 hours of which only the whole was measured, by Erbs. */
export const erbsHours: ReferenceTable<{ readonly clearness: number; readonly globalHorizontal_W_m2: number }, number> = {
  of: 'calc/sky/diffuse-share',
  source: `${values.source}. ${values.how}`,
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.01, why: 'clearness printed to 1e-6 and light to 0.1 W/m², which are the inputs' },
  rows: values.rows.map(([, globalHorizontal_W_m2, , clearness, erbs_W_m2], i) => ({ given: { clearness, globalHorizontal_W_m2 }, expect: erbs_W_m2, place: `row ${i + 1}` })),
};
