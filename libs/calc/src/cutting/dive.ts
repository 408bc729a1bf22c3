import { countBlock, type Block } from './block.js';
import type { ReadyJob } from './ready-job.js';
import type { ShelfFill } from './shelf-fill.js';
import { greedyShelves } from './shelf-greedy.js';
import { shelfPlan } from './shelf-plan.js';
import type { ShelfPrice } from './shelf-price.js';

/** The tools one cutting shares between its passes. */
export interface Tools {
  readonly fill: ShelfFill;
  readonly price: ShelfPrice;
}

/** With more sizes than this a plan is made twice only, and the greedy pass lays what is left. */
const MANY = 60;

/** Whole shelves from fractional plans: what the plan takes whole is fixed, the rest is planned again; the last pieces are laid greedily. */
export function dived(ready: ReadyJob, tools: Tools, pieces: Int32Array): { readonly blocks: Block[]; readonly price: Float64Array } {
  const left = pieces.slice();
  const blocks: Block[] = [];
  let first: Float64Array | null = null;
  const plans = pieces.length > 120 ? 0 : pieces.length > MANY ? 2 : 60;
  for (let round = 0; round < plans; round++) {
    const plan = shelfPlan(ready, left, tools.price);
    first ??= plan.price;
    if (!fixWhole(ready, plan.shelves, { left, blocks }) && !fixOne(ready, plan.shelves, { left, blocks })) break;
    if (left.every((n) => n === 0)) break;
  }
  const price = usable(ready, first ?? new Float64Array(pieces.length));
  if (left.some((n) => n > 0)) blocks.push(...greedyShelves(ready, tools.fill, { left, worth: price, next: () => 0 }));
  return { blocks, price };
}

interface Taking {
  readonly left: Int32Array;
  readonly blocks: Block[];
}

type Shelves = readonly { readonly block: Block; readonly times: number }[];

function fixWhole(ready: ReadyJob, shelves: Shelves, to: Taking): boolean {
  let any = false;
  for (const { block, times } of [...shelves].sort((a, b) => b.times - a.times)) {
    for (let n = Math.floor(times + 1e-6); n > 0 && fits(ready, block, to.left); n--) {
      take(ready, block, to);
      any = true;
    }
  }
  return any;
}

/** Rounds one shelf up: the one the plan takes most of that the pieces left can fill, or else fill in part. */
function fixOne(ready: ReadyJob, shelves: Shelves, to: Taking): boolean {
  const sorted = [...shelves].sort((a, b) => b.times - a.times);
  const whole = sorted.find((shelf) => shelf.times > 0.5 && fits(ready, shelf.block, to.left));
  if (whole === undefined) return false;
  take(ready, whole.block, to);
  return true;
}

function take(ready: ReadyJob, block: Block, to: Taking): void {
  to.blocks.push(block);
  countBlock(ready, block, { counts: to.left, sign: -1 });
}

function fits(ready: ReadyJob, block: Block, left: Int32Array): boolean {
  countBlock(ready, block, { counts: left, sign: -1 });
  const isEnough = block.laid.every((at) => left[ready.lies[at.lie]!.type]! >= 0);
  countBlock(ready, block, { counts: left, sign: 1 });
  return isEnough;
}

/** Prices a greedy pass can go by: never less than a tenth of what the area says. */
function usable(ready: ReadyJob, price: Float64Array): Float64Array {
  let sum = 0;
  let area = 0;
  ready.types.forEach((type, t) => {
    sum += price[t]! * type.count;
    area += type.across * type.along * type.count;
  });
  return Float64Array.from(ready.types, (type, t) => Math.max(price[t]!, (0.1 * type.across * type.along * sum) / area, 1e-9));
}
