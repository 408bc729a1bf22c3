import { countBlock, type Block } from './block.js';
import { isOfManySizes } from './many-sizes.js';
import { presentTypes } from './present-types.js';
import type { ReadyJob } from './ready-job.js';
import { plannedRolls } from './roll-plan.js';
import { rollUp, type RolledUp } from './roll-up.js';
import { fillStock, layable, narrowed, type LayAll } from './stock-fill.js';

/** What rolls cost that are bought: whole where they have a length, by length where not. */
export function paid(ready: ReadyJob, rolls: readonly RolledUp[]): number {
  return rolls.reduce((sum, roll) => {
    const offer = ready.offers[roll.offer]!;
    return sum + offer.rate * (offer.length === Infinity ? roll.running : offer.length);
  }, 0);
}

/** Kinds of rolls, by place, that are tried together. */
const MOST_KINDS = 5;
/** With more pieces than this a roll more or less matters little, and only the whole range is tried. */
const MOST_PIECES = 3000;

/**
 * Lays all pieces on rolls that are bought, at the least cost found: the whole range of widths and every smaller range, then rolls that
 * are little used are given up where the ends of the others and a cheaper roll take their pieces.
 *
 * @param ready the job, no stock among its offers
 * @param pieces counts by type, all of them layable
 * @param layAll how pieces are laid in blocks; `share` = how much of the search it may spend
 */
export function boughtRolls(ready: ReadyJob, pieces: Int32Array, layAll: LayAll): RolledUp[] {
  if (!pieces.some((n) => n > 0)) return [];
  const isMany = isOfManySizes(presentTypes(ready, pieces).part);
  const tried = (isMany ? [] : ranges(ready, pieces)).map((range) => ({ range, rolls: rollUp(ready, laidOn(ready, pieces, { range, layAll, share: QUICK })) }));
  tried.sort((a, b) => paid(ready, a.rolls) - paid(ready, b.rolls) || b.range.length - a.range.length);
  // The whole range with the full search last: a plan over all widths often beats its own quick pass.
  const good = [...tried.slice(0, 2).map((each) => each.range), ready.offers.map((_, o) => o)];
  const found = tried[0] === undefined ? [] : [tried[0].rolls];
  for (const range of good) {
    const blocks = laidOn(ready, pieces, { range, layAll, share: tried.length > 1 ? 0.5 : 1 });
    found.push(...FILLS.map((cells) => rollUp(ready, blocks, cells)));
    if (tried.length <= 1) break;
  }
  const sorted = cheapestFirst(ready, found);
  const best = sorted[0];
  if (best === undefined) throw new RangeError('pieces must fit the rolls on offer');
  if (ready.offers.every((offer) => offer.length === Infinity)) return best;
  const shelfwise = cheapestFirst(ready, sorted.slice(0, FEWER_FROM).map((rolls) => fewerRolls(ready, rolls, layAll)))[0]!;
  const left = pieces.slice();
  const planned = plannedRolls(ready, left);
  if (planned.length === 0) return shelfwise;
  const rest = left.some((n) => n > 0) ? boughtRolls(ready, left, (own, some, share = 1) => layAll(own, some, share / 4)) : [];
  const rollwise = fewerRolls(ready, [...planned, ...rest], layAll);
  return paid(ready, rollwise) < paid(ready, shelfwise) ? rollwise : shelfwise;
}

/** Finer tables fill single rolls better, coarser ones sometimes leave the better rest: both are tried. */
const FILLS = [10_000, 2500];
/** Ways of filling rolls from which it is tried to give rolls up. */
const FEWER_FROM = 3;

/** A share of the search so small that nothing is planned: greedy passes only. */
export const QUICK = 0.01;

interface Laying {
  readonly range: readonly number[];
  readonly layAll: LayAll;
  readonly share: number;
}

const laidOn = (ready: ReadyJob, pieces: Int32Array, of: Laying): Block[] => of.layAll(narrowed(ready, of.range), pieces, of.share).map((block) => ({ ...block, offer: of.range[block.offer]! }));

