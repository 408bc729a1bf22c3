import type { Building, Phase } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import { type PlanFinding, toldFinding } from '../plan/plan-finding.js';
import type { CalendarDay, CalendarLoad, CalendarVisit, PlanCalendar } from './calendar-types.js';
import { expectedEmpty, expectedTold, heldOrders, laterPhases } from './expected-empty.js';
import { type BookedDay, type CrewHours, DayBook, noticeBy, type Span } from './day-book.js';
import type { ShadeTime } from './work-order-types.js';
import { inEnglish, told, type Told } from '../words/told.js';
import { daysAfter, type NoWork } from './work-days.js';
import type { OpenOrder, ShadeOn } from './work-orders.js';

export interface CalendarRequest {
  readonly phases: readonly Phase[];
  readonly hours: CrewHours;
  readonly noWork: readonly NoWork[];
  readonly mobilisation_min: (building: Building) => number;
  /** Share of visits where the door stays shut; days are kept free for them. */
  readonly noAccess: { readonly share: number; readonly source: string };
  /** ISO date; nothing is planned before the notices of its day can run out. */
  readonly madeOn: string;
  readonly shadeOn: ShadeOn;
  /** Hours the clock on the wall of a building is ahead of world time on a day; null where its rule is not known. */
  readonly utcOffset_h?: (building: Building, day: string) => number | null;
  /** Last day for which move-outs of a building are known; null where none is. */
  readonly knownUntil?: (building: Building) => string | null;
  /** Common areas do not fall empty. */
  readonly isCommon?: (dwelling: string) => boolean;
  /** How much longer a new crew's first day takes; 1 for crews that know the work. */
  readonly firstDayFactor?: number;
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

function visitsOf(booked: BookedDay, of: CalendarRequest & Pick<Filled, 'forMoveOut'>): CalendarVisit[] {
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
      return { workOrder: order.id, dwelling: order.dwelling, start: clock(start), end: clock(end), personMinutes, shade, noticeBy: noticeBy(booked.day, order.notice_h), isEmpty: visit.isEmpty, ...(of.forMoveOut.has(visit.open) ? { isForMoveOut: true as const } : {}), ...(visit.factor === 1 ? {} : { isFirstDay: true as const }), part: visit.part, parts: visit.parts };
    });
}

function offsetOn({ day, visits }: BookedDay, of: CalendarRequest): Pick<CalendarDay, 'utcOffset_h'> {
  const home = visits[0]?.open.building;
  const utcOffset_h = home === undefined ? null : (of.utcOffset_h?.(home, day) ?? null);
  return utcOffset_h === null ? {} : { utcOffset_h };
}

function whyNot(open: OpenOrder, book: DayBook, of: CalendarRequest): Told {
  const { any } = spansOf(open, of);
  if (open.waits !== undefined) return open.waits;
  if (of.hours.size * of.hours.hours_day * 60 <= of.mobilisation_min(open.building)) return told('calendar.noRoom');
  if (any.until < any.from) return told('calendar.over', { last: open.order.latest, soonest: any.from });
  const count = book.days.filter((d) => d >= any.from && d <= any.until).length;
  return count === 0 ? told('calendar.noDay') : { key: 'calendar.full', with: { count, days: told('count.workDays', { count }) } };
}

function loadOf(phase: Phase, at: Filled & { readonly opens: readonly OpenOrder[]; readonly expected: readonly Expected[]; readonly of: CalendarRequest }): CalendarLoad {
  const { of, book } = at;
  const keptIn = (building: string): number => [...at.forMoveOut].filter((o) => o.order.phase === phase.id && o.building.id === building).length;
  const orders = at.opens.filter((o) => o.order.phase === phase.id);
  const sum = (end: 'low' | 'best' | 'high'): number => Math.round(orders.reduce((total, o) => total + o.order.minutes[end], 0));
  const used = book.booked().filter((d) => d.phase === phase.id).length;
  const from = later(phase.firstDay, of.madeOn);
  return {
    phase: phase.id,
    daysOpen: book.days.filter((d) => d >= from && d <= phase.lastDay).length * of.hours.crews,
    daysUsed: used,
    reserveDays: Math.ceil(of.noAccess.share * used),
    personMinutes: { low: sum('low'), best: sum('best'), high: sum('high') },
    expectedEmpty: at.expected.filter((e) => e.phase === phase.id).map(({ phase: _, window: _window, orders: _orders, ...each }) => ({ ...each, kept: keptIn(each.building) })),
  };
}

