import type { InventoryRow } from '#calc';
import type { Remark } from '../cells/reading.js';
import type { Columns, RowValues } from './column.js';

/** A remark on a row as a whole or on one of its columns, made while the record is put together. */
export type Say<C> = (column: (keyof C & string) | null, remark: Remark) => void;

/** One kind of file: its columns and how a row becomes a record. */
export interface Table<C extends Columns = Columns, R = unknown> {
  readonly name: string;
  readonly about: string;
  readonly columns: C;
  /** The records of a row: one, several (a count), or none when the row cannot be one. */
  records(values: RowValues<C>, row: InventoryRow, say: Say<C>): readonly R[];
}

/** Keeps the column types of a table. */
export const defineTable = <C extends Columns, R>(table: Table<C, R>): Table<C, R> => table;

/** An error on a row, from within a table. */
export const wrong = (code: string, expected: string, whatToDo: string): Remark => ({ severity: 'error', code, expected, whatToDo });
export const doubtful = (code: string, expected: string, whatToDo: string): Remark => ({ severity: 'warning', code, expected, whatToDo });
export const noted = (code: string, expected: string, whatToDo: string): Remark => ({ severity: 'note', code, expected, whatToDo });
