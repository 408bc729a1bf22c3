import type { Border, Borders, Cell, DataValidation, Worksheet } from 'exceljs';

const FONT = 'Arial';
const THIN: Partial<Border> = { style: 'thin', color: { argb: 'FF808080' } };
const HAIR: Partial<Border> = { style: 'hair', color: { argb: 'FF808080' } };
const BOX: Partial<Border> = { style: 'medium', color: { argb: 'FF000000' } };
const box = (edge: Partial<Border>): Partial<Borders> => ({ top: edge, bottom: edge, left: edge, right: edge });

/** Number formats of the workbook; negative numbers keep their sign, so black on white is enough. */
export const FORMAT = {
  money: '#,##0.00;-#,##0.00',
  dollars: '#,##0;-#,##0',
  whole: '#,##0',
  one: '#,##0.0',
  two: '#,##0.00',
  three: '0.000',
  factor: '0.0000',
  percent: '0.0%',
  percentTwo: '0.00%',
  year: '0',
} as const;

const LIBRARY_FONT = /<font>(?:(?!<\/font>).)*<name val="Calibri"\/>(?:(?!<\/font>).)*<\/font>/;

/** The styles of a file with the font of its cells as the first, for that one is the measure of column widths: where it is missing all columns grow. */
export const measuredInFont = (xml: string): string => xml.replace(LIBRARY_FONT, `<font><sz val="10"/><name val="${FONT}"/><family val="2"/></font>`);

export const plain = (cell: Cell): void => {
  cell.font = { name: FONT, size: 10 };
};
export const bold = (cell: Cell): void => {
  cell.font = { name: FONT, size: 10, bold: true };
};
export const titled = (cell: Cell): void => {
  cell.font = { name: FONT, size: 14, bold: true };
};
export const sectioned = (cell: Cell): void => {
  cell.font = { name: FONT, size: 11, bold: true };
};

/** Head of a column; the unit stands in the cell below. */
export function headed(cell: Cell, isNumber: boolean): void {
  bold(cell);
  cell.alignment = { wrapText: true, vertical: 'bottom', horizontal: isNumber ? 'right' : 'left' };
  cell.border = { top: THIN };
}

export function united(cell: Cell, isNumber: boolean): void {
  cell.font = { name: FONT, size: 10, italic: true };
  cell.alignment = { wrapText: true, vertical: 'top', horizontal: isNumber ? 'right' : 'left' };
  cell.border = { bottom: THIN };
}

export function ruled(cell: Cell): void {
  cell.border = { bottom: HAIR };
}

export function totalled(cell: Cell): void {
  bold(cell);
  cell.border = { top: THIN, bottom: { style: 'double', color: { argb: 'FF808080' } } };
}

/** What an input may be. */
export interface InputLimits {
  readonly low: number;
  readonly high: number;
}

/** Refuses what an input cannot be, over a range of cells, and says what it can. */
export function limited(sheet: Worksheet, range: string, of: InputLimits & { readonly title: string }): void {
  // The library takes ranges here, but types only single cells.
  const { dataValidations } = sheet as unknown as { readonly dataValidations: { add(range: string, validation: DataValidation): void } };
  dataValidations.add(range, { type: 'decimal', operator: 'between', allowBlank: false, formulae: [of.low, of.high], showErrorMessage: true, errorStyle: 'stop', errorTitle: of.title.slice(0, 32), error: `A number from ${String(of.low)} to ${String(of.high)}` });
}

/** An input shows by its heavy border and by the word beside it; colour carries no meaning. */
export function asInput(cell: Cell): void {
  cell.border = box(BOX);
  cell.protection = { locked: false };
}

const PER_LINE_pt = 13.5;

/** Letters of running text to the width of a figure, on the careful side. */
export const LETTERS = 1.08;

/** Lines a text takes in a column, broken at words; a word longer than the column is broken too. */
function linesIn(text: string, width: number): number {
  const room = Math.max(3, Math.floor(width * LETTERS));
  let lines = 0;
  for (const part of text.split('\n')) {
    let used = 0;
    lines += 1;
    for (const word of part.split(' ')) {
      if (used > 0 && used + 1 + word.length > room) {
        lines += 1;
        used = 0;
      }
      used += (used > 0 ? 1 : 0) + word.length;
      while (used > room) {
        lines += 1;
        used -= room;
      }
    }
  }
  return lines;
}

/** Height that shows wrapped text whole; spreadsheet programs do not all fit rows when they open a file. */
export function fitRow(sheet: Worksheet, row: number, wrapped: readonly { readonly text: string; readonly width: number }[]): void {
  const lines = wrapped.map(({ text, width }) => (text === '' ? 1 : linesIn(text, width)));
  sheet.getRow(row).height = Math.max(1, ...lines) * PER_LINE_pt + 1.5;
}
