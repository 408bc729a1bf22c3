import { grouped, sortedBy } from '../grouped.js';
import { type CalendarRequest, later, spansOf } from './calendar-request.js';
import { DayBook } from './day-book.js';
import { expectedEmpty, heldOrders, laterPhases } from './expected-empty.js';
import { daysAfter } from './work-days.js';
import type { OpenOrder } from './work-orders.js';

/** A book of days with the orders that found one. */
interface Filled {
  readonly book: DayBook;
  readonly done: ReadonlySet<OpenOrder>;
  /** Orders that stand on a day left for whichever dwelling falls empty. */
  readonly forMoveOut: ReadonlySet<OpenOrder>;
}

/** What is expected to fall empty, with the orders it is a part of. */
export type Expected = NonNullable<ReturnType<typeof expectedEmpty>> & { readonly phase: string; readonly orders: readonly OpenOrder[] };

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

/** The days of the own crews, or those of the contractor, with the orders they were given. */
export interface CrewPart extends Filled {
  /** With the hours of these crews. */
  readonly of: CalendarRequest;
  readonly opens: readonly OpenOrder[];
  readonly expected: readonly Expected[];
}

/** Books the orders of one kind of crew in a book of days of its own. */
export function crewPart(opens: readonly OpenOrder[], of: CalendarRequest): CrewPart {
  const first = of.phases.map((p) => p.firstDay).sort()[0] ?? of.madeOn;
  const last = of.phases.map((p) => p.lastDay).sort().at(-1) ?? of.madeOn;
  const spans = new Map(opens.map((open) => [open, spansOf(open, of)]));
  const expected = expectedOf(opens, of);
  const held = heldDays(expected, of);
  const factor = of.firstDayFactor ?? 1;
  const bookFrom = (days: ReadonlyMap<number, string>): Filled => filled(opens, { spans, held, book: new DayBook({ first, last, hours: of.hours, noWork: of.noWork, mobilisation_min: of.mobilisation_min, beginners: { factor, days } }) });
  return { ...withBeginners(bookFrom, factor), of, opens, expected };
}
