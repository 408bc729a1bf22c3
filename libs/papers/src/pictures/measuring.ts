import type { Say } from '../texts/texts.js';
import type { Picture, Shape } from './picture.js';

type Point = readonly [number, number];

const line = (points: readonly Point[], thickness = 0.8, dashed = false): Shape => ({ kind: 'line', points, thickness, dashed });
const words = ([x, y]: Point, text: string, more: { readonly align?: 'left' | 'right' | 'middle'; readonly bold?: boolean; readonly turned?: boolean } = {}): Shape => ({ kind: 'text', x, y, text, size: 9, ...more });

/** A length with a stroke at both ends. */
function measured(from: Point, to: Point): Shape[] {
  const isFlat = Math.abs(from[1] - to[1]) < 0.1;
  const end = ([x, y]: Point): Shape => line(isFlat ? [[x, y - 3], [x, y + 3]] : [[x - 3, y], [x + 3, y]]);
  return [line([from, to]), end(from), end(to)];
}

/** The glass as one sees it from the room, with three widths, three heights and both diagonals. */
function front(say: Say): Shape[] {
  const glass = { x: 40, y: 40, width: 110, height: 140 };
  const right = glass.x + glass.width;
  const low = glass.y + glass.height;
  return [
    words([95, 14], say('survey.picture.front'), { align: 'middle', bold: true }),
    { kind: 'rect', x: 28, y: 28, width: 134, height: 164, fill: 'grey', thickness: 1 },
    { kind: 'rect', ...glass, fill: 'white', thickness: 1 },
    ...[0.1, 0.5, 0.9].flatMap((s) => measured([glass.x + 1, glass.y + s * glass.height], [right - 1, glass.y + s * glass.height])),
    ...[0.1, 0.5, 0.9].flatMap((s) => measured([glass.x + s * glass.width, glass.y + 1], [glass.x + s * glass.width, low - 1])),
    line([[glass.x, glass.y], [right, low]], 0.6, true),
    line([[right, glass.y], [glass.x, low]], 0.6, true),
    words([95, 206], say('survey.picture.width'), { align: 'middle' }),
    words([20, 110], say('survey.picture.height'), { align: 'middle', turned: true }),
  ];
}

/** A section: overhang, reveal and sill. */
function side(say: Say): Shape[] {
  return [
    words([330, 14], say('survey.picture.side'), { align: 'middle', bold: true }),
    { kind: 'rect', x: 340, y: 24, width: 26, height: 46, fill: 'hatch', thickness: 1 },
    { kind: 'rect', x: 270, y: 34, width: 70, height: 10, fill: 'hatch', thickness: 1 },
    { kind: 'rect', x: 340, y: 150, width: 26, height: 46, fill: 'hatch', thickness: 1 },
    line([[356, 70], [356, 150]], 2),
    ...measured([270, 54], [340, 54]),
    words([305, 65], say('survey.picture.depth'), { align: 'middle' }),
    ...measured([376, 44], [376, 70]),
    words([382, 60], say('survey.picture.gap')),
    ...measured([340, 112], [356, 112]),
    words([336, 115], say('survey.picture.reveal'), { align: 'right' }),
    ...measured([376, 150], [376, 196]),
    words([382, 176], say('survey.picture.sill')),
    line([[366, 196], [440, 196]], 1),
    words([286, 130], say('survey.picture.out'), { align: 'middle' }),
    words([410, 130], say('survey.picture.in'), { align: 'middle' }),
  ];
}

/** A plan: a fin beside the glass. */
function above(say: Say): Shape[] {
  return [
    words([590, 14], say('survey.picture.above'), { align: 'middle', bold: true }),
    { kind: 'rect', x: 500, y: 120, width: 44, height: 22, fill: 'hatch', thickness: 1 },
    { kind: 'rect', x: 640, y: 120, width: 44, height: 22, fill: 'hatch', thickness: 1 },
    { kind: 'rect', x: 510, y: 50, width: 10, height: 70, fill: 'hatch', thickness: 1 },
    line([[544, 132], [640, 132]], 2),
    ...measured([496, 50], [496, 120]),
    words([490, 85], say('survey.picture.findepth'), { align: 'middle', turned: true }),
    ...measured([520, 108], [544, 108]),
    words([548, 106], say('survey.picture.fingap')),
    words([592, 66], say('survey.picture.out'), { align: 'middle' }),
    words([592, 168], say('survey.picture.in'), { align: 'middle' }),
  ];
}

/** How a window is measured, for the survey sheet. */
export function measuringPicture(say: Say): Picture {
  return { width: 700, height: 214, title: say('survey.picture'), shapes: [...front(say), ...side(say), ...above(say)] };
}
