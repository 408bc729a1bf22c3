import fc from 'fast-check';
import { changePointFit, datedPeriods, degreeDayFit, degreeDays_K, leastSquares, meteredSaving, modelledUse_kWh, searchedDegreeDayFit, studentT, type MeteredPeriod, type UseFit } from './index.js';

/** A year of months with their daily means: a warm, even swing about `mean_degC`. */
function months(mean_degC: number, swing_K = 11): MeteredPeriod[] {
  return Array.from({ length: 12 }, (_, month) => {
    const daily_degC = Array.from({ length: 30 }, (_, day) => mean_degC - swing_K * Math.cos(((month * 30 + day) / 360) * 2 * Math.PI) + 4 * Math.sin(day * 2.3));
    return { use_kWh: 0, days: 30, daily_degC, outdoor_degC: daily_degC.reduce((a, b) => a + b, 0) / 30 };
  });
}
const billed = (periods: readonly MeteredPeriod[], use: (period: MeteredPeriod, i: number) => number): MeteredPeriod[] => periods.map((period, i) => ({ ...period, use_kWh: period.days * use(period, i) }));
const found = (fit: UseFit | { readonly why: string }): UseFit => {
  if ('why' in fit) throw new Error(fit.why);
  return fit;
};
const F = (degF: number): number => ((degF - 32) * 5) / 9;

describe('a fit on use without noise', () => {
  it('finds base load, slope and change point', () => {
    fc.assert(fc.property(fc.double({ min: 2, max: 20, noNaN: true }), fc.double({ min: 0.5, max: 5, noNaN: true }), fc.integer({ min: 600, max: 700 }), (base, slope, tenths) => {
      const balance = F(tenths / 10);
      const fit = changePointFit('3PC', billed(months(18), (period) => base + slope * Math.max(period.outdoor_degC - balance, 0)));
      expect(fit.coolingBalance_degC).toBeCloseTo(balance, 9);
      expect(fit.base_kWh_day).toBeCloseTo(base, 6);
      expect(fit.cooling_kWh_dayK).toBeCloseTo(slope, 6);
      expect(fit.r2).toBeCloseTo(1, 9);
    }), { numRuns: 15 });
  });

  it('finds both balance points of a heated and cooled meter from degree days', () => {
    const use = (period: MeteredPeriod): number => 9 + 1.4 * degreeDays_K(period, F(55), 'heating') + 2.2 * degreeDays_K(period, F(66), 'cooling');
    const fit = found(searchedDegreeDayFit(billed(months(14, 14), use)));
    expect([fit.heatingBalance_degC, fit.coolingBalance_degC].map((t) => Math.round(t! * 1.8 + 32))).toEqual([55, 66]);
    expect(fit.base_kWh_day).toBeCloseTo(9, 6);
    expect(fit.heating_kWh_dayK).toBeCloseTo(1.4, 6);
    expect(fit.cooling_kWh_dayK).toBeCloseTo(2.2, 6);
  });

  it('bills itself: the model gives back the use it was fitted on', () => {
    const periods = billed(months(18), (period) => 8 + 3 * degreeDays_K(period, F(65), 'cooling'));
    const fit = found(degreeDayFit(periods, { cooling_degC: F(65), heating_degC: null }));
    for (const period of periods) expect(modelledUse_kWh(fit, period)).toBeCloseTo(period.use_kWh, 6);
  });
});

