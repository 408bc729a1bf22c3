import { billOfMonths, billYear, readTariff, tariffClock, yearCost_cents, type TariffText } from '#calc';
import { hold } from './checks/hold.js';
import { flatTariff, tariff } from './checks/money.js';
import { demandSteps, energyBlocks } from './tariff-steps.js';

tariff.forEach(hold);

const everyHour = (period: number): number[][] => Array.from({ length: 12 }, () => Array<number>(24).fill(period));


/** Two blocks in winter, dear weekday afternoons from June to September, 12.50 a month and never less than 15. */
function seasonal(more: object = {}): TariffText {
  const summer = (month: number): boolean => month >= 5 && month <= 8;
  const weekday = Array.from({ length: 12 }, (_, month) => Array.from({ length: 24 }, (_, hour) => (!summer(month) ? 0 : hour >= 15 && hour < 20 ? 2 : 1)));
  const weekend = Array.from({ length: 12 }, (_, month) => Array<number>(24).fill(summer(month) ? 1 : 0));
  return {
    label: 'seasonal',
    clock: 'standard',
    energyratestructure: [[{ rate: 0.11, max: 600, unit: 'kWh' }, { rate: 0.15, unit: 'kWh' }], [{ rate: 0.12, adj: 0.01 }], [{ rate: 0.31, adj: 0.01 }]],
    energyweekdayschedule: weekday,
    energyweekendschedule: weekend,
    fixedchargefirstmeter: 12.5,
    fixedchargeunits: '$/month',
    mincharge: 15,
    minchargeunits: '$/month',
    ...more,
  };
}

const even = (kWh: number): Float64Array => new Float64Array(8760).fill(kWh);

describe('charges by steps on whole bills', () => {
  it('a whole bill says the same in each month', () => {
    for (const { given, expect: expected } of energyBlocks.rows) {
      const bill = billOfMonths(readTariff(flatTariff(given.tiers)), { use_kWh: Array<number>(12).fill(given.amount) });
      expect(bill.months.map((month) => month.total_cents)).toEqual(Array(12).fill(Math.round(expected.dollars * 100)));
      expect(bill.assumed).toEqual([]);
    }
  });

  it('a demand charge by steps is billed on the peak of the month', () => {
    for (const { given, expect: expected } of demandSteps.rows) {
      const tariff = readTariff(flatTariff([{ rate: 0 }], { demandratestructure: [given.tiers], demandweekdayschedule: everyHour(0), demandweekendschedule: everyHour(0) }));
      const use = even(1);
      use[200] = given.amount;
      expect(billYear(tariff, use).months[0]!.total_cents).toBe(Math.round(expected.dollars * 100));
    }
  });
});

describe('the seasonal tariff worked by hand', () => {
  it('January, 800 kWh: 600 × 0.11 + 200 × 0.15 + 12.50 = 108.50', () => {
    const bill = billOfMonths(readTariff(seasonal()), { use_kWh: [800, ...Array<number>(11).fill(0)] });
    expect(bill.months[0]).toMatchObject({ total_cents: 10_850, fixed_cents: 1250, energy: [{ period: 0, tier: 0, kWh: 600 }, { period: 0, tier: 1, kWh: 200 }] });
  });

  it('a month with no use costs the minimum, not the fixed charge', () => {
    const bill = billOfMonths(readTariff(seasonal()), { use_kWh: Array<number>(12).fill(0) });
    expect(bill.months[1]).toMatchObject({ minimum_cents: 1500, raised_cents: 250, total_cents: 1500 });
    expect(bill.total_cents).toBe(18_000);
  });

  it('June 2001 at 1 kWh an hour: 21 weekdays × 5 h × 0.32 + 615 h × 0.13 + 12.50 = 126.05', () => {
    const june = billYear(readTariff(seasonal()), even(1)).months[5]!;
    expect(june.energy.map((line) => [line.period, line.kWh])).toEqual([[1, 615], [2, 105]]);
    expect(june.total_cents).toBe(12_605);
  });

  it('a year that begins on a Saturday moves the weekends: June then has 22 weekdays', () => {
    expect(billYear(readTariff(seasonal()), even(1), 5).months[5]!.energy[1]!.kWh).toBe(22 * 5);
  });

  it('on daylight time the dear afternoon begins an hour earlier in the hourly series', () => {
    const standard = tariffClock(readTariff(seasonal()));
    const daylight = tariffClock(readTariff(seasonal({ clock: 'daylight' })));
    const day = 181; // Sunday 1 July 2001 is day 181, so Monday 2 July is day 182
    const periodAt = (clock: typeof standard, hour: number): number => clock.energyBin[(day + 1) * 24 + hour]! % 3;
    expect([14, 15, 18, 19].map((hour) => periodAt(standard, hour))).toEqual([1, 2, 2, 2]);
    expect([13, 14, 18, 19].map((hour) => periodAt(daylight, hour))).toEqual([1, 2, 2, 1]);
  });

  it('daylight time runs from 2:00 on 11 March to 1:00 standard on 4 November 2001 when no dates are given', () => {
    const clock = tariffClock(readTariff(flatTariff([{ rate: 0.1 }], { clock: 'daylight', energyratestructure: [[{ rate: 0.1 }], [{ rate: 0.2 }]], energyweekdayschedule: everyHour(0).map((row) => row.map((_, hour) => (hour === 3 ? 1 : 0))), energyweekendschedule: everyHour(0).map((row) => row.map((_, hour) => (hour === 3 ? 1 : 0))) })));
    const periodOf = (day: number, hour: number): number => clock.energyBin[day * 24 + hour]! % 2;
    const march11 = 31 + 28 + 10;
    const november4 = 304 + 3;
    expect([periodOf(march11 - 1, 3), periodOf(march11, 2), periodOf(march11, 3)]).toEqual([1, 1, 0]);
    expect([periodOf(november4 - 1, 2), periodOf(november4, 2), periodOf(november4, 3)]).toEqual([1, 0, 1]);
  });

  it('the fast year is the year of the bills before rounding', () => {
    const tariff = readTariff(seasonal());
    const use = Float64Array.from({ length: 8760 }, (_, hour) => 0.4 + Math.sin(hour / 7) ** 2);
    const exact = billYear(tariff, use).months.reduce((sum, month) => sum + month.exact_cents, 0);
    expect(yearCost_cents(tariffClock(tariff), use)).toBeCloseTo(exact, 6);
  });
});
