import type { Building } from '#calc';
import { onePhase } from '../../../../test/portfolios/film-option.js';
import { calendarOf } from './calendar.js';
import type { CalendarRequest } from './calendar-request.js';
import { inEnglish } from '../words/told.js';
import type { OpenOrder } from './work-orders.js';
import type { WorkOrder } from './work-order-types.js';

const building = (id: string, change: Partial<Building> = {}) => ({ id, turnover_1_yr: null, ...change }) as Building;
const open = (id: string, best: number, change: Omit<Partial<OpenOrder>, 'order'> & { readonly order?: Partial<WorkOrder> } = {}): OpenOrder => {
  const home = change.building ?? building('B1');
  return {
    ownerEntity: 'O', facades: [270], windows: [], empty: null, occupiedFrom: '2026-07-01', isOutdoor: false, building: home, ...change,
    order: { id, dwelling: `${home.id}/${id}`, phase: 'O/1', building: home.id, earliest: '2026-07-01', latest: '2027-06-30', notice_h: 24, minutes: { low: best / 2, best, high: best * 2 }, ...change.order } as WorkOrder,
  };
};
// A crew of two, 4 hours at the glass: 480 person-minutes a day, 60 of them for loading and keys; Monday, Wednesday, Friday.
const request = (change: Partial<CalendarRequest> = {}): CalendarRequest => ({
  phases: [onePhase(0)], hours: { crews: 1, size: 2, days_wk: 3, hours_day: 4 }, noWork: [], mobilisation_min: () => 60, noAccess: { share: 0.1, source: 'test' }, madeOn: '2026-06-01',
  shadeOn: () => [], ...change,
});
const placed = (opens: readonly OpenOrder[], change: Partial<CalendarRequest> = {}) => {
  const { calendar, findings } = calendarOf(opens, request(change));
  return { calendar, findings, on: calendar.days.map((d) => [d.day, d.building, d.visits.map((v) => v.workOrder)]) };
};

