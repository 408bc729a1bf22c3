import { type CellPart, drawParts, heightOf, laid, type LaidPart } from './cell.js';
import { LEADING, type Paper } from './paper.js';

export interface PaperColumn<T> {
  readonly head: string;
  /** Share of the table's width. */
  readonly share: number;
  /** Figures stand to the right, and so does the head above them. */
  readonly headAlign?: 'right';
  readonly cell: (row: T, index: number) => readonly CellPart[];
}

export interface PaperTable<T> {
  readonly columns: readonly PaperColumn<T>[];
  readonly rows: readonly T[];
  readonly headSize: number;
  /** White above and below what a row holds. */
  readonly pad?: number;
  readonly leastHeight?: number;
}

interface Place {
  readonly x: number;
  readonly width: number;
}

const SIDE = 3;
/** White between a table and what stands above it. */
const ABOVE = 2;

function placesOf(paper: Paper, columns: readonly { readonly share: number }[]): Place[] {
  const all = columns.reduce((sum, c) => sum + c.share, 0);
  let x = paper.left;
  return columns.map(({ share }) => {
    const width = (share / all) * paper.width;
    const place = { x, width };
    x += width;
    return place;
  });
}

const inner = (place: Place): number => place.width - 2 * SIDE;
const rowHeight = (cells: readonly (readonly LaidPart[])[]): number => Math.max(...cells.map((parts) => parts.reduce((sum, p) => sum + heightOf(p), 0)));

function ruledRow(paper: Paper, places: readonly Place[], of: { readonly height: number; readonly thickness: number }): void {
  const top = paper.y;
  const bottom = top + of.height;
  paper.line([paper.left, bottom], [paper.right, bottom], of.thickness);
  for (const { x } of places) paper.line([x, top], [x, bottom]);
  paper.line([paper.right, top], [paper.right, bottom]);
}

/** Lines of text a page cannot hold are carried to the next one: the first part that fits, and the rest. */
function split(cells: readonly (readonly LaidPart[])[], room: number): readonly [LaidPart[][], LaidPart[][]] {
  const first: LaidPart[][] = [];
  const rest: LaidPart[][] = [];
  for (const parts of cells) {
    const now: LaidPart[] = [];
    const later: LaidPart[] = [];
    let left = room;
    for (const one of parts) {
      const height = heightOf(one);
      if (later.length === 0 && height <= left) now.push(one);
      else if (later.length === 0 && one.part.kind === 'text') {
        const fits = Math.max(0, Math.floor(left / (one.part.style.size * LEADING)));
        if (fits > 0) now.push({ ...one, lines: one.lines.slice(0, fits) });
        later.push({ ...one, lines: one.lines.slice(fits) });
      } else later.push(one);
      left -= height;
    }
    first.push(now);
    rest.push(later);
  }
  return [first, rest];
}

/** A ruled table; its head is printed again on each page, and a row is broken only where it is higher than a page. */
export function writeTable<T>(paper: Paper, table: PaperTable<T>): void {
  const places = placesOf(paper, table.columns);
  const pad = table.pad ?? 3;
  const layRow = (parts: readonly (readonly CellPart[])[]): LaidPart[][] => parts.map((cell, c) => cell.map((part) => laid(paper, part, inner(places[c]!))));
  const drawRow = (cells: readonly (readonly LaidPart[])[], height: number, thickness: number): void => {
    cells.forEach((parts, c) => drawParts(paper, parts, { x: places[c]!.x + SIDE, y: paper.y + pad, width: inner(places[c]!), height }));
    ruledRow(paper, places, { height: height + 2 * pad, thickness });
    paper.y += height + 2 * pad;
  };
  const heads = layRow(table.columns.map((c) => [{ kind: 'text' as const, text: c.head, style: { size: table.headSize, bold: true, align: c.headAlign ?? 'left' } }]));
  const headHeight = rowHeight(heads);
  const drawHead = (): void => {
    paper.line([paper.left, paper.y], [paper.right, paper.y], 1.2);
    drawRow(heads, headHeight, 1.2);
  };
  const least = table.leastHeight ?? 0;
  const rows = table.rows.map((row, i) => layRow(table.columns.map((c) => c.cell(row, i))));
  const firstRow = rows[0] === undefined ? 0 : Math.max(least, rowHeight(rows[0])) + 2 * pad;
  paper.need(Math.min(ABOVE + headHeight + 2 * pad + firstRow, paper.bottom - paper.top));
  paper.y += ABOVE;
  drawHead();
  for (const whole of rows) {
    let cells: readonly (readonly LaidPart[])[] = whole;
    for (;;) {
      const height = Math.max(least, rowHeight(cells));
      if (height + 2 * pad <= paper.room) {
        drawRow(cells, height, 0.6);
        break;
      }
      if (!paper.isFresh(headHeight + 2 * pad)) {
        paper.newPage();
        drawHead();
        continue;
      }
      const [now, later] = split(cells, paper.room - 2 * pad);
      drawRow(now, paper.room - 2 * pad, 0.6);
      cells = later;
      paper.newPage();
      drawHead();
    }
  }
}
