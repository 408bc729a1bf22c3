import type { KernelRoom } from './kernel.js';
import { kernel as draw } from './draw.js';
import { kernel as realisation } from './realisation.js';
import { kernel as rebate } from './rebate.js';
import { kernel as spread } from './spread.js';

const room: KernelRoom = { catalogue: () => { throw new Error('no built-in data here'); }, weather: () => { throw new Error('no weather here'); } };

describe('the kernel rebate', () => {
  const offer = { area_m2: 100, cost_cents: 500_000, rate_cents_m2: 2_000 };
  const cents = (more: object): number => (rebate.run({ ...offer, ...more }, room) as { cents: number }).cents;

  test('gives the least of area × rate, cap and share of the cost', () => {
    expect(cents({})).toBe(200_000);
    expect(cents({ cap_cents: 150_000 })).toBe(150_000);
    expect(cents({ cap_cents: 150_000, costShare: 0.25 })).toBe(125_000);
    expect(cents({ rate_cents_m2: 9_000 })).toBe(500_000); // never above the cost
  });

  test('gives nothing below the least area, and all at it', () => {
    expect(cents({ areaAtLeast_m2: 100.1 })).toBe(0);
    expect(cents({ areaAtLeast_m2: 100 })).toBe(200_000);
  });

  test('refuses a share above 1 and a field it does not know', () => {
    expect(() => cents({ costShare: 1.2 })).toThrow();
    expect(() => cents({ limit: 3 })).toThrow('unknown field limit');
  });
});

describe('the kernel realisation', () => {
  const studies = [{ measuredShare: 0.1, modelledShare: 0.4 }, { measuredShare: 0.2, modelledShare: 0.2 }];
  const run = (more: object) => realisation.run({ studies, explainedShare: 0.5, leftSpread: 0.1, ...more }, room) as { low: number; middle: number; high: number };

  test('without bills it is the geometric mean of what the studies found', () => {
    expect(run({}).middle).toBeCloseTo(0.5, 12); // √(1/4 × 1)
    // ln(1/4) and ln 1 lie ln 2 on both sides of their mean: sample deviation ln 2 × √2.
    expect(run({}).high / run({}).middle).toBeCloseTo(Math.exp(1.2816 * Math.LN2 * Math.SQRT2), 12);
  });

  test('bills that decide all take their part of the gap off, and the spread down to what is left', () => {
    expect(run({ weight: 1 }).middle).toBeCloseTo(Math.sqrt(0.5), 12);
    expect(run({ weight: 1 }).high / run({ weight: 1 }).low).toBeCloseTo(Math.exp(2 * 1.2816 * 0.1), 12);
  });

  test('a measured factor draws it to itself, the more the surer it is', () => {
    const sure = run({ measured: { factor: 0.9, standardError: 0.01 } });
    expect(Math.abs(sure.middle - 0.9)).toBeLessThan(0.01);
    expect(run({ measured: { factor: 0.9, standardError: 1 } }).middle).toBeLessThan(sure.middle);
  });
});

describe('the kernels draw and spread', () => {
  const asked = { seed: 7, parameter: 'film cut', scope: 'A', draws: 1024 };
  const drawn = (more: object = {}) => draw.run({ ...asked, ...more }, room) as { shares: number[]; values?: number[] };

  test('as many draws as parts fall one into each part', () => {
    expect(new Set(drawn().shares.map((u) => Math.floor(u * 1024))).size).toBe(1024);
    expect(drawn().values).toBeUndefined();
  });

  test('more draws begin with the same ones; another scope gives others', () => {
    expect(drawn({ draws: 2048 }).shares.slice(0, 1024)).toEqual(drawn().shares);
    expect(drawn({ scope: 'B' }).shares[0]).not.toBe(drawn().shares[0]);
  });

  test('values of a uniform input have its ends, middle and chance', () => {
    const { values = [] } = drawn({ spread: { kind: 'uniform', low: 2, high: 4 } });
    const told = spread.run({ draws: values, reach: 3.5 }, room) as Record<string, number>;
    expect(told['middle']).toBeCloseTo(3, 2);
    expect(told['nineInTenAtLeast']).toBeCloseTo(2.2, 2);
    expect(told['oneInTenMoreThan']).toBeCloseTo(3.8, 2);
    expect(told['mean']).toBeCloseTo(3, 3);
    expect(told['shareReaching']).toBeCloseTo(0.25, 3);
  });

  test('quantiles lie between two draws in proportion', () => {
    expect(spread.run({ draws: [30, 10, 20] }, room)).toEqual({ nineInTenAtLeast: 12, middle: 20, oneInTenMoreThan: 28, mean: 20, shareReaching: 1 });
  });

  test.each([[{ draws: 0 }], [{ draws: 1.5 }], [{ spread: { kind: 'triangular', low: 2, middle: 1, high: 3 } }], [{ weather: 1 }]])('draw refuses %j', (wrong) => {
    expect(() => drawn(wrong)).toThrow();
  });

  test('spread refuses an empty list', () => {
    expect(() => spread.run({ draws: [] }, room)).toThrow();
  });
});
