import fc from 'fast-check';
import { type Distribution, drawnShare, drawnShares, influences, normalQuantile, quantileOf, rankCorrelation, shareReaching, spreadOf, valueAt } from './index.js';

const key = (scope: string, parameter = 'film cut', seed = 7) => ({ seed, parameter, scope });

describe('draws', () => {
  it('fall one into each part when there are as many parts as draws', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer(), fc.constantFrom(1, 2, 8, 64, 256, 1024), (scope, seed, count) => {
        const parts = new Set(Array.from(drawnShares(key(scope, 'set point', seed), count), (u) => Math.floor(u * count)));
        expect(parts.size).toBe(count);
      }),
      { numRuns: 60 },
    );
  });

  it('are a function of seed, parameter, scope and number alone', () => {
    const before = drawnShares(key('EC/007'), 500);
    drawnShares(key('EC/008'), 900);
    expect(drawnShare(key('EC/007'), 499)).toBe(before[499]);
    expect(drawnShares(key('EC/007'), 1000).slice(0, 500)).toEqual(before);
  });

  it('of another seed, parameter or scope differ', () => {
    const first = drawnShare(key('EC/007'), 3);
    for (const other of [key('EC/008'), key('EC/007', 'set point'), key('EC/007', 'film cut', 8)]) expect(drawnShare(other, 3)).not.toBe(first);
  });

  it('of two hundred scopes are not tied to each other: no pair is correlated beyond what chance allows', () => {
    const scopes = Array.from({ length: 200 }, (_, i) => drawnShares(key(`EC/${i}`), 512));
    let worst = 0;
    let squares = 0;
    for (let i = 0; i < scopes.length; i++)
      for (let j = 0; j < i; j++) {
        const r = rankCorrelation(scopes[i]!, scopes[j]!);
        worst = Math.max(worst, Math.abs(r));
        squares += r * r;
      }
    const pairs = (200 * 199) / 2;
    // Free draws: variance 1/(n − 1). Draws 2m and 2m + 1 lie in different halves under every key, so n/2 pairs are free: 2/(n − 1).
    expect(worst).toBeLessThan(5.5 * Math.sqrt(2 / 511));
    expect(squares / pairs).toBeLessThan(2.3 / 511);
  });

  it('give the mean of a smooth curve far closer than chance would', () => {
    const shares = drawnShares(key('portfolio'), 1024);
    const mean = shares.reduce((sum, u) => sum + u * u, 0) / 1024;
    expect(Math.abs(mean - 1 / 3)).toBeLessThan(0.0005); // by chance: 0.298/√1024 = 0.009
  });

  it('refuse a number that is not whole', () => {
    expect(() => drawnShare(key('a'), 1.5)).toThrow(RangeError);
    expect(() => drawnShare(key('a'), -1)).toThrow(RangeError);
    expect(() => drawnShare(key('a', 'p', NaN), 0)).toThrow(RangeError);
  });
});

describe('the normal quantile', () => {
  // NIST/SEMATECH e-Handbook, table of the cumulative normal distribution, and the printed check values of AS 241.
  it.each([
    [0.5, 0, 0],
    [0.9, 1.2815515655446004, 1e-14],
    [0.975, 1.959963984540054, 1e-14],
    [0.25, -0.6744897501960817, 1e-15],
    [0.001, -3.090232306167814, 1e-14],
    [1e-20, -9.262340089798408, 1e-13],
  ])('of %p is %p', (share, expected, tolerance) => {
    expect(Math.abs(normalQuantile(share) - expected)).toBeLessThanOrEqual(tolerance);
  });

  it('refuses 0 and 1', () => {
    for (const share of [0, 1, -0.1, NaN]) expect(() => normalQuantile(share)).toThrow('share must be above 0 and below 1');
  });
});