describe('what a fit cannot say', () => {
  it('a meter that falls with warmth is never given cooling, and even warmth gives no slope', () => {
    const falling = billed(months(25, 5), (period) => 40 - 2 * degreeDays_K(period, F(60), 'cooling'));
    const fit = searchedDegreeDayFit(falling);
    if (!('why' in fit)) expect(fit.cooling_kWh_dayK).toBe(0);
    const warm = billed(months(18, 0).map((period) => ({ ...period, daily_degC: Array<number>(30).fill(18), outdoor_degC: 18 })), () => 5);
    expect(degreeDayFit(warm, { cooling_degC: F(60), heating_degC: null })).toHaveProperty('why');
  });

  it('refuses too few periods, days of nothing and temperatures that are missing', () => {
    expect(() => changePointFit('5P', months(18).slice(0, 5))).toThrow('more than the 5');
    expect(() => changePointFit('3PC', months(18).map((period) => ({ ...period, days: 0 })))).toThrow('days');
    expect(() => changePointFit('3PC', months(18).map((period) => ({ ...period, outdoor_degC: Number.NaN })))).toThrow('finite');
    expect(() => datedPeriods([{ start: '2026-01-01', end: '2026-01-03', use_kWh: 1 }], new Map([['2026-01-01', 3]]))).toThrow('2026-01-02 is missing');
    expect(() => datedPeriods([{ start: '2026-01-03', end: '2026-01-01', use_kWh: 1 }], new Map())).toThrow('end');
    expect(() => studentT(1, 5)).toThrow('confidence');
  });

  it('dependent columns have no least squares', () => {
    expect(leastSquares([[1, 1, 1], [2, 2, 2]], [1, 2, 3], [1, 1, 1])).toBeNull();
    expect(leastSquares([[1, 1], [1, 2], [1, 3]], [1, 2], [1, 1])).toBeNull();
  });
});

describe('a saving read from bills', () => {
  /** A noise of the given size, the same for the same seed. */
  const noise = (seed: number, i: number, share: number): number => 1 + share * Math.sqrt(3) * (((Math.sin(seed * 12.9898 + i * 78.233) * 43758.5453) % 1 + 1) % 1 * 2 - 1);
  const balance = { cooling_degC: F(65), heating_degC: null };
  const savingOf = (effect: number, seed: number, share = 0.03) => {
    const use = (period: MeteredPeriod): number => 10 + 4 * degreeDays_K(period, F(65), 'cooling');
    const baseline = billed(months(19), (period, i) => use(period) * noise(seed, i, share));
    const reporting = billed(months(20), (period, i) => use(period) * (1 - effect) * noise(seed, i + 12, share));
    return meteredSaving(found(degreeDayFit(baseline, balance)), { baseline, reporting });
  };

  it('without noise it is the saving that was made, in other weather too', () => {
    const saving = savingOf(0.08, 1, 0);
    expect(saving.savingShare).toBeCloseTo(0.08, 9);
    expect(saving.isTold).toBe(true);
  });

  it('the 90 % interval holds the truth in at least four cases of five, and tells a saving of nothing seldom', () => {
    const seeds = Array.from({ length: 200 }, (_, i) => i + 1);
    const holds = seeds.filter((seed) => {
      const saving = savingOf(0.06, seed);
      const half = typeof saving.fractionalUncertainty === 'number' ? saving.fractionalUncertainty * saving.saving_kWh : Infinity;
      return Math.abs(saving.saving_kWh - 0.06 * saving.adjustedBaseline_kWh) <= half;
    });
    expect(holds.length / 200).toBeGreaterThan(0.8);
    expect(seeds.filter((seed) => savingOf(0, seed).isTold).length / 200).toBeLessThan(0.12);
  });

  it('where use rose there is no saving to put an error on', () => {
    const saving = savingOf(-0.2, 3);
    expect(saving.fractionalUncertainty).toHaveProperty('why');
    expect(saving.isTold).toBe(false);
  });

  it('refuses other periods than those of the fit', () => {
    const baseline = billed(months(19), (period) => 10 + 4 * degreeDays_K(period, F(65), 'cooling'));
    const fit = found(degreeDayFit(baseline, balance));
    expect(() => meteredSaving(fit, { baseline: baseline.slice(1), reporting: baseline })).toThrow('baseline must be the 12 periods');
    expect(() => meteredSaving(fit, { baseline, reporting: [] })).toThrow('reporting');
  });
});
