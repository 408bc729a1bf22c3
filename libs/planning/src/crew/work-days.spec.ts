import { blocks, daysAfter, daysBetween, workDays } from './work-days.js';

describe('working days', () => {
  // July 2026: the 1st is a Wednesday.
  it('three days a week are Monday, Wednesday and Friday', () => expect(workDays('2026-07-01', '2026-07-10', 3)).toEqual(['2026-07-01', '2026-07-03', '2026-07-06', '2026-07-08', '2026-07-10']));
  it('five days a week leave the weekend out', () => expect(workDays('2026-07-03', '2026-07-07', 5)).toEqual(['2026-07-03', '2026-07-06', '2026-07-07']));
  it('half a day a week is a day in two weeks', () => expect(workDays('2026-07-01', '2026-07-28', 0.5)).toHaveLength(2));
  it('none a week is none', () => expect(workDays('2026-07-01', '2026-12-31', 0)).toEqual([]));
  it('counts over the end of a leap February', () => {
    expect(daysAfter('2028-02-28', 1)).toBe('2028-02-29');
    expect(daysAfter('2028-03-01', -2)).toBe('2028-02-28');
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(3);
    expect(daysBetween('2028-03-02', '2028-03-01')).toBe(0);
  });
  it('refuses more days than a week has', () => expect(() => workDays('2026-07-01', '2026-07-10', 8)).toThrow('days_wk'));
});

describe('a block without work', () => {
  const storm = { firstDay: '2026-08-15', lastDay: '2026-10-14', reason: 'storm season: no exterior access' };
  const on = (day: string, isOutdoor: boolean) => ({ day, isOutdoor });
  it('on exterior access stops outdoor film and leaves room-side film free', () => expect([blocks(storm, on('2026-09-01', true)), blocks(storm, on('2026-09-01', false))]).toEqual([true, false]));
  it('of any other kind stops all', () => expect(blocks({ ...storm, reason: 'holidays' }, on('2026-09-01', false))).toBe(true));
  it('holds on its first and last day and not beside them', () => expect(['2026-08-14', '2026-08-15', '2026-10-14', '2026-10-15'].map((d) => blocks(storm, on(d, true)))).toEqual([false, true, true, false]));
});
