import { blockCost, countBlock, type Block } from './block.js';
import { boundsOf } from './bounds.js';
import { dived } from './dive.js';
import type { CutJob, CutResult } from './job.js';
import { presentTypes } from './present-types.js';
import { readyJob, type ReadyJob } from './ready-job.js';
import { resultOf } from './result.js';
import { fillStock, layable, narrowed, type LayAll } from './stock-fill.js';
import { ShelfFill } from './shelf-fill.js';
import { greedyShelves } from './shelf-greedy.js';
import { ShelfPrice } from './shelf-price.js';
import { searchedStrip } from './strip-search.js';
import { improved } from './improve.js';
import { isOfManySizes, likeShelves } from './many-sizes.js';
import { boughtRolls, QUICK } from './whole-rolls.js';
import { seeded } from './random.js';

const ROUNDS = 1000;
/** Jobs so small are searched longer: luck counts most there, and a round costs least. */
const FEW_PIECES = 100;
/** How much dearer, at first, shelves laid again may be, so that the search gets out of its first valley. */
const LEAVE = 0.03;

/**
 * Cuts pieces of film from rolls by straight cuts from edge to edge, with the least film bought that the search finds, and the least
 * any cutting could buy beside it.
 *
 *   over bound = bought area / lower bound − 1
 *
 * @param job pieces (trim included) and rolls in mm, > 0; counts are whole numbers ≥ 0
 * @returns placements, rolls, totals, bounds, and what could not be laid with why; the same for any order of the rows
 * @throws RangeError for a size, count, kerf or price out of range, and for prices on some offers only
 * @source Gilmore & Gomory, Operations Research 13 (1965), two- and three-stage cutting
 */
export function cut(job: CutJob): CutResult {
  const ready = readyJob(job);
  const layAll: LayAll = (own, left, share = 1) => {
    const { part, counts, back } = presentTypes(own, left);
    return laidBlocks(part, counts, { rounds: Math.round((job.rounds ?? ROUNDS) * share), seed: job.seed ?? 1, quick: share <= QUICK }).map(back);
  };
  const left = Int32Array.from(ready.types, (type) => type.count);
  const stocked = fillStock(ready, left, layAll);
  const bought = ready.offers.flatMap((offer, o) => (offer.stock ? [] : [o]));
  const own = narrowed(ready, bought);
  const rolls = boughtRolls(own, layable(own, left), layAll).map((roll) => ({ ...roll, offer: bought[roll.offer]! }));
  for (const roll of rolls) for (const block of roll.blocks) countBlock(ready, block, { counts: left, sign: -1 });
  const laid = ready.types.map((type, t) => ({ ...type, count: type.count - left[t]! }));
  const bounds = job.bounds === false ? { area_mm2: 0, cost_cents: ready.priced ? 0 : null } : boundsOf({ ...ready, types: laid });
  return resultOf(job, ready, { rolls: [...stocked, ...rolls], bounds, left });
}

/** Two beginnings, by plan and by area, improved a little each; the better one is improved on. */
function laidBlocks(ready: ReadyJob, pieces: Int32Array, search: { readonly rounds: number; readonly seed: number; readonly quick: boolean }): Block[] {
  if (!pieces.some((n) => n > 0)) return [];
  const fill = new ShelfFill(ready);
  const few = pieces.reduce((sum, n) => sum + n, 0) <= FEW_PIECES;
  const rounds = few ? 3 * search.rounds : search.rounds;
  const next = seeded(search.seed);
  const area = Float64Array.from(ready.types, (type) => type.across * type.along);
  if (isOfManySizes(ready)) {
    const shelves = likeShelves(ready, fill, { left: pieces.slice(), worth: area });
    const better = improved(ready, fill, { blocks: shelves, worth: area, rounds, next });
    return search.quick ? better : betterStrip(ready, pieces, { shelves: better, rounds: search.rounds, next });
  }
  const plain = greedyShelves(ready, fill, { left: pieces.slice(), worth: area, next: () => 0 });
  if (search.quick) return improved(ready, fill, { blocks: plain, worth: area, rounds, next });
  const tools = { fill, price: new ShelfPrice(ready) };
  const { blocks, price } = dived(ready, tools, pieces);
  const tried = [blocks, plain].flatMap((from) => [0, LEAVE].map((leave) => improved(ready, fill, { blocks: from, worth: price, rounds: Math.ceil(rounds / 8), leave, next })));
  tried.sort((a, b) => costOf(ready, a) - costOf(ready, b));
  const shelves = improved(ready, fill, { blocks: tried[0] ?? blocks, worth: price, rounds: Math.floor(rounds / 2), next });
  return betterStrip(ready, pieces, { shelves, rounds: search.rounds, next });
}

/** With more pieces than this, shelves on several kinds of roll lose less than one stretch of one kind. */
const ONE_STRETCH = 40;

/** Where there is one kind of roll, or few pieces of film sold by length, they may also go on one stretch without shelves, which suits few pieces of many sizes. */
function betterStrip(ready: ReadyJob, pieces: Int32Array, from: { readonly shelves: Block[]; readonly rounds: number; readonly next: () => number }): Block[] {
  const few = pieces.reduce((sum, n) => sum + n, 0) <= ONE_STRETCH;
  // A long stretch is hard to put on ends of whole rolls; those are tried kind by kind anyway.
  if (ready.offers.length !== 1 && !(few && ready.offers.every((offer) => offer.length === Infinity))) return from.shelves;
  let best = from.shelves;
  for (let offer = 0; offer < ready.offers.length; offer++) {
    const strip = searchedStrip(ready, pieces, { offer, rounds: 4 * from.rounds, next: from.next });
    if (strip !== null && blockCost(ready, strip) < costOf(ready, best) * (1 - 1e-12)) best = [strip];
  }
  return best;
}

const costOf = (ready: ReadyJob, blocks: readonly Block[]): number => blocks.reduce((sum, block) => sum + blockCost(ready, block), 0);
