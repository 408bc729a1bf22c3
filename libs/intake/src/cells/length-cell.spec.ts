import { inchesText, mmOfTicks, ticksOf_mm } from '#calc';
import fc from 'fast-check';
import { lengthIn_mm } from './length-cell.js';

const inInches = { unit: 'in', decimal: '.' } as const;
const inMetric = { unit: 'mm', decimal: '.' } as const;

describe('reading a length', () => {
  // The inch is 25.4 mm exactly.
  it.each([
    ['35 1/2', 35.5], ['35-1/2', 35.5], ['35½', 35.5], ['35 ½', 35.5], ['35.5"', 35.5], ['35.5 in', 35.5], ['35.5', 35.5], ['½', 0.5], ['3/8"', 0.375],
    ['2\'11 1/2"', 35.5], ['2’ 11 1⁄2”', 35.5], ['2 ft 11 1/2 in', 35.5], ["3'", 36], ['4 ft', 48], ['35–1/2', 35.5], ['35\u00a01/2', 35.5], ['35,5', 35.5],
  ])('"%s" is %f in', (text, inches) => {
    expect(lengthIn_mm(text, inInches)).toBeCloseTo(inches * 25.4, 9);
  });

  it.each([['902 mm', 902], ['0.902 m', 902], ['90.2cm', 902], ['1,203.5 mm', 1203.5]])('"%s" is %f mm, whatever the header says', (text, mm) => {
    expect(lengthIn_mm(text, inInches)).toBeCloseTo(mm, 9);
  });

  it.each(['', 'approx 40', '35 1/0', '35 9/8', '35 1/2 1/2', 'wide', "2'x", '4-Mar', '35 1/2 mm'])('"%s" is no length', (text) => {
    expect(lengthIn_mm(text, inInches)).toBeNull();
  });

  it('a fraction in a metric column is not guessed at', () => {
    expect(lengthIn_mm('35 1/2', inMetric)).toBeNull();
  });

  it('a length printed in inches reads back to the same ticks', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 20 * 12 * 16 }), (sixteenths) => {
      const ticks = sixteenths * 508;
      expect(ticksOf_mm(lengthIn_mm(inchesText(ticks), inInches) ?? NaN)).toBe(ticks);
      expect(ticksOf_mm(lengthIn_mm(`${inchesText(ticks)}"`, inMetric) ?? NaN)).toBe(ticks);
    }));
  });

  it('a length printed in millimetres reads back to the same ticks', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 6000 * 320 }), (ticks) => {
      expect(ticksOf_mm(lengthIn_mm(`${mmOfTicks(ticks)} mm`, inInches) ?? NaN)).toBe(ticks);
    }));
  });
});
