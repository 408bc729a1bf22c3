import type { Known } from '#calc';
import type { EntityManager } from 'typeorm';
import { ImportRow } from './kept/import.js';

/** One file taken in. Id and time come from the caller. */
export interface FileTakenIn {
  readonly id: string;
  readonly file: string;
  readonly sha256: string;
  /** ISO date and time. */
  readonly at: string;
  readonly encoding: Known<string>;
  readonly rowsRead: number;
  readonly created: number;
  readonly updated: number;
  readonly unchanged: number;
  readonly rejected: number;
}

export type ImportNote = FileTakenIn;

export async function keepImport(rows: EntityManager, file: FileTakenIn): Promise<void> {
  await rows.insert(ImportRow, file);
}

export async function importsOf(rows: EntityManager): Promise<readonly ImportNote[]> {
  const found = await rows.find(ImportRow, { order: { at: 'DESC', id: 'ASC' } });
  return found.map((row) => ({ ...row }));
}
