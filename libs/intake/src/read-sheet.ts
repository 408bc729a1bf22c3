import type { InventoryRow } from '#calc';
import { plainText, saysUnknown, trimmed, words } from './cells/cell-text.js';
import type { CellContext, Remark } from './cells/reading.js';
import { canonicalHeader } from './columns/column.js';
import { matchHeader, type MatchedHeader } from './columns/header.js';
import type { Table } from './columns/table.js';
import { BrokenTable, csvRows, type CsvRow } from './files/csv-rows.js';
import type { FileLook } from './files/file-look.js';
import type { InventoryFile } from './files/inventory-file.js';
import type { FindingList } from './finding.js';
import { LINE, REASON } from './reject-file.js';

const HEADER_WITHIN = 30;
// Columns that name or reach people have no business in a window survey.
const PERSONAL = /^(tenant|resident|occupant|contact|owner)?( ?)(phone|telephone|mobile|cell|cell phone|phone no|phone number|email|e mail|mail|tenant name|resident name|last name|first name|full name|date of birth|ssn)( ?)(address|number|no)?$/;

/** What a sheet is read with. */
export interface SheetJob {
  readonly file: InventoryFile;
  readonly look: FileLook;
  /** One table, or the several tables whose columns a flat inventory carries side by side. */
  readonly tables: readonly Table[];
  readonly context: Omit<CellContext, 'unit'>;
  /** Line of the header when a person has said it. */
  readonly headerLine: number | null;
  readonly findings: FindingList;
  /** Takes the records of one row, table by table. */
  readonly take: (records: readonly (readonly unknown[])[], row: InventoryRow) => void;
  /** Takes the cells of columns that belong to no table. */
  readonly takeExtra: (cells: Readonly<Record<string, string>>, row: InventoryRow) => void;
}

/** What was found about a sheet on the way. */
export interface SheetSummary {
  readonly file: string;
  readonly headerLine: number | null;
  readonly rowsRead: number;
  /** Headers left out of everything that goes back to people. */
  readonly personal: readonly string[];
}

interface Header {
  readonly line: number;
  readonly cells: readonly string[];
  readonly matched: readonly MatchedHeader[];
}

const isTotal = (cells: readonly string[]): boolean => /^(sub ?total|grand total|total|totals|sum)\b/i.test(plainText(cells.find((cell) => trimmed(cell) !== '') ?? ''));
/** The header again, as printed tables have it at the head of each page. */
const isRepeat = (cells: readonly string[], header: readonly string[]): boolean => trimmed(cells[0] ?? '') === trimmed(header[0] ?? '') && words(cells.join(' ')) === words(header.join(' '));
const sizeOf = ({ matched }: Header): number => matched.reduce((sum, { columns, duplicates }) => sum + columns.length + duplicates.length, 0);
const complete = ({ matched }: Header): boolean => matched.every(({ missing }) => missing.length === 0);

/** Reads one sheet row by row; every trouble becomes a finding, no row stops another. */
export async function readSheet(job: SheetJob): Promise<SheetSummary> {
  const rows = csvRows(job.file, job.look);
  let header: Header | null = null;
  let rowsRead = 0;
  try {
    header = await headerOf(rows, job);
    const personal = header === null ? [] : sayHeader(header, job);
    if (header === null || !usable(header, job)) return { file: job.file.name, headerLine: header?.line ?? null, rowsRead, personal };
    for await (const row of rows) {
      if (isTotal(row.cells)) remarkOn(job, row.line, { severity: 'note', code: 'total-row', expected: 'one row per thing', whatToDo: 'a total was left out; nothing to do' });
      else if (!isRepeat(row.cells, header.cells)) {
        rowsRead += 1;
        readRow(row, header, job);
      }
    }
    if (rowsRead === 0) remarkOn(job, null, { severity: 'warning', code: 'no-rows', expected: 'rows below the header', whatToDo: 'the file has a header only; add rows or leave the file out' });
    return { file: job.file.name, headerLine: header.line, rowsRead, personal };
  } catch (fault) {
    if (!(fault instanceof BrokenTable)) throw fault;
    remarkOn(job, fault.line, { severity: 'error', code: 'table-broken', expected: 'quotes that open and close', whatToDo: `the table cannot be followed from here (${fault.message}); rows before it were read. Correct the quotes and send it again` });
    return { file: job.file.name, headerLine: header?.line ?? null, rowsRead, personal: [] };
  }
}

