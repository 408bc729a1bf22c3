import { openCatalogue, type Climate } from '#catalogue';
import type { ReferenceTable } from './reference-table.js';

/** Sums and means of the 8760 hours the day types were made from, as derived from the hourly files and carried with them. */
export const climateTotals: ReferenceTable<string, Climate['hourlyFile']> = {
  of: 'calc/weather/day-types',
  source: 'sums and means of the published typical years (stations named in data/climates)',
  seen: 'computed from the stated formula',
  tolerance: { why: 'light within 1 %, outdoors within 0.1 K, wet bulb within 0.3 K: 36 days of hourly means stand for 365; the wet bulb of a mean is not the mean of wet bulbs' },
  rows: openCatalogue().climates.list.map(({ key, label, hourlyFile }) => ({ given: key, expect: hourlyFile, place: label })),
};
