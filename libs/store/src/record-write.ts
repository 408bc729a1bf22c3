import type { EntityManager, EntityMetadata, ObjectLiteral } from 'typeorm';
import { allKept } from './all-kept.js';
import type { ListName, RecordOf } from './kept-kind.js';

/** What a write did, in records. */
export interface WriteCounts {
  readonly created: number;
  readonly updated: number;
  readonly unchanged: number;
}

export const noWrites: WriteCounts = { created: 0, updated: 0, unchanged: 0 };

export function addCounts(a: WriteCounts, b: WriteCounts): WriteCounts {
  return { created: a.created + b.created, updated: a.updated + b.updated, unchanged: a.unchanged + b.unchanged };
}

// SQLite takes at most 32,766 values in a statement.
const VALUES_A_STATEMENT = 30_000;

/** Text that is the same for the same content, whatever the order of the fields; fields that are not set count as not there. */
export function sameText(value: unknown): string {
  return JSON.stringify(value, (_name, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}

function fields(metadata: EntityMetadata, row: ObjectLiteral): { key: string; all: string } {
  const part = (columns: EntityMetadata['columns']): string => sameText(columns.map((column) => (row[column.propertyName] as unknown) ?? null));
  return { key: part(metadata.primaryColumns), all: part(metadata.columns) };
}

/** Writes rows over those with the same key. */
export async function putRows(rows: EntityManager, entity: new () => ObjectLiteral, put: readonly ObjectLiteral[]): Promise<void> {
  const { columns, primaryColumns } = rows.connection.getMetadata(entity);
  const names = (of: typeof columns): string[] => of.map((column) => column.databaseName);
  const others = columns.filter((column) => !column.isPrimary);
  const step = Math.floor(VALUES_A_STATEMENT / columns.length);
  for (let from = 0; from < put.length; from += step) {
    await rows
      .createQueryBuilder()
      .insert()
      .into(entity)
      .values(put.slice(from, from + step))
      .orUpdate(names(others), names(primaryColumns))
      .updateEntity(false)
      .execute();
  }
}

/**
 * Creates or updates records of one list. The last of several with the same key wins.
 *
 * @returns counts of distinct records; one that says what is kept already is unchanged and not written
 */
export async function putRecords<List extends ListName>(rows: EntityManager, list: List, records: readonly RecordOf<List>[]): Promise<WriteCounts> {
  if (records.length === 0) return noWrites;
  const { entity, toRow } = allKept[list];
  const metadata = rows.connection.getMetadata(entity);
  const kept = new Map<string, string>();
  for (const row of await rows.find(entity)) {
    const { key, all } = fields(metadata, row);
    kept.set(key, all);
  }
  const given = new Map(records.map(toRow).map((row) => [fields(metadata, row).key, row]));
  const created = [...given].filter(([key]) => !kept.has(key)).map(([, row]) => row);
  const updated = [...given].filter(([key, row]) => kept.has(key) && kept.get(key) !== fields(metadata, row).all).map(([, row]) => row);
  await putRows(rows, entity, [...created, ...updated]);
  return { created: created.length, updated: updated.length, unchanged: given.size - created.length - updated.length };
}
