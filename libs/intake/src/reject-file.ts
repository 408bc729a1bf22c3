import { stringify } from 'csv-stringify/sync';
import { BrokenTable, csvRows, type CsvRow } from './files/csv-rows.js';
import type { FileLook } from './files/file-look.js';
import type { InventoryFile } from './files/inventory-file.js';
import type { Finding } from './finding.js';

/** Rows of one file that were not taken, as a table to correct and send again. */
export interface RejectFile {
  /** `windows.rejected.csv` for `windows.csv`. */
  readonly name: string;
  readonly of: string;
  readonly rows: number;
  readonly text: string;
}

/** What is needed to write the rejected rows of a file: where its header stands and which columns are personal. */
export interface ReadFile {
  readonly file: InventoryFile;
  readonly look: FileLook;
  readonly headerLine: number | null;
  readonly personal: readonly string[];
}

/** Columns a reject file adds; a corrected one is read as if they were not there. */
export const REASON = 'reject_reason';
export const LINE = 'reject_line';

/** Text that a spreadsheet would take for a formula gets an apostrophe before it; numbers with a sign stay as they are. */
export function guardedText(text: string): string {
  const risky = /^\s*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/.test(text) && !/^\s*[-+]?[\d.,]+\s*$/.test(text);
  return risky ? `'${text}` : text;
}

const reasonOf = ({ column, expected, whatToDo }: Finding): string => `${column === null ? '' : `${column}: `}expected ${expected}; ${whatToDo}`;

/** The rows up to the line where a table breaks off; that it does is a finding already. */
async function* untilBroken(rows: AsyncGenerator<CsvRow>): AsyncGenerator<CsvRow> {
  try {
    yield* rows;
  } catch (fault) {
    if (!(fault instanceof BrokenTable)) throw fault;
  }
}

/** The rows of a file that errors stand in the way of: original columns first, then the line and all its reasons. */
export async function rejectFileOf(read: ReadFile, findings: readonly Finding[]): Promise<RejectFile | null> {
  const { file, look, headerLine, personal } = read;
  const reasons = new Map<number, string[]>();
  for (const finding of findings) {
    if (finding.file !== file.name || finding.row === null || finding.severity !== 'error' || finding.row === headerLine) continue;
    reasons.set(finding.row, [...(reasons.get(finding.row) ?? []), reasonOf(finding)]);
  }
  if (headerLine === null || reasons.size === 0) return null;
  const table: string[][] = [];
  let kept: readonly number[] = [];
  let rows = 0;
  for await (const { line, cells } of untilBroken(csvRows(file, look))) {
    if (line === headerLine) {
      kept = cells.map((_, index) => index).filter((index) => !personal.includes(cells[index] ?? ''));
      table.push([...kept.map((index) => cells[index] ?? ''), LINE, REASON].map(guardedText));
    }
    const why = reasons.get(line);
    if (why === undefined) continue;
    rows += 1;
    table.push([...kept.map((index) => cells[index] ?? ''), String(line), why.join(' | ')].map(guardedText));
  }
  return { name: file.name.replace(/(\.[a-z]+)?$/i, '.rejected.csv'), of: file.name, rows, text: stringify(table, { bom: true, record_delimiter: 'windows' }) };
}
