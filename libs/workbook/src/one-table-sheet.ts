import type { Worksheet } from 'exceljs';
import type { Book } from './book.js';
import { address, brokenLines, paragraph, put, titleRow } from './cells.js';
import { printed } from './print.js';
import { type Column, setWidths, type TablePlace, writeTable } from './table.js';

/** Letters of running text to the width of a figure, on average. */
const LETTERS = 1.25;

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
}

/** A sheet of one table under its title: the head stays on screen and repeats on each printed page. */
export function oneTableSheet<Row>(book: Book, of: OneTable<Row>): { readonly sheet: Worksheet; readonly place: TablePlace } {
  const wide = of.columns.reduce((sum, c) => sum + c.width, 0);
  const notes = (of.notes ?? []).flatMap((text) => brokenLines(text, Math.floor(wide * LETTERS)));
  const headRow = 4 + notes.length;
  const sheet = book.open({ name: of.name, frozen: { rows: headRow + 1, columns: of.frozenColumns ?? 0 }, width: wide, hasManyRows: true });
  setWidths(sheet, of.columns);
  titleRow(sheet, of.name, of.about);
  notes.forEach((text, i) => {
    put(sheet.getCell(3 + i, 1), text);
  });
  const place = writeTable(sheet, headRow, { columns: of.columns, rows: of.rows, ...(of.total === undefined ? {} : { total: of.total }) });
  if (of.rows.length === 0) paragraph(sheet, place.firstRow, { text: of.none, longest: Math.floor(wide) });
  if (of.rows.length > 1) sheet.autoFilter = `A${String(headRow + 1)}:${address(of.columns.length, place.lastRow)}`;
  printed(sheet, {
    columns: of.columns.length,
    rows: Math.max(place.lastRow, place.totalRow, place.firstRow),
    headRows: { first: place.headRow, last: place.headRow + 1 },
  });
  return { sheet, place };
}
