import { bearingOf, facingCell } from './compass-cell.js';
import { dateCell, monthsCell, yearCell } from './date-cell.js';
import { efficiencyCell, efficiencyOf } from './efficiency-cell.js';
import { moneyCell } from './money-cell.js';
import { numberIn, shareCell } from './number-cell.js';
import { quantityCell } from './quantity-cell.js';
import type { CellContext } from './reading.js';
import { saysUnknown } from './cell-text.js';

const context: CellContext = { unit: '', decimal: '.', dateOrder: null, glazingWords: { keyOf: () => null, examples: [] }, facadeWords: {} };

describe('reading cells', () => {
  it.each([['1,250.5', '.', 1250.5], ['1.250,5', ',', 1250.5], ['1 250', '.', 1250], ['−3', '.', -3], ['35,5', '.', 35.5], ['1.250', ',', 1250], ['1.250', '.', 1.25], ['.5', '.', 0.5]] as const)(
    'the number "%s" with decimal "%s" is %f', (text, decimal, value) => expect(numberIn(text, decimal)).toBe(value));

  it.each(['1,2,3', '12 34', 'ten', '1.2.3', ''])('"%s" is no number', (text) => expect(numberIn(text, '.')).toBeNull());

  it.each([['$1,250.00', 125_000], ['US$ 12', 1200], ['0.005', 1], ['19.995', 2000], ['free', 0], ['12 €', 1200]])('the amount "%s" is %i cents', (text, cents) =>
    expect(moneyCell()(text, context).value).toBe(cents));

  it.each([['(40.00)', -4000], ['40-', -4000], ['-1,250.5', -125_050]])('"%s" is less than nothing: %i cents', (text, cents) =>
    expect(moneyCell({ min_cents: -1e9 })(text, context).value).toBe(cents));

  it.each([['N', 0], ['north-west', 315], ['Northwest', 315], ['SSW', 202.5], ['south south west', 202.5], ['E side', 90], ['West facing', 270]])('"%s" looks to %f°', (text, degrees) =>
    expect(bearingOf(text)).toBe(degrees));

  it.each(['SSW/SW', 'street side', 'up'])('nobody knows where "%s" is', (text) => expect(facingCell(text, context)).toMatchObject({ value: null, remark: { severity: 'warning' } }));

  it.each([['350°', 350], ['360', 0], ['22.5 deg', 22.5]])('"%s" is %f°', (text, degrees) => expect(facingCell(text, context).value?.azimuth_deg).toBe(degrees));

  it.each([['2026-07-01', '2026-07-01'], ['13/04/2025', '2025-04-13'], ['04/13/2025', '2025-04-13'], ['1 Jul 2026', '2026-07-01'], ['July 1, 2026', '2026-07-01'], ['05/05/2025', '2025-05-05']])(
    'the date "%s" is %s', (text, date) => expect(dateCell(text, context).value).toBe(date));

  it('a date in figures follows the order of its file', () => {
    expect(dateCell('03/04/2025', { ...context, dateOrder: 'day-month' }).value).toBe('2025-04-03');
    expect(dateCell('03/04/2025', { ...context, dateOrder: 'month-day' }).value).toBe('2025-03-04');
    expect(dateCell('03/04/2025', context).remark?.code).toBe('date-order-unclear');
    expect(dateCell('2025-02-29', context).remark?.code).toBe('not-a-date');
  });

  it.each([['1968', 1968], ['1968?', 1968], ['c.1931', 1931], ['1931/2012', 1931], ['60s', 1965]])('the year "%s" is %i', (text, year) => expect(yearCell(text, context).value).toBe(year));

  it.each([['6;7;8', [6, 7, 8]], ['Jun-Sep', [6, 7, 8, 9]], ['Nov-Feb', [1, 2, 11, 12]], ['1-12', [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]]])('the months "%s"', (text, months) =>
    expect(monthsCell(text, context).value).toEqual(months));

  // A ton of cooling is 12,000 Btu/h by definition, 3516.85 W.
  it.each([['3.5T', '', 12_309], ['42000 btu', '', 12_309], ['42 kBtu/h', '', 12_309], ['12.3 kW', '', 12_300], ['2', 'tons', 7033.7]])('the capacity "%s" (%s) is about %f W', (text, unit, watts) =>
    expect(Math.abs((quantityCell('power', { min: 0 })(text, { ...context, unit }).value ?? NaN) - watts)).toBeLessThan(1));

  // 0.30 Btu/h·ft²·°F × 5.678263 = 1.7035 W/m²K.
  it('a U-factor in US units', () => expect(quantityCell('uFactor', { min: 0 })('0.30', { ...context, unit: 'Btu_h_ft2F' }).value).toBeCloseTo(1.7035, 4));

  it('scales of efficiency are kept apart', () => {
    const read = (text: string) => efficiencyCell(text, context).value;
    expect(efficiencyOf(read('SEER2 13.4'), null)).toEqual({ scale: 'seer2', value: 13.4 });
    expect(efficiencyOf(read('13 SEER'), null)).toEqual({ scale: 'seer', value: 13 });
    expect(efficiencyOf(read('0.62 kW/ton'), null)).toEqual({ scale: 'kW_ton', value: 0.62 });
    expect(efficiencyOf(read('13'), 'seer')).toEqual({ scale: 'seer', value: 13 });
    expect(efficiencyOf(read('13'), null)).toHaveProperty('why');
    expect(efficiencyOf(read('SEER 13'), 'seer2')).toHaveProperty('why');
    expect(efficiencyOf(read('COP 13'), null)).toHaveProperty('why');
  });

  it.each([['0.25', '', 0.25], ['25 %', '', 0.25], ['25', 'pct', 0.25]])('the share "%s" in "%s"', (text, unit, share) => expect(shareCell(text, { ...context, unit }).value).toBe(share));
  it('25 without a sign is no share', () => expect(shareCell('25', context).remark?.code).toBe('out-of-range'));

  it.each(['', ' ', '#N/A', '#REF!', '########', 'n/a', '-', '—', 'TBD', '?', 'Unknown'])('"%s" says that nobody knows', (text) => expect(saysUnknown(text)).toBe(true));
  it.each(['0', 'none', '-1', 'no'])('"%s" says something', (text) => expect(saysUnknown(text)).toBe(false));
});
