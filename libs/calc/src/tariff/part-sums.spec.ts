import fc from 'fast-check';
import type { TariffText } from '../portfolio/index.js';
import { isBilledBySums, partsCost_cents, partSums, readTariff, tariffClock, yearCost_cents } from './index.js';

const table = (periodAt: (hour: number) => number): number[][] => Array.from({ length: 12 }, () => Array.from({ length: 24 }, (_, hour) => periodAt(hour)));
const text = (more: object): TariffText => ({ label: 't', clock: 'standard', energyratestructure: [[{ rate: 0.1 }]], energyweekdayschedule: table(() => 0), energyweekendschedule: table(() => 0), ...more });
const tariffs = {
  flat: text({}),
  blocks: text({ energyratestructure: [[{ rate: 0.14, max: 500 }, { rate: 0.21, max: 900 }, { rate: 0.27 }]], mincharge: 60, minchargeunits: '$/month' }),
  periods: text({ energyratestructure: [[{ rate: 0.12, max: 300 }, { rate: 0.17 }], [{ rate: 0.31 }]], energyweekdayschedule: table((h) => (h >= 15 && h < 20 ? 1 : 0)), fixedchargefirstmeter: 0.4, fixedchargeunits: '$/day' }),
};
const demand = text({ flatdemandstructure: [[{ rate: 14 }]], flatdemandmonths: Array.from({ length: 12 }, () => 0) });
/** A part of a use from a seed: days with spikes and hours of nothing. */
const partOf = (seed: number): Float64Array => Float64Array.from({ length: 8760 }, (_, h) => Math.max(0, Math.sin(seed + h * 0.61) * (1 + (seed % 7)) + ((h * 7919 + seed) % 11) / 10 - 0.3));

describe('a bill from the sums of its parts', () => {
  test.each(Object.entries(tariffs))('%s: is the bill of the hours added up', (_, of) => {
    const clock = tariffClock(readTariff(of));
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 5000 }), { minLength: 1, maxLength: 4 }), (seeds) => {
      const parts = seeds.map(partOf);
      const use = Float64Array.from({ length: 8760 }, (__, h) => parts.reduce((sum, part) => sum + part[h]!, 0));
      const sums = parts.map((part) => partSums(clock, part));
      const bought = sums[0]!.map((__, bin) => sums.reduce((sum, of) => sum + of[bin]!, 0));
      expect(Math.abs(partsCost_cents(clock, bought) / yearCost_cents(clock, use) - 1)).toBeLessThan(1e-12);
    }), { numRuns: 20 });
  });

  test('a demand charge needs the hours, and says so', () => {
    const clock = tariffClock(readTariff(demand));
    expect(isBilledBySums(clock)).toBe(false);
    expect(() => partsCost_cents(clock, new Float64Array(12))).toThrow(/demand/);
  });

  test('refuses what is sent out, what is no number, and a short year', () => {
    const clock = tariffClock(readTariff(tariffs.flat));
    expect(() => partSums(clock, new Float64Array(8760).fill(-1))).toThrow(RangeError);
    expect(() => partSums(clock, new Float64Array(8760).fill(NaN))).toThrow(RangeError);
    const hidden = new Float64Array(8760).fill(1);
    hidden[4321] = -0.5; // between hours of use: the sums alone would not show it
    expect(() => partSums(clock, hidden)).toThrow(RangeError);
    expect(() => partSums(clock, new Float64Array(24))).toThrow(/8760/);
    expect(() => partsCost_cents(clock, new Float64Array(3))).toThrow(/12 sums/);
  });
});
