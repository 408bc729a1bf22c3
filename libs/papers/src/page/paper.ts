import { type WidthOf, wrapped } from './wrap.js';

export type PaperFormat = 'letter' | 'a4';

export const isPaperFormat = (word: string): word is PaperFormat => word === 'letter' || word === 'a4';

/** Points, 72 to the inch. */
const SHEETS: Readonly<Record<PaperFormat, readonly [number, number]>> = { letter: [612, 792], a4: [595.28, 841.89] };

export interface PageSetup {
  readonly format: PaperFormat;
  readonly landscape?: boolean;
  /** White on every side, points. */
  readonly margin: number;
  /** Size of head and foot lines; null prints none. */
  readonly frameSize: number | null;
}

/** What head and foot say. The foot gets the page's number and how many there are. */
export interface PageFrame {
  readonly headLeft: string;
  readonly headRight: string;
  readonly footLeft: string;
  readonly footRight: (page: number, pages: number) => string;
}

export interface TextStyle {
  readonly size: number;
  readonly bold?: boolean;
  readonly align?: 'left' | 'right' | 'middle';
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Height of a line over the size of its letters. */
export const LEADING = 1.18;
/** Of the size: from the top of a line down to where its letters stand. */
const ASCENT = 0.93;

/** What was laid down where, for the check that nothing leaves the page. */
export interface LayoutFault {
  readonly page: number;
  readonly text: string;
}

/** What counting left behind: pages, and pages of each section. */
export interface PageCount {
  readonly pages: number;
  readonly sections: readonly number[];
}

/**
 * A paper being written from top to bottom. It is written twice: first without a `count`, when nothing is drawn and pages are counted, then
 * with it. Both passes run the same code, so "page 3 of 7" is known while page 3 is drawn and pages can be handed on one by one.
 */
export class Paper {
  y = 0;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly faults: LayoutFault[] = [];
  private page = 0;
  private sectionPages: number[] = [];
  private readonly sheet: readonly [number, number];
  private running: (() => void) | null = null;
  private freshY = 0;
  private held: { readonly height: number; readonly draw: () => void } | null = null;

  constructor(
    private readonly doc: PDFKit.PDFDocument,
    private readonly of: { readonly setup: PageSetup; readonly frame: PageFrame },
    private readonly count: PageCount | null,
  ) {
    const [short, long] = SHEETS[of.setup.format];
    this.sheet = of.setup.landscape === true ? [long, short] : [short, long];
    const { margin, frameSize } = of.setup;
    const frame = frameSize === null ? 0 : frameSize * LEADING + 6;
    this.left = margin;
    this.right = this.sheet[0] - margin;
    this.top = margin + frame;
    this.bottom = this.sheet[1] - margin - frame;
    this.y = this.bottom;
  }

  get width(): number {
    return this.right - this.left;
  }

  get room(): number {
    return this.bottom - this.y;
  }

  /** Pages of the section being written; 0 while they are counted. */
  get pagesOfSection(): number {
    return this.count?.sections[this.sectionPages.length - 1] ?? 0;
  }

  get pageOfSection(): number {
    return this.sectionPages[this.sectionPages.length - 1] ?? 0;
  }

  /** Holds a heading back until what stands under it asks for room, so that both come on one page. */
  hold(height: number, draw: () => void): void {
    this.release();
    this.held = { height, draw };
  }

  /** Draws a heading that nothing followed. */
  private release(): void {
    const { held } = this;
    this.held = null;
    if (held === null) return;
    this.need(held.height);
    held.draw();
  }

  counted(): PageCount {
    this.release();
    return { pages: this.page, sections: this.sectionPages };
  }

  /** Starts a section on a new page; `running` is drawn on top of each further page of it. */
  section(running: (() => void) | null = null): void {
    this.release();
    this.running = null;
    this.sectionPages.push(0);
    this.newPage();
    this.running = running;
  }

  newPage(): void {
    this.release();
    if (this.sectionPages.length === 0) this.sectionPages.push(0);
    this.page += 1;
    this.sectionPages[this.sectionPages.length - 1]! += 1;
    if (this.count !== null) this.doc.addPage({ size: [this.sheet[0], this.sheet[1]], margin: 0 });
    this.drawFrame();
    this.y = this.top;
    this.running?.();
    this.freshY = this.y;
  }

  /** Nothing but heads stands on the page yet, give or take `headHeight`. */
  isFresh(headHeight = 0): boolean {
    return this.y <= this.freshY + headHeight + 1;
  }

  /** Starts a new page where less than this height is left, with the heading that is held back for it. */
  need(height: number): boolean {
    const { held } = this;
    if (held !== null) {
      this.held = null;
      const isNew = this.need(Math.min(held.height + height, this.bottom - this.freshY));
      held.draw();
      return this.need(height) || isNew;
    }
    if (height <= this.room + 1e-6) return false;
    this.newPage();
    return true;
  }

