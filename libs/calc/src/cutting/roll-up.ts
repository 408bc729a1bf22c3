import type { Block } from './block.js';
import { stepOf } from './grid.js';
import { SAME_ticks, type ReadyJob } from './ready-job.js';

/** A physical roll with the blocks cut from it, from its free end on. */
export interface RolledUp {
  readonly offer: number;
  readonly blocks: readonly Block[];
  /** Sum of the blocks' lengths, kerf included. */
  readonly running: number;
}

/**
 * Puts blocks into whole rolls so that few rolls are opened and lost ends are short. Each roll takes the longest block left and then
 * the blocks that fill it best; where longest-first filling needs no more rolls, that is kept. Film sold by length has one stretch.
 */
export function rollUp(ready: ReadyJob, blocks: readonly Block[], cells = CELLS): RolledUp[] {
  return ready.offers.flatMap((offer, o) => {
    const own = blocks.filter((block) => block.offer === o).sort((a, b) => b.length - a.length);
    if (own.length === 0) return [];
    if (offer.length === Infinity) return [rolled(o, own)];
    const longestFirst = firstFit(own, offer.length);
    if (longestFirst.length <= Math.ceil((lengthOf(own) - SAME_ticks) / offer.length)) return longestFirst.map((each) => rolled(o, each));
    const filled = filledUp(own, offer.length, cells);
    return (filled.length < longestFirst.length ? filled : longestFirst).map((each) => rolled(o, each));
  });
}

const rolled = (offer: number, blocks: readonly Block[]): RolledUp => ({ offer, blocks, running: lengthOf(blocks) });

const lengthOf = (blocks: readonly Block[]): number => blocks.reduce((sum, block) => sum + block.length, 0);

function firstFit(blocks: readonly Block[], length: number): Block[][] {
  const rolls: { blocks: Block[]; running: number }[] = [];
  for (const block of blocks) {
    let into = rolls.find((roll) => roll.running + block.length <= length + SAME_ticks);
    if (into === undefined) rolls.push((into = { blocks: [], running: 0 }));
    into.blocks.push(block);
    into.running += block.length;
  }
  return rolls.map((roll) => roll.blocks);
}

/** Blocks and cells of the table by which one roll is filled. */
const MOST = 40;
const CELLS = 10_000;

function filledUp(blocks: readonly Block[], length: number, cells: number): Block[][] {
  const rolls: Block[][] = [];
  let open = [...blocks];
  while (open.length > 0) {
    const rest = open.slice(1);
    const stride = Math.max(1, rest.length / MOST);
    const tried = Array.from({ length: Math.min(MOST, rest.length) }, (_, n) => Math.floor(n * stride));
    const taken = new Set(longest(tried.map((n) => rest[n]!.length), length - open[0]!.length, cells).map((n) => tried[n]!));
    const roll = [open[0]!, ...rest.filter((_, n) => taken.has(n))];
    open = rest.filter((_, n) => !taken.has(n));
    let room = length - lengthOf(roll);
    open = open.filter((block) => {
      if (block.length > room + SAME_ticks) return true;
      roll.push(block);
      room -= block.length;
      return false;
    });
    rolls.push(roll);
  }
  return rolls;
}

/** Places of the lengths that together come closest to `room` from below. */
function longest(lengths: readonly number[], room: number, most: number): number[] {
  if (lengths.length === 0 || room <= 0) return [];
  const { step } = stepOf(lengths, room, most);
  const cap = Math.floor((room + SAME_ticks) / step);
  const from = new Int16Array(cap + 1).fill(-1);
  const reached = new Uint8Array(cap + 1);
  reached[0] = 1;
  for (let n = 0; n < lengths.length && reached[cap] === 0; n++) {
    const cells = Math.ceil((lengths[n]! - SAME_ticks) / step);
    for (let x = cap; x >= cells; x--) {
      if (reached[x] === 1 || reached[x - cells] === 0) continue;
      reached[x] = 1;
      from[x] = n;
    }
  }
  let x = cap;
  while (reached[x] === 0) x--;
  const taken: number[] = [];
  while (x > 0) {
    const n = from[x]!;
    taken.push(n);
    x -= Math.ceil((lengths[n]! - SAME_ticks) / step);
  }
  return taken;
}
