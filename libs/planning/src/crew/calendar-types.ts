import type { Told } from '../words/told.js';
import type { ShadeTime } from './work-order-types.js';

/** One dwelling on one day. */
export interface CalendarVisit {
  readonly workOrder: string;
  readonly dwelling: string;
  /** `HH:MM` by the clock on the wall. */
  readonly start: string;
  /** With the best figure of minutes, break included. */
  readonly end: string;
  readonly personMinutes: { readonly low: number; readonly best: number; readonly high: number };
  readonly shade: readonly ShadeTime[];
  /** Day by which the entry notice has to be out. */
  readonly noticeBy: string;
  /** The dwelling stands empty that day. */
  readonly isEmpty: boolean;
  /** The day is left for whichever dwelling of the building falls empty about then; it is expected, not known. */
  readonly isForMoveOut?: true;
  /** First day of a new crew: the minutes are longer by the factor of the time model. */
  readonly isFirstDay?: true;
  /** Work that takes more than a day goes on: 1 the first day. */
  readonly part: number;
  readonly parts: number;
}

/** A crew's day in one building. */
export interface CalendarDay {
  readonly day: string;
  /** Its number among the own crews, or among those of the contractor. */
  readonly crew: number;
  /** A contractor's day: it takes none of the own crews'. */
  readonly isContractor?: true;
  readonly building: string;
  readonly phase: string;
  /** Hours the clock on the wall is ahead of world time (UTC) that day; absent where its rule is not known. */
  readonly utcOffset_h?: number;
  /** Person-minutes for loading, parking and keys; once a day and building. */
  readonly mobilisation_min: number;
  readonly visits: readonly CalendarVisit[];
}

/** Dwellings of a building with work in a phase that are expected to fall empty beyond those known to; how many, not which. */
export interface ExpectedEmpty {
  readonly building: string;
  /** By the turnover rate. */
  readonly dwellings: number;
  /** Dwellings known to stand empty in the phase. */
  readonly known: number;
  /** Dwellings with work that are not known to. */
  readonly of: number;
  /** `YYYY-MM` and dwellings expected in it. */
  readonly months: readonly { readonly month: string; readonly dwellings: number }[];
  /** Crew days their work takes. */
  readonly crewDays: number;
  /** Visits that stand on days spread over the phase for them. */
  readonly kept?: number;
}

/** Days of a phase and how the own crews use them; a contractor's days and minutes are not in it. */
export interface CalendarLoad {
  readonly phase: string;
  readonly daysOpen: number;
  readonly daysUsed: number;
  /** Days kept free for doors that stay shut. */
  readonly reserveDays: number;
  readonly personMinutes: { readonly low: number; readonly best: number; readonly high: number };
  readonly expectedEmpty: readonly ExpectedEmpty[];
}

/** The working days of the plan. */
export interface PlanCalendar {
  readonly days: readonly CalendarDay[];
  readonly notPlaced: readonly { readonly workOrder: string; readonly why: string; readonly told?: Told }[];
  readonly load: readonly CalendarLoad[];
  readonly wordsOnReserve: string;
  /** The same as a sentence of the table; plans kept before have none. */
  readonly reserveTold?: Told;
  /** What is expected to fall empty, building by building and year by year; plans kept before have none. */
  readonly expectedTold?: readonly Told[];
  /** How many crews of the contractor are assumed and what they do not take; absent where he has no work, and in plans kept before, whose contractors stand on days of the own crew. */
  readonly contractorTold?: Told;
}
