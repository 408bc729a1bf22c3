import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A long table of outside values: columns named once, one row a line, with where it comes from and how it was made. */
export interface ValueFile<Row> {
  readonly source: string;
  readonly how: string;
  readonly columns: readonly string[];
  readonly rows: readonly Row[];
}

/** Reads one long table that stands beside this file. */
export function readValues<Row>(name: string): ValueFile<Row> {
  return JSON.parse(readFileSync(join(dirname(fileURLToPath(import.meta.url)), name), 'utf8')) as ValueFile<Row>;
}
