import fc from 'fast-check';
import { Btu_h_ft2Of_W_m2, Btu_hOf_W, ceilToEighthInch_ticks, degCOf_degF, degFOf_degC, ft2Of_m2, inchesText, inOf_mm, m2Of_ft2, mmOf_in, mmOfTicks, ticksOf_mm, tonOf_W, W_m2Of_Btu_h_ft2, WOf_Btu_h, WOf_ton } from './index.js';

describe('lengths', () => {
  it('a 64th of an inch is 127 ticks and a millimetre 320', () => {
    expect(ticksOf_mm(25.4 / 64)).toBe(127);
    expect(ticksOf_mm(1)).toBe(320);
  });

  it('a size on an eighth of an inch stays, whatever the millimetre float says', () => {
    for (let eighths = 1; eighths <= 960; eighths++) {
      const ticks = ticksOf_mm(eighths * 3.175);
      expect(ceilToEighthInch_ticks(ticks)).toBe(ticks);
    }
  });

  it('one tick over an eighth goes up to the next', () => {
    expect(ceilToEighthInch_ticks(1017)).toBe(2032);
    expect(() => ceilToEighthInch_ticks(0.5)).toThrow(RangeError);
  });

  it.each([
    [36.5, '36 1/2'], [48, '48'], [0.25, '1/4'], [23.9375, '23 15/16'], [23.97, '24'], [0, '0'], [12.125, '12 1/8'], [0.02, '0'],
  ])('%p in reads %p', (inches, text) => {
    expect(inchesText(ticksOf_mm(mmOf_in(inches)))).toBe(text);
  });

  it('ticks and mm go back and forth', () => {
    fc.assert(fc.property(fc.integer({ min: -10_000_000, max: 10_000_000 }), (ticks) => ticksOf_mm(mmOfTicks(ticks)) === ticks));
  });

  it('refuses what is not a length', () => {
    expect(() => ticksOf_mm(Number.NaN)).toThrow('length_mm');
    expect(() => inchesText(-1)).toThrow('ticks');
  });
});

describe('conversions against NIST SP 811 factors (from memory)', () => {
  it.each([
    [mmOf_in(1), 25.4], [m2Of_ft2(1), 0.09290304], [WOf_Btu_h(1), 0.2930711], [WOf_ton(1), 3516.853], [W_m2Of_Btu_h_ft2(1), 3.154591],
    [degCOf_degF(212), 100], [degCOf_degF(-40), -40], [degFOf_degC(25), 77],
  ])('%p is %p', (ours, printed) => {
    expect(ours / printed).toBeCloseTo(1, 6);
  });

  it('each goes back to where it came from', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (x) => {
        const pairs = [inOf_mm(mmOf_in(x)), ft2Of_m2(m2Of_ft2(x)), Btu_hOf_W(WOf_Btu_h(x)), tonOf_W(WOf_ton(x)), Btu_h_ft2Of_W_m2(W_m2Of_Btu_h_ft2(x)), degFOf_degC(degCOf_degF(x))];
        for (const back of pairs) expect(Math.abs(back / x - 1)).toBeLessThan(1e-10);
      }),
    );
  });
});
