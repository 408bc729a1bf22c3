import type { Cell, Worksheet } from 'exceljs';
import { bold, plain, sectioned, titled } from './style.js';

/** A live formula with the result it has now, so that viewers that do not compute show the same. */
export interface LiveFormula {
  readonly formula: string;
  readonly result: number | string;
}

export type CellContent = number | string | null | LiveFormula;

/** A formula with its result; a spreadsheet knows no zero below zero. */
export const live = (formula: string, result: number | string): LiveFormula => ({ formula, result: result === 0 ? 0 : result });

// A cell that reads as a formula when somebody edits it again: kept as text by its format too.
const LOOKS_LIVE = /^[=+\-@\t\r]/;
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;
const LONGEST = 32_767;

/** Text as a cell can hold it. */
export const cellText = (text: string): string => text.replace(NOT_XML, ' ').slice(0, LONGEST);

/** Puts content in a cell: text stays text whatever it starts with, numbers keep their sign, and only `LiveFormula` is computed. */
export function put(cell: Cell, content: CellContent, format?: string): void {
  plain(cell);
  if (content === null || content === '') return;
  if (typeof content === 'string') {
    cell.value = cellText(content);
    if (LOOKS_LIVE.test(content)) cell.numFmt = '@';
    return;
  }
  if (typeof content === 'number') {
    if (!Number.isFinite(content)) throw new RangeError(`content must be finite, got ${content}`);
    cell.value = content;
  } else {
    cell.value = { formula: content.formula, result: content.result };
  }
  if (format !== undefined) cell.numFmt = format;
}

/** Dollars to the cent from cents with or without fractions. */
export const dollars = (amount_cents: number): number => Math.round(amount_cents) / 100;

/** 1 → A, 27 → AA. */
export function columnName(column: number): string {
  let name = '';
  for (let left = column; left > 0; left = Math.floor((left - 1) / 26)) name = String.fromCharCode(65 + ((left - 1) % 26)) + name;
  return name;
}

export const address = (column: number, row: number): string => `${columnName(column)}${String(row)}`;
export const fixed = (column: number, row: number): string => `$${columnName(column)}$${String(row)}`;
export const quoted = (sheet: string): string => `'${sheet.replaceAll("'", "''")}'`;

export function titleRow(sheet: Worksheet, title: string, about: string): void {
  titleLines(sheet, title, [about]);
}

/** Title and the lines below it, each in a row of its own. */
export function titleLines(sheet: Worksheet, title: string, lines: readonly string[]): void {
  put(sheet.getCell(1, 1), title);
  titled(sheet.getCell(1, 1));
  sheet.getRow(1).height = 22;
  lines.forEach((text, i) => {
    put(sheet.getCell(2 + i, 1), text);
  });
}

/**
 * Sum of the values in whose rows each range holds the very text of its cell, or the number given. Not by SUMIFS: a text is a pattern there, so that * ? ~ and a
 * leading = < > or 0 of an ID would sum other rows.
 */
export const sumWhere = (values: string, where: readonly (readonly [range: string, is: string | number])[]): string =>
  `SUMPRODUCT(${where.map(([range, is]) => (typeof is === 'number' ? `(${range}=${String(is)})` : `EXACT(${range},${is})`)).join('*')}*1,${values})`;

export function section(sheet: Worksheet, row: number, text: string): void {
  put(sheet.getCell(row, 1), text);
  sectioned(sheet.getCell(row, 1));
  sheet.getRow(row).height = 20;
}

/** A text broken at words into lines of at most so many characters. */
export function brokenLines(text: string, longest: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + word.length + 1 > longest) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  return line === '' ? lines : [...lines, line];
}

/** A paragraph on rows of its own, broken at words, so it prints whole without joined cells. Returns the next free row. */
export function paragraph(sheet: Worksheet, row: number, of: { readonly text: string; readonly longest: number; readonly strong?: boolean }): number {
  const lines = brokenLines(of.text, of.longest);
  lines.forEach((line, i) => {
    put(sheet.getCell(row + i, 1), line);
    if (of.strong === true) bold(sheet.getCell(row + i, 1));
  });
  return row + lines.length;
}
