import type { Building, TariffText } from '#calc';
import { isDaylightDay, utcOffset_h, wallClocks } from './wall-clock.js';

/** Hours New York's clock is ahead of its standard time at noon, by the time zone tables of the platform. */
function newYork_h(day: string): number {
  const hour = new Intl.DateTimeFormat('en-US', { timeZone: 'America/New_York', hour: 'numeric', hourCycle: 'h23' }).format(new Date(`${day}T17:00:00Z`));
  return Number(hour) - 12;
}

const building = (id: string, change: Partial<Building> = {}) => ({ id, timeZone_h: -5, latitude_deg: 25.8, longitude_deg: -80.3, ...change }) as Building;
const all = Array<number[]>(12).fill(Array<number>(24).fill(0));
const tariff = (label: string, clock: 'standard' | 'daylight', more: object = {}): TariffText => ({ label, clock, energyratestructure: [[{ rate: 0.1 }]], energyweekdayschedule: all, energyweekendschedule: all, ...more });
const home = (id: string, text: TariffText) => ({ dwelling: { building: id, meter: { tariff: text } } }) as never;

describe('the clock on the wall', () => {
  it('goes forward and back on the days the time zone tables have, every day of twelve years', () => {
    const wrong: string[] = [];
    for (let day = Date.UTC(2026, 0, 1); day < Date.UTC(2038, 0, 1); day += 86_400_000) {
      const iso = new Date(day).toISOString().slice(0, 10);
      if (isDaylightDay({ kind: 'daylight', dates: null }, iso) !== (newYork_h(iso) === 1)) wrong.push(iso);
    }
    expect(wrong).toEqual([]);
  });

  it('takes the dates a tariff gives, over the turn of the year too', () => {
    const time = { kind: 'daylight', dates: { first: [9, 4], last: [3, 5] } } as const; // 4 October to 5 April
    expect(['2026-10-03', '2026-10-04', '2027-01-01', '2027-04-04', '2027-04-05'].map((d) => isDaylightDay(time, d))).toEqual([false, true, true, true, false]);
  });

  it('is that of a tariff of the building, else of a near one in its zone, and not known where all tariffs bill by standard time', () => {
    const buildings = new Map(['A', 'B', 'C', 'D'].map((id) => [id, building(id, id === 'C' ? { latitude_deg: 40 } : id === 'D' ? { timeZone_h: -6 } : {})]));
    const clockOf = wallClocks(buildings, [home('A', tariff('T', 'daylight')), home('B', tariff('S', 'standard')), home('C', tariff('S', 'standard')), home('D', tariff('S', 'standard'))]);
    expect(['A', 'B', 'C', 'D'].map((id) => [clockOf(buildings.get(id)!).tariff, clockOf(buildings.get(id)!).ahead_h('2026-07-01')])).toEqual([['T', 1], ['T', 1], [null, null], [null, null]]);
  });

  it('is as the survey says, by the dates of the law or of a tariff of the place', () => {
    const says = (daylightTime: boolean | null, tariffs: never[] = []) => wallClocks(new Map([['A', building('A')]]), tariffs)({ ...building('A'), daylightTime });
    expect(['2026-03-07', '2026-03-08', '2026-10-31', '2026-11-01'].map((d) => says(true).ahead_h(d))).toEqual([0, 1, 1, 0]); // second Sunday of March, first of November
    expect(says(false, [home('A', tariff('T', 'daylight'))]).ahead_h('2026-07-01')).toBe(0);
    expect([says(true).isSurveyed, says(false).isSurveyed, says(true, [home('A', tariff('T', 'daylight'))]).tariff, says(null).ahead_h('2026-07-01')]).toEqual([true, true, 'T', null]);
  });

  it('is four hours behind world time in the summer of the fifth zone, and unknown without a rule', () => {
    expect([utcOffset_h(building('A'), 1), utcOffset_h(building('A'), 0), utcOffset_h(building('A'), null)]).toEqual([-4, -5, null]);
  });
});
