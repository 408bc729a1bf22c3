import { countBlock, type Block } from './block.js';
import { stepOf } from './grid.js';
import { SAME_ticks, type ReadyJob } from './ready-job.js';
import type { RolledUp } from './roll-up.js';

/** Lays all pieces of `left` on the offers of the job given; `share` = how much of the full search it may spend, default 1. */
export type LayAll = (ready: ReadyJob, left: Int32Array, share?: number) => Block[];

/** The same job with some of its offers only; types and lies keep their places. */
export function narrowed(ready: ReadyJob, offers: readonly number[]): ReadyJob {
  return { ...ready, offers: offers.map((o) => ready.offers[o]!) };
}

/** The pieces of `left` that some offer of the job can hold. */
export function layable(ready: ReadyJob, left: Int32Array): Int32Array {
  const fits = new Int32Array(left.length);
  for (const lie of ready.lies) {
    if (ready.offers.some((offer) => lie.across <= offer.width + SAME_ticks && lie.along <= offer.length + SAME_ticks)) fits[lie.type] = left[lie.type]!;
  }
  return fits;
}

/**
 * Uses up rolls in stock before anything is bought: shortest part rolls first, each filled with the blocks that hold most film.
 * `left` is lowered by what is laid.
 */
export function fillStock(ready: ReadyJob, left: Int32Array, layAll: LayAll): RolledUp[] {
  const order = ready.offers.flatMap((offer, o) => (offer.stock ? [o] : [])).sort((a, b) => ready.offers[a]!.length - ready.offers[b]!.length || a - b);
  const rolls: RolledUp[] = [];
  for (const o of order) {
    const offer = ready.offers[o]!;
    const own = narrowed(ready, [o]);
    const some = layable(own, left);
    if (!some.some((n) => n > 0)) continue;
    let pool = layAll({ ...own, offers: [{ ...offer, rate: offer.width }] }, some).map((block) => ({ ...block, offer: o }));
    for (let n = 0; n < offer.supply && pool.length > 0; n++) {
      const taken = fullest(ready, pool, offer.length);
      if (taken.length === 0) break;
      const gone = new Set(taken);
      const blocks = taken.map((b) => pool[b]!);
      for (const block of blocks) countBlock(ready, block, { counts: left, sign: -1 });
      rolls.push({ offer: o, blocks, running: blocks.reduce((sum, block) => sum + block.length, 0) });
      pool = pool.filter((_, b) => !gone.has(b));
    }
  }
  return rolls;
}

const MOST_BLOCKS = 250;

/** Places in `blocks` of those that together hold most piece area within a roll's length. */
export function fullest(ready: ReadyJob, blocks: readonly Block[], length: number): number[] {
  const area = blocks.map((block) => block.laid.reduce((sum, at) => sum + ready.lies[at.lie]!.across * ready.lies[at.lie]!.along, 0));
  const order = blocks.map((_, b) => b).sort((a, b) => area[b]! / blocks[b]!.length - area[a]! / blocks[a]!.length || blocks[b]!.length - blocks[a]!.length || a - b);
  const some = order.slice(0, MOST_BLOCKS);
  const { step } = stepOf(some.map((b) => blocks[b]!.length), length);
  const cap = Math.floor((length + SAME_ticks) / step);
  const cells = some.map((b) => Math.ceil((blocks[b]!.length - SAME_ticks) / step));
  const worth = new Float64Array(cap + 1);
  const marks = some.map((b, n) => {
    const mark = new Uint8Array(cap + 1);
    for (let x = cap; x >= cells[n]!; x--) {
      const with1 = worth[x - cells[n]!]! + area[b]!;
      if (with1 > worth[x]!) {
        worth[x] = with1;
        mark[x] = 1;
      }
    }
    return mark;
  });
  const taken: number[] = [];
  let x = cap;
  for (let n = some.length - 1; n >= 0; n--) {
    if (marks[n]![x] === 0) continue;
    taken.push(some[n]!);
    x -= cells[n]!;
  }
  return taken.sort((a, b) => a - b);
}
