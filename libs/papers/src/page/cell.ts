import { LEADING, type Box, type Paper, type TextStyle } from './paper.js';

/** What a cell holds, from top to bottom: words, a box to tick, or a line to write on. */
export type CellPart =
  | { readonly kind: 'text'; readonly text: string; readonly style: TextStyle }
  | { readonly kind: 'check'; readonly size: number }
  | { readonly kind: 'field'; readonly height: number; readonly label?: TextStyle & { readonly text: string }; /** Stands between two halves, as in a size. */ readonly between?: string };

/** A part with its lines broken to the width of its cell. */
export interface LaidPart {
  readonly part: CellPart;
  readonly lines: readonly string[];
}

/** Half the gap for what stands between two halves of a field. */
const BETWEEN = 8;

export const text = (words: string, size: number, bold = false): CellPart => ({ kind: 'text', text: words, style: { size, bold } });
export const check = (size = 14): CellPart => ({ kind: 'check', size });
export const field = (height = 18): CellPart => ({ kind: 'field', height });

export function laid(paper: Paper, part: CellPart, width: number): LaidPart {
  return { part, lines: part.kind === 'text' ? paper.lines(part.text, part.style, width) : [] };
}

export function heightOf({ part, lines }: LaidPart): number {
  if (part.kind === 'text') return lines.length * part.style.size * LEADING;
  return part.kind === 'check' ? part.size + 3 : part.height;
}

/** Draws the parts of a cell from the top of its box down. */
export function drawParts(paper: Paper, parts: readonly LaidPart[], box: Box): void {
  let y = box.y;
  for (const one of parts) {
    const { part, lines } = one;
    if (part.kind === 'check') paper.box({ x: box.x, y: y + 1, width: part.size, height: part.size }, 1);
    else if (part.kind === 'field') drawField(paper, part, { ...box, y });
    else lines.forEach((line, i) => putAligned(paper, line, { style: part.style, box: { ...box, y: y + i * part.style.size * LEADING } }));
    y += heightOf(one);
  }
}

function putAligned(paper: Paper, line: string, of: { readonly style: TextStyle; readonly box: Box }): void {
  const { style, box } = of;
  const x = style.align === 'right' ? box.x + box.width : style.align === 'middle' ? box.x + box.width / 2 : box.x;
  paper.put(line, style, { x, y: box.y });
}

/** A line to write on, with its label before it. */
export function drawField(paper: Paper, part: Extract<CellPart, { kind: 'field' }>, box: Box): void {
  const base = box.y + part.height - 3;
  let from = box.x;
  if (part.label !== undefined) {
    paper.put(part.label.text, part.label, { x: box.x, y: base - part.label.size * LEADING + 2 });
    from += paper.widthOf(part.label)(part.label.text) + 4;
  }
  const to = box.x + box.width;
  if (part.between === undefined) return paper.line([from, base], [to, base], 0.8);
  const middle = (from + to) / 2;
  paper.line([from, base], [middle - BETWEEN, base], 0.8);
  paper.put(part.between, { size: 12, align: 'middle' }, { x: middle, y: base - 12 });
  paper.line([middle + BETWEEN, base], [to, base], 0.8);
}
