import type { TableColumnOptions, TableForeignKeyOptions, TableIndexOptions, TableOptions } from 'typeorm';

// Words for hand-written tables. They name only types that SQLite and PostgreSQL both know.
// A migration that has run is never edited, so these words may be added to but not changed.

type Part = (name: string, blank?: 'blank') => TableColumnOptions;
const part =
  (type: string): Part =>
  (name, blank) => ({ name, type, isNullable: blank === 'blank' });

export const text = part('varchar');
export const longText = part('text');
export const real = part('double precision');
export const whole = part('integer');
export const wholeCents = part('bigint');
export const flag = part('boolean');
export const day = part('date');
export const json = part('text');
export const key = (name: string, type = 'varchar'): TableColumnOptions => ({ name, type, isPrimary: true });

/** Where most records came from: the file and its line. */
export const place: readonly TableColumnOptions[] = [text('inventory_file', 'blank'), whole('inventory_row', 'blank')];

export interface HandTable {
  readonly columns: readonly TableColumnOptions[];
  /** Name → columns. */
  readonly indexes?: Readonly<Record<string, readonly string[]>>;
  /** Name → condition. */
  readonly checks?: Readonly<Record<string, string>>;
  /** Column → table whose `id` it names. */
  readonly names?: Readonly<Record<string, string>>;
}

/** A table of a migration from its parts. */
export function table(name: string, of: HandTable): TableOptions {
  const indices: TableIndexOptions[] = Object.entries(of.indexes ?? {}).map(([index, columns]) => ({ name: index, columnNames: [...columns] }));
  const foreignKeys: TableForeignKeyOptions[] = Object.entries(of.names ?? {}).map(([column, other]) => ({
    columnNames: [column],
    referencedTableName: other,
    referencedColumnNames: ['id'],
  }));
  const checks = Object.entries(of.checks ?? {}).map(([check, expression]) => ({ name: check, expression, columnNames: [] }));
  return { name, columns: [...of.columns], indices, foreignKeys, checks };
}
