import type { Building } from '#calc';
import { onePhase } from '../../../../test/portfolios/film-option.js';
import { inEnglish } from '../words/told.js';
import { calendarOf } from './calendar.js';
import type { CalendarRequest } from './calendar-request.js';
import type { OpenOrder } from './work-orders.js';
import type { WorkOrder } from './work-order-types.js';

const building = (id: string, change: Partial<Building> = {}) => ({ id, turnover_1_yr: null, ...change }) as Building;
const OWN = building('B1');
const HIRED = building('C1', { crew: 'contractor' });
const open = (id: string, home: Building, change: Partial<WorkOrder> = {}): OpenOrder => ({
  ownerEntity: 'O', facades: [270], windows: [], empty: null, occupiedFrom: '2026-07-01', isOutdoor: false, building: home,
  order: { id, dwelling: `${home.id}/${id}`, phase: 'O/1', building: home.id, earliest: '2026-07-01', latest: '2027-06-30', notice_h: 24, minutes: { low: 200, best: 400, high: 800 }, ...change } as WorkOrder,
});
// One crew of two, 4 hours at the glass: 480 person-minutes a day, 60 of them for loading and keys; Monday, Wednesday, Friday.
const request = (change: Partial<CalendarRequest> = {}): CalendarRequest => ({
  phases: [onePhase(0)], hours: { crews: 1, size: 2, days_wk: 3, hours_day: 4 }, noWork: [], mobilisation_min: () => 60, noAccess: { share: 0.1, source: 'test' }, madeOn: '2026-06-01', shadeOn: () => [], ...change,
});
const daysOf = (opens: readonly OpenOrder[], change: Partial<CalendarRequest> = {}) => calendarOf(opens, request(change)).calendar.days.map((d) => [d.day, d.isContractor === true ? 'contractor' : d.crew, d.visits.map((v) => v.workOrder)]);

describe('days of a contractor', () => {
  const own = [open('a', OWN), open('b', OWN)];
  const hired = [open('x', HIRED), open('y', HIRED)];

  it('are days of his own, beside those of the own crew, which stay as they are without him', () => {
    expect(daysOf([...own, ...hired])).toEqual([['2026-07-01', 1, ['a']], ['2026-07-01', 'contractor', ['x']], ['2026-07-03', 1, ['b']], ['2026-07-03', 'contractor', ['y']]]);
    const alone = calendarOf(own, request()).calendar;
    expect(calendarOf([...hired, ...own], request()).calendar.days.filter((d) => d.isContractor !== true)).toEqual(alone.days);
  });

  it('leave days used, open and kept free, and person-minutes, to the own crew', () => {
    const { load } = calendarOf([...own, ...hired], request()).calendar;
    expect(load).toEqual(calendarOf(own, request()).calendar.load);
    expect(load[0]).toMatchObject({ daysUsed: 2, reserveDays: 1, personMinutes: { best: 800 } });
    expect(calendarOf(hired, request()).calendar.load[0]).toMatchObject({ daysUsed: 0, reserveDays: 0, personMinutes: { best: 0 } });
  });

  it('make no year of the own crew overfull', () => {
    // July 1 to 27 has twelve such days: eleven of work and two in reserve would be one too many.
    const phases = [{ ...onePhase(0), lastDay: '2026-07-27' }];
    const eleven = (home: Building): OpenOrder[] => Array.from({ length: 11 }, (_, i) => open(`${home.id}${String(i)}`, home, { latest: '2026-07-27' }));
    expect(calendarOf(eleven(HIRED), request({ phases })).findings).toEqual([]);
    expect(calendarOf(eleven(OWN), request({ phases })).findings).toMatchObject([{ severity: 'warning' }]);
  });

  it('are those of one crew, however many the own ones are; of as many persons as are given', () => {
    const hours = { crews: 2, size: 2, days_wk: 3, hours_day: 4 };
    expect(daysOf(hired, { hours }).map(([day]) => day)).toEqual(['2026-07-01', '2026-07-03']);
    expect(daysOf(own, { hours }).map(([day]) => day)).toEqual(['2026-07-01', '2026-07-01']);
    // Four persons have 960 minutes, so 60 + 400 + 400 fit one day: a quarter of an hour for loading, 100 minutes a dwelling.
    const { calendar } = calendarOf(hired, request({ contractor: { crews: 1, size: 4 } }));
    expect(calendar.days.map((d) => d.visits.map((v) => [v.start, v.end]))).toEqual([[['08:15', '09:55'], ['09:55', '11:35']]]);
  });

  it('keep out of the same blocks, and take no longer first day', () => {
    const noWork = [{ firstDay: '2026-07-01', lastDay: '2026-07-05', reason: 'closed' }];
    expect(daysOf(hired.slice(0, 1), { noWork })).toEqual([['2026-07-06', 'contractor', ['x']]]);
    expect(calendarOf([own[0]!, hired[0]!], request({ firstDayFactor: 1.5 })).calendar.days.map((d) => d.visits[0]!.isFirstDay ?? false)).toEqual([true, false]);
  });

  it('are said with what is assumed of them, and not at all where he has no work', () => {
    expect(inEnglish(calendarOf([...own, ...hired], request()).calendar.contractorTold!)).toContain('2 crew days in all: 1 crew of 2 persons, assumed');
    expect(calendarOf(own, request()).calendar).not.toHaveProperty('contractorTold');
  });

  it('that do not suffice are asked of him, not of the own crew', () => {
    const { calendar, findings } = calendarOf(hired.map((o) => ({ ...o, order: { ...o.order, latest: '2026-07-02' } })), request());
    expect(calendar.notPlaced).toMatchObject([{ workOrder: 'y', why: 'its only working day is full or blocked' }]);
    expect(findings[0]!.whatToDo).toContain('agree with the contractor');
  });

  it('are the same whatever the order of the orders', () => {
    const all = [...own, ...hired];
    expect(daysOf([...all].reverse())).toEqual(daysOf(all));
  });
});
