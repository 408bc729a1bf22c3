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

const printed_W_m2 = [1410, 1397, 1378, 1354, 1334, 1323, 1324, 1336, 1357, 1380, 1400, 1411];

/** The handbook's own print for the 21st of each month; its formula is 1367 (1 + 0.033 cos(360° (n − 3) / 365)), not Spencer's series. */
export const extraterrestrialPrinted: ReferenceTable<number, number> = {
  of: 'calc/sun/extraterrestrial',
  source: 'ASHRAE Handbook of Fundamentals 2009, ch. 14, table 2, as asserted in the tests of a public library',
  seen: 'quoted elsewhere',
  tolerance: { abs: 4, why: 'another formula: one cosine in place of two with sines, apart by up to 0.25 %' },
  rows: [21, 52, 80, 111, 141, 172, 202, 233, 264, 294, 325, 355].map((day, month) => ({ given: day, expect: printed_W_m2[month] ?? NaN, place: `21st of month ${month + 1}` })),
};
