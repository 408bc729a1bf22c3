import { GREY, hatching, PALE, type Fill, type Picture, type Shape } from '../pictures/picture.js';
import type { Paper } from './paper.js';

const COLOUR: Readonly<Record<Exclude<Fill, 'none'>, string>> = { white: 'white', grey: GREY, black: 'black', hatch: 'white' };

interface Place {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

function drawShape(paper: Paper, shape: Shape, at: Place): void {
  const X = (x: number): number => at.x + x * at.scale;
  const Y = (y: number): number => at.y + y * at.scale;
  switch (shape.kind) {
    case 'line':
      return paper.path(shape.points.map(([x, y]) => [X(x), Y(y)]), { thickness: shape.thickness, dashed: shape.dashed ?? false, colour: shape.pale === true ? PALE : 'black' });
    case 'dot':
      return paper.dot({ x: X(shape.x), y: Y(shape.y), radius: shape.radius * at.scale }, shape.fill === 'none' ? null : COLOUR[shape.fill]);
    case 'text':
      return paper.letters(shape.text, { size: shape.size * at.scale, bold: shape.bold ?? false, align: shape.align ?? 'left' }, { x: X(shape.x), y: Y(shape.y), turned: shape.turned ?? false });
    case 'rect': {
      const box = { x: X(shape.x), y: Y(shape.y), width: shape.width * at.scale, height: shape.height * at.scale };
      if (shape.fill !== 'none') paper.filled(box, COLOUR[shape.fill]);
      if (shape.fill === 'hatch') for (const points of hatching(box)) paper.path(points, { thickness: 0.4, dashed: false, colour: 'black' });
      if (shape.thickness > 0) paper.box(box, shape.thickness);
    }
  }
}

/** Draws a picture where the paper stands, as wide as the page at most, and goes on below it. */
export function drawPicture(paper: Paper, picture: Picture): void {
  const scale = Math.min(1, paper.width / picture.width);
  paper.need(picture.height * scale);
  for (const shape of picture.shapes) drawShape(paper, shape, { x: paper.left, y: paper.y, scale });
  paper.y += picture.height * scale;
}
