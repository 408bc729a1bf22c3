import { type PlanFinding, toldFinding } from '../plan/plan-finding.js';
import { sortedBy } from '../grouped.js';
import { inEnglish, told, type Told } from '../words/told.js';
import { loadOf, overfull } from './calendar-load.js';
import { type CalendarRequest, forContractor, isHired, spansOf } from './calendar-request.js';
import type { CalendarDay, CalendarVisit, PlanCalendar } from './calendar-types.js';
import { type CrewPart, crewPart } from './crew-part.js';
import { type BookedDay, noticeBy } from './day-book.js';
import { expectedTold } from './expected-empty.js';
import type { ShadeTime } from './work-order-types.js';
import type { OpenOrder } from './work-orders.js';

/** The crew's day begins at eight, with half an hour's break after four hours. Common practice, no source. */
const START_min = 8 * 60;
const BREAK = { after_min: 4 * 60, length_min: 30 } as const;

const clock = (minutes: number): string => {
  const whole = Math.round(minutes);
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
};

/** The time in the middle of a side's longest shade, so that sides shaded in the morning come first. */
function shadeMiddle_min(shade: readonly ShadeTime[]): number {
  const minutes = (text: string | null, end: number): number => (text === null ? end : Number(text.slice(0, 2)) * 60 + Number(text.slice(3)));
  const stretches = shade.map((s) => ({ from: minutes(s.from, 6 * 60), until: minutes(s.until, 20 * 60) })).sort((a, b) => b.until - b.from - (a.until - a.from));
  return stretches[0] === undefined ? 13 * 60 : (stretches[0].from + stretches[0].until) / 2;
}

function visitsOf(booked: BookedDay, { of, forMoveOut }: CrewPart): CalendarVisit[] {
  const shaded = booked.visits.map((visit) => {
    const shade = visit.open.facades.map((azimuth_deg) => of.shadeOn(visit.open, azimuth_deg, booked.day));
    return { visit, shade: shade.flat(), middle: shade.reduce((sum, s) => sum + shadeMiddle_min(s), 0) / Math.max(1, shade.length) };
  });
  let worked_min = booked.mobilisation_min / of.hours.size;
  return shaded
    .sort((a, b) => a.middle - b.middle || (a.visit.open.order.id < b.visit.open.order.id ? -1 : 1))
    .map(({ visit, shade }): CalendarVisit => {
      const { order } = visit.open;
      const start = START_min + worked_min + (worked_min >= BREAK.after_min ? BREAK.length_min : 0);
      worked_min += visit.share_min / of.hours.size;
      const end = START_min + worked_min + (worked_min > BREAK.after_min ? BREAK.length_min : 0);
      const part = (minutes: number): number => Math.round((minutes * visit.factor) / visit.parts);
      const personMinutes = { low: part(order.minutes.low), best: part(order.minutes.best), high: part(order.minutes.high) };
      return { workOrder: order.id, dwelling: order.dwelling, start: clock(start), end: clock(end), personMinutes, shade, noticeBy: noticeBy(booked.day, order.notice_h), isEmpty: visit.isEmpty, ...(forMoveOut.has(visit.open) ? { isForMoveOut: true as const } : {}), ...(visit.factor === 1 ? {} : { isFirstDay: true as const }), part: visit.part, parts: visit.parts };
    });
}

function offsetOn({ day, visits }: BookedDay, of: CalendarRequest): Pick<CalendarDay, 'utcOffset_h'> {
  const home = visits[0]?.open.building;
  const utcOffset_h = home === undefined ? null : (of.utcOffset_h?.(home, day) ?? null);
  return utcOffset_h === null ? {} : { utcOffset_h };
}

function whyNot(open: OpenOrder, { book, of }: CrewPart): Told {
  const { any } = spansOf(open, of);
  if (open.waits !== undefined) return open.waits;
  if (of.hours.size * of.hours.hours_day * 60 <= of.mobilisation_min(open.building)) return told('calendar.noRoom');
  if (any.until < any.from) return told('calendar.over', { last: open.order.latest, soonest: any.from });
  const count = book.days.filter((d) => d >= any.from && d <= any.until).length;
  return count === 0 ? told('calendar.noDay') : { key: 'calendar.full', with: { count, days: told('count.workDays', { count }) } };
}

function daysOf(part: CrewPart, isContractor: boolean): CalendarDay[] {
  return part.book.booked().map((d): CalendarDay => ({ day: d.day, crew: d.crew, ...(isContractor ? { isContractor: true as const } : {}), building: d.building, phase: d.phase, ...offsetOn(d, part.of), mobilisation_min: d.mobilisation_min, visits: visitsOf(d, part) }));
}

/** Whose days those of a contractor are, and how many crews of his are assumed; nothing where he has no work. */
function contractorTold({ of, opens, book }: CrewPart): Pick<PlanCalendar, 'contractorTold'> {
  if (opens.length === 0) return {};
  const { crews, size } = of.hours;
  return { contractorTold: told('calendar.contractor', { crews: told('count.crews', { count: crews }), persons: told('count.persons', { count: size }), days: told('count.crewDays', { count: book.booked().length }) }) };
}

/**
 * Puts the orders on working days: dwellings known to stand empty first, soonest end first, in those days; then the rest, building by
 * building, in days the building has already, else in the first free day. One building a crew and day; loading, parking and keys counted
 * once a day; what fits nowhere is listed with why. In years after the first, as many visits of a building as dwellings are expected to fall
 * empty stand on days spread over the year. Buildings of a contractor stand in a book of his own days and take none of the own crews'.
 */
export function calendarOf(opens: readonly OpenOrder[], of: CalendarRequest): { readonly calendar: PlanCalendar; readonly findings: PlanFinding[] } {
  const own = crewPart(opens.filter((o) => !isHired(o)), of);
  const hired = crewPart(opens.filter(isHired), forContractor(of));
  const partOf = (open: OpenOrder): CrewPart => (isHired(open) ? hired : own);
  const left = opens.filter((o) => !partOf(o).done.has(o)).map((open) => ({ open, why: whyNot(open, partOf(open)) }));
  const load = of.phases.filter((p) => opens.some((o) => o.order.phase === p.id)).map((phase) => loadOf(phase, { own, hired }));
  const days = sortedBy([...daysOf(own, false), ...daysOf(hired, true)], (d) => `${d.day}|${d.isContractor === true ? '1' : '0'}|${String(d.crew).padStart(4, '0')}`);
  // What waits was said by the records already.
  const findings = left.filter(({ open }) => open.waits === undefined).map(({ open, why }) => toldFinding({ severity: 'warning', subject: open.order.id }, told('calendar.notPlaced', { why }), told(isHired(open) ? 'calendar.notPlaced.contractor.toDo' : 'calendar.notPlaced.toDo')));
  const count = load.reduce((sum, l) => sum + l.reserveDays, 0);
  const reserve: Told = { key: 'calendar.reserve', with: { count, days: told('count.crewDays', { count }), share: (of.noAccess.share * 100).toFixed(0), source: of.noAccess.source } };
  const notPlaced = left.map(({ open, why }) => ({ workOrder: open.order.id, why: inEnglish(why), told: why }));
  return {
    calendar: { days, notPlaced, load, wordsOnReserve: inEnglish(reserve), reserveTold: reserve, expectedTold: load.flatMap((l) => l.expectedEmpty.map((e) => expectedTold(l.phase, e))), ...contractorTold(hired) },
    findings: [...findings, ...overfull(load, of)],
  };
}
