import type { ReferenceTable } from './reference-table.js';

/** Pairs of readings in Btu/h·ft², one reflectance each. */
export const meterPairs: ReferenceTable<{ readonly bare: number; readonly filmed: number; readonly tauBare: number; readonly reflectanceFilmed: number; readonly N: number; readonly shgcBare: number }, { readonly ratio: number; readonly tauFilmed: number; readonly absorptance: number; readonly SHGC: number; readonly cutReading: number; readonly cutSHGC: number }> = {
  of: 'calc/glass/meter-pair',
  source: 'closed formula stated in the text, evaluated independently in double precision',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.0001, why: 'printed to five digits' },
  rows: [
    { given: { bare: 210, filmed: 70, tauBare: 0.834, reflectanceFilmed: 0.06, N: 0.2908, shgcBare: 0.86 }, expect: { ratio: 0.33333, tauFilmed: 0.278, absorptance: 0.662, SHGC: 0.47051, cutReading: 0.66667, cutSHGC: 0.4529 }, place: 'case meter-210-70-R0.06; COMPUTED' },
    { given: { bare: 210, filmed: 70, tauBare: 0.834, reflectanceFilmed: 0.2, N: 0.2908, shgcBare: 0.86 }, expect: { ratio: 0.33333, tauFilmed: 0.278, absorptance: 0.522, SHGC: 0.4298, cutReading: 0.66667, cutSHGC: 0.50024 }, place: 'case meter-210-70-R0.2; COMPUTED' },
    { given: { bare: 210, filmed: 70, tauBare: 0.834, reflectanceFilmed: 0.55, N: 0.2908, shgcBare: 0.86 }, expect: { ratio: 0.33333, tauFilmed: 0.278, absorptance: 0.172, SHGC: 0.32802, cutReading: 0.66667, cutSHGC: 0.61858 }, place: 'case meter-210-70-R0.55; COMPUTED' },
    { given: { bare: 180, filmed: 90, tauBare: 0.834, reflectanceFilmed: 0.1, N: 0.2908, shgcBare: 0.86 }, expect: { ratio: 0.5, tauFilmed: 0.417, absorptance: 0.483, SHGC: 0.55746, cutReading: 0.5, cutSHGC: 0.35179 }, place: 'case meter-180-90-R0.1; COMPUTED' },
    { given: { bare: 220, filmed: 44, tauBare: 0.834, reflectanceFilmed: 0.5, N: 0.2908, shgcBare: 0.86 }, expect: { ratio: 0.2, tauFilmed: 0.1668, absorptance: 0.3332, SHGC: 0.26369, cutReading: 0.8, cutSHGC: 0.69338 }, place: 'case meter-220-44-R0.5; COMPUTED' },
    { given: { bare: 150, filmed: 105, tauBare: 0.834, reflectanceFilmed: 0.08, N: 0.2908, shgcBare: 0.86 }, expect: { ratio: 0.7, tauFilmed: 0.5838, absorptance: 0.3362, SHGC: 0.68157, cutReading: 0.3, cutSHGC: 0.20748 }, place: 'case meter-150-105-R0.08; COMPUTED' },
  ],
};

/** A reading no vertical window plane gives. */
export const implausibleReadings: ReferenceTable<{ readonly bare: number; readonly tauBare: number }, { readonly impliedOutdoor_Btu_h_ft2: number; readonly impliedOutdoor_W_m2: number }> = {
  of: 'calc/glass/meter-pair',
  source: 'ASHRAE Handbook of Fundamentals 1985/1989/1993, solar heat gain factor tables for double-strength sheet glass, 21st day of month, Btu/h ft2',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.1, why: 'printed to 0.01 Btu/h·ft² and 0.1 W/m²' },
  rows: [
    { given: { bare: 340, tauBare: 0.834 }, expect: { impliedOutdoor_Btu_h_ft2: 407.67, impliedOutdoor_W_m2: 1286.0 }, place: 'case meter-plausibility; COMPUTED' },
  ],
};

/** Uncertainty of the ratio, two independent readings of 5 % or 10 W/m². */
export const meterUncertainties: ReferenceTable<{ readonly bare: number; readonly filmed: number }, { readonly ratio: number; readonly uncertainty: number }> = {
  of: 'calc/glass/meter-pair',
  source: 'closed formula stated in the text, evaluated independently in double precision',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.0001, why: 'printed to five digits' },
  rows: [
    { given: { bare: 210, filmed: 70 }, expect: { ratio: 0.33333, uncertainty: 0.02357 }, place: 'case meter-u-210-70; COMPUTED' },
    { given: { bare: 200, filmed: 40 }, expect: { ratio: 0.2, uncertainty: 0.01874 }, place: 'case meter-u-200-40; COMPUTED' },
    { given: { bare: 60, filmed: 20 }, expect: { ratio: 0.33333, uncertainty: 0.05569 }, place: 'case meter-u-60-20; COMPUTED' },
  ],
};

/** Worked example: 210 and 70 Btu/h·ft² behind 3 mm clear, reflectance 0.20 in doubt by 0.10. */
export const meterExample: ReferenceTable<{ readonly bare: number; readonly filmed: number; readonly tauBare: number; readonly shgcBare: number }, { readonly solarHeatGain: number; readonly standardUncertainty: number; readonly low: number; readonly high: number }> = {
  of: 'calc/glass/meter-pair',
  source: 'worked example of the method text',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.0006, why: 'printed to 0.001' },
  rows: [
    { given: { bare: 210, filmed: 70, tauBare: 0.834, shgcBare: 0.86 }, expect: { solarHeatGain: 0.43, standardUncertainty: 0.036, low: 0.328, high: 0.471 }, place: 'worked example' },
  ],
};
