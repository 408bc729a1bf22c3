import { boundsOf } from './bounds.js';
import type { CutJob } from './job.js';
import { readyJob } from './ready-job.js';

/** Halves of a 1 m roll, 1 m long: ½ m² each, which fill rolls of 1 m and 1.5 m without a rest. */
const halves = (count: number): CutJob['pieces'] => [{ id: 'h', width_mm: 500, length_mm: 1000, count, mayRotate: false }];
const boundOf = (job: CutJob): { area_m2: number; cost_cents: number | null } => {
  const { area_mm2, cost_cents } = boundsOf(readyJob(job));
  return { area_m2: area_mm2 / 1e6, cost_cents };
};
const WHOLE = [{ width_mm: 1000, length_mm: 10_000 }, { width_mm: 1500, length_mm: 10_000 }];

describe('the least any cutting buys', () => {
  it('is the area of pieces that fill the film, where it is sold by length', () => {
    expect(boundOf({ pieces: halves(26), rolls: [{ width_mm: 1000 }, { width_mm: 1500 }] }).area_m2).toBeCloseTo(13, 6);
  });

  it.each([
    // Rolls of 10 and 15 m²: sums of whole rolls are 10, 15, 20, 25, 30 …
    [20, 10],
    [26, 15],
    [34, 20],
    [50, 25],
    [52, 30],
  ])('is the next sum of whole rolls: %d halves need %d m²', (count, area_m2) => {
    expect(boundOf({ pieces: halves(count), rolls: WHOLE }).area_m2).toBeCloseTo(area_m2, 6);
  });

  it.each([
    // 30.00 a m² on the narrow roll of 300.00, 33.33 on the wide one of 500.00.
    [20, 30_000],
    [26, 50_000],
    [34, 60_000],
    [52, 80_000],
  ])('is so in money too: %d halves cost at least %d cents', (count, cost_cents) => {
    const rolls = WHOLE.map((roll, r) => ({ ...roll, price_cents: [30_000, 50_000][r]! }));
    expect(boundOf({ pieces: halves(count), rolls }).cost_cents).toBeCloseTo(cost_cents, 3);
  });

  it('is the price of the area where all film has one price', () => {
    const rolls = [{ width_mm: 1000, price_cents: 3000 }, { width_mm: 1500, price_cents: 4500 }];
    expect(boundOf({ pieces: halves(26), rolls }).cost_cents).toBeCloseTo(39_000, 3);
  });

  it('counts the film lost at cuts, and not after the last one: two pieces of 1 m and 10 mm between them', () => {
    expect(boundOf({ pieces: halves(2), rolls: [{ width_mm: 1000 }], kerf_mm: 10 }).area_m2).toBeCloseTo(2.01, 6);
    expect(boundOf({ pieces: halves(2), rolls: [{ width_mm: 1010 }], kerf_mm: 10 }).area_m2).toBeCloseTo(1.01, 6);
  });

  it('takes off what lies in stock, whole rolls of the rest', () => {
    const stock = { width_mm: 1000, length_mm: 4000, stock: 1 };
    expect(boundOf({ pieces: halves(26), rolls: [stock, { width_mm: 1000 }] }).area_m2).toBeCloseTo(9, 6);
    expect(boundOf({ pieces: halves(26), rolls: [stock, ...WHOLE] }).area_m2).toBeCloseTo(10, 6);
    expect(boundOf({ pieces: halves(8), rolls: [stock, ...WHOLE] }).area_m2).toBe(0);
  });

  it('is nothing for nothing, and for film that is free', () => {
    expect(boundOf({ pieces: [], rolls: WHOLE })).toEqual({ area_m2: 0, cost_cents: null });
    expect(boundOf({ pieces: [], rolls: [{ width_mm: 1000, price_cents: 5 }] })).toEqual({ area_m2: 0, cost_cents: 0 });
    expect(boundOf({ pieces: halves(3), rolls: [{ width_mm: 1000, price_cents: 0 }] }).cost_cents).toBe(0);
  });

  it('is not lifted where the sums of rolls are too many to try: still the area at least, and no more than a whole roll above it', () => {
    const rolls = [0, 1, 2, 3, 4, 5].map((n) => ({ width_mm: 1000, length_mm: 2000 + n * 137 }));
    const { area_m2 } = boundOf({ pieces: halves(4000), rolls });
    expect(area_m2).toBeGreaterThanOrEqual(2000 - 1e-3);
    expect(area_m2).toBeLessThan(2003);
  });
});