/** Phases that run in the same days share the crew: their days and reserves are looked at together. */
function overfull(loads: readonly CalendarLoad[], of: CalendarRequest): PlanFinding[] {
  const phase = (id: string): Phase => of.phases.find((p) => p.id === id)!;
  return [...grouped(loads, (l) => `${phase(l.phase).firstDay}|${phase(l.phase).lastDay}`).values()].flatMap((same): PlanFinding[] => {
    const total = (part: (l: CalendarLoad) => number): number => same.reduce((sum, l) => sum + part(l), 0);
    const [used, reserve, open] = [total((l) => l.daysUsed), total((l) => l.reserveDays), same[0]!.daysOpen];
    if (used + reserve <= open) return [];
    const text = told('calendar.overfull', { used: told('count.crewDays', { count: used }), reserve: told('count.crewDays', { count: reserve }), open: told('count.crewDays', { count: open }) });
    return [toldFinding({ severity: 'warning', subject: same.map((l) => l.phase).join(', ') }, text, told('calendar.overfull.toDo'))];
  });
}

/** A book of days with the orders that found one. */
interface Filled {
  readonly book: DayBook;
  readonly done: ReadonlySet<OpenOrder>;
  /** Orders that stand on a day left for whichever dwelling falls empty. */
  readonly forMoveOut: ReadonlySet<OpenOrder>;
}

/** What is expected to fall empty, with the orders it is a part of. */
type Expected = NonNullable<ReturnType<typeof expectedEmpty>> & { readonly phase: string; readonly orders: readonly OpenOrder[] };

/** First work in a dwelling: common areas do not fall empty, and panes to be done again do not wait for it. */
const mayMove = ({ order }: OpenOrder, of: CalendarRequest): boolean => order.again !== true && of.isCommon?.(order.dwelling) !== true;

function expectedOf(opens: readonly OpenOrder[], of: CalendarRequest): Expected[] {
  const byPlace = grouped(sortedBy(opens, (o) => `${o.order.phase}|${o.building.id}`), (o) => `${o.order.phase}|${o.building.id}`);
  return [...byPlace.values()].flatMap((orders): Expected[] => {
    const { building, order } = orders[0]!;
    const phase = of.phases.find((p) => p.id === order.phase);
    if (phase === undefined) return [];
    const room_min = of.hours.size * of.hours.hours_day * 60 - of.mobilisation_min(building);
    const found = expectedEmpty({ phase, orders: orders.filter((o) => mayMove(o, of)), knownUntil: of.knownUntil?.(building) ?? null, soonest: daysAfter(of.madeOn, Math.ceil(order.notice_h / 24)), room_min });
    return found === null ? [] : [{ ...found, phase: phase.id, orders }];
  });
}

/** In later years work waits for dwellings expected to fall empty: these orders are tried from a day of their own on. */
function heldDays(expected: readonly Expected[], of: CalendarRequest): ReadonlyMap<OpenOrder, string> {
  const laterOnes = laterPhases(of.phases, of.madeOn);
  return new Map(expected.filter((e) => laterOnes.has(e.phase)).flatMap((e) => [...heldOrders(e.orders.filter((o) => o.empty === null && o.waits === undefined && mayMove(o, of)), e)]));
}

