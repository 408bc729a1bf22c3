import ICAL from 'ical.js';
import type { Plan } from '../plan/plan.js';
import { calendarFile } from './calendar-file.js';

const visit = (workOrder: string, start: string, end: string) => ({ workOrder, dwelling: 'EC/103', start, end, personMinutes: { low: 65, best: 100, high: 135 }, shade: [], noticeBy: '2026-07-30', isEmpty: true, part: 1, parts: 1 });
const plan = {
  id: 'p1', revision: 2, name: 'Example; Portfolio, west', madeOn: '2026-07-01', workOrders: [], buildings: [{ id: 'EC', name: 'Example Court' }],
  calendar: { days: [{ day: '2026-07-31', crew: 1, building: 'EC', phase: 'OWNER1/2026-27', mobilisation_min: 60, visits: [visit('2026-27 EC/103', '08:30', '09:20'), visit('2026-27 EC/104', '09:20', '10:10')] }], notPlaced: [], load: [], wordsOnReserve: '' },
} as unknown as Plan;

describe('the iCalendar file', () => {
  let text: string;
  beforeAll(async () => void (text = await calendarFile(plan)));
  const events = () => new ICAL.Component(ICAL.parse(text) as never).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));

  it('is read back by another library: one event a visit, on the wall clock, without a zone', () => {
    expect(events().map((e) => [e.startDate.toString(), e.endDate.toString(), e.startDate.zone.tzid])).toEqual([
      ['2026-07-31T08:30:00', '2026-07-31T09:20:00', 'floating'],
      ['2026-07-31T09:20:00', '2026-07-31T10:10:00', 'floating'],
    ]);
    expect(events()[0]).toMatchObject({ summary: 'Film EC/103, empty', location: 'Example Court', uid: 'p1-2026-27-EC-103-1@film-rollout', sequence: 1 });
    expect(events()[0]!.description).toContain('Person-minutes 100 (65 to 135)');
  });

  it('stands in world time where the clock rule of the building is known: half past eight on daylight time of the fifth zone is 12:30 UTC', async () => {
    const days = plan.calendar.days.map((d) => ({ ...d, utcOffset_h: -4 }));
    const [first] = new ICAL.Component(ICAL.parse(await calendarFile({ ...plan, calendar: { ...plan.calendar, days } })) as never).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
    expect([first!.startDate.toString(), first!.endDate.toString(), first!.startDate.zone.tzid]).toEqual(['2026-07-31T12:30:00Z', '2026-07-31T13:20:00Z', 'UTC']);
  });

  it('says in title and text that a contractor comes, and gives his day no number of an own crew', async () => {
    const days = plan.calendar.days.map((d) => ({ ...d, isContractor: true as const }));
    const [first] = new ICAL.Component(ICAL.parse(await calendarFile({ ...plan, calendar: { ...plan.calendar, days } })) as never).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
    expect(first).toMatchObject({ summary: 'Film EC/103, empty, contractor', uid: 'p1-2026-27-EC-103-1@film-rollout' });
    expect(first!.description).toMatch(/^Contractor, phase OWNER1\/2026-27, /);
    expect(events()[0]!.description).toMatch(/^Crew 1, phase /);
  });

  it('keeps the rules of RFC 5545: CRLF, lines of at most 75 octets, separators escaped', () => {
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(text).toContain('Example\\; Portfolio\\, west');
  });

  it('has the same bytes for the same plan', async () => expect(await calendarFile(plan)).toBe(text));
});
