import type { NumberedPiece } from './roll-sheets.js';

/** A straight cut from edge to edge of what lies on the table, numbered in the order of the work. */
export interface StraightCut {
  readonly number: number;
  /** Across the roll, or along it. */
  readonly way: 'across' | 'along';
  /** Where: along the roll for a cut across, across the roll for a cut along. */
  readonly at_mm: number;
  readonly from_mm: number;
  readonly to_mm: number;
}

/** A stretch of the roll between two cuts over its whole width. */
export interface RollStretch {
  readonly from_mm: number;
  readonly to_mm: number;
}

export interface CuttingOrder {
  readonly stretches: readonly RollStretch[];
  readonly cuts: readonly StraightCut[];
  /** The cut after which a piece lies free, by its number. */
  readonly freeAfter: ReadonlyMap<number, number>;
}

interface Block {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

type Axis = 'x' | 'y';

const SAME_mm = 1e-3;
const from = (p: NumberedPiece, axis: Axis): number => (axis === 'y' ? p.y_mm : p.x_mm);
const to = (p: NumberedPiece, axis: Axis): number => (axis === 'y' ? p.y_mm + p.length_mm : p.x_mm + p.width_mm);
const other = (axis: Axis): Axis => (axis === 'y' ? 'x' : 'y');

/** Groups of pieces with a straight line between them. */
function parted(pieces: readonly NumberedPiece[], axis: Axis): NumberedPiece[][] {
  const parts: NumberedPiece[][] = [];
  let end = -Infinity;
  for (const piece of [...pieces].sort((a, b) => from(a, axis) - from(b, axis))) {
    if (from(piece, axis) >= end - SAME_mm) parts.push([]);
    parts[parts.length - 1]!.push(piece);
    end = Math.max(end, to(piece, axis));
  }
  return parts;
}

/**
 * The straight cuts that free the pieces of a roll, in order: pull a stretch and cut it off, then part it, then the next.
 *
 * @throws RangeError when no straight cuts free them
 */
export function cuttingOrder(pieces: readonly NumberedPiece[], width_mm: number): CuttingOrder {
  const cuts: StraightCut[] = [];
  const freeAfter = new Map<number, number>();
  const stretches: RollStretch[] = [];
  const cut = (axis: Axis, at_mm: number, block: Block): void => {
    const [from_mm, to_mm] = axis === 'y' ? [block.x0, block.x1] : [block.y0, block.y1];
    cuts.push({ number: cuts.length + 1, way: axis === 'y' ? 'across' : 'along', at_mm, from_mm, to_mm });
  };
  const trim = (piece: NumberedPiece, block: Block): void => {
    let left = block;
    for (const axis of ['x', 'y'] as const) {
      const [low, high] = axis === 'y' ? [left.y0, left.y1] : [left.x0, left.x1];
      if (from(piece, axis) > low + SAME_mm) cut(axis, from(piece, axis), left);
      if (to(piece, axis) < high - SAME_mm) cut(axis, to(piece, axis), left);
      left = axis === 'y' ? { ...left, y0: from(piece, 'y'), y1: to(piece, 'y') } : { ...left, x0: from(piece, 'x'), x1: to(piece, 'x') };
    }
    freeAfter.set(piece.number, cuts.length);
  };
  const part = (inside: readonly NumberedPiece[], block: Block, axis: Axis): void => {
    if (inside.length === 1) return trim(inside[0]!, block);
    let parts = parted(inside, axis);
    let way = axis;
    if (parts.length === 1) parts = parted(inside, (way = other(axis)));
    if (parts.length === 1) throw new RangeError(`pieces must be freed by straight cuts, got ${inside.map((p) => p.piece).join(', ')}`);
    let start = way === 'y' ? block.y0 : block.x0;
    for (const group of parts) {
      const end = Math.max(...group.map((p) => to(p, way)));
      if (end < (way === 'y' ? block.y1 : block.x1) - SAME_mm) cut(way, end, block);
      part(group, way === 'y' ? { ...block, y0: start, y1: end } : { ...block, x0: start, x1: end }, other(way));
      start = end;
    }
  };
  let start = 0;
  for (const group of parted(pieces, 'y')) {
    const end = Math.max(...group.map((p) => to(p, 'y')));
    stretches.push({ from_mm: start, to_mm: end });
    cut('y', end, { x0: 0, x1: width_mm, y0: start, y1: end });
    part(group, { x0: 0, x1: width_mm, y0: start, y1: end }, 'x');
    start = end;
  }
  return { stretches, cuts, freeAfter };
}
