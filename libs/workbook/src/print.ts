import type { PaperSize, Worksheet } from 'exceljs';
import { columnName } from './cells.js';

export interface PrintSetUp {
  readonly columns: number;
  readonly rows: number;
  /** Rows that stay on screen and repeat on each page. */
  readonly headRows: { readonly first: number; readonly last: number } | null;
  readonly frozenColumns?: number;
}

// The type of the library lists fewer paper sizes than the format has.
const LETTER = 1 as PaperSize;

/** Landscape, one page wide, head repeated, page x of y, print area, head frozen. */
export function printed(sheet: Worksheet, of: PrintSetUp): void {
  sheet.pageSetup = {
    paperSize: LETTER,
    orientation: 'landscape',
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    printArea: `A$1:${columnName(of.columns)}$${String(Math.max(of.rows, 1))}`,
    margins: { left: 0.5, right: 0.5, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
  };
  if (of.headRows !== null) sheet.pageSetup.printTitlesRow = `${String(of.headRows.first)}:${String(of.headRows.last)}`;
  sheet.headerFooter.oddFooter = '&L&A&RPage &P of &N';
  sheet.views = [{ state: 'frozen', xSplit: of.frozenColumns ?? 0, ySplit: of.headRows?.last ?? 2, showGridLines: false }];
}
