import { cut } from './cut.js';
import type { CutJob, CutPiece, CutResult, Placement, Unplaced, UsedRoll } from './job.js';
import { checkLayout, type LayoutCheck } from './layout-check.js';

/** An opened roll with its plan. */
export interface OpenedRoll {
  readonly width_mm: number;
  readonly length_mm: number;
  /** Every piece planned on this roll; `roll` of a placement is not looked at. */
  readonly laid: readonly Placement[];
}

/** What has to be laid anew on it. */
export interface RelayJob {
  readonly roll: OpenedRoll;
  /** Pieces whose size changed, by the id of their placement, and pieces that are new to the roll. Counts are 1. */
  readonly changed: readonly CutPiece[];
  /** Pieces that are not wanted any more. */
  readonly dropped?: readonly string[];
  /** Whether unchanged pieces may turn. */
  readonly mayRotate: boolean;
  readonly kerf_mm?: number | undefined;
}

/** The roll laid out again. */
export interface RelayResult {
  /** Straight cut across the roll before which nothing moved. */
  readonly line_mm: number;
  readonly placements: readonly Placement[];
  /** Ids that lie elsewhere than planned or are new. */
  readonly moved: readonly string[];
  readonly unplaced: readonly Unplaced[];
  readonly runningLength_mm: number;
  readonly leftLength_mm: number;
  readonly check: LayoutCheck;
}

const SAME_mm = 2e-6;
/** Rounds of the search: a relay waits at the bench for its answer. */
const ROUNDS = 200;

/** The straight cut behind everything begun: pieces that start before it end before it. */
function lineBehind(laid: readonly Placement[], cutTo_mm: number): number {
  let line = cutTo_mm;
  for (const at of [...laid].sort((a, b) => a.y_mm - b.y_mm)) if (at.y_mm < line - SAME_mm) line = Math.max(line, at.y_mm + at.length_mm);
  return line;
}

/**
 * Lays the rest of an opened roll out again after sizes changed; nothing already cut moves.
 *
 *   line = cutTo, carried on to the end of every piece it runs through;   before it all stays, behind it all is cut anew
 *
 * Where nothing changed behind the line the plan stays as it is, piece by piece.
 *
 * @param cutTo_mm how far the roll has been run off, 0…length
 * @param job the roll with its plan, the pieces with their new sizes, those no longer wanted
 * @returns placements in the roll's own measure, what moved, what no longer fits with why, and the independent check of the whole roll
 * @throws RangeError when cutTo_mm is not on the roll, a changed piece has another count than 1, or as `cut`
 * @source own rule, stated here; the search as `cut`
 */
export function relay(cutTo_mm: number, job: RelayJob): RelayResult {
  const { roll } = job;
  if (!(cutTo_mm >= 0 && cutTo_mm <= roll.length_mm + SAME_mm)) throw new RangeError(`cutTo_mm must be 0…${roll.length_mm}, got ${cutTo_mm}`);
  for (const piece of job.changed) if (piece.count !== 1) throw new RangeError(`count of a changed piece must be 1, got ${piece.count} of ${piece.id}`);
  const line_mm = lineBehind(roll.laid, cutTo_mm);
  const changed = new Map(job.changed.map((piece) => [piece.id, piece]));
  const dropped = new Set(job.dropped ?? []);
  const isCut = (at: Placement): boolean => at.y_mm < cutTo_mm - SAME_mm;
  // A changed piece beside the line that is not cut yet goes to the rest; one that is cut is cut.
  const stays = roll.laid.filter((at) => (isCut(at) || !changed.has(at.piece)) && !dropped.has(at.piece));
  const before = stays.filter((at) => at.y_mm < line_mm - SAME_mm);
  const behind = stays.filter((at) => at.y_mm >= line_mm - SAME_mm);
  const standing = new Set(before.map((at) => at.piece));
  const asked = [...changed.values()].filter((piece) => !standing.has(piece.id));
  const rest = asked.length === 0 ? { laid: behind, unplaced: [] } : laidAgain([...behind.map((at) => pieceOf(at, job.mayRotate)), ...asked], line_mm, job);
  const placements = [...before, ...rest.laid].map((at) => ({ ...at, roll: 0 }));
  const planned = new Map(roll.laid.map((at) => [at.piece, at]));
  const moved = rest.laid.filter((at) => !isSame(planned.get(at.piece), at)).map((at) => at.piece).sort();
  const runningLength_mm = Math.max(line_mm, ...placements.map((at) => at.y_mm + at.length_mm), 0);
  const laid = { placements, unplaced: rest.unplaced, runningLength_mm };
  const pieces = [...stays.map((at) => pieceOf(at, job.mayRotate)), ...asked];
  return { line_mm, moved, ...laid, leftLength_mm: Math.max(0, roll.length_mm - runningLength_mm), check: checked(pieces, laid, job) };
}

/** A planned piece with its own sides back: as laid it may be turned. */
function pieceOf(at: Placement, mayRotate: boolean): CutPiece {
  const [width_mm, length_mm] = at.rotated ? [at.length_mm, at.width_mm] : [at.width_mm, at.length_mm];
  return { id: at.piece, width_mm, length_mm, count: 1, mayRotate: mayRotate || at.rotated };
}

function isSame(planned: Placement | undefined, at: Placement): boolean {
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_mm;
  return planned !== undefined && near(planned.x_mm, at.x_mm) && near(planned.y_mm, at.y_mm) && near(planned.width_mm, at.width_mm) && near(planned.length_mm, at.length_mm);
}

function laidAgain(pieces: readonly CutPiece[], line_mm: number, job: RelayJob): { readonly laid: Placement[]; readonly unplaced: readonly Unplaced[] } {
  const start_mm = line_mm + (line_mm > 0 ? (job.kerf_mm ?? 0) : 0);
  const room_mm = job.roll.length_mm - start_mm;
  if (room_mm <= SAME_mm) return { laid: [], unplaced: pieces.map((piece) => ({ piece: piece.id, count: 1, why: 'the roll is used up' })) };
  const { placements, unplaced } = cut({ pieces, rolls: [{ width_mm: job.roll.width_mm, length_mm: room_mm, stock: 1 }], kerf_mm: job.kerf_mm, rounds: ROUNDS });
  return { laid: placements.map((at) => ({ ...at, y_mm: at.y_mm + start_mm })), unplaced };
}

/** The whole roll, cut and uncut, before the independent check. */
function checked(pieces: readonly CutPiece[], laid: Pick<RelayResult, 'placements' | 'unplaced' | 'runningLength_mm'>, job: RelayJob): LayoutCheck {
  const { width_mm, length_mm } = job.roll;
  const asJob: CutJob = { pieces, rolls: [{ width_mm, length_mm, stock: 1 }], kerf_mm: job.kerf_mm };
  const used: UsedRoll = { offer: 0, width_mm, length_mm, source: 'stock', runningLength_mm: laid.runningLength_mm, boughtLength_mm: 0, leftLength_mm: Math.max(0, length_mm - laid.runningLength_mm) };
  const result: CutResult = {
    placements: laid.placements,
    rolls: [used],
    byWidth: [],
    pieceArea_mm2: laid.placements.reduce((sum, at) => sum + at.width_mm * at.length_mm, 0),
    usedArea_mm2: laid.runningLength_mm * width_mm,
    boughtArea_mm2: 0,
    lowerBoundArea_mm2: 0,
    overBound: 0,
    cost_cents: null,
    lowerBoundCost_cents: null,
    unplaced: laid.unplaced,
  };
  return checkLayout(asJob, result);
}
