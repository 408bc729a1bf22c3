import type { CutJob, CutPiece, CutResult, Placement, Unplaced, UsedRoll, WidthTotal } from './job.js';
import type { ReadyJob } from './ready-job.js';
import type { RolledUp } from './roll-up.js';

/** What the bounds say: in area and, where rolls have prices, in cents. */
export interface Bounds {
  readonly area_mm2: number;
  readonly cost_cents: number | null;
}

const TICKS2 = 320 * 320;

/** A finished layout in ticks. */
export interface Layout {
  readonly rolls: readonly RolledUp[];
  readonly bounds: Bounds;
  /** Pieces by type the stock was too short for, where nothing else can be bought. */
  readonly left: Int32Array;
}

/** Writes a layout in mm, with the ids of the pieces, totals and bounds. Rolls sold by length keep the place of their row. */
export function resultOf(job: CutJob, ready: ReadyJob, of: Layout): CutResult {
  const queue = ready.types.map((type) => type.owners.flatMap(({ piece, copies }) => Array.from({ length: copies }, () => piece)));
  const taken = new Int32Array(ready.types.length);
  const ordered = [...of.rolls, ...unused(ready, of.rolls)].sort((a, b) => rank(ready, a) - rank(ready, b));
  const placements: Placement[] = [];
  const rolls = ordered.map((roll, index) => {
    let along = 0;
    for (const block of roll.blocks) {
      for (const at of block.laid) {
        const lie = ready.lies[at.lie]!;
        const piece = queue[lie.type]![taken[lie.type]!++]!;
        placements.push(placed(piece, { ready, lie, roll: index, x: at.x, y: along + at.y }));
      }
      along += block.length;
    }
    return usedRoll(job, ready, { ...roll, running: along });
  });
  const short = outOfStock(queue.flatMap((pieces, t) => pieces.slice(taken[t])));
  return { placements, rolls, ...totalsOf(job, ready, { rolls, placements, bounds: of.bounds }), unplaced: [...ready.unplaced, ...short] };
}

function outOfStock(pieces: readonly CutPiece[]): Unplaced[] {
  const counts = new Map<string, number>();
  for (const piece of pieces) counts.set(piece.id, (counts.get(piece.id) ?? 0) + 1);
  return [...counts].map(([piece, count]) => ({ piece, count, why: 'the rolls in stock are used up and no roll on offer holds it' }));
}

/** Endless offers nothing was cut from keep an empty place, so that places agree with the job's rows where all film is sold by length. */
function unused(ready: ReadyJob, rolls: readonly RolledUp[]): RolledUp[] {
  return ready.offers.flatMap((offer, o) =>
    offer.length === Infinity && !rolls.some((roll) => roll.offer === o) ? [{ offer: o, blocks: [], running: 0 }] : [],
  );
}

const rank = (ready: ReadyJob, roll: RolledUp): number => ready.offers[roll.offer]!.row * 2 + (ready.offers[roll.offer]!.stock ? 0 : 1);

function placed(piece: CutPiece, at: { readonly ready: ReadyJob; readonly lie: { readonly across: number; readonly along: number }; readonly roll: number; readonly x: number; readonly y: number }): Placement {
  const across = at.lie.across - at.ready.kerf;
  const rotated = Math.abs(across - piece.width_mm * 320) > Math.abs(across - piece.length_mm * 320);
  const width_mm = rotated ? piece.length_mm : piece.width_mm;
  const length_mm = rotated ? piece.width_mm : piece.length_mm;
  return { piece: piece.id, roll: at.roll, x_mm: at.x / 320, y_mm: at.y / 320, width_mm, length_mm, rotated };
}

function usedRoll(job: CutJob, ready: ReadyJob, roll: RolledUp): UsedRoll {
  const offer = ready.offers[roll.offer]!;
  const row = job.rolls[offer.row]!;
  const running_mm = Math.max(0, roll.running - ready.kerf) / 320;
  const length_mm = row.length_mm ?? null;
  return {
    offer: offer.row,
    width_mm: row.width_mm,
    length_mm,
    source: offer.stock ? 'stock' : 'bought',
    runningLength_mm: running_mm,
    boughtLength_mm: offer.stock ? 0 : (length_mm ?? running_mm),
    leftLength_mm: length_mm === null ? 0 : Math.max(0, length_mm - Math.max(0, roll.running) / 320),
  };
}

/** Rolls and placements in mm with their bounds. */
export interface LaidOut {
  readonly rolls: readonly UsedRoll[];
  readonly placements: readonly Placement[];
  readonly bounds: Bounds;
}

/** Totals of a layout: area, cost and how far it is over its bound. */
export function totalsOf(job: CutJob, ready: ReadyJob, of: LaidOut): Omit<CutResult, 'placements' | 'rolls' | 'unplaced'> {
  const sum = (what: (roll: UsedRoll) => number): number => of.rolls.reduce((all, roll) => all + what(roll), 0);
  const boughtArea_mm2 = sum((roll) => roll.boughtLength_mm * roll.width_mm);
  const bound = of.bounds.area_mm2;
  const overBound = boughtArea_mm2 === 0 ? 0 : bound > 0 ? boughtArea_mm2 / bound - 1 : null;
  const price = (roll: UsedRoll): number => {
    const cents = job.rolls[roll.offer]?.price_cents ?? 0;
    return roll.source === 'stock' ? 0 : roll.length_mm === null ? (cents * roll.runningLength_mm) / 1000 : cents;
  };
  return {
    byWidth: widthTotals(of.rolls),
    pieceArea_mm2: of.placements.reduce((all, piece) => all + piece.width_mm * piece.length_mm, 0),
    usedArea_mm2: sum((roll) => roll.runningLength_mm * roll.width_mm),
    boughtArea_mm2,
    lowerBoundArea_mm2: bound,
    overBound,
    cost_cents: ready.priced ? sum(price) : null,
    lowerBoundCost_cents: of.bounds.cost_cents,
  };
}

function widthTotals(rolls: readonly UsedRoll[]): WidthTotal[] {
  const byWidth = new Map<number, WidthTotal>();
  for (const roll of rolls) {
    const at = byWidth.get(roll.width_mm) ?? { width_mm: roll.width_mm, boughtRolls: 0, stockRolls: 0, runningLength_mm: 0, boughtLength_mm: 0 };
    byWidth.set(roll.width_mm, {
      width_mm: roll.width_mm,
      boughtRolls: at.boughtRolls + (roll.source === 'bought' && roll.length_mm !== null ? 1 : 0),
      stockRolls: at.stockRolls + (roll.source === 'stock' ? 1 : 0),
      runningLength_mm: at.runningLength_mm + roll.runningLength_mm,
      boughtLength_mm: at.boughtLength_mm + roll.boughtLength_mm,
    });
  }
  return [...byWidth.values()].sort((a, b) => a.width_mm - b.width_mm);
}

/** Square mm of square ticks. */
export const mm2OfTicks2 = (area_ticks2: number): number => area_ticks2 / TICKS2;
