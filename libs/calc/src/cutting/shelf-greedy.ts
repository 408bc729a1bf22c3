import { blockCost, countBlock, type Block } from './block.js';
import type { ReadyJob } from './ready-job.js';
import type { ShelfFill } from './shelf-fill.js';

/** How one greedy pass sees the pieces. */
export interface GreedyStart {
  readonly left: Int32Array;
  readonly worth: Float64Array;
  /** 0 ≤ r < 1; a constant 0 makes the pass plain. */
  readonly next: () => number;
  /** Types that have pieces left, in rising order, where the caller knows them. */
  readonly among?: readonly number[];
}

/**
 * Lays all pieces left, shelf after shelf: each time the piece that is hardest to place opens a shelf, either way round, on the roll
 * where the pieces laid are worth most for the film used. `left` ends at zero.
 */
export function greedyShelves(ready: ReadyJob, fill: ShelfFill, start: GreedyStart): Block[] {
  const blocks: Block[] = [];
  const { left, next } = start;
  for (let open = openTypes(start.among ?? ready.types.keys(), left); open.length > 0; open = openTypes(open, left)) {
    const t = opener(ready, open, next);
    let best: Block | null = null;
    let bestScore = -1;
    for (const k of fill.byType[t]!) {
      for (const block of fill.blocks({ lie: k, left, worth: start.worth, among: open })) {
        const score = scoreOf(ready, block, start.worth) * (1 + 0.06 * next());
        if (score > bestScore) {
          bestScore = score;
          best = block;
        }
      }
    }
    if (best === null) throw new RangeError(`piece type ${t} must fit a roll`);
    for (let n = repeats(ready, best, left); n > 0; n--) {
      blocks.push(best);
      countBlock(ready, best, { counts: left, sign: -1 });
    }
  }
  return blocks;
}

function openTypes(among: Iterable<number>, left: Int32Array): number[] {
  const open: number[] = [];
  for (const t of among) if (left[t]! > 0) open.push(t);
  return open;
}

/** What the pieces of a block are worth for its film. */
export function scoreOf(ready: ReadyJob, block: Block, worth: Float64Array): number {
  let value = 0;
  for (const at of block.laid) value += worth[ready.lies[at.lie]!.type]!;
  return value / (blockCost(ready, block) + 1e-9);
}

/** The same shelf is cut again as often as its pieces last, leaving a remainder to mix when there are many. */
export function repeats(ready: ReadyJob, block: Block, left: Int32Array): number {
  let times = Infinity;
  for (const { lie } of block.laid) {
    const t = ready.lies[lie]!.type;
    let use = 0;
    for (const other of block.laid) if (ready.lies[other.lie]!.type === t) use++;
    times = Math.min(times, Math.floor(left[t]! / use));
  }
  return Math.max(1, times > 4 ? times - 2 : 1);
}

function opener(ready: ReadyJob, open: readonly number[], next: () => number): number {
  let best = -1;
  let most = -1;
  for (const t of open) {
    const type = ready.types[t]!;
    const hard = Math.max(type.across, type.along) * (1 + 0.5 * next());
    if (hard > most) {
      most = hard;
      best = t;
    }
  }
  return best;
}
