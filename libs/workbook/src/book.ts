import type { Worksheet } from 'exceljs';

/** How a sheet is opened: what has to be known before its first row is written. */
export interface SheetSetUp {
  readonly name: string;
  /** Rows and columns that stay on screen. */
  readonly frozen: { readonly rows: number; readonly columns: number };
  /** Width of all columns, characters: decides the paper and how many pages stand side by side. */
  readonly width: number;
  /** Width of the frozen columns, characters; they repeat where pages stand side by side. */
  readonly repeats?: number;
  /** Written from the top down and left row by row, so that a streamed book need not hold it. */
  readonly hasManyRows?: boolean;
}

/** A picture and where its upper left corner stands. */
export interface PicturePlace {
  readonly png: Uint8Array;
  readonly row: number;
  readonly width: number;
  readonly height: number;
  /** What it shows, for those who cannot see it. */
  readonly words: string;
}

/** A workbook being written, held in memory or streamed out: the sheets do not know which. */
export interface Book {
  open(of: SheetSetUp): Worksheet;
  /** Puts a picture on a sheet; null where the book is streamed, which cannot hold any. */
  readonly picture: ((sheet: Worksheet, of: PicturePlace) => void) | null;
}
