import type { ReferenceTable } from './reference-table.js';

export interface Steps {
  /** Dollars per kWh or per kW, with the upper end. */
  readonly tiers: readonly { readonly rate: number; readonly max?: number }[];
  readonly amount: number;
}

const rounding = { abs: 1e-9, why: 'the values are exact products of the stated rates; only binary rounding is left' };
const blocks = [{ rate: 0.12, max: 500 }, { rate: 0.16, max: 1000 }, { rate: 0.22 }];
const demand = [{ rate: 24.368, max: 100 }, { rate: 17.031 }];

/** Energy charge by blocks: dollars for the kWh of a month. */
export const energyBlocks: ReferenceTable<Steps, { readonly dollars: number }> = {
  of: 'calc/tariff/steps-cost',
  source: 'U.S. Utility Rate Database, rule of its tiers: max is cumulative within the month',
  seen: 'computed from the stated formula',
  tolerance: rounding,
  rows: [
    { given: { tiers: blocks, amount: 0 }, expect: { dollars: 0 }, place: 'nothing used' },
    { given: { tiers: blocks, amount: 250 }, expect: { dollars: 30 }, place: 'inside the first block' },
    { given: { tiers: blocks, amount: 500 }, expect: { dollars: 60 }, place: 'at the end of the first block' },
    { given: { tiers: blocks, amount: 750 }, expect: { dollars: 100 }, place: 'inside the second block' },
    { given: { tiers: blocks, amount: 1000 }, expect: { dollars: 140 }, place: 'at the end of the second block' },
    { given: { tiers: blocks, amount: 1400 }, expect: { dollars: 228 }, place: 'in the last block' },
  ],
};

/** Demand charge by steps: dollars for the peak of a month. Rates are those of a published sample tariff. */
export const demandSteps: ReferenceTable<Steps, { readonly dollars: number }> = {
  of: 'calc/tariff/steps-cost',
  source: 'rates of the tiered-demand test tariff of the open REopt.jl library (multi_tier_urdb_response)',
  seen: 'quoted elsewhere',
  tolerance: rounding,
  rows: [
    { given: { tiers: demand, amount: 60 }, expect: { dollars: 1462.08 }, place: 'inside the first step' },
    { given: { tiers: demand, amount: 130 }, expect: { dollars: 2947.73 }, place: 'over the first step' },
  ],
};

/** What a month's bill falls by, from 1200 to 900 kWh on the blocks above: 200 × 0.22 + 100 × 0.16. */
export const marginalSaving: ReferenceTable<{ readonly tiers: Steps['tiers']; readonly before: number; readonly after: number }, { readonly dollars: number }> = {
  of: 'calc/tariff/steps-cost',
  source: 'U.S. Utility Rate Database, rule of its tiers',
  seen: 'computed from the stated formula',
  tolerance: rounding,
  rows: [{ given: { tiers: blocks, before: 1200, after: 900 }, expect: { dollars: 60 }, place: 'last block and second block' }],
};
