import { countBlock, type Block } from './block.js';
import { CoverLp } from './cover-lp.js';
import { SAME_ticks, type ReadyJob } from './ready-job.js';
import type { RolledUp } from './roll-up.js';
import { stepOf } from './grid.js';
import { ShelfPrice, type PricedShelf } from './shelf-price.js';

const MOST_ROUNDS = 60;
/** With more sizes than this rolls are filled from ready shelves only. */
const MOST_TYPES = 40;

/**
 * Whole rolls planned as a whole: the best mix of shelves for a roll's full length, so that lost ends are part of the plan.
 * Only rolls the plan takes whole are laid; `left` is lowered by what is on them.
 *
 * @source Gilmore & Gomory, Operations Research 13 (1965): a further stage of the same knapsack
 */
export function plannedRolls(ready: ReadyJob, left: Int32Array): RolledUp[] {
  const whole = ready.offers.flatMap((offer, o) => (offer.length === Infinity ? [] : [o]));
  if (whole.length !== ready.offers.length || ready.types.length > MOST_TYPES) return [];
  const pricer = new ShelfPrice(ready);
  const rolls: RolledUp[] = [];
  for (let dive = 0; dive < 2; dive++) {
    const before = rolls.length;
    for (const { roll, times } of fractional(ready, pricer, left)) {
      const use = new Int32Array(left.length);
      for (const block of roll.blocks) countBlock(ready, block, { counts: use, sign: 1 });
      for (let n = Math.floor(times + 1e-6); n > 0 && use.every((each, t) => each <= left[t]!); n--) {
        rolls.push(roll);
        use.forEach((each, t) => (left[t]! -= each));
      }
    }
    if (rolls.length === before) break;
  }
  return rolls;
}

function fractional(ready: ReadyJob, pricer: ShelfPrice, left: Int32Array): { roll: RolledUp; times: number }[] {
  const dearest = Math.max(1e-9, ...ready.offers.map((offer) => offer.rate));
  const penalty = Float64Array.from(ready.types, (type) => 10 * dearest * Math.max(type.across, type.along));
  const lp = new CoverLp(Float64Array.from(left), new Float64Array(0), penalty);
  const rolls: RolledUp[] = [];
  // Fallen rates let every shelf in that could be part of a good roll.
  const discount = Float64Array.from(ready.offers, (offer) => -0.35 * offer.rate);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const price = Float64Array.from(left, (n, t) => (n > 0 ? Math.max(0, lp.duals[t]!) : 0));
    const shelves = pricer.improving(price, discount);
    let added = 0;
    for (let o = 0; o < ready.offers.length; o++) {
      const roll = bestRoll(ready, shelves.filter((shelf) => shelf.block.offer === o), o);
      if (roll === null) continue;
      const counts = new Int32Array(left.length);
      for (const block of roll.blocks) countBlock(ready, block, { counts, sign: 1 });
      const rows = [...counts.keys()].filter((t) => counts[t]! > 0);
      const column = { cost: ready.offers[o]!.rate * ready.offers[o]!.length, rows: Int32Array.from(rows), values: Float64Array.from(rows, (t) => counts[t]!) };
      if (lp.reducedCost(column) > -1e-6 * column.cost) continue;
      lp.add(column);
      rolls.push(roll);
      added++;
    }
    if (added === 0) break;
    lp.solve();
  }
  const times = lp.levels();
  return rolls.map((roll, r) => ({ roll, times: times[r]! })).filter((each) => each.times >= 1 - 1e-6).sort((a, b) => b.times - a.times);
}

/** Shelves, the best by worth for their length, and cells of the table by which one roll is filled. */
const MOST_SHELVES = 48;
const CELLS = 5000;

function bestRoll(ready: ReadyJob, found: readonly PricedShelf[], offer: number): RolledUp | null {
  const { length } = ready.offers[offer]!;
  if (found.length === 0) return null;
  const good = (shelf: PricedShelf): number => shelf.worth / shelf.block.length;
  const shelves = [...found].sort((a, b) => good(b) - good(a)).slice(0, MOST_SHELVES);
  const { step } = stepOf(shelves.map((shelf) => shelf.block.length), length, CELLS);
  const cap = Math.floor((length + SAME_ticks) / step);
  const value = new Float64Array(cap + 1);
  const mark = new Int32Array(cap + 1).fill(-1);
  const cells = shelves.map((shelf) => Math.ceil((shelf.block.length - SAME_ticks) / step));
  shelves.forEach((shelf, s) => {
    for (let x = cells[s]!; x <= cap; x++) {
      const with1 = value[x - cells[s]!]! + shelf.worth;
      if (with1 > value[x]! * (1 + 1e-12)) {
        value[x] = with1;
        mark[x] = s;
      }
    }
  });
  const blocks: Block[] = [];
  for (let x = cap; x > 0 && mark[x]! >= 0; x -= cells[mark[x]!]!) blocks.push(shelves[mark[x]!]!.block);
  blocks.sort((a, b) => b.length - a.length);
  return { offer, blocks, running: blocks.reduce((sum, block) => sum + block.length, 0) };
}
