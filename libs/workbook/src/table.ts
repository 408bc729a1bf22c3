import type { Cell, Worksheet } from 'exceljs';
import { address, type CellContent, live, put } from './cells.js';
import { asInput, fitRow, headed, type InputLimits, limited, ruled, totalled, united } from './style.js';

export interface Column<Row> {
  readonly head: string;
  readonly unit: string;
  readonly width: number;
  /** Number format; a column without one holds text and wraps. */
  readonly format?: string;
  /** Whether the total row adds this column up. */
  readonly isSummed?: boolean;
  readonly value: (row: Row, index: number, sheetRow: number) => CellContent;
  /** A column of inputs: what they may be, and which rows have one. */
  readonly input?: InputLimits & { readonly has?: (row: Row) => boolean };
}

export interface TablePlace {
  readonly headRow: number;
  readonly firstRow: number;
  readonly lastRow: number;
  /** Row of the totals, 0 without one. */
  readonly totalRow: number;
  readonly nextRow: number;
}

const shown = (content: CellContent): number => {
  if (typeof content === 'number') return content;
  return content !== null && typeof content === 'object' && typeof content.result === 'number' ? content.result : 0;
};

/** Bold letters need more room. */
const BOLD = 0.9;

/** Text stands off from the column before it. */
const standsOff = <Row>(columns: readonly Column<Row>[], i: number): boolean => i > 0 && columns[i]?.format === undefined;
const indented = (cell: Cell): void => {
  cell.alignment = { ...cell.alignment, indent: 1 };
};

function head<Row>(sheet: Worksheet, row: number, columns: readonly Column<Row>[]): void {
  columns.forEach((column, i) => {
    const isNumber = column.format !== undefined;
    put(sheet.getCell(row, i + 1), column.head);
    headed(sheet.getCell(row, i + 1), isNumber);
    put(sheet.getCell(row + 1, i + 1), column.unit === '' ? null : column.unit);
    united(sheet.getCell(row + 1, i + 1), isNumber);
    if (standsOff(columns, i)) [row, row + 1].forEach((r) => indented(sheet.getCell(r, i + 1)));
  });
  fitRow(sheet, row, columns.map((c) => ({ text: c.head, width: c.width * BOLD })));
  fitRow(sheet, row + 1, columns.map((c) => ({ text: c.unit, width: c.width })));
}

// The library takes this width for unset and leaves it out; programs then use one of their own.
const LEFT_OUT = 9;

export function setWidths<Row>(sheet: Worksheet, columns: readonly Column<Row>[]): void {
  columns.forEach(({ width }, i) => {
    sheet.getColumn(i + 1).width = width === LEFT_OUT ? LEFT_OUT + 0.01 : width;
  });
}

/** Widths of letters in figures of the sheet's font; bold heads are a tenth wider. */
const widthOf = (word: string): number => [...word].reduce((sum, c) => sum + (c >= 'A' && c <= 'Z' ? 1.25 : c >= '0' && c <= '9' ? 1 : 0.98), 0);
const longestWord = (text: string): number => Math.max(0, ...text.split(/\s/).map(widthOf));

/** A column is widened this far at most, so that no word of its head and none of its first rows is broken. */
const MOST_WIDTH = 26;
const LOOKED_AT = 400;

/** Columns wide enough that words, dates and ids stand whole. */
export function widened<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): Column<Row>[] {
  return columns.map((column, i) => {
    const room = 1 + (standsOff(columns, i) ? 1.2 : 0);
    const isText = column.format === undefined;
    const texts = isText ? rows.slice(0, LOOKED_AT).map((row, index) => column.value(row, index, 0)).filter((content) => typeof content === 'string') : [];
    const needed = Math.max(longestWord(column.head) / BOLD, longestWord(column.unit), ...texts.map(longestWord)) + room;
    return { ...column, width: Math.max(column.width, Math.min(MOST_WIDTH, Math.ceil(needed * 2) / 2)) };
  });
}

/** Writes a table: head, units in their own row, rows, and a total that adds up the printed rows by formula. */
export function writeTable<Row>(sheet: Worksheet, at: number, of: { readonly columns: readonly Column<Row>[]; readonly rows: readonly Row[]; readonly total?: string }): TablePlace {
  const { columns, rows } = of;
  head(sheet, at, columns);
  const firstRow = at + 2;
  const sums = columns.map(() => 0);
  rows.forEach((row, index) => {
    const sheetRow = firstRow + index;
    const texts = columns.map((column, i) => {
      const cell = sheet.getCell(sheetRow, i + 1);
      const content = column.value(row, index, sheetRow);
      put(cell, content, column.format);
      cell.alignment = { vertical: 'top', wrapText: typeof content === 'string', horizontal: column.format === undefined ? 'left' : 'right' };
      if (standsOff(columns, i)) indented(cell);
      ruled(cell);
      if (column.input !== undefined && column.input.has?.(row) !== false) asInput(cell);
      sums[i] = (sums[i] ?? 0) + shown(content);
      return { text: typeof content === 'string' ? content : '', width: column.width };
    });
    fitRow(sheet, sheetRow, texts);
    // In a streamed book the row leaves here; in memory this does nothing.
    sheet.getRow(sheetRow).commit();
  });
  const lastRow = firstRow + rows.length - 1;
  columns.forEach((column, i) => {
    if (column.input !== undefined && rows.length > 0) limited(sheet, `${address(i + 1, firstRow)}:${address(i + 1, lastRow)}`, { ...column.input, title: column.head });
  });
  if (of.total === undefined || rows.length === 0) return { headRow: at, firstRow, lastRow, totalRow: 0, nextRow: lastRow + 2 };
  const totalRow = lastRow + 1;
  columns.forEach((column, i) => {
    const cell = sheet.getCell(totalRow, i + 1);
    const sum = live(`SUM(${address(i + 1, firstRow)}:${address(i + 1, lastRow)})`, sums[i] ?? 0);
    put(cell, i === 0 ? (of.total ?? '') : column.isSummed === true ? sum : null, column.format);
    totalled(cell);
    cell.alignment = { horizontal: i > 0 && column.format !== undefined ? 'right' : 'left' };
  });
  return { headRow: at, firstRow, lastRow, totalRow, nextRow: totalRow + 2 };
}
