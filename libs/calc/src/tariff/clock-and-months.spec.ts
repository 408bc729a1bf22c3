import type { TariffText } from '../portfolio/index.js';
import { billOfMonths, billYear, partSums, readTariff, tariffClock, weightedPrice_cents_kWh, yearCost_cents } from './index.js';

const table = (periodAt: (hour: number) => number): number[][] => Array.from({ length: 12 }, () => Array.from({ length: 24 }, (_, hour) => periodAt(hour)));
const text = (more: object): TariffText =>
  ({ label: 't', clock: 'standard', energyratestructure: [[{ rate: 0.1 }]], energyweekdayschedule: table(() => 0), energyweekendschedule: table(() => 0), ...more });
const twelve = (value: number) => Array<number>(12).fill(value);
const flatUse = (kW: number) => new Float64Array(8760).fill(kW);

describe('a clock whose every hour has a price of its own', () => {
  const byHour = { energyratestructure: Array.from({ length: 24 }, () => [{ rate: 0.1 }]), energyweekdayschedule: table((hour) => hour), energyweekendschedule: table((hour) => hour) };
  const hoursOf = (more: object) => {
    const { energyBin, month } = tariffClock(readTariff(text({ ...byHour, ...more })));
    return { clock: (day: number, hour: number) => energyBin[(day - 1) * 24 + hour]! % 24, month: (day: number, hour: number) => month[(day - 1) * 24 + hour]!, bin: (i: number) => energyBin[i]! };
  };

  it('standard time is standard time all year', () => {
    const { clock } = hoursOf({});
    for (const day of [1, 70, 90, 180, 300, 310, 365]) for (const hour of [0, 1, 2, 13, 23]) expect(clock(day, hour)).toBe(hour);
  });

  it('daylight time between two days begins at two and ends at one, standard', () => {
    // 25 March is day 84, 28 October day 301.
    const { clock, month } = hoursOf({ clock: 'daylight', daylightfirstday: '03-25', daylightlastday: '10-28' });
    expect([0, 1, 2, 3, 23].map((hour) => clock(84, hour))).toEqual([0, 1, 3, 4, 0]);
    expect([0, 1, 2].map((hour) => clock(301, hour))).toEqual([1, 1, 2]);
    expect([clock(83, 12), clock(85, 12), clock(300, 12), clock(302, 12)]).toEqual([12, 13, 13, 12]);
    // The last hour of 30 April is the first of May by daylight time.
    expect([month(120, 22), month(120, 23)]).toEqual([3, 4]);
  });

  it('south of the equator it runs through the new year', () => {
    // 4 October is day 277, 5 April day 95.
    const { clock, month, bin } = hoursOf({ clock: 'daylight', daylightfirstday: '10-04', daylightlastday: '04-05' });
    expect([1, 2].map((hour) => clock(277, hour))).toEqual([1, 3]);
    expect([0, 1].map((hour) => clock(95, hour))).toEqual([1, 1]);
    expect([clock(1, 0), clock(94, 12), clock(96, 12), clock(180, 12), clock(278, 12), clock(365, 12)]).toEqual([1, 13, 12, 12, 13, 13]);
    expect([month(365, 23), bin(8759)]).toEqual([0, 0]);
  });

  it('without dates it is the second Sunday of March to the first of November', () => {
    // With 1 January a Monday: 11 March is day 70, 4 November day 308.
    const { clock } = hoursOf({ clock: 'daylight' });
    expect([clock(69, 12), clock(70, 1), clock(70, 2), clock(307, 12), clock(308, 0), clock(308, 1), clock(309, 12)]).toEqual([12, 1, 3, 13, 1, 1, 12]);
  });

  it('weekends are Saturday and Sunday, whichever day the year begins with', () => {
    const weekends = { energyratestructure: [[{ rate: 0.1 }], [{ rate: 0.2 }]], energyweekendschedule: table(() => 1) };
    for (const startWeekday of [0, 4, 5, 6]) {
      const { energyBin } = tariffClock(readTariff(text(weekends)), startWeekday);
      for (let day = 0; day < 14; day++) expect(energyBin[day * 24 + 12]).toBe((day + startWeekday) % 7 >= 5 ? 1 : 0);
    }
  });

  it('refuses a weekday that is none and a tariff with an error, naming the error', () => {
    for (const weekday of [-1, 7, 0.5]) expect(() => tariffClock(readTariff(text({})), weekday)).toThrow('startWeekday');
    expect(() => tariffClock(readTariff(text({ fixedchargefirstmeter: 1, mincharge: -1, minchargeunits: '$/month' })))).toThrow('t: /mincharge');
  });
});

