import fc from 'fast-check';
import type { TariffText } from '../portfolio/index.js';
import { billOfMonths, billYear, readTariff, tariffClock, weightedPrice_cents_kWh, yearCost_cents, type Tariff } from './index.js';

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const table = (periodAt: (month: number, hour: number) => number): number[][] => Array.from({ length: 12 }, (_, month) => Array.from({ length: 24 }, (_, hour) => periodAt(month, hour)));
const text = (more: object): TariffText =>
  ({ label: 't', clock: 'standard', energyratestructure: [[{ rate: 0.1 }]], energyweekdayschedule: table(() => 0), energyweekendschedule: table(() => 0), ...more });
const afternoon = (hour: number): number => (hour >= 15 && hour < 20 ? 1 : 0);
const timeOfUse = {
  energyratestructure: [[{ rate: 0.12, max: 300 }, { rate: 0.17, sell: 0.05 }], [{ rate: 0.31, adj: 0.01, sell: 0.08 }]],
  energyweekdayschedule: table((_, hour) => afternoon(hour)),
};
const everything = {
  ...timeOfUse,
  demandratestructure: [[{ rate: 4 }], [{ rate: 9, max: 2 }, { rate: 12 }]],
  demandweekdayschedule: table((_, hour) => afternoon(hour)),
  demandweekendschedule: table(() => 0),
  flatdemandstructure: [[{ rate: 2 }], [{ rate: 3 }]],
  flatdemandmonths: [0, 0, 0, 0, 0, 1, 1, 1, 1, 0, 0, 0],
  fixedchargefirstmeter: 0.4,
  fixedchargeunits: '$/day',
  mincharge: 20,
  minchargeunits: '$/month',
};

/** A year of use from a seed: smooth days with spikes, ≥ low. */
function useOf(seed: number, low = 0): Float64Array {
  return Float64Array.from({ length: 8760 }, (_, hour) => low + Math.abs(Math.sin(seed + hour * 0.61) * 2.1) + (hour * 7919 + seed) % 11 / 10);
}

/** The same bill in the plainest words: every hour sorted into lists, nothing laid out beforehand. */
function plainCost_cents(tariff: Tariff, use_kWh: Float64Array, startWeekday: number): number {
  const bands = (steps: Tariff['energy'][number], amount: number, days: number): number =>
    steps.reduce((sum, step, i) => {
      const scale = (of: { upTo: number; daily: boolean } | undefined): number => (of === undefined ? 0 : of.daily ? of.upTo * days : of.upTo);
      return sum + Math.max(0, Math.min(amount, scale(step)) - scale(steps[i - 1])) * step.price_cents;
    }, 0);
  let hour = 0;
  let day = 0;
  let year = 0;
  MONTH_DAYS.forEach((days, month) => {
    const bought = new Map<number, number>();
    const sold = new Map<number, number>();
    const peaks = new Map<number, number>();
    let peak = 0;
    for (let d = 0; d < days; d++, day++) {
      for (let h = 0; h < 24; h++, hour++) {
        const weekend = (startWeekday + day) % 7 >= 5;
        const use = use_kWh[hour]!;
        const period = (weekend ? tariff.energyTable.weekend : tariff.energyTable.weekday)[month * 24 + h]!;
        const into = use < 0 ? sold : bought;
        into.set(period, (into.get(period) ?? 0) + Math.abs(use));
        peak = Math.max(peak, use);
        if (tariff.demand === null) continue;
        const of = (weekend ? tariff.demand.table.weekend : tariff.demand.table.weekday)[month * 24 + h]!;
        peaks.set(of, Math.max(peaks.get(of) ?? 0, use));
      }
    }
    let charges = tariff.fixedPer === 'day' ? tariff.fixed_cents * days : tariff.fixed_cents;
    tariff.energy.forEach((steps, period) => {
      charges += bands(steps, bought.get(period) ?? 0, days) - (sold.get(period) ?? 0) * (steps.map((step) => step.sell_cents).find((price) => price !== null) ?? 0);
    });
    tariff.demand?.steps.forEach((steps, period) => (charges += bands(steps, peaks.get(period) ?? 0, days)));
    if (tariff.flatDemand !== null) charges += bands(tariff.flatDemand.steps[tariff.flatDemand.months[month]!]!, peak, days);
    year += Math.max(tariff.minimum_cents, charges);
  });
  return year;
}

