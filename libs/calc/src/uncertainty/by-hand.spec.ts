import { influences, quantileOf, rankCorrelation, shareReaching, spreadOf, valueAt, type Distribution } from './index.js';

describe('a quantile by hand', () => {
  it('of a triangle away from zero', () => {
    const triangle: Distribution = { kind: 'triangular', low: 2, middle: 3, high: 6 };
    expect(valueAt(triangle, 0.25)).toBeCloseTo(3, 12);
    expect(valueAt(triangle, 1 / 16)).toBeCloseTo(2.5, 12); // (x − 2)²/4
    expect(valueAt(triangle, 1 - 1 / 12)).toBeCloseTo(5, 12); // (6 − x)²/12
    expect(valueAt({ kind: 'triangular', low: 2, middle: 2, high: 4 }, 0.75)).toBeCloseTo(3, 12);
    expect(valueAt({ kind: 'triangular', low: 2, middle: 4, high: 4 }, 0.25)).toBeCloseTo(3, 12);
  });

  it('of an even spread away from zero, and of one that has no width', () => {
    expect(valueAt({ kind: 'uniform', low: 2, high: 6 }, 0.25)).toBe(3);
    expect(valueAt({ kind: 'uniform', low: 2, high: 2 }, 0.9)).toBe(2);
    expect(valueAt({ kind: 'normal', middle: 7, deviation: 0 }, 0.9)).toBe(7);
    expect(valueAt({ kind: 'lognormal', middle: 7, factor: 1 }, 0.9)).toBe(7);
  });

  it('is held between limits on both sides', () => {
    const held: Distribution = { kind: 'normal', middle: 0, deviation: 10, low: -1, high: 2 };
    expect([0.1, 0.5, 0.9].map((share) => valueAt(held, share))).toEqual([-1, 0, 2]);
  });

  it('refuses chances that are none and figures out of order', () => {
    for (const share of [0, 1, -0.5, 1.5, Number.NaN]) expect(() => valueAt({ kind: 'uniform', low: 0, high: 1 }, share)).toThrow('share');
    const wrong: Distribution[] = [{ kind: 'triangular', low: 0, middle: 3, high: 2 }, { kind: 'triangular', low: 1, middle: 0, high: 2 }, { kind: 'listed', values: [{ value: 1, chance: 0.6 }, { value: 2, chance: 0.6 }] }, { kind: 'listed', values: [] }];
    for (const spread of wrong) expect(() => valueAt(spread, 0.5)).toThrow(RangeError);
  });

  it('of listed values changes where their chances are reached; chances short of 1 by noise give the last', () => {
    const listed: Distribution = { kind: 'listed', values: [{ value: 5, chance: 0.25 }, { value: 9, chance: 0.75 }] };
    expect([0.2499, 0.25, 0.9].map((share) => valueAt(listed, share))).toEqual([5, 9, 9]);
    expect(valueAt({ kind: 'listed', values: [{ value: 5, chance: 0.5 }, { value: 9, chance: 0.5 - 1e-10 }] }, 1 - 1e-11)).toBe(9);
  });
});

describe('what draws say, by hand', () => {
  it('quantiles at the ends', () => {
    expect([0, 0.5, 1].map((share) => quantileOf([1, 2, 4], share))).toEqual([1, 2, 4]);
    for (const share of [-0.1, 1.1, Number.NaN]) expect(() => quantileOf([1, 2], share)).toThrow('share');
    expect(spreadOf([4])).toEqual({ nineInTenAtLeast: 4, middle: 4, oneInTenMoreThan: 4, mean: 4 });
    expect(shareReaching([1, 2, 3, 4], 3)).toBe(0.5);
  });

  it('rank correlation of two draws, of equal ones and of one that never changes', () => {
    expect(rankCorrelation([1, 2], [5, 6])).toBe(1);
    expect(rankCorrelation([1, 2], [6, 5])).toBe(-1);
    expect(rankCorrelation([1, 2, 3], [4, 4, 4])).toBe(0);
    // Ranks 1, 2.5, 2.5, 4 and 1, 2, 3, 4 in another order of draws: Σab = 4.5, Σaa = 4.5, Σbb = 5.
    expect(rankCorrelation([30, 10, 20, 20], [400, 100, 200, 300])).toBeCloseTo(4.5 / Math.sqrt(22.5), 12);
    expect(() => rankCorrelation([], [])).toThrow(RangeError);
  });

  it('an input’s lowest and highest tenth, drawn in any order', () => {
    // Twenty draws; the result is ten times the input. Lowest two 1, 2; highest two 19, 20.
    const drawn = Array.from({ length: 20 }, (_, i) => ((i * 7) % 20) + 1);
    const result = drawn.map((value) => value * 10);
    const still = drawn.map(() => 3);
    expect(influences(new Map([['b', drawn], ['still', still], ['a', drawn]]), result)).toEqual([
      { parameter: 'a', rankCorrelation: expect.closeTo(1, 12) as unknown, whereLow: 15, whereHigh: 195 }, { parameter: 'b', rankCorrelation: expect.closeTo(1, 12) as unknown, whereLow: 15, whereHigh: 195 },
      // Equal draws stay in the order they were drawn: 1st and 2nd, 19th and 20th.
      { parameter: 'still', rankCorrelation: 0, whereLow: (result[0]! + result[1]!) / 2, whereHigh: (result[18]! + result[19]!) / 2 },
    ]);
    expect(influences(new Map([['few', [2, 1, 3]]]), [20, 10, 30])).toEqual([{ parameter: 'few', rankCorrelation: 1, whereLow: 10, whereHigh: 30 }]);
    expect(influences(new Map([['down', [1, 2, 3]], ['up', [1, 2, 3]]].map(([name, list]) => [name as string, list as number[]])), [30, 20, 10]).map(({ parameter }) => parameter)).toEqual(['down', 'up']);
  });
});
