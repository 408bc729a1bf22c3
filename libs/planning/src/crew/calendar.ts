import type { Building, Phase } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { CalendarDay, CalendarLoad, CalendarVisit, PlanCalendar } from './calendar-types.js';
import type { CrewWords } from './crew-words.js';
import { type BookedDay, type CrewHours, DayBook, noticeBy, type Span } from './day-book.js';
import type { ShadeTime } from './work-order-types.js';
import { daysAfter, daysBetween, type NoWork } from './work-days.js';
import type { OpenOrder } from './work-orders.js';

export interface CalendarRequest {
  readonly phases: readonly Phase[];
  readonly hours: CrewHours;
  readonly noWork: readonly NoWork[];
  readonly mobilisation_min: (building: Building) => number;
  /** Share of visits where the door stays shut; days are kept free for them. */
  readonly noAccess: { readonly share: number; readonly source: string };
  /** ISO date; nothing is planned before the notices of its day can run out. */
  readonly madeOn: string;
  readonly shadeOn: (building: Building, azimuth_deg: number, day: string) => readonly ShadeTime[];
  /** How much longer a new crew's first day takes; 1 for crews that know the work. */
  readonly firstDayFactor?: number;
  readonly words: CrewWords;
}

/** The crew's day begins at eight, with half an hour's break after four hours. Common practice, no source. */
const START_min = 8 * 60;
const BREAK = { after_min: 4 * 60, length_min: 30 } as const;

const later = (a: string, b: string): string => (a > b ? a : b);
const earlier = (a: string, b: string): string => (a < b ? a : b);
const clock = (minutes: number): string => {
  const whole = Math.round(minutes);
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
};

/** Where an order may lie: known empty days first, then its phase. */
function spansOf(open: OpenOrder, of: CalendarRequest): { readonly empty: Span | null; readonly any: Span } {
  const soonest = daysAfter(of.madeOn, Math.ceil(open.order.notice_h / 24));
  const from = later(open.order.earliest, soonest);
  const any = { from: open.empty === null ? from : later(open.occupiedFrom, soonest), until: open.order.latest };
  if (open.empty === null) return { empty: null, any };
  const last = open.empty.until === null ? open.order.latest : earlier(daysAfter(open.empty.until, -1), open.order.latest);
  return { empty: { from: later(from, open.empty.from), until: last }, any };
}

/** The time in the middle of a side's longest shade, so that sides shaded in the morning come first. */
function shadeMiddle_min(shade: readonly ShadeTime[]): number {
  const minutes = (text: string | null, end: number): number => (text === null ? end : Number(text.slice(0, 2)) * 60 + Number(text.slice(3)));
  const stretches = shade.map((s) => ({ from: minutes(s.from, 6 * 60), until: minutes(s.until, 20 * 60) })).sort((a, b) => b.until - b.from - (a.until - a.from));
  return stretches[0] === undefined ? 13 * 60 : (stretches[0].from + stretches[0].until) / 2;
}

function visitsOf(booked: BookedDay, of: CalendarRequest): CalendarVisit[] {
  const shaded = booked.visits.map((visit) => {
    const shade = visit.open.facades.map((azimuth_deg) => of.shadeOn(visit.open.building, azimuth_deg, booked.day));
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
      return { workOrder: order.id, dwelling: order.dwelling, start: clock(start), end: clock(end), personMinutes, shade, noticeBy: noticeBy(booked.day, order.notice_h), isEmpty: visit.isEmpty, ...(visit.factor === 1 ? {} : { isFirstDay: true as const }), part: visit.part, parts: visit.parts };
    });
}

function whyNot(open: OpenOrder, book: DayBook, of: CalendarRequest): string {
  const { any } = spansOf(open, of);
  if (open.waits !== undefined) return open.waits;
  if (of.hours.size * of.hours.hours_day * 60 <= of.mobilisation_min(open.building)) return of.words.calendar.noRoom;
  if (any.until < any.from) return of.words.calendar.over(open.order.latest, any.from);
  const days = book.days.filter((d) => d >= any.from && d <= any.until);
  return of.words.calendar.full(days.length);
}

function loadOf(phase: Phase, at: { readonly opens: readonly OpenOrder[]; readonly book: DayBook; readonly of: CalendarRequest }): CalendarLoad {
  const { of, book } = at;
  const orders = at.opens.filter((o) => o.order.phase === phase.id);
  const sum = (end: 'low' | 'best' | 'high'): number => Math.round(orders.reduce((total, o) => total + o.order.minutes[end], 0));
  const used = book.booked().filter((d) => d.phase === phase.id).length;
  const from = later(phase.firstDay, of.madeOn);
  const years = daysBetween(from, phase.lastDay) / 365;
  const expectedEmpty = [...grouped(sortedBy(orders, (o) => o.building.id), (o) => o.building.id).values()].map((own) => ({
    building: own[0]!.building.id,
    dwellings: Math.round((own[0]!.building.turnover_1_yr ?? 0) * own.length * Math.min(1, years)),
    known: own.filter((o) => o.empty !== null).length,
  }));
  return {
    phase: phase.id,
    daysOpen: book.days.filter((d) => d >= from && d <= phase.lastDay).length * of.hours.crews,
    daysUsed: used,
    reserveDays: Math.ceil(of.noAccess.share * used),
    personMinutes: { low: sum('low'), best: sum('best'), high: sum('high') },
    expectedEmpty,
  };
}