describe('the calendar', () => {
  it('fills a day of one building up to the minutes and goes on with the next working day', () => {
    // 60 + 200 + 200 = 460 of 480; the third does not fit.
    expect(placed([open('a', 200), open('b', 200), open('c', 200)]).on).toEqual([['2026-07-01', 'B1', ['a', 'b']], ['2026-07-03', 'B1', ['c']]]);
  });

  it('counts loading and keys: without them all three would fit one day of 600', () => {
    expect(placed([open('a', 200), open('b', 200), open('c', 80)], { mobilisation_min: () => 0 }).on).toHaveLength(1);
    expect(placed([open('a', 200), open('b', 200), open('c', 80)]).on).toHaveLength(2);
  });

  it('keeps one building a day', () => {
    expect(placed([open('a', 100), open('b', 100, { building: building('B2') })]).on.map(([, home]) => home)).toEqual(['B1', 'B2']);
  });

  it('puts a dwelling into the days it is known to stand empty, before all others', () => {
    const empty = open('e', 400, { empty: { from: '2026-07-03', until: '2026-07-06' }, order: { earliest: '2026-07-03' } });
    const { calendar, on } = placed([open('a', 400), open('b', 400), empty]);
    expect(on).toEqual([['2026-07-01', 'B1', ['a']], ['2026-07-03', 'B1', ['e']], ['2026-07-06', 'B1', ['b']]]);
    expect(calendar.days[1]!.visits[0]!.isEmpty).toBe(true);
  });

  it('does an empty dwelling by appointment when its empty days have no working day', () => {
    const empty = open('e', 400, { empty: { from: '2026-07-04', until: '2026-07-06' }, order: { earliest: '2026-07-04' } });
    const { calendar } = placed([empty]);
    expect(calendar.days[0]).toMatchObject({ day: '2026-07-01', visits: [{ isEmpty: false }] });
  });

  it('waits for letters and for the notice, and says when the notice must be out', () => {
    const late = placed([open('a', 100, { occupiedFrom: '2026-09-01', order: { earliest: '2026-09-01', notice_h: 48 } })]).calendar.days[0]!;
    expect(late.day).toBe('2026-09-02'); // Tuesday the 1st is no working day
    expect(late.visits[0]!.noticeBy).toBe('2026-08-31');
    expect(placed([open('a', 100)], { madeOn: '2026-07-01' }).on[0]![0]).toBe('2026-07-03');
  });

  it('spreads work longer than a day over following days, in equal parts', () => {
    const { calendar } = placed([open('a', 1000)]);
    expect(calendar.days.map((d) => [d.day, d.visits[0]!.part, d.visits[0]!.parts, d.visits[0]!.personMinutes.best])).toEqual([['2026-07-01', 1, 3, 333], ['2026-07-03', 2, 3, 333], ['2026-07-06', 3, 3, 333]]);
  });

  it('starts at eight after loading, adds half an hour’s break after four hours', () => {
    const hours = { crews: 1, size: 2, days_wk: 3, hours_day: 8 };
    // Two persons: 60 → 08:30; 300 → 11:00; then 420/2 = 3.5 h worked → 11:30 start of the next 240; then 5.5 h worked → 14:00.
    const { calendar } = placed([open('a', 360), open('b', 240), open('c', 100)], { hours });
    expect(calendar.days[0]!.visits.map((v) => [v.start, v.end])).toEqual([['08:30', '11:30'], ['11:30', '14:00'], ['14:00', '14:50']]);
  });

  it('goes to the sides shaded in the morning first', () => {
    const shadeOn: CalendarRequest['shadeOn'] = (_b, azimuth_deg, day) => [{ side: '', azimuth_deg, day, why: '', ...(azimuth_deg === 90 ? { from: '12:30', until: null } : { from: null, until: '12:30' }) }];
    const { calendar } = placed([open('east', 100, { facades: [90] }), open('west', 100, { facades: [270] })], { shadeOn });
    expect(calendar.days[0]!.visits.map((v) => v.workOrder)).toEqual(['west', 'east']);
  });

  it('lists what does not fit with why, as a finding', () => {
    const { calendar, findings } = placed([open('a', 400, { order: { latest: '2026-07-02' } }), open('b', 400, { order: { latest: '2026-07-02' } })]);
    expect(calendar.notPlaced).toMatchObject([{ workOrder: 'b', why: 'its only working day is full or blocked' }]);
    expect(findings[0]).toMatchObject({ severity: 'warning', subject: 'b' });
    expect(placed([open('a', 400)], { madeOn: '2027-07-01' }).calendar.notPlaced[0]!.why).toContain('cannot begin before 2027-07-02');
  });

  it('lets crews work side by side in one building, and never two in one dwelling', () => {
    const hours = { crews: 2, size: 2, days_wk: 3, hours_day: 4 };
    expect(placed([open('a', 400), open('b', 400)], { hours }).calendar.days.map((d) => [d.day, d.crew])).toEqual([['2026-07-01', 1], ['2026-07-01', 2]]);
    const same = (id: string): OpenOrder => open(id, 400, { order: { dwelling: 'B1/x' } });
    expect(placed([same('a'), same('b')], { hours }).on.map(([day]) => day)).toEqual(['2026-07-01', '2026-07-03']);
  });

  it('gives a new crew longer on its first day, and no longer after it', () => {
    // 60 + 1.5 × 200 = 360 of 480 leaves no room for 1.5 × 200 more; the next day takes 60 + 200.
    const { calendar } = placed([open('a', 200), open('b', 200)], { firstDayFactor: 1.5 });
    expect(calendar.days.map((d) => d.visits.map((v) => [v.workOrder, v.personMinutes.best, v.isFirstDay ?? false]))).toEqual([[['a', 300, true]], [['b', 200, false]]]);
  });

  it('keeps out of a block', () => {
    const noWork = [{ firstDay: '2026-07-01', lastDay: '2026-07-05', reason: 'storm season: no exterior access' }];
    expect(placed([open('a', 100, { isOutdoor: true })], { noWork }).on[0]![0]).toBe('2026-07-06');
    expect(placed([open('a', 100)], { noWork }).on[0]![0]).toBe('2026-07-01');
  });

  it('keeps a tenth of the days for doors that stay shut, and says when they are not there', () => {
    const eleven = Array.from({ length: 11 }, (_, i) => open(`a${String(i)}`, 400, { order: { latest: '2026-07-27' } }));
    // July 1 to 27 has twelve such days: 11 of work and 2 in reserve are one too many.
    const phases = [{ ...onePhase(0), lastDay: '2026-07-27' }];
    const { calendar, findings } = placed(eleven, { phases });
    expect(calendar.load[0]).toMatchObject({ daysOpen: 12, daysUsed: 11, reserveDays: 2 });
    expect(findings).toHaveLength(1);
    expect(findings[0]!.text).toContain('11 crew days of work and 2 crew days kept');
  });

  it('expects empty dwellings by the turnover of the building', () => {
    const home = building('B1', { turnover_1_yr: 0.35 });
    const ten = Array.from({ length: 10 }, (_, i) => open(`a${String(i)}`, 10, { building: home }));
    expect(placed(ten).calendar.load[0]!.expectedEmpty).toMatchObject([{ building: 'B1', dwellings: 3.5, known: 0, of: 10, crewDays: 0.1, kept: 0 }]); // 10 × 0.35; 35 of 420 person-minutes
  });

  describe('in a later year', () => {
    const home = building('B1', { turnover_1_yr: 0.4 });
    const phases = [onePhase(0), { ...onePhase(0), id: 'O/2', name: '2', firstDay: '2027-07-01', lastDay: '2028-06-29' }]; // 365 days, one of them the 29th of February
    const inYear2 = (id: string, minutes = 100): OpenOrder => open(id, minutes, { building: home, occupiedFrom: '2027-07-01', order: { phase: 'O/2', earliest: '2027-07-01', latest: '2028-06-29' } });
    const five = ['a', 'b', 'c', 'd', 'e'].map((id, i) => inYear2(id, 100 + i));

    it('leaves days for dwellings expected to fall empty, spread over the year, and says which visits stand on them', () => {
      // 5 × 0.4 = 2 of them: the two shortest, tried from a quarter and three quarters of the year on, 30 September and 31 March; Monday, Wednesday, Friday.
      const { calendar } = placed(five, { phases });
      const kept = calendar.days.flatMap((d) => d.visits.filter((v) => v.isForMoveOut === true).map((v) => [d.day, v.workOrder]));
      expect(kept).toEqual([['2027-10-01', 'a'], ['2028-03-31', 'b']]);
      expect(calendar.days[0]).toMatchObject({ day: '2027-07-02', visits: [{ workOrder: 'c' }, { workOrder: 'd' }, { workOrder: 'e' }] });
      expect(calendar.load[0]!.expectedEmpty[0]).toMatchObject({ dwellings: 2, kept: 2 });
      expect(inEnglish(calendar.expectedTold![0]!)).toContain('expected to fall empty');
    });

    it('counts by month, from the day after the last known move-out', () => {
      const { calendar } = placed(five, { phases, knownUntil: () => '2028-04-30' });
      // 60 days of May and June up to the 29th: 5 × 0.4 × 31 / 365 = 0.17 and 29 / 365 × 2 = 0.16.
      expect(calendar.load[0]!.expectedEmpty[0]).toMatchObject({ dwellings: 0.3, months: [{ month: '2028-05', dwellings: 0.17 }, { month: '2028-06', dwellings: 0.16 }], kept: 0 });
    });

    it('loses no order for it: where no day is left, the visit goes where there is room', () => {
      const noWork = [{ firstDay: '2027-07-09', lastDay: '2028-06-29', reason: 'closed' }]; // leaves 2, 5 and 7 July
      const { calendar } = placed(five, { phases, noWork });
      expect(calendar.notPlaced).toEqual([]);
      expect(calendar.load[0]!.expectedEmpty[0]!.kept).toBe(0);
    });

    it('lets those wait whose saving is least, and no panes to be done again', () => {
      const saving = five.map((o, i) => ({ ...o, yearlyCooling_cents: 1_000 * (5 - i), order: { ...o.order, ...(i === 4 ? { again: true as const } : {}) } }));
      const { calendar } = placed(saving, { phases });
      // Four first visits × 0.4 = 1.6, two: of those d and c save least; e is done again.
      expect(calendar.days.flatMap((d) => d.visits.filter((v) => v.isForMoveOut === true).map((v) => v.workOrder))).toEqual(['d', 'c']);
    });

    it('expects no common area to fall empty', () => {
      const { calendar } = placed(five, { phases, isCommon: (dwelling) => dwelling !== 'B1/e' });
      expect(calendar.load[0]!.expectedEmpty[0]).toMatchObject({ dwellings: 0.4, of: 1, kept: 0 });
    });

    it('puts all early where no turnover rate is known', () => {
      const { calendar } = placed(five.map((o) => ({ ...o, building: building('B1') })), { phases });
      expect(calendar.days.every((d) => d.day < '2027-07-15')).toBe(true);
      expect(calendar.load[0]!.expectedEmpty).toEqual([]);
    });
  });

  it('gives the same days whatever the order of the orders', () => {
    const orders = [open('a', 120), open('b', 250), open('c', 90, { building: building('B2') }), open('d', 300)];
    expect(placed([...orders].reverse()).on).toEqual(placed(orders).on);
  });
});
