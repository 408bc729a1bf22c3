import type { EventEmitter } from 'node:events';
import ExcelJS, { type DataValidation, type Worksheet } from 'exceljs';
import type { Book, SheetSetUp } from './book.js';
import { MemoryBook } from './memory-book.js';
import { furnished, pageOf, viewsOf } from './print.js';

/** What the streaming writer of the library keeps to itself and this book needs: its zip, and its sheets in the order of the tabs. */
interface Inside {
  readonly zip: EventEmitter;
  readonly _worksheets: (Worksheet & { readonly id: number; committed?: boolean })[];
}

const validationsOf = (sheet: Worksheet): { add(range: string, of: DataValidation): void; readonly model: Readonly<Record<string, DataValidation>> } =>
  (sheet as unknown as { readonly dataValidations: { add(range: string, of: DataValidation): void; readonly model: Readonly<Record<string, DataValidation>> } }).dataValidations;

/** Copies a small sheet that was written in any order into one that is written from the top down. */
function copied(from: Worksheet, to: Worksheet): void {
  for (let c = 1; c <= from.columnCount; c++) to.getColumn(c).width = from.getColumn(c).width ?? 9;
  from.eachRow({ includeEmpty: true }, (row, n) => {
    const out = to.getRow(n);
    if (row.height) out.height = row.height;
    row.eachCell({ includeEmpty: true }, (cell, c) => {
      const there = out.getCell(c);
      there.style = cell.style;
      there.value = cell.value;
    });
  });
  for (const [range, of] of Object.entries(validationsOf(from).model)) validationsOf(to).add(range, of);
  Object.assign(to.pageSetup, from.pageSetup);
  if (from.autoFilter !== undefined && from.autoFilter !== null) to.autoFilter = from.autoFilter;
}

export interface StreamedBookTerms {
  /** The sheets in the order of the book. */
  readonly names: readonly string[];
  readonly created: Date;
  readonly modified: Date;
  readonly creator: string;
  readonly lastModifiedBy: string;
}

/**
 * A book written straight to a file: sheets of many rows leave row by row; the few small sheets that are written in any order wait in memory
 * until the end. It holds no pictures.
 */
export class StreamedBook implements Book {
  readonly picture = null;
  private readonly writer: ExcelJS.stream.xlsx.WorkbookWriter;
  private readonly small = new MemoryBook();
  private readonly waiting: SheetSetUp[] = [];
  private readonly zipped = new Set<string>();
  private open_: Worksheet[] = [];

  constructor(path: string, private readonly terms: StreamedBookTerms) {
    this.writer = new ExcelJS.stream.xlsx.WorkbookWriter({ filename: path, useStyles: true, useSharedStrings: false });
    Object.assign(this.writer, { created: terms.created, modified: terms.modified, creator: terms.creator, lastModifiedBy: terms.lastModifiedBy });
    this.inside.zip.on('entry', ({ name }: { readonly name: string }) => this.zipped.add(name.replace(/^\//, '')));
  }

  private get inside(): Inside {
    return this.writer as unknown as Inside;
  }

  open(of: SheetSetUp): Worksheet {
    if (of.hasManyRows !== true) {
      this.waiting.push(of);
      return this.small.open(of);
    }
    const sheet = this.started(of);
    this.open_.push(sheet);
    return sheet;
  }

  private started(of: SheetSetUp): Worksheet {
    const sheet = this.writer.addWorksheet(of.name, { pageSetup: pageOf(of), views: viewsOf(of) });
    furnished(sheet);
    return sheet;
  }

  /** Closes the sheets that are written and waits until they have left. */
  async settle(): Promise<void> {
    const done = this.open_;
    this.open_ = [];
    for (const sheet of done) {
      sheet.commit();
      const name = `xl/worksheets/sheet${String((sheet as unknown as { readonly id: number }).id)}.xml`;
      while (!this.zipped.has(name)) await new Promise((resolve) => setTimeout(resolve, 2));
    }
  }

  async finish(): Promise<void> {
    await this.settle();
    for (const of of this.waiting) {
      const sheet = this.started(of);
      copied(this.small.open(of), sheet);
      this.open_.push(sheet);
      await this.settle();
    }
    for (const { name, ranges } of this.small.workbook.definedNames.model) for (const range of ranges) this.writer.definedNames.add(range, name);
    const place = (sheet: Worksheet | undefined): number => (sheet === undefined ? -1 : this.terms.names.indexOf(sheet.name));
    const sheets = this.inside._worksheets;
    sheets.splice(0, sheets.length, ...sheets.filter((s) => s !== undefined).sort((a, b) => place(a) - place(b)));
    await this.writer.commit();
  }
}
