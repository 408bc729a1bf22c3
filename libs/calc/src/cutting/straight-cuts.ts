import type { Placement } from './job.js';

const SAME_mm = 2e-6;

/**
 * Whether pieces can be freed by straight cuts from edge to edge of what is left each time.
 *
 * @param laid pieces on one roll
 * @param kerf_mm film lost at each cut; pieces on both sides of a cut stand at least this far apart
 * @returns null when they can, else the ids of pieces that hold each other
 */
export function straightCuts(laid: readonly Placement[], kerf_mm: number): string | null {
  const open: { pieces: readonly Placement[]; along: boolean; tried: boolean }[] = [{ pieces: laid, along: true, tried: false }];
  for (let group = open.pop(); group !== undefined; group = open.pop()) {
    if (group.pieces.length <= 1) continue;
    const parts = group.along ? parted(group.pieces, kerf_mm, alongRoll) : parted(group.pieces, kerf_mm, acrossRoll);
    if (parts.length > 1) {
      for (const pieces of parts) open.push({ pieces, along: !group.along, tried: false });
    } else if (!group.tried) {
      open.push({ pieces: group.pieces, along: !group.along, tried: true });
    } else {
      return group.pieces.slice(0, 6).map((each) => each.piece).join(', ');
    }
  }
  return null;
}

type Span = (piece: Placement) => { readonly from: number; readonly to: number };
const alongRoll: Span = (piece) => ({ from: piece.y_mm, to: piece.y_mm + piece.length_mm });
const acrossRoll: Span = (piece) => ({ from: piece.x_mm, to: piece.x_mm + piece.width_mm });

function parted(pieces: readonly Placement[], kerf_mm: number, span: Span): Placement[][] {
  const sorted = [...pieces].sort((a, b) => span(a).from - span(b).from);
  const parts: Placement[][] = [];
  let end = -Infinity;
  for (const piece of sorted) {
    const { from, to } = span(piece);
    if (from >= end + kerf_mm - SAME_mm || parts.length === 0) parts.push([]);
    parts[parts.length - 1]!.push(piece);
    end = Math.max(end, to);
  }
  return parts;
}
