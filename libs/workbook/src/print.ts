import type { PageSetup, PaperSize, Worksheet, WorksheetProtection, WorksheetView } from 'exceljs';
import type { SheetSetUp } from './book.js';
import { columnName } from './cells.js';

export interface PrintSetUp {
  readonly columns: number;
  readonly rows: number;
  /** Rows that repeat on each page. */
  readonly headRows: { readonly first: number; readonly last: number } | null;
}

// The type of the library lists fewer paper sizes than the format has.
const LETTER = 1 as PaperSize;
/** Characters of the sheet's font across standing letter paper at full size, from memory of what fits. */
const UPRIGHT = 104;

/** Page of a sheet: one page wide, standing where that fits at full size, else lying. */
export const pageOf = (of: SheetSetUp): Partial<PageSetup> => ({
  paperSize: LETTER,
  orientation: of.width <= UPRIGHT ? 'portrait' : 'landscape',
  fitToPage: true,
  fitToWidth: 1,
  fitToHeight: 0,
  margins: { left: 0.5, right: 0.5, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
});

export const viewsOf = (of: SheetSetUp): Partial<WorksheetView>[] => [{ state: 'frozen', xSplit: of.frozen.columns, ySplit: of.frozen.rows, showGridLines: false }];

/** What may still be done on a locked sheet: reading, fitting rows and columns, filtering. */
const ALLOWED: Partial<WorksheetProtection> = { selectLockedCells: true, selectUnlockedCells: true, formatColumns: true, formatRows: true, autoFilter: true };

/** Footer, and the lock against slips of the hand: no password, inputs stay open. */
export function furnished(sheet: Worksheet): void {
  sheet.headerFooter.oddFooter = '&L&A&RPage &P of &N';
  // Without a password there is nothing to compute: the lock is set before this returns.
  void sheet.protect('', ALLOWED);
}

/** Print area and the head that repeats; known when the rows are written. */
export function printed(sheet: Worksheet, of: PrintSetUp): void {
  sheet.pageSetup.printArea = `A$1:${columnName(of.columns)}$${String(Math.max(of.rows, 1))}`;
  if (of.headRows !== null) sheet.pageSetup.printTitlesRow = `${String(of.headRows.first)}:${String(of.headRows.last)}`;
}
