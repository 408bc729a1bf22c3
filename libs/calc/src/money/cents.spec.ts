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

describe('splitting, worked by hand', () => {
  // 10 by 1, 2, 4: exact 1.43, 2.86, 5.71; floors 1, 2, 5 leave two cents, for .86 and .71.
  it('gives the odd cents to the largest remainders, whatever their order', () => {
    expect(splitCents(10, [1, 2, 4])).toEqual([1, 3, 6]);
    expect(splitCents(10, [4, 2, 1])).toEqual([6, 3, 1]);
    expect(splitCents(-10, [1, 2, 4])).toEqual([-1, -3, -6]);
    // 10 by 5 and 2: 7.14 and 2.86, so the smaller part gets the cent.
    expect(splitCents(10, [5, 2])).toEqual([7, 3]);
  });

  // 5 by 1, 1, 1, 1: 1.25 each leaves one cent; equal remainders, so the first.
  it('gives it to the earlier of equal remainders', () => {
    expect(splitCents(5, [1, 1, 1, 1])).toEqual([2, 1, 1, 1]);
  });

  // 57 % of a dollar is 57 cents, although 0.57 × 100 is 56.99… in the machine.
  it('does not lose a cent to the noise of a product', () => {
    expect(splitCents(100, [0.57, 0.43])).toEqual([57, 43]);
    expect(splitCents(100, [0.29, 0.71])).toEqual([29, 71]);
  });

  it('gives nothing to who has no share, and no negative nothing', () => {
    expect(splitCents(1, [0, 1, 1])).toEqual([0, 1, 0]);
    expect(Object.is(splitCents(-1, [1, 1])[1], 0)).toBe(true);
    expect(splitCents(0, [1, 2]).every((part) => Object.is(part, 0))).toBe(true);
  });
});

it('keeps a decimal that stands in the middle of the text', () => {
  expect(wholeDollarsText(100_000_00)).toBe('$100,000');
  expect(dollarsText(1)).toBe('$0.01');
});