describe('the least bill', () => {
  const least = { mincharge: 20, minchargeunits: '$/month' };
  it('raises what is below it and nothing else, in the fast year as in the bill', () => {
    const tariff = readTariff(text(least));
    // 0.5 kW at 10 cents: 372 kWh in a month of 31 days, 37.20 $; 0.1 kW: 7.44 $.
    expect(billYear(tariff, flatUse(0.5)).months[0]).toMatchObject({ minimum_cents: 2000, raised_cents: 0, total_cents: 3720 });
    expect(billYear(tariff, flatUse(0.1)).months[0]!.raised_cents).toBeCloseTo(2000 - 744, 6);
    expect(yearCost_cents(tariff, flatUse(0.1))).toBe(24_000);
    expect(yearCost_cents(tariff, flatUse(0.5))).toBeCloseTo(8760 * 5, 6);
  });

  it('a day grows with the days of the month', () => {
    const tariff = readTariff(text({ mincharge: 1, minchargeunits: '$/day' }));
    expect([0, 1, 3].map((month) => billYear(tariff, flatUse(0)).months[month]!.total_cents)).toEqual([3100, 2800, 3000]);
    expect(yearCost_cents(tariff, flatUse(0))).toBe(36_500);
  });

  it('is not named where there is none, and a month that is paid for is not raised to nothing', () => {
    const tariff = readTariff(text({ energyratestructure: [[{ rate: 0.1, sell: 0.05 }]] }));
    const bill = billYear(tariff, flatUse(-1));
    expect(bill.months[0]).not.toHaveProperty('minimum_cents');
    expect(bill.months[0]).toMatchObject({ total_cents: -31 * 24 * 5, raised_cents: 0 });
    expect(yearCost_cents(tariff, flatUse(-1))).toBeCloseTo(-8760 * 5, 6);
    expect(bill.assumed).toEqual([]);
  });
});

describe('steps and peaks that are not reached', () => {
  it('are not on the bill, but the first step of what is used always is', () => {
    const tariff = readTariff(text({ energyratestructure: [[{ rate: 0.1, max: 300 }, { rate: 0.2, max: 500 }, { rate: 0.3 }]], demandratestructure: [[{ rate: 4 }], [{ rate: 9 }]], demandweekdayschedule: table((hour) => (hour === 15 ? 1 : 0)), demandweekendschedule: table(() => 0) }));
    const use = Float64Array.from({ length: 8760 }, (_, i) => (i % 24 === 15 ? 0 : i < 31 * 24 ? 1 : 0.1));
    const [january, february] = billYear(tariff, use).months;
    // 31 days of 23 hours of 1 kWh, 713 kWh; 28 days of 2.3 kWh, 64.4 kWh.
    expect(january!.energy.map(({ tier, kWh }) => [tier, kWh])).toEqual([[0, 300], [1, 200], [2, expect.closeTo(213, 9)]]);
    expect(february!.energy.map(({ tier, kWh }) => [tier, kWh])).toEqual([[0, expect.closeTo(64.4, 9)]]);
    // In period 1, 15:00 on weekdays, nothing is drawn.
    expect(january!.demand).toEqual([{ period: 0, kW: 1, cents: 400 }]);
  });
});

