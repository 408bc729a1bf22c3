import { countBlock, type Block } from './block.js';
import { LikeLengths } from './like-lengths.js';
import type { ReadyJob } from './ready-job.js';
import type { ShelfFill } from './shelf-fill.js';
import { repeats, scoreOf } from './shelf-greedy.js';

/** From more sizes on the time of a plan over all of them grows out of hand, and shelves of pieces that happen to suit each other lose as little. */
const MANY = 120;

/** Whether a job is laid and bounded by the ways made for many sizes. */
export const isOfManySizes = (ready: ReadyJob): boolean => ready.types.length > MANY;

/** Shelf after shelf for a job of many sizes: the piece with the longest side opens a shelf, pieces of about its length share it. */
export function likeShelves(ready: ReadyJob, fill: ShelfFill, start: { readonly left: Int32Array; readonly worth: Float64Array }): Block[] {
  const { left, worth } = start;
  const blocks: Block[] = [];
  const lengths = new LikeLengths(ready, left);
  const hard = (t: number): number => Math.max(ready.types[t]!.across, ready.types[t]!.along);
  for (const t of [...ready.types.keys()].sort((a, b) => hard(b) - hard(a) || a - b)) {
    while (left[t]! > 0) {
      const found = fill.byType[t]!.flatMap((lie) => fill.blocks({ lie, left, worth, among: lengths.near(lie), widths: 2 }));
      const best = found.reduce((a, b) => (scoreOf(ready, b, worth) > scoreOf(ready, a, worth) ? b : a));
      for (let n = repeats(ready, best, left); n > 0; n--) {
        blocks.push(best);
        countBlock(ready, best, { counts: left, sign: -1 });
      }
    }
  }
  return blocks;
}
