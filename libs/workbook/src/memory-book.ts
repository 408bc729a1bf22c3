import ExcelJS, { type Worksheet } from 'exceljs';
import type { Book, PicturePlace, SheetSetUp } from './book.js';
import { furnished, pageOf, viewsOf } from './print.js';

/** A book held in memory, with pictures. */
export class MemoryBook implements Book {
  readonly workbook = new ExcelJS.Workbook();

  /** @param names the sheets in the order of the book */
  constructor(private readonly names: readonly string[] = []) {
    for (const name of this.names) this.workbook.addWorksheet(name);
  }

  open(of: SheetSetUp): Worksheet {
    const sheet = this.workbook.getWorksheet(of.name) ?? this.workbook.addWorksheet(of.name);
    Object.assign(sheet.pageSetup, pageOf(of));
    sheet.views = viewsOf(of);
    furnished(sheet);
    return sheet;
  }

  readonly picture = (sheet: Worksheet, of: PicturePlace): void => {
    const image = this.workbook.addImage({ buffer: Buffer.from(of.png) as never, extension: 'png' });
    sheet.addImage(image, { tl: { col: 0, row: of.row - 1 } as ExcelJS.Anchor, ext: { width: of.width, height: of.height }, editAs: 'oneCell' });
  };
}
