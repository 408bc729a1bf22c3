import { blockCost, countBlock, type Block } from './block.js';
import type { ReadyJob } from './ready-job.js';
import type { ShelfFill } from './shelf-fill.js';

/** How one greedy pass sees the pieces. */
export interface GreedyStart {
  readonly left: Int32Array;
  readonly worth: Float64Array;
  /** 0 ≤ r < 1; a constant 0 makes the pass plain. */
  readonly next: () => number;
}

/**
 * Lays all pieces left, shelf after shelf: each time the piece that is hardest to place opens a shelf, either way round, on the roll
 * where the pieces laid are worth most for the film used. `left` ends at zero.
 */
export function greedyShelves(ready: ReadyJob, fill: ShelfFill, start: GreedyStart): Block[] {
  const blocks: Block[] = [];
  const { left, next } = start;
  for (let t = opener(ready, left, next); t >= 0; t = opener(ready, left, next)) {
    let best: Block | null = null;
    let bestScore = -1;
    for (let k = 0; k < ready.lies.length; k++) {
      if (ready.lies[k]!.type !== t) continue;
      for (const block of fill.blocks({ lie: k, left, worth: start.worth })) {
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

function scoreOf(ready: ReadyJob, block: Block, worth: Float64Array): number {
  let value = 0;
  for (const at of block.laid) value += worth[ready.lies[at.lie]!.type]!;
  return value / (blockCost(ready, block) + 1e-9);
}

/** The same shelf is cut again as often as its pieces last, leaving a remainder to mix when there are many. */
function repeats(ready: ReadyJob, block: Block, left: Int32Array): number {
  const use = new Int32Array(left.length);
  countBlock(ready, block, { counts: use, sign: 1 });
  let times = Infinity;
  use.forEach((n, t) => {
    if (n > 0) times = Math.min(times, Math.floor(left[t]! / n));
  });
  return Math.max(1, times > 4 ? times - 2 : 1);
}

function opener(ready: ReadyJob, left: Int32Array, next: () => number): number {
  let best = -1;
  let most = -1;
  for (let t = 0; t < left.length; t++) {
    if (left[t]! <= 0) continue;
    const type = ready.types[t]!;
    const hard = Math.max(type.across, type.along) * (1 + 0.5 * next());
    if (hard > most) {
      most = hard;
      best = t;
    }
  }
  return best;
}
