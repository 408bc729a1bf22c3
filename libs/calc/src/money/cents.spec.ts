import fc from 'fast-check';
import { cents, dollarsText, wholeDollarsText, roundHalfAway, splitCents } from './index.js';

describe('rounding', () => {
  it.each([[0.5, 1], [-0.5, -1], [2.5, 3], [28.499999999999996, 29], [1.4999, 1], [0.285 * 100, 29], [-0.2, 0], [0, 0]])('%p rounds to %p', (x, want) => {
    expect(Object.is(roundHalfAway(x), want)).toBe(true);
  });

  it('refuses what is not a number', () => {
    expect(() => roundHalfAway(Number.NaN)).toThrow(RangeError);
    expect(() => cents(1.5)).toThrow('whole cents');
  });
});

describe('splitting', () => {
  it('a dollar in three gives the first one the odd cent', () => {
    expect(splitCents(100, [1, 1, 1])).toEqual([34, 33, 33]);
    expect(splitCents(-100, [1, 1, 1])).toEqual([-34, -33, -33]);
  });

  it('parts add up, and none is a cent or more from its exact share', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 30 }), (total, shares) => {
        const sum = shares.reduce((a, b) => a + b, 0);
        fc.pre(sum > 0);
        const parts = splitCents(total, shares);
        expect(parts.reduce((a, b) => a + b, 0)).toBe(total);
        parts.forEach((part, i) => expect(Math.abs(part - (total * (shares[i] ?? 0)) / sum)).toBeLessThan(1));
      }),
    );
  });

  it('refuses shares that say nothing', () => {
    expect(() => splitCents(100, [0, 0])).toThrow(RangeError);
    expect(() => splitCents(100, [1, -1, 2])).toThrow(RangeError);
    expect(() => splitCents(100, [])).toThrow(RangeError);
  });
});

it.each([[123456, '$1,234.56'], [-5, '-$0.05'], [0, '$0.00'], [100000000, '$1,000,000.00'], [99.5, '$1.00']])('%p cents reads %p', (amount, text) => {
  expect(dollarsText(amount)).toBe(text);
});

it.each([[246988, '$2,470'], [-50, '-$1'], [-49, '$0'], [49, '$0'], [123456.7, '$1,235']])('%p cents reads %p in whole dollars', (amount, text) => {
  expect(wholeDollarsText(amount)).toBe(text);
});
