import fc from 'fast-check';
import type { Bill } from '../portfolio/index.js';
import { oddAmounts } from './bill-amounts.js';
import { billDays, usableBills } from './usable-bills.js';

const MONTHS = [['2025-01-01', '2025-01-31'], ['2025-02-01', '2025-02-28'], ['2025-03-01', '2025-03-31'], ['2025-04-01', '2025-04-30'], ['2025-05-01', '2025-05-31'], ['2025-06-01', '2025-06-30']] as const;

const bill = (at: number, of: Partial<Bill> = {}): Bill => ({
  meter: 'M', firstDay: MONTHS[at]![0], lastDay: MONTHS[at]![1], use_kWh: 800 + 50 * at, peak_kW: null, amount_cents: 16_000 + 1000 * at, estimated: false, inventoryRow: { file: 'bills.csv', row: at + 2 }, ...of,
});
const year = (over: Readonly<Record<number, Partial<Bill>>> = {}): Bill[] => MONTHS.map((_, i) => bill(i, over[i]));
const kinds = (bills: readonly Bill[]): [string, string][] => usableBills(bills).leftOut.flatMap((out) => out.troubles.map(({ kind }): [string, string] => [out.bill.firstDay, kind]));

describe('which bills may be compared with the weather', () => {
  it('takes plain monthly bills as they are', () => {
    const bills = year();
    expect(usableBills(bills)).toEqual({ used: bills, leftOut: [], gaps: [] });
  });

  it('leaves an estimate out, and the reading after it that makes up for it', () => {
    expect(kinds(year({ 2: { estimated: true } }))).toEqual([['2025-03-01', 'estimated'], ['2025-04-01', 'settles-estimate']]);
  });

  it('leaves out use below zero', () => {
    expect(kinds(year({ 1: { use_kWh: -40 } }))).toEqual([['2025-02-01', 'negative']]);
  });

  it('leaves out a period of two months among monthly ones and says its dates', () => {
    const bills = [...year({ 2: { lastDay: '2025-04-30', use_kWh: 1700 } })].filter((_, i) => i !== 3);
    const [out] = usableBills(bills).leftOut;
    expect(out?.why).toBe('61 days, 2025-03-01 to 2025-04-30; the bills of this meter usually run 31');
    expect(usableBills(bills).used).toHaveLength(4);
  });

  it('takes two-monthly bills where the meter is read every two months', () => {
    const bills = [bill(0, { lastDay: '2025-02-28' }), bill(2, { lastDay: '2025-04-30' }), bill(4, { lastDay: '2025-06-30' })];
    expect(kinds(bills)).toEqual([]);
  });

  it('sees MWh written as kWh and Wh written as kWh, never a meter that hardly runs in winter', () => {
    expect(kinds(year({ 3: { use_kWh: 0.95 } }))).toEqual([['2025-04-01', 'unit-slip']]);
    expect(kinds(year({ 3: { use_kWh: 950_000 } }))).toEqual([['2025-04-01', 'unit-slip']]);
    expect(kinds(year({ 0: { use_kWh: 30 }, 1: { use_kWh: 0 } }))).toEqual([]);
  });

  it('leaves out both of two bills that share days', () => {
    expect(kinds(year({ 2: { lastDay: '2025-04-02' } }))).toEqual([['2025-03-01', 'overlap'], ['2025-04-01', 'overlap']]);
  });

  it('names the days no bill covers', () => {
    expect(usableBills(year().filter((_, i) => i !== 2)).gaps).toEqual([{ meter: 'M', firstDay: '2025-03-01', lastDay: '2025-03-31', days: 31 }]);
  });

  it('keeps meters apart', () => {
    const small = year().map((each) => ({ ...each, meter: 'S', use_kWh: each.use_kWh / 1000 }));
    expect(kinds([...year(), ...small])).toEqual([]);
  });

  it('every bill is used or left out, once, whatever the order, and none is changed', () => {
    const some = fc.array(fc.record({ at: fc.nat(5), use_kWh: fc.integer({ min: -100, max: 5000 }), estimated: fc.boolean(), days: fc.integer({ min: 1, max: 80 }) }), { maxLength: 12 });
    fc.assert(fc.property(some, (rows) => {
      const bills = rows.map(({ at, use_kWh, estimated, days }, i) => bill(at, { use_kWh, estimated, lastDay: new Date(Date.parse(MONTHS[at]![0]) + (days - 1) * 86_400_000).toISOString().slice(0, 10), inventoryRow: { file: 'f', row: i } }));
      const { used, leftOut } = usableBills(bills);
      const all = new Set([...used, ...leftOut.map((out) => out.bill)]);
      return all.size === bills.length && bills.every((each) => all.has(each)) && leftOut.every(({ why }) => why.length > 0);
    }));
  });

  it('counts both ends of a bill', () => {
    expect(billDays({ firstDay: '2024-02-01', lastDay: '2024-03-01' })).toBe(30);
  });
});

describe('amounts that do not go with the use', () => {
  it('are named with both prices', () => {
    expect(oddAmounts(year()).length).toBe(0);
    const [odd] = oddAmounts(year({ 4: { amount_cents: 2_000_000 } }));
    expect(odd?.bill.firstDay).toBe('2025-05-01');
    expect(odd?.why).toMatch(/^2000\.0 cents a kWh from 2025-05-01 to 2025-05-31; the other bills of this meter ask 20\.\d$/);
  });
});