/** Phases that run in the same days share the crew: their days and reserves are looked at together. */
function overfull(loads: readonly CalendarLoad[], of: CalendarRequest): PlanFinding[] {
  const phase = (id: string): Phase => of.phases.find((p) => p.id === id)!;
  return [...grouped(loads, (l) => `${phase(l.phase).firstDay}|${phase(l.phase).lastDay}`).values()].flatMap((same): PlanFinding[] => {
    const total = (part: (l: CalendarLoad) => number): number => same.reduce((sum, l) => sum + part(l), 0);
    const [used, reserve, open] = [total((l) => l.daysUsed), total((l) => l.reserveDays), same[0]!.daysOpen];
    if (used + reserve <= open) return [];
    return [{ severity: 'warning', subject: same.map((l) => l.phase).join(', '), text: of.words.calendar.overfull({ used, reserve, open }), whatToDo: of.words.calendar.overfullToDo }];
  });
}

/** A book of days with the orders that found one. */
interface Filled {
  readonly book: DayBook;
  readonly done: ReadonlySet<OpenOrder>;
}

/** Books known empty dwellings first, then the rest. */
function filled(opens: readonly OpenOrder[], at: { readonly book: DayBook; readonly spans: ReadonlyMap<OpenOrder, ReturnType<typeof spansOf>> }): Filled {
  const { book, spans } = at;
  const done = new Set<OpenOrder>();
  const ready = opens.filter((o) => o.waits === undefined);
  for (const open of sortedBy(ready, (o) => `${spans.get(o)!.empty?.until ?? '9999'}|${o.order.id}`)) {
    const { empty } = spans.get(open)!;
    if (empty !== null && book.book(open, empty, true)) done.add(open);
  }
  const rest = ready.filter((o) => !done.has(o));
  const longestFirst = (o: OpenOrder): string => String(1e9 - Math.round(o.order.minutes.best)).padStart(12, '0');
  for (const open of sortedBy(rest, (o) => `${o.order.latest}|${o.order.phase}|${o.building.id}|${spans.get(o)!.any.from}|${longestFirst(o)}|${o.order.id}`)) {
    if (book.book(open, spans.get(open)!.any, false)) done.add(open);
  }
  return { book, done };
}

/** Times the days are booked until the days on which new crews begin stay where they are. */
const MOST_BOOKINGS = 4;

/** A crew's first day takes longer, and which day that is hangs on the booking: booked again until it holds. */
function withBeginners(bookFrom: (days: ReadonlyMap<number, string>) => Filled, factor: number): Filled {
  let days: ReadonlyMap<number, string> = new Map();
  for (let times = 1; ; times++) {
    const made = bookFrom(days);
    const begin = new Map([...made.book.booked()].reverse().map((d): [number, string] => [d.crew, d.day]));
    if (factor === 1 || times === MOST_BOOKINGS || [...begin].every(([crew, day]) => days.get(crew) === day)) return made;
    days = begin;
  }
}

/**
 * Puts the orders on working days: dwellings known to stand empty first, soonest end first, in those days; then the rest, building by
 * building, in days the building has already, else in the first free day. One building a crew and day; loading, parking and keys counted
 * once a day; what fits nowhere is listed with why.
 */
export function calendarOf(opens: readonly OpenOrder[], of: CalendarRequest): { readonly calendar: PlanCalendar; readonly findings: PlanFinding[] } {
  const first = of.phases.map((p) => p.firstDay).sort()[0] ?? of.madeOn;
  const last = of.phases.map((p) => p.lastDay).sort().at(-1) ?? of.madeOn;
  const spans = new Map(opens.map((open) => [open, spansOf(open, of)]));
  const bookFrom = (days: ReadonlyMap<number, string>): Filled => filled(opens, { spans, book: new DayBook({ first, last, hours: of.hours, noWork: of.noWork, mobilisation_min: of.mobilisation_min, beginners: { factor: of.firstDayFactor ?? 1, days } }) });
  const { book, done } = withBeginners(bookFrom, of.firstDayFactor ?? 1);
  const notPlaced = opens.filter((o) => !done.has(o)).map((o) => ({ workOrder: o.order.id, why: whyNot(o, book, of) }));
  const load = of.phases.filter((p) => opens.some((o) => o.order.phase === p.id)).map((phase) => loadOf(phase, { opens, book, of }));
  const days = book.booked().map((d): CalendarDay => ({ day: d.day, crew: d.crew, building: d.building, phase: d.phase, mobilisation_min: d.mobilisation_min, visits: visitsOf(d, of) }));
  const waiting = new Set(opens.filter((o) => o.waits !== undefined).map((o) => o.order.id)); // said by the records already
  const findings = notPlaced.filter((n) => !waiting.has(n.workOrder)).map((n): PlanFinding => ({ severity: 'warning', subject: n.workOrder, text: of.words.calendar.notPlaced(n.why), whatToDo: of.words.calendar.notPlacedToDo }));
  return { calendar: { days, notPlaced, load, wordsOnReserve: of.words.calendar.reserve({ ...of.noAccess, days: load.reduce((sum, l) => sum + l.reserveDays, 0) }) }, findings: [...findings, ...overfull(load, of)] };
}