/** Dearer ones last; of equal ones the first found stays first. */
const cheapestFirst = (ready: ReadyJob, found: readonly RolledUp[][]): RolledUp[][] =>
  found.map((rolls, n) => ({ rolls, n, paid: paid(ready, rolls) })).sort((a, b) => (Math.abs(a.paid - b.paid) <= 1e-12 * b.paid ? a.n - b.n : a.paid - b.paid)).map((each) => each.rolls);

function ranges(ready: ReadyJob, pieces: Int32Array): number[][] {
  const all = ready.offers.map((_, o) => o);
  const whole = ready.offers.some((offer) => offer.length !== Infinity);
  const many = pieces.reduce((sum, n) => sum + n, 0) > MOST_PIECES;
  if (!whole || many || all.length > MOST_KINDS) return [all];
  const sets: number[][] = [];
  for (let mask = 2 ** all.length - 1; mask > 0; mask--) sets.push(all.filter((o) => (mask >> o) % 2 === 1));
  return sets.filter((range) => layable(narrowed(ready, range), pieces).every((n, t) => n === pieces[t]));
}

const MOST_DROPS = 24;
/** Ends of rolls tried for the pieces of a roll given up, longest first. */
const MOST_ENDS = 8;

/** Gives up rolls, least used first, alone and in pairs, while that makes the purchase cheaper. */
function fewerRolls(ready: ReadyJob, start: RolledUp[], layAll: LayAll): RolledUp[] {
  let rolls = start;
  for (let tries = 0, at = 0; tries < MOST_DROPS && at < drops(rolls).length; tries++, at++) {
    const out = drops(rolls)[at]!;
    const next = without(ready, rolls, { out, layAll });
    if (paid(ready, next) < paid(ready, rolls) * (1 - 1e-12)) {
      rolls = next;
      at = -1;
    }
  }
  return rolls;
}

function drops(rolls: readonly RolledUp[]): number[][] {
  const order = rolls.map((_, r) => r).sort((a, b) => rolls[a]!.running - rolls[b]!.running || a - b).slice(0, 6);
  const pairs = order.flatMap((a, n) => order.slice(n + 1).map((b) => [a, b]));
  return [...order.map((r) => [r]), ...pairs];
}

function without(ready: ReadyJob, rolls: readonly RolledUp[], of: { readonly out: readonly number[]; readonly layAll: LayAll }): RolledUp[] {
  const freed = new Int32Array(ready.types.length);
  for (const r of of.out) for (const block of rolls[r]!.blocks) countBlock(ready, block, { counts: freed, sign: 1 });
  const { part, counts: left, back } = presentTypes(ready, freed);
  const kept = rolls.filter((_, r) => !of.out.includes(r));
  const room = (roll: RolledUp): number => part.offers[roll.offer]!.length - roll.running;
  const roomy = kept.filter((roll) => Number.isFinite(room(roll)) && room(roll) > 0).sort((a, b) => room(b) - room(a)).slice(0, MOST_ENDS);
  const ends = roomy.map((roll) => ({ ...part.offers[roll.offer]!, length: room(roll), supply: 1, stock: true, rate: 0 }));
  const filled = fillStock({ ...part, offers: ends }, left, (own, some) => of.layAll(own, some, QUICK));
  const longer = kept.map((roll): RolledUp => {
    const more = filled.filter((end) => roomy[end.offer] === roll).flatMap((end) => end.blocks.map((block): Block => ({ ...back(block), offer: roll.offer })));
    return { offer: roll.offer, blocks: [...roll.blocks, ...more], running: roll.running + more.reduce((sum, block) => sum + block.length, 0) };
  });
  if (!left.some((n) => n > 0)) return longer;
  const tails = part.offers.flatMap((_, o) => {
    const own = narrowed(part, [o]);
    if (!layable(own, left).every((n, t) => n === left[t])) return [];
    return [rollUp(part, of.layAll(own, left, QUICK).map((block) => ({ ...block, offer: o })))];
  });
  tails.push(rollUp(part, of.layAll(part, left, QUICK)));
  tails.sort((a, b) => paid(ready, a) - paid(ready, b));
  return [...longer, ...tails[0]!.map((roll) => ({ ...roll, blocks: roll.blocks.map(back) }))];
}
