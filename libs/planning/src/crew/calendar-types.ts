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
  /** First day of a new crew: the minutes are longer by the factor of the time model. */
  readonly isFirstDay?: true;
  /** Work that takes more than a day goes on: 1 the first day. */
  readonly part: number;
  readonly parts: number;
}

/** A crew's day in one building. */
export interface CalendarDay {
  readonly day: string;
  readonly crew: number;
  readonly building: string;
  readonly phase: string;
  /** Person-minutes for loading, parking and keys; once a day and building. */
  readonly mobilisation_min: number;
  readonly visits: readonly CalendarVisit[];
}

/** Days of a phase and how they are used. */
export interface CalendarLoad {
  readonly phase: string;
  readonly daysOpen: number;
  readonly daysUsed: number;
  /** Days kept free for doors that stay shut. */
  readonly reserveDays: number;
  readonly personMinutes: { readonly low: number; readonly best: number; readonly high: number };
  /** Dwellings of the plan's buildings that are expected to fall empty in the phase beyond those known. */
  readonly expectedEmpty: readonly { readonly building: string; readonly dwellings: number; readonly known: number }[];
}

/** The working days of the plan. */
export interface PlanCalendar {
  readonly days: readonly CalendarDay[];
  readonly notPlaced: readonly { readonly workOrder: string; readonly why: string }[];
  readonly load: readonly CalendarLoad[];
  readonly wordsOnReserve: string;
}
