import { W_m2Of_Btu_h_ft2 } from '#calc';
import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

interface Given { readonly latitude_deg: number; readonly month: number; readonly azimuth_deg: number; readonly tilt_deg: 90 | 0; readonly solarTime_h: number | null }

const values = readValues<readonly [number, number, number | null, number, 90 | 0, number]>('sky-solar-gain-factor.json');

/** Solar heat gain factors at 24° and 40° N: monthly maxima in 10 directions, and hours of July in 9. */
export const solarGainFactors: ReferenceTable<Given, number> = {
  of: 'calc/sky/solar-gain-factor',
  source: `${values.source}. ${values.how}`,
  seen: 'from memory',
  tolerance: { abs: W_m2Of_Btu_h_ft2(1.5), why: 'tables print whole Btu/h·ft², and the constants behind them were rounded; 237 of 240 recalled values agree within 1.5' },
  rows: values.rows.map(([latitude_deg, month, solarTime_h, azimuth_deg, tilt_deg, gain], i) => ({
    given: { latitude_deg, month, azimuth_deg, tilt_deg, solarTime_h }, expect: W_m2Of_Btu_h_ft2(gain), place: `row ${i + 1}`,
  })),
};