describe('a year of bills', () => {
  it.each([['blocks and hours', timeOfUse], ['every charge there is', everything]])('the fast loop agrees with the plain one: %s', (_, more) => {
    const tariff = readTariff(text(more));
    for (const startWeekday of [0, 3, 6]) {
      for (const low of [0, -1.5]) {
        const use = useOf(17, low);
        const plain = plainCost_cents(tariff, use, startWeekday);
        expect(yearCost_cents(tariffClock(tariff, startWeekday), use)).toBeCloseTo(plain, 5);
        expect(billYear(tariff, use, startWeekday).months.reduce((sum, month) => sum + month.exact_cents, 0)).toBeCloseTo(plain, 5);
      }
    }
  });

  it('the lines of a month add up to it, and the months to the year', () => {
    const bill = billYear(readTariff(text(everything)), useOf(3, -1.2));
    for (const month of bill.months) {
      const lines = [...month.energy, ...month.exported, ...month.demand].reduce((sum, line) => sum + line.cents, 0);
      expect(lines + month.fixed_cents + month.raised_cents).toBeCloseTo(month.exact_cents, 6);
      expect(Math.abs(month.total_cents - month.exact_cents)).toBeLessThanOrEqual(0.5 + 1e-9);
    }
    expect(bill.total_cents).toBe(bill.months.reduce((sum, month) => sum + month.total_cents, 0));
  });

  it('a month is rounded once, half a cent away from zero', () => {
    const tariff = readTariff(text({ energyratestructure: [[{ rate: 0.1 }]] }));
    expect(billOfMonths(tariff, { use_kWh: [0.25, 0.249, ...Array<number>(10).fill(0)] }).months.slice(0, 2).map((month) => month.total_cents)).toEqual([3, 2]);
  });

  it('a daily upper end grows with the days of the month', () => {
    const tariff = readTariff(text({ energyratestructure: [[{ rate: 0.1, max: 10, unit: 'kWh daily' }, { rate: 0.3, unit: 'kWh daily' }]] }));
    const bill = billOfMonths(tariff, { use_kWh: Array<number>(12).fill(300) });
    expect([0, 1, 3].map((month) => bill.months[month]!.total_cents)).toEqual([3000, 2800 + 600, 3000]);
  });
});

describe('what is sent out', () => {
  const sunny = (): Float64Array => Float64Array.from({ length: 8760 }, (_, hour) => (hour % 24 === 12 ? -4 : hour % 24 === 16 ? 3 : 0));

  it('is paid hour by hour at the price of exported kWh when nothing else is said', () => {
    const january = billYear(readTariff(text(timeOfUse)), sunny()).months[0]!;
    // 31 noons × 4 kWh × 0.05 $ in the cheap period.
    expect(january.exported).toEqual([{ period: 0, kWh: 124, cents: -620 }]);
  });

  it('is set off within the month and period under net metering, and what is left is paid for', () => {
    const january = billYear(readTariff(text({ ...timeOfUse, dgrules: 'Net Metering' })), sunny()).months[0]!;
    // Eight weekend afternoons draw 3 kWh each in the cheap period: 124 − 24 are left over.
    expect(january.exported).toEqual([{ period: 0, kWh: 100, cents: -500 }]);
    expect(january.energy).toEqual([{ period: 1, tier: 0, kWh: 69, cents: 69 * 32 }]);
  });

  it('is worth nothing where the tariff states no price for it', () => {
    expect(billYear(readTariff(text({})), new Float64Array(8760).fill(-1)).total_cents).toBe(0);
  });
});

