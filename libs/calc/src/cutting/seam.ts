import { ceilToEighthInch_ticks, mmOfTicks, ticksOf_mm } from '../units/index.js';
import type { CutPiece, CutRoll, SeamProposal } from './job.js';

/** Extra film on each side of a seam, so that both strips are cut through together: the trim allowance again. */
const SEAM_ALLOWANCE_mm = 12.7;

/**
 * Strips with upright seams for a piece that is wider than every roll.
 *
 *   strip = (width + 2 × allowance × (strips − 1)) / strips, up to 1/8 in, with the fewest strips that fit the widest roll
 *
 * @param piece the piece as ordered
 * @param rolls the rolls there are
 * @returns the proposal, or nothing where seams do not help (the piece is too long, or it fits some roll)
 * @source upright seams in the same place, butted, with the owner's leave: from an installer's page; the allowance is common practice, no source
 */
export function seamOf(piece: CutPiece, rolls: readonly CutRoll[]): { readonly seam?: SeamProposal } {
  const long = rolls.filter((roll) => roll.length_mm === undefined || roll.length_mm >= piece.length_mm);
  const widest = Math.max(0, ...long.map((roll) => ticksOf_mm(roll.width_mm)));
  if (widest === 0 || piece.width_mm * 320 <= widest) return {};
  const width = ticksOf_mm(piece.width_mm);
  const extra = 2 * ticksOf_mm(SEAM_ALLOWANCE_mm);
  for (let strips = 2; strips <= 12; strips++) {
    const strip = ceilToEighthInch_ticks(Math.ceil((width + extra * (strips - 1)) / strips));
    if (strip > widest) continue;
    const why = `${strips} upright strips butted at the seam, in the same place on every such pane; ask the owner first`;
    return { seam: { strips, width_mm: mmOfTicks(strip), length_mm: piece.length_mm, why } };
  }
  return {};
}
