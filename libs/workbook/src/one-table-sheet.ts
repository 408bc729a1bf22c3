import type { Worksheet } from 'exceljs';
import type { Book } from './book.js';
import { address, brokenLines, paragraph, titleLines } from './cells.js';
import { lineOf, printed } from './print.js';
import { type Column, setWidths, type TablePlace, widened, writeTable } from './table.js';

const AS_RUN = 'Figures of the run: inputs changed on other sheets do not move them; they need a new run.';

/** More rows than these would fill the screen; then only the title stays. */
const MOST_FROZEN = 14;

export interface OneTable<Row> {
  readonly name: string;
  readonly about: string;
  readonly notes?: readonly string[];
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly total?: string;
  /** Said in place of an empty table. */
  readonly none: string;
  readonly frozenColumns?: number;
  /** Nothing here follows an input of the book; the sheet says so. */
  readonly isAsRun?: boolean;
  /** Width of the widest table of the sheet, characters, where the first is not it. */
  readonly width?: number;
}

/** A sheet of one table under its title: the head stays on screen and repeats on each printed page. */
export function oneTableSheet<Row>(book: Book, of: OneTable<Row>): { readonly sheet: Worksheet; readonly place: TablePlace } {
  const wide = widened(of.columns, of.rows);
  const width = Math.max(of.width ?? 0, wide.reduce((sum, c) => sum + c.width, 0));
  const columns = of.frozenColumns ?? 0;
  const set = { name: of.name, width, repeats: wide.slice(0, columns).reduce((sum, c) => sum + c.width, 0), hasManyRows: true };
  const lines = [of.about, ...(of.notes ?? []), ...(of.isAsRun === true ? [AS_RUN] : [])].flatMap((text) => brokenLines(text, lineOf({ ...set, frozen: { rows: 0, columns } })));
  const headRow = 3 + lines.length;
  const sheet = book.open({ ...set, frozen: { rows: headRow + 1 > MOST_FROZEN ? 2 : headRow + 1, columns } });
  setWidths(sheet, wide);
  titleLines(sheet, of.name, lines);
  const place = writeTable(sheet, headRow, { columns: wide, rows: of.rows, ...(of.total === undefined ? {} : { total: of.total }) });
  if (of.rows.length === 0) paragraph(sheet, place.firstRow, { text: of.none, longest: Math.floor(width) });
  if (of.rows.length > 1) sheet.autoFilter = `A${String(headRow + 1)}:${address(of.columns.length, place.lastRow)}`;
  printed(sheet, {
    columns: of.columns.length,
    rows: Math.max(place.lastRow, place.totalRow, place.firstRow),
    headRows: { first: place.headRow, last: place.headRow + 1 },
  });
  return { sheet, place };
}