describe('distributions', () => {
  it('a triangle has its middle where the two parabolas meet', () => {
    const spread: Distribution = { kind: 'triangular', low: 0, middle: 1, high: 4 };
    expect(valueAt(spread, 0.25)).toBeCloseTo(1, 12); // area left of the top is 1/4
    expect(valueAt(spread, 0.0625)).toBeCloseTo(0.5, 12); // (x/2)² = 1/16
    expect(valueAt(spread, 1 - 1 / 12)).toBeCloseTo(3, 12); // (4 − x)²/12 = 1/12
  });

  it('a normal value is held between its limits, a lognormal one stays above zero', () => {
    expect(valueAt({ kind: 'normal', middle: 10, deviation: 5, low: 4 }, 0.001)).toBe(4);
    expect(valueAt({ kind: 'normal', middle: 10, deviation: 5, high: 12 }, 0.999)).toBe(12);
    expect(valueAt({ kind: 'normal', middle: 10, deviation: 2 }, 0.975)).toBeCloseTo(13.91992797, 7);
    expect(valueAt({ kind: 'lognormal', middle: 8, factor: 2 }, 0.5)).toBeCloseTo(8, 12);
    expect(valueAt({ kind: 'lognormal', middle: 8, factor: 2 }, 0.8413447460685429)).toBeCloseTo(16, 9);
  });

  it('listed values come as often as their chance says', () => {
    const spread: Distribution = { kind: 'listed', values: [{ value: -1, chance: 0.25 }, { value: 0, chance: 0.5 }, { value: 2, chance: 0.25 }] };
    const drawn = Array.from(drawnShares(key('plant'), 1024), (u) => valueAt(spread, u));
    expect(drawn.filter((v) => v === -1)).toHaveLength(256);
    expect(drawn.filter((v) => v === 2)).toHaveLength(256);
    expect(valueAt(spread, 0.9999999)).toBe(2);
  });

  it('rise with the share, whatever their kind', () => {
    const kinds: Distribution[] = [
      { kind: 'normal', middle: 1, deviation: 0.2 },
      { kind: 'lognormal', middle: 1, factor: 1.3 },
      { kind: 'triangular', low: -1, middle: 0, high: 3 },
      { kind: 'uniform', low: 2, high: 3 },
    ];
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.double({ min: 0.001, max: 0.998, noNaN: true }), (spread, u) => {
        expect(valueAt(spread, u + 0.001)).toBeGreaterThan(valueAt(spread, u));
      }),
    );
  });

  it('refuse figures out of order', () => {
    const wrong: Distribution[] = [
      { kind: 'normal', middle: 0, deviation: -1 },
      { kind: 'lognormal', middle: 0, factor: 2 },
      { kind: 'lognormal', middle: 1, factor: 0.5 },
      { kind: 'triangular', low: 2, middle: 1, high: 3 },
      { kind: 'uniform', low: 2, high: 1 },
      { kind: 'listed', values: [{ value: 1, chance: 0.5 }] },
      { kind: 'listed', values: [] },
    ];
    for (const spread of wrong) expect(() => valueAt(spread, 0.5)).toThrow(RangeError);
    expect(() => valueAt({ kind: 'uniform', low: 0, high: 1 }, 1)).toThrow(RangeError);
    expect(valueAt({ kind: 'triangular', low: 5, middle: 5, high: 5 }, 0.3)).toBe(5);
  });
});

describe('what draws say', () => {
  it('nine in ten, middle and one in ten of 1…11 are 2, 6 and 10', () => {
    const draws = [11, 3, 1, 2, 9, 4, 10, 5, 8, 6, 7];
    expect(spreadOf(draws)).toEqual({ nineInTenAtLeast: 2, middle: 6, oneInTenMoreThan: 10, mean: 6 });
    expect(quantileOf([1, 2, 4], 0.75)).toBe(3);
    expect(quantileOf([5], 0.9)).toBe(5);
    expect(shareReaching(draws, 10)).toBeCloseTo(2 / 11, 12);
  });

  it('refuse no draws at all', () => {
    expect(() => spreadOf([])).toThrow(RangeError);
    expect(() => shareReaching([], 1)).toThrow(RangeError);
    expect(() => quantileOf([1], 1.1)).toThrow(RangeError);
    expect(() => rankCorrelation([1], [1])).toThrow(RangeError);
    expect(() => rankCorrelation([1, 2], [1, 2, 3])).toThrow(RangeError);
  });

  it('rank correlation sees order, not size, and shares ranks between equals', () => {
    expect(rankCorrelation([1, 2, 3, 4], [1, 10, 100, 1000])).toBeCloseTo(1, 12);
    expect(rankCorrelation([1, 2, 3, 4], [4, 3, 2, 1])).toBeCloseTo(-1, 12);
    // Ranks 1.5 1.5 3.5 3.5 against 1 2 3 4: Σab = 4, Σaa = 4, Σbb = 5.
    expect(rankCorrelation([7, 7, 9, 9], [1, 2, 3, 4])).toBeCloseTo(4 / Math.sqrt(20), 12);
    expect(rankCorrelation([1, 1, 1], [1, 2, 3])).toBe(0);
  });

  it('the input that moves the result more comes first', () => {
    const [price, labour] = [drawnShares(key('portfolio', 'price'), 512), drawnShares(key('portfolio', 'labour'), 512)];
    const result = price.map((p, d) => 100 * p - 10 * labour[d]!);
    const found = influences(new Map([['labour', labour], ['price', price]]), result);
    expect(found.map((f) => f.parameter)).toEqual(['price', 'labour']);
    expect(found[0]!.whereHigh - found[0]!.whereLow).toBeGreaterThan(80);
    expect(found[1]!.rankCorrelation).toBeLessThan(0);
  });
});
