import { inchesText } from '../units/index.js';
import type { CutPiece, CutRoll } from './job.js';
import { fineTicks, SAME_ticks } from './ready-job.js';

/** A piece that a narrower roll would nearly hold. */
export interface NearMiss {
  readonly piece: string;
  readonly count: number;
  /** The narrower roll. */
  readonly roll_mm: number;
  /** How much too wide the piece is for it, in mm and in inches. */
  readonly over_mm: number;
  readonly overText: string;
}

/**
 * Pieces that would fit the next narrower roll if the trim allowance were a little smaller.
 *
 *   over = side laid across − width of the narrower roll,   0 < over ≤ allowance
 *
 * @param pieces rough cut sizes in mm
 * @param rolls roll widths on offer or in stock
 * @param allowance_mm the whole trim allowance of a side (both edges), ≥ 0; default 25.4
 * @returns near misses, smallest first; a piece that may turn is looked at by its shorter side
 * @throws RangeError when the allowance is below 0
 */
export function nearMisses(pieces: readonly CutPiece[], rolls: readonly CutRoll[], allowance_mm = 25.4): NearMiss[] {
  if (!(allowance_mm >= 0)) throw new RangeError(`allowance_mm must be ≥ 0, got ${String(allowance_mm)}`);
  const widths = [...new Set(rolls.map((roll) => roll.width_mm))].sort((a, b) => b - a);
  const most = fineTicks(allowance_mm) + SAME_ticks;
  return pieces
    .flatMap((piece): NearMiss[] => {
      const across = fineTicks(piece.mayRotate ? Math.min(piece.width_mm, piece.length_mm) : piece.width_mm);
      const roll_mm = widths.find((width) => fineTicks(width) + SAME_ticks < across);
      if (roll_mm === undefined) return [];
      const over = across - fineTicks(roll_mm);
      return over <= most ? [{ piece: piece.id, count: piece.count, roll_mm, over_mm: over / 320, overText: inchesText(over) }] : [];
    })
    .sort((a, b) => a.over_mm - b.over_mm || (a.piece < b.piece ? -1 : 1));
}
