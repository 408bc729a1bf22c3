import { ROUNDING } from './core-order.js';
import type { DecidedNode, GroupWays } from './decided-node.js';
import { HalfList } from './half-list.js';

/** Rows the grid runs along. */
const MOST_AXES = 3;

/** Best plan of a node found by joining two halves, or none within the room. */
export interface JoinAnswer {
  /** Loss against the bound, unused limits at their price included; null when no combination keeps the limits. */
  readonly loss: number | null;
  readonly items: readonly (readonly [number, number])[];
  readonly looked: number;
}

/** Steps of loss that the order in a cell tells apart. */
const BINS = 512;

/** Places of a list by falling loss, to one bin (counting sort). */
function byFallingLoss(list: HalfList): Uint32Array {
  const start = new Uint32Array(BINS + 2);
  const bin = (i: number): number => BINS - Math.floor((list.loss[i]! / list.most) * BINS);
  for (let i = 0; i < list.count; i++) start[bin(i) + 1]!++;
  for (let b = 0; b <= BINS; b++) start[b + 1]! += start[b]!;
  const order = new Uint32Array(list.count);
  for (let i = 0; i < list.count; i++) order[start[bin(i)]!++] = i;
  return order;
}

/** Combinations of one half in a grid over their use of the dearest limits, small losses first in each cell. */
class Grid {
  private readonly head: Int32Array;
  private readonly next: Int32Array;
  private readonly cell: Float64Array;

  constructor(
    readonly list: HalfList,
    readonly axes: readonly number[],
    readonly width: readonly number[],
  ) {
    const rows = list.change.length / list.loss.length;
    let size = 1024;
    while (size < list.count) size *= 2;
    this.head = new Int32Array(size).fill(-1);
    this.next = new Int32Array(list.count);
    this.cell = new Float64Array(list.count);
    const at = axes.map(() => 0);
    for (const i of byFallingLoss(list)) {
      axes.forEach((r, k) => (at[k] = Math.floor(list.change[i * rows + r]! / width[k]!)));
      const cell = this.number(at);
      const slot = this.slot(cell);
      this.cell[i] = cell;
      this.next[i] = this.head[slot]!;
      this.head[slot] = i;
    }
  }

  /** One number for a cell: places along an axis are below 2^16 in magnitude by the choice of width. */
  number(at: readonly number[]): number {
    let cell = 0;
    for (const place of at) cell = cell * 131072 + place + 65536;
    return cell;
  }

  private slot(cell: number): number {
    const mixed = Math.imul(cell | 0, 0x9e3779b1) ^ Math.imul((cell / 4294967296) | 0, 0x85ebca6b);
    return (mixed ^ (mixed >>> 15)) & (this.head.length - 1);
  }

  first(cell: number): number {
    return this.skip(this.head[this.slot(cell)]!, cell);
  }

  after(i: number): number {
    return this.skip(this.next[i]!, this.cell[i]!);
  }

  private skip(from: number, cell: number): number {
    let i = from;
    while (i >= 0 && this.cell[i] !== cell) i = this.next[i]!;
    return i;
  }
}

class Join {
  best: number;
  pair: readonly [number, number] | null = null;
  looked = 0;
  private readonly rows: number;

  constructor(
    private readonly node: DecidedNode,
    private readonly grid: Grid,
    private readonly other: HalfList,
  ) {
    this.rows = node.price.length;
    this.best = node.room;
  }

  run(): void {
    const { node, grid, other, rows } = this;
    const left = new Float64Array(rows);
    const low = grid.axes.map(() => 0);
    const high = grid.axes.map(() => 0);
    for (let b = 0; b < other.count; b++) {
      const room = this.best - other.loss[b]!;
      if (room < 0) continue;
      for (let r = 0; r < rows; r++) left[r] = node.slack[r]! - other.change[b * rows + r]!;
      grid.axes.forEach((r, k) => {
        high[k] = Math.floor(left[r]! / grid.width[k]!);
        low[k] = Math.floor((left[r]! - room / node.price[r]!) / grid.width[k]!);
      });
      this.cells({ b, left, low, high }, [], 0);
    }
  }

  private cells(at: { b: number; left: Float64Array; low: readonly number[]; high: readonly number[] }, place: number[], k: number): void {
    if (k === this.grid.axes.length) {
      this.cell(at.b, at.left, place);
      return;
    }
    for (let x = at.low[k]!; x <= at.high[k]!; x++) {
      place[k] = x;
      this.cells(at, place, k + 1);
    }
  }

  private cell(b: number, left: Float64Array, place: readonly number[]): void {
    const { node, grid, rows } = this;
    const { list } = grid;
    const loss = this.other.loss[b]!;
    const binOfLoss = list.most / BINS;
    for (let a = grid.first(grid.number(place)); a >= 0; a = grid.after(a)) {
      let sum = loss + list.loss[a]!;
      if (sum > this.best) {
        if (sum - binOfLoss > this.best) return;
        continue;
      }
      this.looked++;
      let fits = true;
      for (let r = 0; r < rows && fits; r++) {
        const slack = left[r]! - list.change[a * rows + r]!;
        fits = slack >= 0;
        sum += node.price[r]! * slack;
      }
      if (!fits || sum > this.best) continue;
      // Values are whole: the next better plan loses at least 1 less.
      this.best = sum - 1 + ROUNDING;
      this.pair = [a, b];
    }
  }
}

/**
 * Best plan of a node in which only groups are undecided, by joining all combinations of two halves: exact within the room.
 *
 *   loss of both halves + Σ price × what is left ≤ room, and nothing left below zero
 *
 * @param node losses and changes of use
 * @param sides the two halves of its groups
 * @returns least loss with the items that differ from the relaxed choice
 * @throws never
 * @source Horowitz and Sahni, Computing partitions with applications to the knapsack problem, Journal of the ACM 21 (1974), for halves; the bound by prices and the grid are our own
 */
export function joinHalves(node: DecidedNode, sides: readonly [readonly GroupWays[], readonly GroupWays[]]): JoinAnswer {
  const rows = node.price.length;
  const lists = sides.map((groups) => new HalfList(groups, rows, Math.max(node.room, 1e-6)));
  const span = (r: number): number => {
    let most = 0;
    for (const groups of sides) for (const { change } of groups) for (const each of change) most += Math.abs(each[r]!);
    return most + Math.abs(node.slack[r]!);
  };
  const axes = Array.from(node.price.keys())
    .filter((r) => node.price[r]! > 0)
    .sort((a, b) => span(b) * node.price[b]! - span(a) * node.price[a]! || a - b)
    .slice(0, MOST_AXES);
  const width = axes.map((r) => Math.max(node.room / node.price[r]!, span(r) / 60_000, 1e-9));
  const join = new Join(node, new Grid(lists[0]!, axes, width), lists[1]!);
  join.run();
  if (join.pair === null) return { loss: null, items: [], looked: join.looked };
  const [a, b] = join.pair;
  return { loss: join.best + 1 - ROUNDING, items: [...lists[0]!.itemsOf(a), ...lists[1]!.itemsOf(b)], looked: join.looked };
}
