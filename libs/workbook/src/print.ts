import type { PageSetup, PaperSize, Worksheet, WorksheetProtection, WorksheetView } from 'exceljs';
import type { SheetSetUp } from './book.js';
import { columnName } from './cells.js';
import { LETTERS } from './style.js';

export interface PrintSetUp {
  readonly columns: number;
  readonly rows: number;
  /** Rows that repeat on each page. */
  readonly headRows: { readonly first: number; readonly last: number } | null;
}

// The type of the library lists fewer paper sizes than the format has.
const LETTER = 1 as PaperSize;
const LEGAL = 5 as PaperSize;
/** Figures of the sheet's font across the paper inside its margins at full size, in the program that makes them widest (0.556 of 10 pt each). */
const ACROSS = { upright: 97, lying: 129, legal: 168 } as const;
/** Letters of 10 pt then print at 7 pt; what needs less goes on larger paper or on pages side by side. */
const LEAST_SCALE = 0.7;
/** The most a page can leave empty because a column is not cut in two. */
const COLUMN = 12;

type Paper = Pick<PageSetup, 'paperSize' | 'orientation' | 'fitToWidth'>;

/** Paper of a sheet: standing where that fits at full size, else lying, else longer, else pages side by side. */
function paperOf({ width, repeats = 0 }: SheetSetUp): Paper {
  if (width <= ACROSS.upright) return { paperSize: LETTER, orientation: 'portrait', fitToWidth: 1 };
  if (width <= ACROSS.lying / LEAST_SCALE) return { paperSize: LETTER, orientation: 'landscape', fitToWidth: 1 };
  const most = ACROSS.legal / LEAST_SCALE;
  const pages = width <= most ? 1 : Math.ceil((width - repeats) / (most - repeats - COLUMN));
  return { paperSize: LEGAL, orientation: 'landscape', fitToWidth: pages };
}

export const pageOf = (of: SheetSetUp): Partial<PageSetup> => ({
  ...paperOf(of),
  fitToPage: true,
  fitToHeight: 0,
  pageOrder: 'overThenDown',
  margins: { left: 0.5, right: 0.5, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
});

/** Letters of running text that print beside one another on one page of a sheet. */
export const lineOf = (of: SheetSetUp): number => Math.floor(LETTERS * (paperOf(of).fitToWidth === 1 ? of.width : ACROSS.legal));

export const viewsOf = (of: SheetSetUp): Partial<WorksheetView>[] => [{ state: 'frozen', xSplit: of.frozen.columns, ySplit: of.frozen.rows, showGridLines: false }];

/** What may still be done on a locked sheet: reading, fitting rows and columns, filtering. */
const ALLOWED: Partial<WorksheetProtection> = { selectLockedCells: true, selectUnlockedCells: true, formatColumns: true, formatRows: true, autoFilter: true };

/** Footer, and the lock against slips of the hand: no password, inputs stay open. */
export function furnished(sheet: Worksheet): void {
  sheet.headerFooter.oddFooter = '&L&A&RPage &P of &N';
  // Without a password there is nothing to compute: the lock is set before this returns.
  void sheet.protect('', ALLOWED);
}

/** Print area, the head that repeats, and the frozen columns where pages stand side by side; known when the rows are written. */
export function printed(sheet: Worksheet, of: PrintSetUp): void {
  sheet.pageSetup.printArea = `A$1:${columnName(of.columns)}$${String(Math.max(of.rows, 1))}`;
  if (of.headRows !== null) sheet.pageSetup.printTitlesRow = `${String(of.headRows.first)}:${String(of.headRows.last)}`;
  const frozen = sheet.views[0]?.state === 'frozen' ? (sheet.views[0].xSplit ?? 0) : 0;
  if ((sheet.pageSetup.fitToWidth ?? 1) > 1 && frozen > 0) sheet.pageSetup.printTitlesColumn = `A:${columnName(frozen)}`;
}
