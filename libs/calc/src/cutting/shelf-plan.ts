import { blockCost, countBlock, type Block } from './block.js';
import { CoverLp, type Column } from './cover-lp.js';
import type { ReadyJob } from './ready-job.js';
import { ShelfPrice } from './shelf-price.js';

/** The best fractional cutting into shelves. */
export interface ShelfPlan {
  /** Shelves with how often each is cut, fractions included. */
  readonly shelves: readonly { readonly block: Block; readonly times: number }[];
  /** What a piece of each type is worth at the optimum. */
  readonly price: Float64Array;
  readonly cost: number;
}

const MOST_ROUNDS = 150;

/**
 * Least-cost fractional cutting of `pieces` into shelves of all offers, columns found as needed.
 *
 * @source Gilmore & Gomory, Operations Research 9 (1961) and 13 (1965)
 */
export function shelfPlan(ready: ReadyJob, pieces: Int32Array, pricer = new ShelfPrice(ready)): ShelfPlan {
  const need = Float64Array.from(pieces);
  const dearest = Math.max(1e-9, ...ready.offers.map((offer) => offer.rate));
  const penalty = Float64Array.from(ready.types, (type) => 10 * dearest * Math.max(type.across, type.along));
  const lp = new CoverLp(need, new Float64Array(0), penalty);
  const blocks: Block[] = [];
  const charge = new Float64Array(ready.offers.length);
  const price = new Float64Array(pieces.length);
  const known = new Set<string>();
  let idle = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    for (let t = 0; t < price.length; t++) price[t] = need[t]! > 0 ? Math.max(0, lp.duals[t]!) : 0;
    let added = 0;
    for (const { block } of pricer.improving(price, charge)) {
      const column = columnOf(ready, block);
      const key = `${block.offer} ${block.length} ${column.rows.join()} ${column.values.join()}`;
      if (known.has(key) || lp.reducedCost(column) > -1e-7 * column.cost) continue;
      known.add(key);
      lp.add(column);
      blocks.push(block);
      added++;
    }
    idle = added === 0 ? idle + 1 : 0;
    if (idle >= pricer.fullTurn) break;
    if (added > 0) lp.solve();
  }
  const times = lp.levels();
  const shelves = blocks.flatMap((block, b) => (times[b]! > 1e-9 ? [{ block, times: times[b]! }] : []));
  const cost = shelves.reduce((sum, shelf) => sum + shelf.times * blockCost(ready, shelf.block), 0);
  return { shelves, price: price.slice(), cost };
}

function columnOf(ready: ReadyJob, block: Block): Column {
  const counts = new Int32Array(ready.types.length);
  countBlock(ready, block, { counts, sign: 1 });
  const rows: number[] = [];
  counts.forEach((n, t) => n > 0 && rows.push(t));
  return { cost: blockCost(ready, block), rows: Int32Array.from(rows), values: Float64Array.from(rows, (t) => counts[t]!) };
}
