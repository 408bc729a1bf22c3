import type { Project } from '#calc';
import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

/** Present-value factors as printed. */
export const presentValueFactors: ReferenceTable<
  { readonly kind: 'SPV' | 'UPV' | 'UPV*'; readonly rate: number; readonly years: number; readonly escalation?: number },
  { readonly factor: number; readonly digits: number }
> = {
  of: 'calc/lifecycle/present-value',
  source: 'NIST Handbook 135, worked factors',
  seen: 'quoted elsewhere',
  tolerance: { why: 'half of the last printed digit of each factor' },
  rows: [
    { given: { kind: 'SPV', rate: 0.03, years: 15 }, expect: { factor: 0.642, digits: 3 }, place: 'SPV, 3 %, 15 years' },
    { given: { kind: 'UPV', rate: 0.03, years: 15 }, expect: { factor: 11.94, digits: 2 }, place: 'UPV, 3 %, 15 years' },
    { given: { kind: 'UPV*', rate: 0.03, years: 15, escalation: 0.02 }, expect: { factor: 13.89, digits: 2 }, place: 'UPV*, 3 %, 2 %, 15 years' },
  ],
};

/** Storm windows: energy at given price factors, in dollars. */
export const stormWindows: ReferenceTable<
  { readonly cost: number; readonly years: number; readonly rate: number; readonly yearly: { readonly base: readonly number[]; readonly alternative: readonly number[] }; readonly factors: readonly number[] },
  { readonly lifeCycleBase: number; readonly lifeCycleAlternative: number; readonly netSavings: number }
> = {
  of: 'calc/lifecycle/life-cycle',
  source: 'NIST Handbook 135e2025, section 7.1.1, Example 7-1, pp. 94–95',
  seen: 'quoted elsewhere',
  tolerance: { abs: 0.5, why: 'the example prints whole dollars' },
  rows: [
    {
      given: {
        cost: 2000,
        years: 20,
        rate: 0.03,
        yearly: { base: [1500 * 1.05, 1200 * 0.135], alternative: [1300 * 1.05, 1100 * 0.135] },
        factors: [16.15, 15.48],
      },
      expect: { lifeCycleBase: 27_944, lifeCycleAlternative: 26_344, netSavings: 1600 },
      place: 'Example 7-1',
    },
  ],
};

/** What follows from the example's figures: savings-to-investment ratio and adjusted rate, worked in full digits. */
export const stormWindowsDerived: ReferenceTable<(typeof stormWindows)['rows'][number]['given'], { readonly sir: number; readonly airr: number }> = {
  of: 'calc/lifecycle/life-cycle',
  source: 'NIST Handbook 135e2025, section 7.1.1, Example 7-1, figures carried on by the handbook’s formulas for ratio and adjusted rate',
  seen: 'computed from the stated formula',
  tolerance: { abs: 1e-6, why: 'the ratio is stated to five digits after the point' },
  rows: stormWindows.rows.map(({ given, place }) => ({ given, expect: { sir: 1.80024, airr: 0.06072729659555409 }, place })),
};

const level = (first: number, payments: readonly (readonly [number, number])[]): number[] => [first, ...payments.flatMap(([amount, times]) => Array<number>(times).fill(amount))];

/** Internal rates of return; `perYear` rates of monthly flows are the monthly rate × 12. */
export const ratesOfReturnPrinted: ReferenceTable<{ readonly flows: readonly number[]; readonly perYear: number }, { readonly rate: number; readonly within: number }> = {
  of: 'calc/lifecycle/rate-of-return',
  source: '12 CFR 1026 (Regulation Z), appendix J, and the documentation of the open numpy library',
  seen: 'quoted elsewhere',
  tolerance: { why: 'half of the last printed digit: 0.005 percentage points in the appendix, eight digits in the library' },
  rows: [
    { given: { flows: [-100, 39, 59, 55, 20], perYear: 1 }, expect: { rate: 0.28094842, within: 5e-9 }, place: 'numpy, irr' },
    { given: { flows: level(-5000, [[230, 24]]), perYear: 12 }, expect: { rate: 0.0969, within: 5e-5 }, place: 'appendix J (c)(1)(i)' },
    { given: { flows: level(-5000, [[230, 23], [280, 1]]), perYear: 12 }, expect: { rate: 0.105, within: 5e-5 }, place: 'appendix J (c)(3)(i)' },
    { given: { flows: [-1000, 0, 1240], perYear: 1 }, expect: { rate: 0.1136, within: 5e-5 }, place: 'appendix J (c)(5)(iv)' },
  ],
};

/** Modified rates of return. */
export const modifiedRates: ReferenceTable<{ readonly flows: readonly number[]; readonly financeRate: number; readonly reinvestRate: number }, { readonly rate: number; readonly within: number }> = {
  of: 'calc/lifecycle/rate-of-return',
  source: 'manuals of spreadsheet programs, MIRR; the first is printed without its sign, the third is worked from the formula',
  seen: 'quoted elsewhere',
  tolerance: { why: 'half of the last printed digit, or binary rounding where worked from the formula' },
  rows: [
    { given: { flows: [-120_000, 39_000, 30_000, 21_000], financeRate: 0.1, reinvestRate: 0.12 }, expect: { rate: -0.04804, within: 5e-6 }, place: 'three years' },
    { given: { flows: [-120_000, 39_000, 30_000, 21_000, 37_000, 46_000], financeRate: 0.1, reinvestRate: 0.12 }, expect: { rate: 0.1261, within: 5e-5 }, place: 'five years' },
    { given: { flows: [-70_000, 22_000, 25_000, 28_000, 31_000], financeRate: 0.1, reinvestRate: 0.12 }, expect: { rate: 0.15512706281927668, within: 1e-12 }, place: 'four years' },
  ],
};