describe('bills as they must be, whatever the use', () => {
  const clock = tariffClock(readTariff(text(everything)));
  const seeds = fc.integer({ min: 1, max: 1000 });

  it('more use in any hour never makes the year cheaper', () => {
    fc.assert(fc.property(seeds, fc.nat(8759), fc.double({ min: 0, max: 30, noNaN: true }), (seed, hour, more) => {
      const use = useOf(seed, -1);
      const before = yearCost_cents(clock, use);
      use[hour]! += more;
      expect(yearCost_cents(clock, use)).toBeGreaterThanOrEqual(before - 1e-6);
    }));
  });

  it('a saving of nothing saves nothing', () => {
    fc.assert(fc.property(seeds, (seed) => yearCost_cents(clock, useOf(seed)) - yearCost_cents(clock, useOf(seed)) === 0));
    const price = weightedPrice_cents_kWh(clock, { before_kWh: useOf(5), after_kWh: useOf(5) });
    expect(price.saved_cents_kWh).toEqual({ why: 'no electricity is saved' });
  });

  it('two meters cost what one meter costs where the tariff has one price, and not where it has blocks', () => {
    const flat = tariffClock(readTariff(text({})));
    const blocks = tariffClock(readTariff(text({ energyratestructure: [[{ rate: 0.1, max: 500 }, { rate: 0.2 }]] })));
    fc.assert(fc.property(seeds, seeds, (a, b) => {
      const [one, other] = [useOf(a), useOf(b)];
      const both = one.map((use, hour) => use + other[hour]!);
      const apart = (of: typeof flat): number => yearCost_cents(of, one) + yearCost_cents(of, other);
      expect(yearCost_cents(flat, both)).toBeCloseTo(apart(flat), 4);
      expect(yearCost_cents(blocks, both)).toBeGreaterThan(apart(blocks));
    }), { numRuns: 10 });
  });

  it('the order of the days within a month of weekdays and weekends alike changes nothing without a peak charge', () => {
    const flat = tariffClock(readTariff(text({ energyratestructure: [[{ rate: 0.1, max: 500 }, { rate: 0.2 }]] })));
    const use = useOf(11);
    const turned = Float64Array.from(use);
    turned.subarray(0, 31 * 24).reverse();
    expect(yearCost_cents(flat, turned)).toBeCloseTo(yearCost_cents(flat, use), 6);
  });

  it('splitting a month otherwise over its hours changes no bill, except where periods or peaks say so', () => {
    const monthly = (use: Float64Array): Float64Array => {
      const even = new Float64Array(8760);
      for (let month = 0, hour = 0; month < 12; month++) {
        const hours = MONTH_DAYS[month]! * 24;
        const mean = use.subarray(hour, hour + hours).reduce((sum, kWh) => sum + kWh, 0) / hours;
        even.fill(mean, hour, hour + hours);
        hour += hours;
      }
      return even;
    };
    const blocks = readTariff(text({ energyratestructure: [[{ rate: 0.14, max: 500 }, { rate: 0.27 }]], fixedchargefirstmeter: 9, fixedchargeunits: '$/month', mincharge: 40, minchargeunits: '$/month' }));
    const [byTime, byPeak] = [readTariff(text(timeOfUse)), readTariff(text({ flatdemandstructure: [[{ rate: 5 }]], flatdemandmonths: Array.from({ length: 12 }, () => 0) }))];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1000 }), (seed) => {
        const use = useOf(seed);
        expect(yearCost_cents(blocks, monthly(use))).toBeCloseTo(yearCost_cents(blocks, use), 4);
        const late = use.map((kWh, hour) => (afternoon(hour % 24) === 1 ? 3 * kWh : kWh));
        expect(yearCost_cents(byTime, monthly(late))).toBeLessThan(yearCost_cents(byTime, late));
        expect(yearCost_cents(byPeak, monthly(use))).toBeLessThan(yearCost_cents(byPeak, use));
      }),
      { numRuns: 10 },
    );
  });

  it('what is saved in the dear afternoon is worth more than the average kWh', () => {
    const before_kWh = new Float64Array(8760).fill(1);
    const after_kWh = before_kWh.map((use, hour) => (hour % 24 === 16 ? 0.5 : use));
    const tariff = tariffClock(readTariff(text({ ...timeOfUse, energyweekendschedule: timeOfUse.energyweekdayschedule })));
    const price = weightedPrice_cents_kWh(tariff, { before_kWh, after_kWh });
    expect(price.saved_cents_kWh).toBeCloseTo(32, 9);
    expect(price.average_cents_kWh).toBeLessThan(32);
  });
});

describe('use known by month', () => {
  it('says what it assumed to split hours and peaks', () => {
    const bill = billOfMonths(readTariff(text(everything)), { use_kWh: Array<number>(12).fill(400), peak_kW: Array<number>(12).fill(3) });
    expect(bill.assumed).toHaveLength(2);
    expect(bill.months[0]!.demand).toEqual([{ period: 0, kW: 3, cents: 1200 }, { period: 1, kW: 3, cents: 3000 }, { period: 'flat', kW: 3, cents: 600 }]);
  });

  it('takes shares of the periods where they are known', () => {
    const use = { use_kWh: Array<number>(12).fill(400), periodShares: Array.from({ length: 12 }, () => [0.75, 0.25]) };
    const bill = billOfMonths(readTariff(text(timeOfUse)), use);
    expect(bill.assumed).toEqual([]);
    expect(bill.months[0]!.total_cents).toBe(300 * 12 + 100 * 32);
  });

  it('refuses what it cannot bill', () => {
    const demand = readTariff(text(everything));
    const use_kWh = Array<number>(12).fill(1);
    expect(() => billOfMonths(demand, { use_kWh })).toThrow('peak_kW must be given');
    expect(() => billOfMonths(demand, { use_kWh: [1] })).toThrow('use_kWh must hold 12 months');
    expect(() => billOfMonths(demand, { use_kWh, peak_kW: Array<number>(12).fill(-1) })).toThrow('peak_kW');
    expect(() => billOfMonths(readTariff(text({})), { use_kWh, periodShares: Array.from({ length: 12 }, () => [0.5]) })).toThrow('periodShares');
    expect(() => billYear(demand, new Float64Array(8784))).toThrow('8760');
    expect(() => billYear(demand, new Float64Array(8760).fill(Number.NaN))).toThrow('finite');
    expect(() => tariffClock(demand, 7)).toThrow('startWeekday');
  });
});
