import type { Phase } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import { told, type Told } from '../words/told.js';
import type { ExpectedEmpty } from './calendar-types.js';
import type { Span } from './day-book.js';
import { daysAfter, daysBetween } from './work-days.js';
import type { OpenOrder } from './work-orders.js';

/** What is expected of one building in one year of its owner. */
export interface ExpectedRequest {
  readonly phase: Phase;
  /** Orders of the phase and building. */
  readonly orders: readonly OpenOrder[];
  /** Last day for which move-outs of the building are known; null where none is. */
  readonly knownUntil: string | null;
  /** First day on which work can begin. */
  readonly soonest: string;
  /** Person-minutes a crew has for panes on a day in the building. */
  readonly room_min: number;
}

const YEAR_days = 365;
const lastOfAll = (days: readonly string[]): string => [...days].sort().at(-1)!;
const tenth = (x: number): number => Math.round(x * 10) / 10;

/** Days in which dwellings may fall empty beyond those that are known to; null where none is left. */
function windowOf(of: ExpectedRequest): Span | null {
  const { phase, knownUntil } = of;
  const open = [...of.orders].map((o) => o.occupiedFrom).sort()[0];
  if (open === undefined) return null;
  const from = lastOfAll([phase.firstDay, of.soonest, open, ...(knownUntil === null ? [] : [daysAfter(knownUntil, 1)])]);
  return from > phase.lastDay ? null : { from, until: phase.lastDay };
}

/** Months of a span, each with its days in it. */
function monthsOf({ from, until }: Span): { readonly month: string; readonly days: number }[] {
  const months: { month: string; days: number }[] = [];
  for (let first = from; first <= until; ) {
    const month = first.slice(0, 7);
    const end = new Date(Date.UTC(Number(month.slice(0, 4)), Number(month.slice(5)), 0)).toISOString().slice(0, 10);
    months.push({ month, days: daysBetween(first, end < until ? end : until) });
    first = daysAfter(end, 1);
  }
  return months;
}

/**
 * Dwellings of a year's plan expected to fall empty, beyond those known to, and the crew days they take.
 *
 *   turnover a year × dwellings with work and no known empty time × days beyond the last known move-out / 365, month by month
 *
 * @returns null where the building has no turnover rate, or nothing is left to expect
 */
export function expectedEmpty(of: ExpectedRequest): (ExpectedEmpty & { readonly window: Span }) | null {
  const rate = of.orders[0]?.building.turnover_1_yr ?? null;
  const unknown = of.orders.filter((o) => o.empty === null && o.waits === undefined);
  const window = windowOf(of);
  if (rate === null || rate === 0 || unknown.length === 0 || window === null) return null;
  const inDays = (days: number): number => (rate * unknown.length * days) / YEAR_days;
  const dwellings = inDays(daysBetween(window.from, window.until));
  const mean_min = unknown.reduce((sum, o) => sum + o.order.minutes.best, 0) / unknown.length;
  return {
    building: unknown[0]!.building.id,
    dwellings: tenth(dwellings),
    known: of.orders.filter((o) => o.empty !== null).length,
    of: unknown.length,
    months: monthsOf(window).map(({ month, days }) => ({ month, dwellings: Math.round(inDays(days) * 100) / 100 })),
    crewDays: of.room_min > 0 ? tenth((dwellings * mean_min) / of.room_min) : 0,
    window,
  };
}

/**
 * Orders of a later year whose day is left for a dwelling that falls empty: as many as are expected to, those of the building whose
 * saving is least, spread evenly over the time in which they may. Which dwelling it will be is not known: it takes the day, and its own day is free for the order that had it.
 *
 * @returns each order with the first day it is tried on
 */
export function heldOrders(orders: readonly OpenOrder[], expected: { readonly dwellings: number; readonly window: Span }): Map<OpenOrder, string> {
  const { window } = expected;
  const count = Math.min(orders.length, Math.round(expected.dwellings));
  const days = daysBetween(window.from, window.until);
  const padded = (x: number): string => String(Math.max(0, Math.round(x))).padStart(12, '0');
  const last = sortedBy(orders, (o) => `${padded(o.yearlyCooling_cents ?? 0)}|${padded(o.order.minutes.best)}|${o.order.id}`).slice(0, count);
  return new Map(last.map((order, i): [OpenOrder, string] => [order, daysAfter(window.from, Math.floor(((i + 0.5) / count) * days))]));
}

/** Phases after the first of each owner that is not over: there move-outs are expected, not known. */
export function laterPhases(phases: readonly Phase[], madeOn: string): ReadonlySet<string> {
  const owners = grouped(sortedBy(phases.filter((p) => p.lastDay >= madeOn), (p) => p.firstDay), (p) => p.ownerEntity);
  return new Set([...owners.values()].flatMap((own) => own.filter((p) => p.firstDay > own[0]!.firstDay).map((p) => p.id)));
}

/** One building and year in a sentence. */
export function expectedTold(phase: string, of: ExpectedEmpty): Told {
  const months = of.months.map(({ month, dwellings }) => `${month}: ${dwellings.toFixed(2)}`).join(', ');
  const said = told('calendar.expected', { phase, building: of.building, dwellings: of.dwellings.toFixed(1), of: told('count.dwellings', { count: of.of }), days: of.crewDays.toFixed(1), months });
  const kept = of.kept ?? 0;
  return kept === 0 ? said : told('calendar.expectedKept', { said, visits: told('count.visits', { count: kept }) });
}
