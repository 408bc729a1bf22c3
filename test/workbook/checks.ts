import type ExcelJS from 'exceljs';
import type { StoredFormula } from './recalculation.js';

/** The checks of the cover by their label, as a program computes them. */
export function checkResults(book: ExcelJS.Workbook, computed: (f: StoredFormula) => unknown): Map<string, unknown> {
  const sheet = book.getWorksheet('Summary')!;
  const labels = sheet.getColumn(1).values.map((v) => (typeof v === 'string' ? v : ''));
  const [first, last] = [labels.indexOf('Checks: all must be 0') + 1, labels.indexOf('All checks together')];
  const rows = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  return new Map(rows.map((row) => [labels[row]!, computed({ sheet: 'Summary', address: `B${String(row)}`, formula: sheet.getCell(row, 2).formula, stored: 0 })]));
}

/** Row of the first table of a sheet, below its head with this text in column A. */
function firstRow(sheet: ExcelJS.Worksheet, head: string): number {
  return sheet.getColumn(1).values.findIndex((v) => v === head) + 2;
}

/** Cell of the panes of the first line of the plan. */
export const firstPanes = (book: ExcelJS.Workbook): string => `F${String(firstRow(book.getWorksheet('Plan')!, 'Phase'))}`;

export interface Spoiling {
  readonly check: string;
  readonly sheet: string;
  readonly address: string;
  readonly value: number;
}

/** For each check a typed figure that, changed by itself, must show in it. */
export function spoilings(book: ExcelJS.Workbook): Spoiling[] {
  const at = (sheet: string, head: string, column: string): Pick<Spoiling, 'sheet' | 'address'> => ({ sheet, address: `${column}${String(firstRow(book.getWorksheet(sheet)!, head))}` });
  const film = at('Film to buy', 'Phase', 'J');
  return [
    { check: 'Spent over the caps', ...at('Summary', 'Phase', 'C'), value: 1e6 },
    { check: 'Panes: phases less plan lines', ...at('Plan', 'Phase', 'F'), value: 1000 },
    { check: 'Panes: plan less work orders', ...at('Plan', 'Phase', 'F'), value: 1000 },
    { check: 'Panes: plan less cut list', ...at('Plan', 'Phase', 'F'), value: 1000 },
    { check: 'Dwellings: phases less plan lines', ...at('Summary', 'Phase', 'M'), value: 1000 },
    { check: 'Buildings: cash flow less payback lines', ...at('Payback lines', 'Dwelling', 'B'), value: 0 },
    { check: 'Phases less cash of the years', ...at('Payback', 'Phase', 'C'), value: 99 },
    { check: 'Film: phases less rolls to buy', ...film, value: 1e6 },
    { check: 'Payback sheet less plan', ...at('Payback', 'Phase', 'E'), value: 1e6 },
    { check: 'Cash flow less time axis', ...at('Cash flow', 'Owner entity', 'D'), value: 0 },
  ];
}
