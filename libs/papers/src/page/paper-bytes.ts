import PDFDocument from 'pdfkit';
import { FONT_FILES } from './fonts.js';
import { type LayoutFault, type PageFrame, type PageSetup, Paper } from './paper.js';

export interface PaperOrder {
  readonly title: string;
  readonly language: string;
  /** Stands in the file as its date; the same order gives the same bytes. */
  readonly created: Date;
  readonly setup: PageSetup;
  readonly frame: PageFrame;
  /** Runs twice: to count pages, then to draw them. */
  readonly draw: (paper: Paper) => void;
}

export interface PaperFile {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** Text that left the page; empty when all is well. */
  readonly faults: readonly LayoutFault[];
}

/** A paper as the bytes of a PDF. */
export async function paperFile(order: PaperOrder): Promise<PaperFile> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    // A file given here and registered again is read again at every switch.
    font: '',
    lang: order.language,
    displayTitle: true,
    pdfVersion: '1.7',
    info: { Title: order.title, CreationDate: order.created },
  });
  doc.registerFont('regular', FONT_FILES.regular);
  doc.registerFont('bold', FONT_FILES.bold);
  const chunks: Uint8Array[] = [];
  doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise<void>((done, failed) => doc.on('end', done).on('error', failed));
  const first = new Paper(doc, order, null);
  order.draw(first);
  const count = first.counted();
  const paper = new Paper(doc, order, count);
  order.draw(paper);
  paper.counted();
  doc.end();
  await ended;
  return { bytes: Buffer.concat(chunks), pages: count.pages, faults: paper.faults };
}
