import type { Border, Borders, Cell, Worksheet } from 'exceljs';

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
  cell.font = { name: FONT, size: 9, italic: true };
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

/** An input shows by its heavy border and by the word beside it; colour carries no meaning. */
export function asInput(cell: Cell): void {
  cell.border = box(BOX);
  cell.protection = { locked: false };
}

const PER_LINE_pt = 13.5;

/** Height that shows wrapped text whole; spreadsheet programs do not all fit rows when they open a file. */
export function fitRow(sheet: Worksheet, row: number, wrapped: readonly { readonly text: string; readonly width: number }[]): void {
  const lines = wrapped.map(({ text, width }) => text.split('\n').reduce((sum, part) => sum + Math.max(1, Math.ceil((part.length * 0.85) / Math.max(3, width))), 0));
  sheet.getRow(row).height = Math.max(1, ...lines) * PER_LINE_pt + 1.5;
}
