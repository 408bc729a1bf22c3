import type { ReferenceTable } from './reference-table.js';

/** Windows known by their label alone. */
export const labelTransmittances: ReferenceTable<{ readonly uFactor_W_m2K: number; readonly solarHeatGain: number }, { readonly Tsol: number; readonly T60: number; readonly T80: number }> = {
  of: 'calc/glass/simple-window',
  source: 'Arasteh, Kohler, Griffith, simple window performance indices, LBNL-2804E (2009); coefficient tables read in a public transcription of the paper',
  seen: 'computed from the stated formula',
  tolerance: { abs: 1e-05, why: 'printed to six digits' },
  rows: [
    { given: { uFactor_W_m2K: 5.9, solarHeatGain: 0.86 }, expect: { Tsol: 0.816419, T60: 0.730329, T80: 0.306275 }, place: 'case simple-U5.9-S0.86; READ (formulas), COMPUTED' },
    { given: { uFactor_W_m2K: 2.8, solarHeatGain: 0.76 }, expect: { Tsol: 0.697191, T60: 0.5842, T80: 0.241388 }, place: 'case simple-U2.8-S0.76; READ (formulas), COMPUTED' },
    { given: { uFactor_W_m2K: 5.9, solarHeatGain: 0.4 }, expect: { Tsol: 0.231728, T60: 0.175234, T80: 0.070559 }, place: 'case simple-U5.9-S0.4; READ (formulas), COMPUTED' },
    { given: { uFactor_W_m2K: 4.0, solarHeatGain: 0.6 }, expect: { Tsol: 0.489438, T60: 0.383622, T80: 0.155927 }, place: 'case simple-U4.0-S0.6; READ (formulas), COMPUTED' },
    { given: { uFactor_W_m2K: 2.7, solarHeatGain: 0.12 }, expect: { Tsol: 0.049248, T60: 0.03691, T80: 0.014826 }, place: 'case simple-U2.7-S0.12; READ (formulas), COMPUTED' },
  ],
};