interface ProjectMeasures {
  readonly flows: readonly number[];
  readonly simplePayback: number;
  readonly discountedPayback: number | null;
  readonly npv: number;
  readonly sir: number;
  readonly airr: number;
  readonly irr: number | null;
}

/** Three films as projects, dollars: plain; with rebate, price rise, ageing and heating; one that never pays. */
export const filmProjects: ReferenceTable<{ readonly project: Project; readonly discountRate: number }, ProjectMeasures> = {
  of: 'calc/lifecycle/life-cycle',
  source: 'NIST Handbook 135 formulas worked by an independent program; flows at the end of the year, prices of the base date',
  seen: 'computed from the stated formula',
  tolerance: { rel: 1e-10, why: 'both sides work in double precision; the rates of return come from two different searches' },
  rows: [
    {
      given: { project: { cost_cents: 840, firstYearSaving_cents: 144, life_years: 15 }, discountRate: 0.03 },
      expect: { flows: [144, 144, 144], simplePayback: 5.833333333333333, discountedPayback: 6.511802034149409, npv: 879.0626524957552, sir: 2.0465031577330417, airr: 0.08036718871562676, irr: 0.15049706537813978 },
      place: '120 ft2 at 7 $/ft2, 900 kWh at 0.16 $',
    },
    {
      given: {
        project: { cost_cents: 840, rebate_cents: 120, firstYearSaving_cents: 144, yearlyPenalty_cents: 12, escalation: 0.01, degradation: 0.005, life_years: 15 },
        discountRate: 0.03,
      },
      expect: { flows: [133.32, 133.979934, 134.64313467330004], simplePayback: 5.4005400540054005, discountedPayback: 5.904708611303221, npv: 923.4417138406516, sir: 2.282557935889794, airr: 0.08825835980030061, irr: 0.17157335283018293 },
      place: 'with rebate, heating, price rise and ageing',
    },
    {
      given: { project: { cost_cents: 720, firstYearSaving_cents: 39, yearlyPenalty_cents: 10, life_years: 10, removal_cents: 80 }, discountRate: 0.05 },
      expect: { flows: [29, 29, 29, 29, 29, 29, 29, 29, 29, -51], simplePayback: 24.82758620689655, discountedPayback: null, npv: -545.1827473369012, sir: 0.2428017398098594, airr: -0.08858855374626495, irr: null },
      place: 'removal in the last year, never paid back',
    },
  ],
};

const midMonth = readValues<readonly number[]>('finance-mid-month.json');

/** Percent of each of 29 years by the month of putting into service. */
export const midMonthDepreciation: ReferenceTable<{ readonly monthInService: number }, readonly number[]> = {
  of: 'calc/lifecycle/depreciation',
  source: `${midMonth.source}. ${midMonth.how}`,
  seen: 'quoted elsewhere',
  tolerance: { abs: 1e-9, why: 'the table’s own printed digits are used' },
  rows: midMonth.rows.map(([monthInService = NaN, ...percent]) => ({ given: { monthInService }, expect: percent, place: `month ${monthInService}` })),
};

const atThreePercent: readonly (readonly [years: number, single: number, uniform: number])[] = [
  [1, 0.970873786407767, 0.9708737864077679],
  [5, 0.8626087843841639, 4.579707187194535],
  [10, 0.7440939148967249, 8.530202836775835],
  [12, 0.7013798801929728, 9.95400399356757],
  [15, 0.6418619473967174, 11.937935086776086],
  [20, 0.5536757541863345, 14.877474860455518],
  [25, 0.47760556926165915, 17.413147691278027],
];

/** Factors at 3 % in full digits. */
export const factorsAtThreePercent: ReferenceTable<{ readonly rate: number; readonly years: number }, { readonly single: number; readonly uniform: number }> = {
  of: 'calc/lifecycle/present-value',
  source: 'NIST Handbook 135 formulas worked by an independent program',
  seen: 'computed from the stated formula',
  tolerance: { rel: 1e-12, why: 'both sides work in double precision' },
  rows: atThreePercent.map(([years, single, uniform]) => ({ given: { rate: 0.03, years }, expect: { single, uniform }, place: `${years} years` })),
};

/** Present value of flows at a rate, as printed. */
export const presentValuesPrinted: ReferenceTable<{ readonly flows: readonly number[]; readonly rate: number }, { readonly value: number }> = {
  of: 'calc/lifecycle/present-value',
  source: 'documentation of the open numpy library, release 1.10, npv',
  seen: 'in the source',
  tolerance: { abs: 1e-12, why: 'printed in full digits' },
  rows: [{ given: { flows: [-100, 39, 59, 55, 20], rate: 0.281 }, expect: { value: -0.00847859163845488 }, place: 'npv(0.281, …)' }],
};
