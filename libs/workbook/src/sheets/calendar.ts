import { type CalendarDay, type CalendarVisit, inEnglish, type Plan, told } from '#planning';
import type { Book } from '../book.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';

interface VisitRow {
  readonly day: CalendarDay;
  readonly visit: CalendarVisit;
}

/** Working days of the crew, visit by visit, with the day the entry notice has to be out. */
export function calendarSheet(book: Book, plan: Plan): void {
  const { days, notPlaced, load, wordsOnReserve, expectedTold, contractorTold } = plan.calendar;
  oneTableSheet<VisitRow>(book, {
    name: SHEET.calendar,
    about: `${plan.name}: working days, with the best figure of minutes; ${String(days.length)} days`,
    notes: [
      wordsOnReserve,
      ...(contractorTold === undefined ? [] : [inEnglish(contractorTold)]),
      ...load.map((l) => `${l.phase}: ${String(l.daysUsed)} of ${String(l.daysOpen)} days used, ${String(l.reserveDays)} kept free.`),
      ...(expectedTold ?? []).map(inEnglish),
      ...notPlaced.map((n) => `Without a day: ${n.workOrder}, ${n.why}.`),
    ],
    columns: [
      { head: 'Done', unit: '', width: 6, value: () => '☐' },
      { head: 'Day', unit: '', width: 11, value: (r) => r.day.day },
      { head: 'Phase', unit: '', width: 16, value: (r) => r.day.phase },
      { head: 'Building', unit: '', width: 9, value: (r) => r.day.building },
      { head: 'Crew', unit: 'number', width: contractorTold === undefined ? 7 : 11, format: FORMAT.whole, value: (r) => (r.day.isContractor === true ? inEnglish(told('calendar.byContractor')) : r.day.crew) },
      { head: 'From', unit: 'clock', width: 7, value: (r) => r.visit.start },
      { head: 'To', unit: 'clock', width: 7, value: (r) => r.visit.end },
      { head: 'Dwelling', unit: '', width: 11, value: (r) => r.visit.dwelling },
      { head: 'Work order', unit: '', width: 22, value: (r) => (r.visit.parts > 1 ? `${r.visit.workOrder}, day ${String(r.visit.part)} of ${String(r.visit.parts)}` : r.visit.workOrder) },
      { head: 'Work', unit: 'person-min', width: 9, format: FORMAT.whole, value: (r) => r.visit.personMinutes.best },
      { head: 'Notice out by', unit: '', width: 11, value: (r) => r.visit.noticeBy },
      { head: 'Empty', unit: '', width: 7, value: (r) => (r.visit.isEmpty ? 'yes' : r.visit.isForMoveOut === true ? 'left for a move-out, expected' : '') },
    ],
    rows: days.flatMap((day) => day.visits.map((visit): VisitRow => ({ day, visit }))),
    none: 'No day is planned.',
    frozenColumns: 2,
  });
}
