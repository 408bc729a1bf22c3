import { drawField } from './cell.js';
import { LEADING, type Paper, type TextStyle } from './paper.js';

/** A heading that never stands alone at the foot of a page: it is drawn with the first of what stands under it. */
export function heading(paper: Paper, words: string, size: number): void {
  const style = { size, bold: true };
  const height = paper.lines(words, style, paper.width).length * size * LEADING + size * 0.35 + 1;
  paper.hold(height, () => {
    paper.y += size * 0.35;
    paper.write(words, style);
    paper.y += 1;
  });
}

/** Pairs of a word and what it says, the words in a column of their own. */
export function factRows(paper: Paper, rows: readonly (readonly [string, string])[], size: number): void {
  const bold = { size, bold: true };
  const indent = Math.max(...rows.map(([label]) => paper.widthOf(bold)(label))) + 10;
  for (const [label, value] of rows) {
    paper.need(size * LEADING);
    paper.put(label, bold, { x: paper.left, y: paper.y });
    paper.write(value, { size }, indent);
  }
  paper.y += 3;
}

/** A paragraph in a frame. */
export function boxed(paper: Paper, words: string, style: TextStyle): void {
  const pad = 5;
  const lines = paper.lines(words, style, paper.width - 2 * pad);
  const height = lines.length * style.size * LEADING + 2 * pad;
  paper.need(height);
  paper.box({ x: paper.left, y: paper.y, width: paper.width, height }, 1.2);
  lines.forEach((line, i) => paper.put(line, style, { x: paper.left + pad, y: paper.y + pad + i * style.size * LEADING }));
  paper.y += height + 5;
}

/** Labelled lines to write on, side by side, each with its share of the width. */
export function signOff(paper: Paper, fields: readonly (readonly [string, number])[], size: number): void {
  const height = size * 1.8;
  paper.need(height);
  let x = paper.left;
  for (const [label, share] of fields) {
    const width = share * paper.width;
    drawField(paper, { kind: 'field', height, label: { text: label, size } }, { x, y: paper.y, width: width - 8, height });
    x += width;
  }
  paper.y += height;
}

/** Paragraphs with a mark before each, their lines hanging under one another. */
export function listed(paper: Paper, lines: readonly string[], of: { readonly size: number; readonly mark: (index: number) => string }): void {
  const style = { size: of.size };
  const indent = Math.max(0, ...lines.map((_, i) => paper.widthOf(style)(of.mark(i)))) + of.size * 0.5;
  lines.forEach((line, i) => {
    const height = paper.lines(line, style, paper.width - indent).length * of.size * LEADING;
    // Short points stay whole; a long one may break.
    paper.need(height <= of.size * LEADING * 4 ? height : of.size * LEADING * 2);
    paper.put(of.mark(i), style, { x: paper.left, y: paper.y });
    paper.write(line, style, indent);
  });
}

export const dashed = (): string => '–';
export const numbered = (index: number): string => `${String(index + 1)}.`;

/** A paragraph that begins with its own heading in bold. */
export function runIn(paper: Paper, words: { readonly head: string; readonly text: string }, size: number): void {
  const bold = { size, bold: true };
  const head = `${words.head}: `;
  const indent = paper.widthOf(bold)(head);
  paper.need(size * LEADING * 2);
  paper.y += size * 0.35;
  const [first = ''] = paper.lines(words.text, { size }, paper.width - indent);
  paper.put(head, bold, { x: paper.left, y: paper.y });
  paper.put(first, { size }, { x: paper.left + indent, y: paper.y });
  paper.y += size * LEADING;
  const rest = words.text.slice(first.length).trimStart();
  if (rest !== '') paper.write(rest, { size });
}

/** Boxes to tick, side by side, each with its words; the last one has a line to write on. */
export function choices(paper: Paper, words: readonly string[], size: number): void {
  const height = size * 1.7;
  paper.need(height);
  let x = paper.left;
  words.forEach((word, i) => {
    const y = paper.y + (height - size) / 2;
    paper.box({ x, y, width: size, height: size }, 1);
    paper.put(word, { size }, { x: x + size + 4, y: paper.y + (height - size * LEADING) / 2 });
    x += size + 4 + paper.widthOf({ size })(word);
    if (i === words.length - 1) paper.line([x + 6, paper.y + height - 3], [paper.right - 8, paper.y + height - 3], 0.8);
    x += 22;
  });
  paper.y += height;
}
