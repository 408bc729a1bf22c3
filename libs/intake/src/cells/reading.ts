import type { Known } from '#calc';
import type { Severity } from '../finding.js';
import type { GlazingWords } from './glazing-words.js';

/** What is odd about a cell, without its place. */
export interface Remark {
  readonly severity: Severity;
  readonly code: string;
  readonly expected: string;
  readonly whatToDo: string;
}

/** A cell as read: its value, or null for "not known", and what is odd about it. */
export interface Reading<T> {
  readonly value: Known<T>;
  readonly remark?: Remark;
}

export type DecimalMark = '.' | ',';
export type DateOrder = 'day-month' | 'month-day';

/** What a cell needs to know of its file and column. */
export interface CellContext {
  /** Unit from the header; a unit in the cell itself wins. */
  readonly unit: string;
  readonly decimal: DecimalMark;
  readonly dateOrder: DateOrder | null;
  readonly glazingWords: GlazingWords;
  /** Words a person gave for sides of buildings ("street side" → "SW"). */
  readonly facadeWords: Readonly<Record<string, string>>;
}

export type CellReader<T> = (text: string, context: CellContext) => Reading<T>;

/** A value as read, with a remark if it has to be looked at. */
export const known = <T>(value: T, remark?: Remark): Reading<T> => (remark === undefined ? { value } : { value, remark });

/** The cell is filled but cannot be used; its row is not taken. */
export const fault = (code: string, expected: string, whatToDo: string): Reading<never> => ({
  value: null,
  remark: { severity: 'error', code, expected, whatToDo },
});

/** The cell is filled with a word nobody knows; the value stays "not known" and the row is taken. */
export const notKnown = (code: string, expected: string, whatToDo: string): Reading<never> => ({
  value: null,
  remark: { severity: 'warning', code, expected, whatToDo },
});

/** A remark that leaves the value standing. */
export const lookAt = (code: string, expected: string, whatToDo: string): Remark => ({ severity: 'warning', code, expected, whatToDo });