/** Books known empty dwellings first, then the rest, then those that wait for a dwelling to fall empty. */
function filled(opens: readonly OpenOrder[], at: { readonly book: DayBook; readonly spans: ReadonlyMap<OpenOrder, ReturnType<typeof spansOf>>; readonly held: ReadonlyMap<OpenOrder, string> }): Filled {
  const { book, spans, held } = at;
  const done = new Set<OpenOrder>();
  const forMoveOut = new Set<OpenOrder>();
  const ready = opens.filter((o) => o.waits === undefined);
  for (const open of sortedBy(ready, (o) => `${spans.get(o)!.empty?.until ?? '9999'}|${o.order.id}`)) {
    const { empty } = spans.get(open)!;
    if (empty !== null && book.book(open, empty, true)) done.add(open);
  }
  const bookAny = (open: OpenOrder): boolean => book.book(open, spans.get(open)!.any, false);
  const rest = ready.filter((o) => !done.has(o) && !held.has(o));
  const longestFirst = (o: OpenOrder): string => String(1e9 - Math.round(o.order.minutes.best)).padStart(12, '0');
  for (const open of sortedBy(rest, (o) => `${o.order.latest}|${o.order.phase}|${o.building.id}|${spans.get(o)!.any.from}|${longestFirst(o)}|${o.order.id}`)) {
    if (bookAny(open)) done.add(open);
  }
  for (const [open, day] of sortedBy(held, ([o, d]) => `${d}|${o.order.id}`)) {
    const { any } = spans.get(open)!;
    if (book.book(open, { from: later(any.from, day), until: any.until }, false)) forMoveOut.add(open);
    if (forMoveOut.has(open) || bookAny(open)) done.add(open);
  }
  return { book, done, forMoveOut };
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
 * once a day; what fits nowhere is listed with why. In years after the first, as many visits of a building as dwellings are expected to fall
 * empty stand on days spread over the year.
 */
export function calendarOf(opens: readonly OpenOrder[], of: CalendarRequest): { readonly calendar: PlanCalendar; readonly findings: PlanFinding[] } {
  const first = of.phases.map((p) => p.firstDay).sort()[0] ?? of.madeOn;
  const last = of.phases.map((p) => p.lastDay).sort().at(-1) ?? of.madeOn;
  const spans = new Map(opens.map((open) => [open, spansOf(open, of)]));
  const expected = expectedOf(opens, of);
  const held = heldDays(expected, of);
  const bookFrom = (days: ReadonlyMap<number, string>): Filled => filled(opens, { spans, held, book: new DayBook({ first, last, hours: of.hours, noWork: of.noWork, mobilisation_min: of.mobilisation_min, beginners: { factor: of.firstDayFactor ?? 1, days } }) });
  const made = withBeginners(bookFrom, of.firstDayFactor ?? 1);
  const { book, done, forMoveOut } = made;
  const notPlaced = opens.filter((o) => !done.has(o)).map((o) => {
    const why = whyNot(o, book, of);
    return { workOrder: o.order.id, why: inEnglish(why), told: why };
  });
  const load = of.phases.filter((p) => opens.some((o) => o.order.phase === p.id)).map((phase) => loadOf(phase, { ...made, opens, expected, of }));
  const days = book.booked().map((d): CalendarDay => ({ day: d.day, crew: d.crew, building: d.building, phase: d.phase, ...offsetOn(d, of), mobilisation_min: d.mobilisation_min, visits: visitsOf(d, { ...of, forMoveOut }) }));
  const waiting = new Set(opens.filter((o) => o.waits !== undefined).map((o) => o.order.id)); // said by the records already
  const findings = notPlaced.filter((n) => !waiting.has(n.workOrder)).map((n) => toldFinding({ severity: 'warning', subject: n.workOrder }, told('calendar.notPlaced', { why: n.told }), told('calendar.notPlaced.toDo')));
  const count = load.reduce((sum, l) => sum + l.reserveDays, 0);
  const reserve: Told = { key: 'calendar.reserve', with: { count, days: told('count.crewDays', { count }), share: (of.noAccess.share * 100).toFixed(0), source: of.noAccess.source } };
  return { calendar: { days, notPlaced, load, wordsOnReserve: inEnglish(reserve), reserveTold: reserve, expectedTold: load.flatMap((l) => l.expectedEmpty.map((e) => expectedTold(l.phase, e))) }, findings: [...findings, ...overfull(load, of)] };
}
