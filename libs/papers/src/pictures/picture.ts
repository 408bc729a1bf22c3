/** Black on white, told apart by outline, grey and hatching, so that a copy of a copy can still be read. */
export type Fill = 'none' | 'white' | 'grey' | 'black' | 'hatch';

export type Shape =
  | { readonly kind: 'line'; readonly points: readonly (readonly [number, number])[]; readonly thickness: number; readonly dashed?: boolean; readonly pale?: boolean }
  | { readonly kind: 'rect'; readonly x: number; readonly y: number; readonly width: number; readonly height: number; readonly fill: Fill; readonly thickness: number }
  | { readonly kind: 'dot'; readonly x: number; readonly y: number; readonly radius: number; readonly fill: Fill }
  | { readonly kind: 'text'; readonly x: number; /** Where the letters stand. */ readonly y: number; readonly text: string; readonly size: number; readonly bold?: boolean; readonly align?: 'left' | 'right' | 'middle'; /** Reads upwards. */ readonly turned?: boolean };

/** A drawing in points, y down, that goes onto a page as lines and letters and into a workbook as an image. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** What it shows, for those who cannot see it. */
  readonly title: string;
  readonly shapes: readonly Shape[];
}

export const PALE = '#aaaaaa';
export const GREY = '#cccccc';

/** Slanting lines over a rectangle, cut off at its edges. */
export function hatching(of: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }, step = 5): (readonly [readonly [number, number], readonly [number, number]])[] {
  const lines: (readonly [readonly [number, number], readonly [number, number]])[] = [];
  for (let d = step; d < of.width + of.height; d += step) {
    const fromX = Math.min(d, of.width);
    const toY = Math.min(d, of.height);
    lines.push([[of.x + fromX, of.y + d - fromX], [of.x + d - toY, of.y + toY]]);
  }
  return lines;
}
