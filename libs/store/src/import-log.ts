import type { Known } from '#calc';
import type { EntityManager } from 'typeorm';
import { ImportRow } from './kept/import.js';

/** One thing said about a file when it was taken in. */
export interface ImportFinding {
  readonly severity: 'error' | 'warning' | 'note';
  readonly file: string;
  readonly row: number | null;
  readonly column: string | null;
  readonly value: string | null;
  readonly expected: string;
  readonly whatToDo: string;
  /** How many rows say the same. */
  readonly times: number;
}

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

/** A file and what was found in it. */
export interface FileWithFindings extends FileTakenIn {
  readonly findings?: readonly ImportFinding[];
}

export async function keepImport(rows: EntityManager, { findings, ...file }: FileWithFindings): Promise<void> {
  await rows.insert(ImportRow, { ...file, findings: findings === undefined ? null : JSON.stringify(findings) });
}

export async function importsOf(rows: EntityManager): Promise<readonly ImportNote[]> {
  const found = await rows.find(ImportRow, { order: { at: 'DESC', id: 'ASC' } });
  return found.map(({ findings: _, ...row }) => row);
}

/** What was found in the files as they were last taken in: of each file name the newest import speaks. */
export async function standingFindings(rows: EntityManager): Promise<readonly ImportFinding[]> {
  const newest = new Map<string, ImportRow>();
  for (const row of await rows.find(ImportRow, { order: { at: 'DESC', id: 'ASC' } })) if (!newest.has(row.file)) newest.set(row.file, row);
  const files = [...newest.values()].sort((a, b) => (a.file < b.file ? -1 : 1));
  return files.flatMap(({ findings }) => (findings === null ? [] : (JSON.parse(findings) as readonly ImportFinding[])));
}
