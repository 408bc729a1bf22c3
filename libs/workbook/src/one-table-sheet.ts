import type { Workbook, Worksheet } from 'exceljs';
import { paragraph, titleRow } from './cells.js';
import { printed } from './print.js';
import { type Column, setWidths, type TablePlace, writeTable } from './table.js';

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
export function oneTableSheet<Row>(book: Workbook, of: OneTable<Row>): { readonly sheet: Worksheet; readonly place: TablePlace } {
  const sheet = book.getWorksheet(of.name) ?? book.addWorksheet(of.name);
  setWidths(sheet, of.columns);
  const wide = of.columns.reduce((sum, c) => sum + c.width, 0);
  titleRow(sheet, of.name, of.about);
  let row = 3;
  for (const text of of.notes ?? []) row = paragraph(sheet, row, { text, longest: Math.floor(wide * 1.02) });
  const place = writeTable(sheet, row + 1, { columns: of.columns, rows: of.rows, ...(of.total === undefined ? {} : { total: of.total }) });
  if (of.rows.length === 0) paragraph(sheet, place.firstRow, { text: of.none, longest: Math.floor(wide) });
  printed(sheet, {
    columns: of.columns.length,
    rows: Math.max(place.lastRow, place.totalRow, place.firstRow),
    headRows: { first: place.headRow, last: place.headRow + 1 },
    ...(of.frozenColumns === undefined ? {} : { frozenColumns: of.frozenColumns }),
  });
  return { sheet, place };
}
