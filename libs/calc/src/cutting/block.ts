import { SAME_ticks, type Lie, type ReadyJob } from './ready-job.js';

/** A straight cross-cut stretch of one roll with the pieces on it; sizes in ticks, kerf included. Never changed once made. */
export interface Block {
  /** Place in the ready job's offers. */
  readonly offer: number;
  readonly length: number;
  readonly laid: readonly Laid[];
}

/** A piece in a block: how it lies and where, from the block's corner. */
export interface Laid {
  readonly lie: number;
  readonly x: number;
  readonly y: number;
}

/** A free rectangle of a block, in ticks. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export const blockCost = (ready: ReadyJob, block: Block): number => (ready.offers[block.offer]?.rate ?? 0) * block.length;

/** Adds (sign 1) or takes (sign −1) the pieces of a block to the counts by type. */
export function countBlock(ready: ReadyJob, block: Block, into: { readonly counts: Int32Array; readonly sign: 1 | -1 }): void {
  for (const at of block.laid) into.counts[ready.lies[at.lie]!.type]! += into.sign;
}

const best = { lie: -1, slack: Infinity, area: 0 };

function bestLie(lies: readonly Lie[], at: { readonly left: Int32Array; readonly among: readonly number[] }, rect: Rect): void {
  best.lie = -1;
  best.area = 0;
  best.slack = Infinity;
  for (const k of at.among) {
    const lie = lies[k]!;
    const area = lie.across * lie.along;
    if (area < best.area * 0.999999) return;
    if (at.left[lie.type]! <= 0 || lie.across > rect.w + SAME_ticks || lie.along > rect.h + SAME_ticks) continue;
    const slack = Math.min(rect.w - lie.across, rect.h - lie.along);
    if (area > best.area * 1.000001 || (area > best.area * 0.999999 && slack < best.slack)) {
      best.lie = k;
      best.area = area;
      best.slack = slack;
    }
  }
}

/**
 * Fills free rectangles of a block by straight cuts: the largest piece that fits goes to the corner, the rest is split so that
 * the larger remainder stays whole. `left` is lowered by what is laid; only the lies named are tried, which stand in falling order of area.
 */
export function fillRects(ready: ReadyJob, left: Int32Array, at: { readonly rects: Rect[]; readonly laid: Laid[]; readonly lies: readonly number[] }): void {
  const stack = at.rects;
  const from = { left, among: at.lies };
  let narrowest = Infinity;
  let shortest = Infinity;
  for (const k of at.lies) {
    narrowest = Math.min(narrowest, ready.lies[k]!.across - SAME_ticks);
    shortest = Math.min(shortest, ready.lies[k]!.along - SAME_ticks);
  }
  for (let rect = stack.pop(); rect !== undefined; rect = stack.pop()) {
    if (rect.w < narrowest || rect.h < shortest) continue;
    bestLie(ready.lies, from, rect);
    const lie = ready.lies[best.lie];
    if (lie === undefined) continue;
    at.laid.push({ lie: best.lie, x: rect.x, y: rect.y });
    left[lie.type]! -= 1;
    const right = rect.w - lie.across;
    const above = rect.h - lie.along;
    const wholeAbove = rect.w * above >= right * rect.h;
    stack.push({ x: rect.x + lie.across, y: rect.y, w: right, h: wholeAbove ? lie.along : rect.h });
    stack.push({ x: rect.x, y: rect.y + lie.along, w: wholeAbove ? rect.w : lie.across, h: above });
  }
}
