import { blockCost, countBlock, type Block } from './block.js';
import type { ReadyJob } from './ready-job.js';
import type { ShelfFill } from './shelf-fill.js';
import { greedyShelves } from './shelf-greedy.js';

/** What the improving search starts from. */
export interface ImproveStart {
  readonly blocks: readonly Block[];
  readonly worth: Float64Array;
  readonly rounds: number;
  /** How much dearer blocks laid again may be at first, less and less with the rounds; used where blocks are few. */
  readonly leave?: number | undefined;
  /** Cells of shelf tables it may fill. */
  readonly work?: number | undefined;
  readonly next: () => number;
}

/** From this many blocks on only blocks of like length are laid again together: their pieces suit the same shelves. */
const MANY = 150;
/** How far apart, in order of length, such blocks may stand. */
const REACH = 24;

/**
 * Takes a few blocks away and lays their pieces again with changed luck; keeps what is not worse, of few blocks for a while what is a little worse. Stops after the given rounds or work.
 * A round looks at the pieces of its few blocks alone, whatever the size of the job.
 */
export function improved(ready: ReadyJob, fill: ShelfFill, start: ImproveStart): Block[] {
  const blocks = [...start.blocks];
  const { next } = start;
  const left = new Int32Array(ready.types.length);
  const worth = new Float64Array(ready.types.length);
  let total = blocks.reduce((sum, block) => sum + blockCost(ready, block), 0);
  let least = total;
  let best = blocks.slice();
  const stop = fill.work + (start.work ?? Infinity);
  for (let round = 0; round < start.rounds && blocks.length > 1 && fill.work < stop; round++) {
    if (blocks.length >= MANY && round % blocks.length === 0) blocks.sort((a, b) => a.length - b.length);
    const out = chosen(ready, blocks, next);
    let old = 0;
    for (const b of out) {
      old += blockCost(ready, blocks[b]!);
      countBlock(ready, blocks[b]!, { counts: left, sign: 1 });
    }
    const among = [...new Set(out.flatMap((b) => blocks[b]!.laid.map((at) => ready.lies[at.lie]!.type)))].sort((a, b) => a - b);
    const byArea = next() >= 0.5;
    const power = 1 + 0.3 * next();
    for (const t of among) {
      const one = byArea ? ready.types[t]!.across * ready.types[t]!.along : start.worth[t]!;
      worth[t] = one ** power * (1 + 0.15 * next());
    }
    const again = greedyShelves(ready, fill, { left, worth, next, among });
    const cost = again.reduce((sum, block) => sum + blockCost(ready, block), 0);
    const leave = blocks.length < MANY && start.leave !== undefined ? start.leave * (1 - round / start.rounds) * next() : 0;
    if (cost > old * (1 + leave + 1e-12)) continue;
    replace(blocks, out, again);
    total += cost - old;
    if (blocks.length < MANY && total < least * (1 - 1e-9)) {
      least = total;
      best = blocks.slice();
    }
  }
  return total < least ? blocks : best;
}

/** Puts new blocks in the places of old ones; places left over are closed from the end. */
function replace(blocks: Block[], out: readonly number[], again: readonly Block[]): void {
  again.forEach((block, n) => (out[n] === undefined ? blocks.push(block) : (blocks[out[n]] = block)));
  for (const b of out.slice(again.length).sort((x, y) => y - x)) {
    const last = blocks.pop()!;
    if (b < blocks.length) blocks[b] = last;
  }
}

/** Two to seven blocks, the emptier ones more often; of many blocks those near the first in length. */
function chosen(ready: ReadyJob, blocks: readonly Block[], next: () => number): number[] {
  const many = Math.min(blocks.length, 2 + Math.floor(next() * next() * (next() < 0.1 ? 16 : 7)));
  const near = blocks.length >= MANY;
  const from = near ? Math.floor(next() * (blocks.length - 2 * REACH)) : 0;
  const span = near ? 2 * REACH : blocks.length;
  const out = new Set<number>();
  for (let tries = 0; out.size < many && tries < 60; tries++) {
    const a = from + Math.floor(next() * span);
    const b = from + Math.floor(next() * span);
    out.add(loss(ready, blocks[a]!) > loss(ready, blocks[b]!) ? a : b);
  }
  return [...out];
}

function loss(ready: ReadyJob, block: Block): number {
  let area = 0;
  for (const at of block.laid) area += ready.lies[at.lie]!.across * ready.lies[at.lie]!.along;
  return 1 - area / (ready.offers[block.offer]!.width * block.length);
}
