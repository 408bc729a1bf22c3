import { type Plan, told } from '#planning';
import { calendarText } from './calendar-text.js';

const visit = (dwelling: string) => ({ workOrder: dwelling, dwelling, start: '08:30', end: '09:20', personMinutes: { low: 65, best: 100, high: 135 }, shade: [], noticeBy: '2026-07-30', isEmpty: false, part: 1, parts: 1 });
const day = { day: '2026-07-31', crew: 1, phase: 'O/1', mobilisation_min: 60 };
const calendar: Plan['calendar'] = {
  days: [{ ...day, building: 'EC', visits: [visit('EC/103')] }, { ...day, building: 'ET', isContractor: true, visits: [visit('ET/9')] }],
  notPlaced: [], load: [], wordsOnReserve: 'Kept free: none.',
  contractorTold: told('calendar.contractor', { crews: told('count.crews', { count: 1 }), persons: told('count.persons', { count: 2 }), days: told('count.crewDays', { count: 1 }) }),
};

describe('the calendar as text', () => {
  it('says "contractor" where the number of the crew stands, and how many crews of his are assumed', async () => {
    const lines = (await calendarText({ calendar })).split('\n');
    expect(lines.find((l) => l.includes('EC/103'))).toMatch(/^2026-07-31\s+1\s+EC\b/);
    expect(lines.find((l) => l.includes('ET/9'))).toMatch(/^2026-07-31\s+contractor\s+ET\b/);
    expect(lines.at(-1)).toContain('1 crew day in all: 1 crew of 2 persons, assumed');
  });

  it('has no word of a contractor where there is none', async () => {
    const { notPlaced, load, wordsOnReserve, days } = calendar;
    expect(await calendarText({ calendar: { notPlaced, load, wordsOnReserve, days: days.slice(0, 1) } })).not.toContain('contractor');
  });
});
