import type { Known } from '#calc';
import type { CellReader } from '../cells/reading.js';

/** Whether every row must fill the column, or a blank is "not known". */
export type Need = 'needed' | 'optional';

/** One column of a table people send: its header, the other headers taken for it, its unit, and how its cells are read. */
export interface Column<T> {
  /** Canonical header without its unit. */
  readonly name: string;
  /** Unit of the canonical header, taken too when a header names no unit; '' where there is none. */
  readonly unit: string;
  /** Kind of units a header may carry instead; '' where there is none. */
  readonly quantity: string;
  readonly also: readonly string[];
  readonly need: Need;
  readonly about: string;
  readonly example: string;
  readonly read: CellReader<T>;
}

export type Columns = Readonly<Record<string, Column<unknown>>>;

/** The values of a row, by column; null is "not known". */
export type RowValues<C extends Columns> = { readonly [K in keyof C]: Known<C[K] extends Column<infer T> ? T : never> };

/** Header as the documentation and our own files write it. */
export const canonicalHeader = (column: Column<unknown>): string => (column.unit === '' ? column.name : `${column.name}_${column.unit}`);

/** What is said of a column beside its name. */
export interface Said {
  readonly also?: readonly string[];
  readonly unit?: string;
  readonly quantity?: string;
  readonly about: string;
  readonly example?: string;
}

const made = <T>(need: Need, name: string, of: Said & { readonly read: CellReader<T> }): Column<T> => ({
  name,
  unit: of.unit ?? '',
  quantity: of.quantity ?? '',
  also: of.also ?? [],
  need,
  about: of.about,
  example: of.example ?? '',
  read: of.read,
});

/** A column whose cell may be blank. */
export const optional = <T>(name: string, of: Said & { readonly read: CellReader<T> }): Column<T> => made('optional', name, of);

/** A column every row must fill. */
export const needed = <T>(name: string, of: Said & { readonly read: CellReader<T> }): Column<T> => made('needed', name, of);
