import { blockCost, countBlock, type Block } from './block.js';
import type { ReadyJob } from './ready-job.js';
import type { ShelfFill } from './shelf-fill.js';
import { greedyShelves } from './shelf-greedy.js';

/** What the improving search starts from. */
export interface ImproveStart {
  readonly blocks: readonly Block[];
  readonly worth: Float64Array;
  readonly rounds: number;
  readonly next: () => number;
}

/**
 * Takes a few blocks away and lays their pieces again with changed luck; keeps what is not worse. Stops after the given rounds.
 */
export function improved(ready: ReadyJob, fill: ShelfFill, start: ImproveStart): Block[] {
  let blocks = [...start.blocks];
  const { next } = start;
  const area = Float64Array.from(ready.types, (type) => type.across * type.along);
  const left = new Int32Array(ready.types.length);
  for (let round = 0; round < start.rounds && blocks.length > 1; round++) {
    const out = chosen(ready, blocks, next);
    left.fill(0);
    let old = 0;
    for (const b of out) {
      old += blockCost(ready, blocks[b]!);
      countBlock(ready, blocks[b]!, { counts: left, sign: 1 });
    }
    const base = next() < 0.5 ? start.worth : area;
    const power = 1 + 0.3 * next();
    const worth = base.map((one) => one ** power * (1 + 0.15 * next()));
    const again = greedyShelves(ready, fill, { left, worth, next });
    const cost = again.reduce((sum, block) => sum + blockCost(ready, block), 0);
    if (cost > old * (1 + 1e-12)) continue;
    const gone = new Set(out);
    blocks = [...blocks.filter((_, b) => !gone.has(b)), ...again];
  }
  return blocks;
}

/** Two to seven blocks, the emptier ones more often. */
function chosen(ready: ReadyJob, blocks: readonly Block[], next: () => number): number[] {
  const many = Math.min(blocks.length, 2 + Math.floor(next() * next() * 7));
  const out = new Set<number>();
  for (let tries = 0; out.size < many && tries < 60; tries++) {
    const a = Math.floor(next() * blocks.length);
    const b = Math.floor(next() * blocks.length);
    out.add(loss(ready, blocks[a]!) > loss(ready, blocks[b]!) ? a : b);
  }
  return [...out];
}

function loss(ready: ReadyJob, block: Block): number {
  let area = 0;
  for (const at of block.laid) area += ready.lies[at.lie]!.across * ready.lies[at.lie]!.along;
  return 1 - area / (ready.offers[block.offer]!.width * block.length);
}