  widthOf(style: TextStyle): WidthOf {
    return (text) => {
      this.doc.font(style.bold === true ? 'bold' : 'regular').fontSize(style.size);
      return this.doc.widthOfString(text);
    };
  }

  lines(text: string, style: TextStyle, width: number): string[] {
    return wrapped(text, width, this.widthOf(style));
  }

  /** One line of text at a place, y its upper edge; x is the left, the right or the middle, as aligned. */
  put(text: string, style: TextStyle, at: { readonly x: number; readonly y: number }): void {
    this.letters(text, style, { x: at.x, y: at.y + style.size * (LEADING - 1) * 0.5 + style.size * ASCENT, turned: false });
  }

  /** One line of text, y where its letters stand; turned, it reads upwards. */
  letters(text: string, style: TextStyle, at: { readonly x: number; readonly y: number; readonly turned: boolean }): void {
    if (this.count === null || text === '') return;
    const width = this.widthOf(style)(text);
    const back = style.align === 'right' ? width : style.align === 'middle' ? width / 2 : 0;
    if (at.turned) {
      this.doc.save().rotate(-90, { origin: [at.x, at.y] });
      this.doc.text(text, at.x - back, at.y, { lineBreak: false, baseline: 'alphabetic' }).restore();
      return;
    }
    const x = at.x - back;
    const edge = this.of.setup.margin - 1;
    const isOut = x < this.left - 1 || x + width > this.right + 1 || at.y - style.size * ASCENT < edge || at.y > this.sheet[1] - edge;
    if (isOut) this.faults.push({ page: this.page, text });
    this.doc.text(text, x, at.y, { lineBreak: false, baseline: 'alphabetic' });
  }

  /** A paragraph over the whole width, or from `indent` on, flowing over pages line by line. */
  write(text: string, style: TextStyle, indent = 0): void {
    const lines = this.lines(text, style, this.width - indent);
    for (const [i, line] of lines.entries()) {
      this.need(style.size * LEADING * (i === 0 ? Math.min(2, lines.length) : 1)); // a paragraph does not begin with its last free line
      this.put(line, { ...style, align: 'left' }, { x: this.left + indent, y: this.y });
      this.y += style.size * LEADING;
    }
  }

  line(from: readonly [number, number], to: readonly [number, number], thickness = 0.6): void {
    this.path([from, to], { thickness, dashed: false, colour: 'black' });
  }

  path(points: readonly (readonly [number, number])[], of: { readonly thickness: number; readonly dashed: boolean; readonly colour: string }): void {
    if (this.count === null) return;
    points.forEach(([x, y], i) => (i === 0 ? this.doc.moveTo(x, y) : this.doc.lineTo(x, y)));
    this.doc.lineWidth(of.thickness);
    if (of.dashed) this.doc.dash(4, { space: 3 });
    this.doc.stroke(of.colour);
    if (of.dashed) this.doc.undash();
  }

  dot(at: { readonly x: number; readonly y: number; readonly radius: number }, fill: string | null): void {
    if (this.count === null) return;
    const circle = this.doc.circle(at.x, at.y, at.radius).lineWidth(0.8);
    if (fill === null) circle.stroke('black');
    else circle.fillAndStroke(fill, 'black');
    this.doc.fillColor('black');
  }

  box(box: Box, thickness = 0.6): void {
    if (this.count === null) return;
    this.doc.lineWidth(thickness).rect(box.x, box.y, box.width, box.height).stroke('black');
  }

  filled(box: Box, colour = 'black'): void {
    if (this.count === null) return;
    this.doc.rect(box.x, box.y, box.width, box.height).fill(colour);
    this.doc.fillColor('black');
  }

  private drawFrame(): void {
    const { margin, frameSize } = this.of.setup;
    if (frameSize === null || this.count === null) return;
    const { headLeft, headRight, footLeft, footRight } = this.of.frame;
    const rightWidth = this.widthOf({ size: frameSize })(headRight);
    const [title] = this.lines(headLeft, { size: frameSize, bold: true }, this.width - rightWidth - 12);
    this.put(title ?? '', { size: frameSize, bold: true }, { x: this.left, y: margin });
    this.put(headRight, { size: frameSize, align: 'right' }, { x: this.right, y: margin });
    this.line([this.left, this.top - 4], [this.right, this.top - 4]);
    const foot = this.bottom + 6;
    this.line([this.left, foot - 3], [this.right, foot - 3]);
    this.put(footLeft, { size: frameSize }, { x: this.left, y: foot });
    this.put(footRight(this.page, this.count.pages), { size: frameSize, align: 'right' }, { x: this.right, y: foot });
  }
}