/** A remark with its column and the value seen there. */
type Remarked = Remark & { readonly column?: string; readonly value?: string };

function remarkOn(job: SheetJob, row: number | null, { column, value, ...remark }: Remarked): void {
  job.findings.add({ file: job.file.name, row, column: column ?? null, value: value ?? null, ...remark });
}

async function headerOf(rows: AsyncGenerator<CsvRow>, job: SheetJob): Promise<Header | null> {
  let best: Header | null = null;
  for (let seen = 0; seen < HEADER_WITHIN; seen++) {
    const next = await rows.next();
    if (next.done === true) break;
    const { line, cells } = next.value;
    const here = { line, cells, matched: job.tables.map(({ columns }) => matchHeader(columns, cells)) };
    if (job.headerLine === line || (job.headerLine === null && complete(here))) return here;
    if (best === null || sizeOf(here) > sizeOf(best)) best = here;
  }
  if (best !== null && sizeOf(best) >= 2 && job.headerLine === null) return best;
  const needs = job.tables.flatMap(({ columns }) => Object.values(columns).filter(({ need }) => need === 'needed').map(canonicalHeader));
  remarkOn(job, null, { severity: 'error', code: 'header-not-found', expected: `one header line with at least ${[...new Set(needs)].join(', ')}`, whatToDo: `put all headers into one line, or name its line in plan.json: "files": { "${job.file.name}": { "header_line": 3 } }` });
  return null;
}

/** Says what the header leaves open; returns the personal columns. */
function sayHeader(header: Header, job: SheetJob): readonly string[] {
  if (header.line > 1) remarkOn(job, header.line, { severity: 'note', code: 'header-line', expected: 'the header in the first line', whatToDo: `the header was found in line ${header.line}; lines above it were left out` });
  for (const { unitAssumed, header: name, unit } of header.matched.flatMap(({ columns }) => columns)) {
    if (unitAssumed && !words(name).endsWith(words(unit))) remarkOn(job, header.line, { severity: 'note', code: 'unit-assumed', expected: 'a unit in the header', whatToDo: `taken as ${unit} where a cell names no unit`, column: name });
  }
  const strangers = header.cells.filter((name, index) => words(name) !== '' && name !== LINE && name !== REASON && header.matched.every(({ unknown }) => unknown.some((other) => other.index === index)));
  for (const name of strangers) {
    const remark: Remark = PERSONAL.test(words(name))
      ? { severity: 'warning', code: 'personal-data', expected: 'no names, phones or mail addresses', whatToDo: 'left out and not kept; take the column out of the file' }
      : { severity: 'note', code: 'column-unknown', expected: 'a header of the documented columns', whatToDo: 'kept with its rows but not used; rename it if it is one of ours' };
    remarkOn(job, header.line, { ...remark, column: name });
  }
  return strangers.filter((name) => PERSONAL.test(words(name)));
}

function usable(header: Header, job: SheetJob): boolean {
  const duplicates = header.matched.flatMap((matched) => matched.duplicates);
  for (const { headers } of duplicates) {
    remarkOn(job, header.line, { severity: 'error', code: 'header-duplicate', expected: 'each thing in one column', whatToDo: 'two headers mean the same; rename or take out one', column: headers.join(' and ') });
  }
  const missing = header.matched.flatMap((matched, i) => matched.missing.map((key) => job.tables[i]?.columns[key]));
  for (const column of missing) {
    if (column !== undefined) remarkOn(job, header.line, { severity: 'error', code: 'column-missing', expected: [canonicalHeader(column), ...column.also].join(', '), whatToDo: 'add the column, or use one of these headers', column: canonicalHeader(column) });
  }
  return duplicates.length === 0 && missing.length === 0;
}

