import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJS, { type DataValidation, type Worksheet } from 'exceljs';
import type { Book, SheetSetUp } from './book.js';
import { MemoryBook } from './memory-book.js';
import { furnished, pageOf, viewsOf } from './print.js';
import { measuredInFont } from './style.js';

/** What the library writes a part of the file to. */
interface Part {
  write(chunk: string | { toBuffer(): Uint8Array }): boolean;
  end(): void;
  pause(): void;
}

/** What the streaming writer of the library keeps to itself and this book needs: how it opens a part, its zip, and its sheets by tab. */
interface Inside {
  _openStream(path: string): Part;
  readonly zip: { file(from: string, of: { readonly name: string }): void; append(xml: string, of: { readonly name: string }): void };
  readonly styles: { readonly xml: string };
  addStyles(): Promise<void>;
  readonly _worksheets: (Worksheet | undefined)[];
}

const AT_ONCE = 1 << 18;

/**
 * Takes the rows of a sheet to a file of their own while they are written. The library would keep them until the zip asks for them, which it
 * cannot while rows are being made.
 */
class PartFile implements Part {
  private readonly file: number;
  private readonly kept = Buffer.allocUnsafe(AT_ONCE);
  private size = 0;

  constructor(path: string, private readonly ended: () => void) {
    this.file = openSync(path, 'w');
  }

  write(chunk: string | { toBuffer(): Uint8Array }): boolean {
    // Copied at once: the library uses its buffer again for the next row, and one buffer for all rows leaves no garbage.
    const bytes = typeof chunk === 'string' ? Buffer.from(chunk) : chunk.toBuffer();
    if (this.size + bytes.length > AT_ONCE) this.flush();
    if (bytes.length > AT_ONCE) writeSync(this.file, bytes);
    else {
      this.kept.set(bytes, this.size);
      this.size += bytes.length;
    }
    return true;
  }

  private flush(): void {
    writeSync(this.file, this.kept, 0, this.size);
    this.size = 0;
  }

  end(): void {
    this.flush();
    closeSync(this.file);
    this.ended();
  }

  pause(): void {
    // Nothing flows out of a file by itself.
  }
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
  private readonly folder = mkdtempSync(join(tmpdir(), 'film-rollout-'));
  private readonly small = new MemoryBook();
  private readonly waiting: SheetSetUp[] = [];
  private readonly written: Worksheet[] = [];

  constructor(path: string, private readonly terms: StreamedBookTerms) {
    this.writer = new ExcelJS.stream.xlsx.WorkbookWriter({ filename: path, useStyles: true, useSharedStrings: false });
    Object.assign(this.writer, { created: terms.created, modified: terms.modified, creator: terms.creator, lastModifiedBy: terms.lastModifiedBy });
    const { inside, folder } = this;
    inside._openStream = (name) => {
      const file = join(folder, name.replaceAll('/', '-'));
      return new PartFile(file, () => {
        inside.zip.file(file, { name });
      });
    };
    inside.addStyles = () => {
      inside.zip.append(measuredInFont(inside.styles.xml), { name: 'xl/styles.xml' });
      return Promise.resolve();
    };
  }

  private get inside(): Inside {
    return this.writer as unknown as Inside;
  }

  open(of: SheetSetUp): Worksheet {
    if (of.hasManyRows === true) return this.started(of);
    this.waiting.push(of);
    return this.small.open(of);
  }

  private started(of: SheetSetUp): Worksheet {
    const sheet = this.writer.addWorksheet(of.name, { pageSetup: pageOf(of), views: viewsOf(of) });
    furnished(sheet);
    // The library keeps every formula of a sheet in case a later cell shares it; here none does.
    Object.defineProperty(sheet, '_formulae', { get: () => ({}) });
    this.written.push(sheet);
    return sheet;
  }

  /** Writes what waits, puts the sheets in order and closes the file. */
  async finish(): Promise<void> {
    for (const of of this.waiting) copied(this.small.open(of), this.started(of));
    for (const sheet of this.written) sheet.commit();
    for (const { name, ranges } of this.small.workbook.definedNames.model) for (const range of ranges) this.writer.definedNames.add(range, name);
    const place = (sheet: Worksheet): number => this.terms.names.indexOf(sheet.name);
    const sheets = this.inside._worksheets;
    sheets.splice(0, sheets.length, ...this.written.sort((a, b) => place(a) - place(b)));
    await this.writer.commit();
  }

  /** Removes what was kept beside the file. */
  leave(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
