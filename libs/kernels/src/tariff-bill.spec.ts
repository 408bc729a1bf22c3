import type { Kernel, KernelRoom } from './kernel.js';
import { kernel } from './tariff-bill.js';

const room: KernelRoom = {
  catalogue: () => {
    throw new Error('a bill reads no catalogue');
  },
  weather: () => {
    throw new Error('a bill reads no weather');
  },
};
const everyHour = (period: number): number[][] => Array.from({ length: 12 }, () => Array<number>(24).fill(period));
const blocks = {
  label: 'blocks',
  energyratestructure: [[{ rate: 0.12, max: 500 }, { rate: 0.16, max: 1000 }, { rate: 0.22 }]],
  energyweekdayschedule: everyHour(0),
  energyweekendschedule: everyHour(0),
  utility: 'a field that is not read',
};
const twelve = (value: number): number[] => Array<number>(12).fill(value);
const totals = (value: unknown): number[] => (kernel.run(value, room) as { months: { total_cents: number }[] }).months.map((month) => month.total_cents);

/** What a kernel throws at a value. */
function refusalOf(of: Kernel, value: unknown): unknown {
  try {
    return of.run(value, room);
  } catch (fault) {
    return fault;
  }
}

describe('kernel tariff-bill', () => {
  it('bills twelve months of 1400 kWh at 228 dollars each', () => {
    expect(kernel.run({ tariff: blocks, monthlyUse_kWh: twelve(1400) }, room)).toMatchObject({
      months: twelve(0).map(() => ({ energy: [{ period: 0, tier: 0, kWh: 500, cents: 6000 }, { tier: 1, kWh: 500, cents: 8000 }, { tier: 2, kWh: 400, cents: 8800 }], demand_cents: 0, fixed_cents: 0, total_cents: 22_800 })),
      total_cents: 12 * 22_800,
    });
  });

  it('bills hours and months alike where one price holds all day', () => {
    const electricity_kWh = Array<number>(8760).fill(1);
    const months = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map((days) => days * 24);
    expect(totals({ tariff: blocks, electricity_kWh })).toEqual(totals({ tariff: blocks, monthlyUse_kWh: months }));
  });

  it('bills the peak of each month on demand steps', () => {
    const tariff = { ...blocks, energyratestructure: [[{ rate: 0 }]], flatdemandstructure: [[{ rate: 24.368, max: 100 }, { rate: 17.031 }]] };
    expect(totals({ tariff, monthlyUse_kWh: twelve(0), monthlyPeak_kW: [60, 130, ...Array<number>(10).fill(0)] }).slice(0, 2)).toEqual([146_208, 294_773]);
  });

  it.each([
    [{ tariff: blocks }, ''],
    [{ tariff: blocks, monthlyUse_kWh: twelve(1), electricity_kWh: Array<number>(8760).fill(1) }, ''],
    [{ tariff: blocks, monthlyUse_kWh: [1, 2] }, '/monthlyUse_kWh'],
    [{ tariff: blocks, monthlyUse_kWh: twelve(1), month: 3 }, '/month'],
    [{ tariff: { ...blocks, energyweekdayschedule: everyHour(4) }, monthlyUse_kWh: twelve(1) }, '/tariff/energyweekdayschedule/0'],
    [{ tariff: { ...blocks, energyratestructure: [[{ rate: 0.1 }, { rate: 0.2 }]] }, monthlyUse_kWh: twelve(1) }, '/tariff/energyratestructure/0/0/max'],
    [{ tariff: { ...blocks, minchargeunits: '$/year', mincharge: 4 }, monthlyUse_kWh: twelve(1) }, '/tariff/minchargeunits'],
    [{ tariff: { ...blocks, flatdemandstructure: [[{ rate: 5 }]] }, monthlyUse_kWh: twelve(1) }, ''],
  ])('refuses case %# at "%s"', (given, pointer) => {
    expect(refusalOf(kernel, given)).toMatchObject({ pointer });
  });

  it('names the case of an array', () => {
    expect(refusalOf(kernel, [{ tariff: blocks, monthlyUse_kWh: twelve(1) }, { tariff: { ...blocks, energyratestructure: 3 }, monthlyUse_kWh: twelve(1) }])).toMatchObject({ pointer: '/1/tariff/energyratestructure' });
  });

  it('states its schema', () => {
    expect(kernel.schema()).toMatchObject({ title: 'tariff-bill', properties: { tariff: { type: 'object' }, electricity_kWh: { type: 'array' } } });
  });
});
