import { normals } from '../../../../test/portfolios/metered-homes.js';
import { coefficientCovariance, degreeDays_K, type MeteredPeriod, useSplit, type UseSplit } from './index.js';

/** Months of days about a warm mean; enough wobble that days above and below a balance point share months. */
const months = (mean_degC = 18, swing_K = 10): MeteredPeriod[] =>
  Array.from({ length: 12 }, (_, m) => {
    const daily_degC = Array.from({ length: 30 }, (_, d) => mean_degC - swing_K * Math.cos(((m * 30 + d) / 360) * 2 * Math.PI) + 4 * Math.sin(d * 2.3));
    return { use_kWh: 0, days: 30, daily_degC, outdoor_degC: daily_degC.reduce((a, b) => a + b, 0) / 30 };
  });
const billed = (periods: readonly MeteredPeriod[], perDay: (p: MeteredPeriod) => number): MeteredPeriod[] => periods.map((p) => ({ ...p, use_kWh: p.days * perDay(p) }));
const split = (periods: readonly MeteredPeriod[], of: Parameters<typeof useSplit>[1] = {}): UseSplit => {
  const found = useSplit(periods, of);
  if ('why' in found) throw new Error(found.why);
  return found;
};
const BALANCE = ((64 - 32) * 5) / 9;
const use = (p: MeteredPeriod): number => 8 + 2.5 * degreeDays_K(p, BALANCE, 'cooling');

describe('the split of a meter', () => {
  it('gives back base load and cooling where bills are without noise', () => {
    const found = split(billed(months(), use));
    expect(found.base.kWh).toBeCloseTo(8 * 365, 1);
    expect(found.total_kWh).toBeCloseTo((billed(months(), use).reduce((sum, p) => sum + p.use_kWh, 0) * 365) / 360, 3);
    expect(found.heating.kWh).toBe(0);
    expect(found.tellsCooling).toBe(true);
  });

  it('holds the true base load and cooling within its 80 % error in seven to nine of ten noisy meters', () => {
    let [base, cooling, cases] = [0, 0, 0];
    const clean = billed(months(), use);
    const truth = (clean.reduce((sum, p) => sum + p.use_kWh - 8 * p.days, 0) * 365) / 360;
    for (let seed = 1; seed <= 40; seed++) {
      const normal = normals(seed);
      const found = useSplit(clean.map((p) => ({ ...p, use_kWh: p.use_kWh * (1 + 0.06 * normal()) })));
      if ('why' in found) continue;
      cases += 1;
      if (Math.abs(found.base.kWh - 8 * 365) < 1.2816 * found.base.standardError_kWh) base += 1;
      if (Math.abs(found.cooling.kWh + found.heating.kWh - truth) < 1.2816 * Math.hypot(found.cooling.standardError_kWh, found.heating.standardError_kWh)) cooling += 1;
    }
    expect(cases).toBeGreaterThan(35);
    for (const share of [base / cases, cooling / cases]) {
      expect(share).toBeGreaterThan(0.62);
      expect(share).toBeLessThan(0.97);
    }
  });

  it('is less sure of its parts, not of its total, when the weather is that of a typical year', () => {
    const [own, typical] = [0, 0.1].map((weatherError) => split(billed(months(), use), { weatherError }));
    expect(typical!.cooling.standardError_kWh).toBeGreaterThan(own!.cooling.standardError_kWh + 0.09 * own!.cooling.kWh);
    expect(typical!.base.standardError_kWh).toBeGreaterThan(own!.base.standardError_kWh);
    expect(typical!.total_kWh).toBe(own!.total_kWh);
  });

  it('states the parts for another year when it is given one', () => {
    const warm = months(22);
    const found = split(billed(months(), use), { weather: warm });
    const expected = (warm.reduce((sum, p) => sum + 30 * 2.5 * degreeDays_K(p, BALANCE, 'cooling'), 0) * 365) / 360;
    expect(Math.abs(found.cooling.kWh / expected - 1)).toBeLessThan(0.01);
  });

  it('never gives a base load below zero: a meter for cooling alone says no model fits, or little base', () => {
    const found = useSplit(billed(months(), (p) => Math.max(0, 2.5 * degreeDays_K(p, BALANCE, 'cooling') - 0.5)));
    if (!('why' in found)) expect(found.base.kWh).toBeGreaterThan(0);
  });

  it('says so where bills are few or show no weather', () => {
    expect(useSplit(billed(months(), use).slice(0, 4))).toHaveProperty('why');
    expect(useSplit(billed(months(20, 0), () => 9).map((p) => ({ ...p, outdoor_degC: 20 })))).toHaveProperty('why');
  });
});

it('errors of a straight line are those of the textbook', () => {
  // x = 1…4, y = 1, 3, 2, 4: slope 0.8, residual sum 1.8, s² = 0.9; var slope = 0.9/5, var intercept = 0.9 × (1/4 + 2.5²/5).
  const covariance = coefficientCovariance([[1, 1, 1, 1], [1, 2, 3, 4]], [1, 1, 1, 1], { weightedSse: 1.8, coefficients: 2 });
  if ('why' in covariance) throw new Error(covariance.why);
  expect(covariance[1]![1]).toBeCloseTo(0.18, 12);
  expect(covariance[0]![0]).toBeCloseTo(0.9 * (0.25 + 6.25 / 5), 12);
});
