import { sortedBy } from '../grouped.js';
import { blocks, daysAfter, type NoWork, workDays } from './work-days.js';
import type { OpenOrder } from './work-orders.js';

/** Crews and their day. */
export interface CrewHours {
  readonly crews: number;
  /** Persons of a crew. */
  readonly size: number;
  readonly days_wk: number;
  readonly hours_day: number;
}

/** A part of an order on a crew's day. */
export interface BookedVisit {
  readonly open: OpenOrder;
  readonly isEmpty: boolean;
  readonly part: number;
  readonly parts: number;
  /** With the first day of a new crew counted in. */
  readonly share_min: number;
  /** How much longer it takes on a crew's first day; else 1. */
  readonly factor: number;
}

/** A crew's day, given to one building. */
export interface BookedDay {
  readonly day: string;
  readonly crew: number;
  readonly building: string;
  readonly phase: string;
  readonly mobilisation_min: number;
  used_min: number;
  readonly visits: BookedVisit[];
}

export interface DayBookRequest {
  readonly first: string;
  readonly last: string;
  readonly hours: CrewHours;
  readonly noWork: readonly NoWork[];
  /** Person-minutes of loading, parking and keys, once a day and building. */
  readonly mobilisation_min: (building: OpenOrder['building']) => number;
  /** Day on which each crew begins, by its number, and how much longer work takes then; absent for crews that know it. */
  readonly beginners?: { readonly factor: number; readonly days: ReadonlyMap<number, string> };
}

/** Days from one to another in which an order may be done. */
export interface Span {
  readonly from: string;
  readonly until: string;
}

/** The crews' days, filled order by order: in a day the building has already, else in the first free one. */
export class DayBook {
  readonly days: readonly string[];
  readonly capacity_min: number;
  readonly #booked = new Map<string, BookedDay[]>();

  constructor(private readonly request: DayBookRequest) {
    const { hours } = request;
    this.days = workDays(request.first, request.last, hours.days_wk);
    this.capacity_min = hours.size * hours.hours_day * 60;
  }

  /** All days booked, in order. */
  booked(): BookedDay[] {
    return sortedBy([...this.#booked.values()].flat(), (d) => `${d.day}|${String(d.crew).padStart(4, '0')}`);
  }

  /** Days of a span on which a crew is still free. */
  freeDays(span: Span): string[] {
    return this.days.filter((day) => day >= span.from && day <= span.until && (this.#booked.get(day)?.length ?? 0) < this.request.hours.crews);
  }

  /** Books an order within a span, whole or, if longer than a day, over several; false and nothing booked where it does not fit. */
  book(open: OpenOrder, span: Span, isEmpty: boolean): boolean {
    const room = this.capacity_min - this.request.mobilisation_min(open.building);
    if (room <= 0) return false;
    const parts = Math.max(1, Math.ceil(open.order.minutes.best / room));
    const share_min = open.order.minutes.best / parts;
    const days = this.days.filter((day) => day >= span.from && day <= span.until && !this.request.noWork.some((b) => blocks(b, { day, isOutdoor: open.isOutdoor })));
    const chosen = parts === 1 ? this.#oneDay(open, days, share_min) : this.#severalDays(open, days, { parts, share_min });
    if (chosen === null) return false;
    chosen.forEach((slot, i) => {
      if (!this.#slots(slot.day).includes(slot)) this.#slots(slot.day).push(slot);
      const factor = this.#factor(slot);
      slot.visits.push({ open, isEmpty, part: i + 1, parts, factor, share_min: share_min * factor });
      slot.used_min += share_min * factor;
    });
    return true;
  }

  #slots(day: string): BookedDay[] {
    let slots = this.#booked.get(day);
    if (slots === undefined) this.#booked.set(day, (slots = []));
    return slots;
  }

  #factor(slot: BookedDay): number {
    const { beginners } = this.request;
    return beginners?.days.get(slot.crew) === slot.day ? beginners.factor : 1;
  }

  /** Another crew is in the dwelling that day. */
  #isOccupied(open: OpenOrder, day: string, crew: number): boolean {
    return (this.#booked.get(day) ?? []).some((s) => s.crew !== crew && s.visits.some((v) => v.open.order.dwelling === open.order.dwelling));
  }

  /** The building's own day with room for it, or null. */
  #shared(open: OpenOrder, day: string, share_min: number): BookedDay | null {
    const own = (this.#booked.get(day) ?? []).filter((s) => s.building === open.building.id && s.phase === open.order.phase);
    return own.find((s) => s.used_min + share_min * this.#factor(s) <= this.capacity_min && !this.#isOccupied(open, day, s.crew)) ?? null;
  }

  #fresh(open: OpenOrder, day: string): BookedDay | null {
    const taken = this.#booked.get(day)?.length ?? 0;
    if (taken >= this.request.hours.crews || this.#isOccupied(open, day, taken + 1)) return null;
    const mobilisation_min = this.request.mobilisation_min(open.building);
    return { day, crew: taken + 1, building: open.building.id, phase: open.order.phase, mobilisation_min, used_min: mobilisation_min, visits: [] };
  }

  #oneDay(open: OpenOrder, days: readonly string[], share_min: number): BookedDay[] | null {
    for (const take of [(day: string) => this.#shared(open, day, share_min), (day: string) => this.#fresh(open, day)]) {
      for (const day of days) {
        const slot = take(day);
        if (slot !== null) return [slot];
      }
    }
    return null;
  }

  #severalDays(open: OpenOrder, days: readonly string[], of: { readonly parts: number; readonly share_min: number }): BookedDay[] | null {
    const chosen: BookedDay[] = [];
    for (const day of days) {
      const slot = this.#fresh(open, day) ?? this.#shared(open, day, of.share_min);
      if (slot !== null) chosen.push(slot);
      if (chosen.length === of.parts) return chosen;
    }
    return null;
  }
}

/** Last day on which the entry notice can go out. */
export const noticeBy = (day: string, notice_h: number): string => daysAfter(day, -Math.ceil(notice_h / 24));
