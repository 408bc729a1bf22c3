import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

interface Given { readonly sunAltitude_deg: number; readonly extraterrestrialNormal_W_m2: number; readonly beamDepth: number; readonly diffuseDepth: number; readonly edition: 2009 | 2013 }
interface Expect { readonly directNormal_W_m2: number; readonly diffuseHorizontal_W_m2: number }

const values = readValues<readonly [number, number, number, number, number, number, number, number]>('sky-clear.json');

/** 60 skies by both editions. */
export const clearSkies: ReferenceTable<Given, Expect> = {
  of: 'calc/sky/clear-sky',
  source: `${values.source}. ${values.how}`,
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.05, why: 'altitude printed to 0.1°, which is the input; values to 0.001 W/m²; air mass printed to 1e-5' },
  rows: values.rows.flatMap(([sunAltitude_deg, extraterrestrialNormal_W_m2, beamDepth, diffuseDepth, n09, d09, n13, d13], i) => [
    { given: { sunAltitude_deg, extraterrestrialNormal_W_m2, beamDepth, diffuseDepth, edition: 2009 as const }, expect: { directNormal_W_m2: n09, diffuseHorizontal_W_m2: d09 }, place: `row ${i + 1}, 2009` },
    { given: { sunAltitude_deg, extraterrestrialNormal_W_m2, beamDepth, diffuseDepth, edition: 2013 as const }, expect: { directNormal_W_m2: n13, diffuseHorizontal_W_m2: d13 }, place: `row ${i + 1}, 2013` },
  ]),
};

const DAYS = [21, 52, 80, 111, 141, 172, 202, 233, 264, 294, 325, 355];
const PHOENIX = {
  beam: [0.306, 0.317, 0.339, 0.366, 0.419, 0.465, 0.588, 0.547, 0.456, 0.393, 0.318, 0.298],
  diffuse: [2.534, 2.463, 2.351, 2.229, 2.044, 1.91, 1.653, 1.763, 1.978, 2.116, 2.487, 2.592],
  direct_W_m2: [915, 937, 938, 920, 870, 827, 727, 750, 807, 833, 891, 907],
  sky_W_m2: [89, 102, 121, 141, 170, 194, 250, 220, 171, 140, 92, 81],
};
const declination_deg = (day: number) => 23.45 * Math.sin((2 * Math.PI * (284 + day)) / 365); // Cooper 1969

/** Noon on the 21st in Phoenix (33.45° N) as printed in a design-data block of 2009; extraterrestrial by 1367 (1 + 0.033 cos(360° (n − 3) / 365)). */
export const phoenixNoons: ReferenceTable<Given, Expect> = {
  of: 'calc/sky/clear-sky',
  source: 'block "Climate Design Data 2009 ASHRAE Handbook" of a public statistics file of Phoenix 722780',
  seen: 'quoted elsewhere',
  tolerance: { abs: 1.2, why: 'printed to 1 W/m², optical depths to 0.001, and the noon altitude by Cooper’s declination' },
  rows: DAYS.map((day, month) => ({
    given: {
      sunAltitude_deg: 90 - 33.45 + declination_deg(day), extraterrestrialNormal_W_m2: 1367 * (1 + 0.033 * Math.cos((2 * Math.PI * (day - 3)) / 365)),
      beamDepth: PHOENIX.beam[month] ?? NaN, diffuseDepth: PHOENIX.diffuse[month] ?? NaN, edition: 2009 as const,
    },
    expect: { directNormal_W_m2: PHOENIX.direct_W_m2[month] ?? NaN, diffuseHorizontal_W_m2: PHOENIX.sky_W_m2[month] ?? NaN },
    place: `month ${month + 1}`,
  })),
};