describe('use known by month', () => {
  const twoPeriods = { energyratestructure: [[{ rate: 0.1, sell: 0.04 }], [{ rate: 0.3 }]], energyweekdayschedule: table((hour) => (hour < 6 ? 1 : 0)), energyweekendschedule: table((hour) => (hour < 6 ? 1 : 0)) };

  it('is spread by the hours of each period, and that is said', () => {
    const bill = billOfMonths(readTariff(text(twoPeriods)), { use_kWh: [400, 800, ...Array<number>(10).fill(0)] });
    expect(bill.months.slice(0, 2).map(({ energy }) => energy.map(({ kWh }) => kWh))).toEqual([[300, 100], [600, 200]]);
    expect(bill.months[1]!.total_cents).toBe(6000 + 6000);
    expect(bill.assumed).toEqual(['use of a month is spread evenly over its hours to split it between price periods']);
    expect(billOfMonths(readTariff(text({})), { use_kWh: twelve(1) }).assumed).toEqual([]);
  });

  it('a single month with two periods is enough to say so', () => {
    const summer = twoPeriods.energyweekdayschedule.map((row, month) => (month === 6 ? row : row.map(() => 0)));
    const tariff = readTariff(text({ ...twoPeriods, energyweekdayschedule: summer, energyweekendschedule: summer }));
    expect(billOfMonths(tariff, { use_kWh: twelve(400) }).assumed).toHaveLength(1);
    expect(billOfMonths(tariff, { use_kWh: twelve(400) }).months.map(({ total_cents }) => total_cents)).toEqual(Array.from({ length: 12 }, (_, month) => (month === 6 ? 3000 + 3000 : 4000)));
  });

  it('below zero is sent out and paid for', () => {
    const bill = billOfMonths(readTariff(text({ energyratestructure: [[{ rate: 0.1, sell: 0.04 }]] })), { use_kWh: [-100, ...Array<number>(11).fill(0)] });
    expect(bill.months[0]!.exported).toEqual([{ period: 0, kWh: 100, cents: -400 }]);
    expect(bill.total_cents).toBe(-400);
  });

  it('takes shares that sum to one, a share of none among them, and refuses others', () => {
    const of = (...shares: number[]) => billOfMonths(readTariff(text(twoPeriods)), { use_kWh: twelve(100), periodShares: Array.from({ length: 12 }, () => shares) });
    expect(of(1, 0).months[0]!.total_cents).toBe(1000);
    expect(of(0.5, 0.5).months[0]!.total_cents).toBe(2000);
    for (const shares of [[1], [0.5, 0.5, 0], [1.5, -0.5], [0.5, 0.4], [Number.NaN, 1]]) expect(() => of(...shares)).toThrow('periodShares must be 2 shares that sum to 1');
    expect(() => billOfMonths(readTariff(text(twoPeriods)), { use_kWh: twelve(100), periodShares: [[1, 0]] })).toThrow('periodShares must hold 12 months');
  });

  it('peaks are billed in the demand periods that a month has', () => {
    // Period 1 only in July.
    const july = Array.from({ length: 12 }, (_, month) => Array.from({ length: 24 }, (_, hour) => (month === 6 && hour === 15 ? 1 : 0)));
    const demand = { demandratestructure: [[{ rate: 4 }], [{ rate: 9 }]], demandweekdayschedule: july, demandweekendschedule: july };
    const bill = billOfMonths(readTariff(text(demand)), { use_kWh: twelve(0), peak_kW: [2, 2, 2, 2, 2, 2, 3, 2, 2, 2, 2, 2] });
    expect(bill.months.map(({ demand_cents }) => demand_cents)).toEqual([800, 800, 800, 800, 800, 800, 1200 + 2700, 800, 800, 800, 800, 800]);
    expect(bill.assumed).toEqual(['the peak of a month is taken to be reached in each of its demand periods']);
    const oneTable = { ...demand, demandweekdayschedule: table(() => 1), demandweekendschedule: table(() => 1) };
    const one = billOfMonths(readTariff(text(oneTable)), { use_kWh: twelve(0), peak_kW: twelve(2) });
    expect(one.assumed).toEqual([]);
    expect(one.months.map(({ demand_cents }) => demand_cents)).toEqual(twelve(1800));
  });

  it('asks for peaks only where a charge hangs on them, and for figures always', () => {
    const free = { flatdemandstructure: [[{ rate: 0, max: 3 }, { rate: 0 }]] };
    expect(billOfMonths(readTariff(text(free)), { use_kWh: twelve(100) }).months[0]!.total_cents).toBe(1000);
    expect(() => billOfMonths(readTariff(text({ flatdemandstructure: [[{ rate: 0, max: 3 }, { rate: 2 }]] })), { use_kWh: twelve(1) })).toThrow('peak_kW must be given');
    for (const wrong of [Number.NaN, Infinity]) {
      expect(() => billOfMonths(readTariff(text({})), { use_kWh: [wrong, ...Array<number>(11).fill(1)] })).toThrow('use_kWh');
      expect(() => billOfMonths(readTariff(text({})), { use_kWh: twelve(1), peak_kW: [wrong, ...Array<number>(11).fill(1)] })).toThrow('peak_kW');
    }
    expect(() => billOfMonths(readTariff(text({})), { use_kWh: twelve(1), peak_kW: [...Array<number>(11).fill(1), -1] })).toThrow('peak_kW');
  });
});

describe('what a saved kWh is worth', () => {
  const clock = tariffClock(readTariff(text({})));
  it('is said where something is saved and used, and otherwise why not', () => {
    expect(weightedPrice_cents_kWh(clock, { before_kWh: flatUse(1), after_kWh: flatUse(0.5) })).toEqual({ saved_cents_kWh: expect.closeTo(10, 9) as unknown, average_cents_kWh: expect.closeTo(10, 9) as unknown });
    expect(weightedPrice_cents_kWh(clock, { before_kWh: flatUse(0), after_kWh: flatUse(0) })).toEqual({ saved_cents_kWh: { why: 'no electricity is saved' }, average_cents_kWh: { why: 'no electricity is used' } });
    // A kWh more is a kWh dearer; noise of the sums is no saving.
    expect(weightedPrice_cents_kWh(clock, { before_kWh: flatUse(0.5), after_kWh: flatUse(1) }).saved_cents_kWh).toBeCloseTo(10, 9);
    const noisy = flatUse(1e6);
    noisy[0]! += 1e-3;
    expect(weightedPrice_cents_kWh(clock, { before_kWh: noisy, after_kWh: flatUse(1e6) }).saved_cents_kWh).toEqual({ why: 'no electricity is saved' });
  });
});

it('sums of a part refuse what is no year of figures', () => {
  const clock = tariffClock(readTariff(text({})));
  expect(partSums(clock, flatUse(1))[0]).toBe(744);
  expect(() => partSums(clock, new Float64Array(8784))).toThrow('8760');
  for (const wrong of [-1, Number.NaN, Infinity]) expect(() => partSums(clock, flatUse(wrong))).toThrow(RangeError);
});
