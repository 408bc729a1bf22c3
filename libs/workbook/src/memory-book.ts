import ExcelJS, { type Worksheet } from 'exceljs';
import type { Book, PicturePlace, SheetSetUp } from './book.js';
import { furnished, pageOf, viewsOf } from './print.js';
import { measuredInFont } from './style.js';

interface Zip {
  append(xml: string, of: { readonly name: string }): void;
}

/** How the library writes the drawings and the styles of a book into its zip. */
interface PartWriter {
  addDrawings(zip: Zip, model: unknown): void;
  addStyles(zip: Zip, model: unknown): unknown;
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** A book held in memory, with pictures. */
export class MemoryBook implements Book {
  readonly workbook = new ExcelJS.Workbook();

  /** @param names the sheets in the order of the book */
  constructor(private readonly names: readonly string[] = []) {
    for (const name of this.names) this.workbook.addWorksheet(name);
    this.sayPictures();
    this.measureInFont();
  }

  private readonly words: string[] = [];

  /** The library writes pictures without the words that stand for them; they are put in while the file is written. */
  private sayPictures(): void {
    const writer = this.workbook.xlsx as unknown as PartWriter;
    const plain = writer.addDrawings.bind(writer);
    const said = (xml: string): string => xml.replace(/<xdr:cNvPr id="(\d+)"/g, (start, id: string) => `${start} descr="${escaped(this.words[Number(id) - 1] ?? '')}"`);
    writer.addDrawings = (zip, model) => {
      plain({ append: (xml, of) => {
        zip.append(said(xml), of);
      } }, model);
    };
  }

  private measureInFont(): void {
    const writer = this.workbook.xlsx as unknown as PartWriter;
    const plain = writer.addStyles.bind(writer);
    writer.addStyles = (zip, model) =>
      plain({ append: (xml, of) => {
        zip.append(measuredInFont(xml), of);
      } }, model);
  }

  open(of: SheetSetUp): Worksheet {
    const sheet = this.workbook.getWorksheet(of.name) ?? this.workbook.addWorksheet(of.name);
    Object.assign(sheet.pageSetup, pageOf(of));
    sheet.views = viewsOf(of);
    furnished(sheet);
    return sheet;
  }

  readonly picture = (sheet: Worksheet, of: PicturePlace): void => {
    this.words.push(of.words);
    const image = this.workbook.addImage({ buffer: Buffer.from(of.png) as never, extension: 'png' });
    sheet.addImage(image, { tl: { col: 0, row: of.row - 1 } as ExcelJS.Anchor, ext: { width: of.width, height: of.height }, editAs: 'oneCell' });
  };
}