/** One row for one table: its values, and whether an error stands in the way. */
interface RowReading {
  readonly values: Readonly<Record<string, unknown>>;
  failed: boolean;
}

function readCells({ line, cells }: CsvRow, at: { readonly table: Table; readonly matched: MatchedHeader }, job: SheetJob): RowReading {
  const values: Record<string, unknown> = Object.fromEntries(Object.keys(at.table.columns).map((key) => [key, null]));
  let failed = false;
  for (const { index, key, header, unit } of at.matched.columns) {
    const column = at.table.columns[key];
    const text = cells[index] ?? '';
    if (column === undefined) continue;
    if (saysUnknown(text)) {
      if (column.need === 'needed') {
        remarkOn(job, line, { severity: 'error', code: 'missing-value', expected: column.about, whatToDo: 'fill in the cell', column: header, value: text });
        failed = true;
      } else if (trimmed(text) !== '') remarkOn(job, line, { severity: 'note', code: 'read-as-unknown', expected: column.about, whatToDo: 'taken as not known', column: header, value: text });
      continue;
    }
    const { value, remark } = column.read(text, { ...job.context, unit });
    values[key] = value;
    if (remark !== undefined) remarkOn(job, line, { ...remark, column: header, value: text });
    failed ||= remark?.severity === 'error';
  }
  return { values, failed };
}

function recordsOf(row: CsvRow, at: { readonly table: Table; readonly matched: MatchedHeader; readonly reading: RowReading }, job: SheetJob): readonly unknown[] {
  const { table, matched, reading } = at;
  return table.records(reading.values, { file: job.file.name, row: row.line }, (key, remark) => {
    const found = matched.columns.find((column) => column.key === key);
    const named = key === null ? undefined : table.columns[key];
    const header = found?.header ?? (named === undefined ? undefined : canonicalHeader(named));
    remarkOn(job, row.line, { ...remark, ...(header !== undefined && { column: header }), ...(found !== undefined && { value: row.cells[found.index] ?? '' }) });
    reading.failed ||= remark.severity === 'error';
  });
}

function readRow(row: CsvRow, header: Header, job: SheetJob): void {
  if (row.cells.slice(header.cells.length).some((cell) => trimmed(cell) !== '')) {
    remarkOn(job, row.line, { severity: 'error', code: 'row-too-long', expected: `${header.cells.length} cells`, whatToDo: 'put text that holds the delimiter into double quotes', value: row.cells.slice(header.cells.length).join(' ') });
    return;
  }
  const readings = job.tables.flatMap((table, i) => {
    const matched = header.matched[i];
    return matched === undefined ? [] : [{ table, matched, reading: readCells(row, { table, matched }, job) }];
  });
  if (readings.some(({ reading }) => reading.failed)) return;
  const records = readings.map((at) => recordsOf(row, at, job));
  if (readings.some(({ reading }) => reading.failed)) return;
  const place = { file: job.file.name, row: row.line };
  job.take(records, place);
  const extra = extraCells(row, header);
  if (Object.keys(extra).length > 0) job.takeExtra(extra, place);
}

function extraCells({ cells }: CsvRow, { matched }: Header): Record<string, string> {
  const extra: Record<string, string> = {};
  for (const { index, header } of matched[0]?.unknown ?? []) {
    const text = trimmed(cells[index] ?? '');
    const stranger = text !== '' && matched.every(({ unknown }) => unknown.some((other) => other.index === index));
    if (stranger && !PERSONAL.test(words(header)) && header !== LINE && header !== REASON) extra[header] = text;
  }
  return extra;
}
