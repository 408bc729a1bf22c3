import { ROUNDING } from './core-order.js';
import type { DecidedNode, GroupWays } from './decided-node.js';
import { HalfGrid, inCell } from './half-grid.js';
import { HalfList } from './half-list.js';
import { HalfWalk } from './half-walk.js';

/** Rows the cells run along. */
const MOST_AXES = 3;
/** Grids of one list, each for half the room of the one before. */
const LEVELS = 14;
const MOST_SHARE = 2 ** (LEVELS - 1);
/** Up to so many combinations are looked at one by one. */
const FEW = 12;
/** Pairs looked at that take about as long as a combination walked through. */
const LOOKS_A_HEARD = 4;
/** Combinations walked through in the time one is stored and put in order. */
const HEARD_A_STORED = 4;
/** Combinations heard between two looks at the clock. */
const HEARD_A_LOOK = 1 << 16;

/** Best plan of a node found by joining two halves, or none within the room. */
export interface JoinAnswer {
  /** Loss against the bound, unused limits at their price included; null when no combination keeps the limits. */
  readonly loss: number | null;
  readonly items: readonly (readonly [number, number])[];
  /** Work in combinations walked through. */
  readonly heard: number;
  /** All of them, or did the clock or the count end it? */
  readonly whole: boolean;
}

/** What a list offers to a combination of the other half that leaves `room`: a grid whose cells are as wide as the room. */
interface Level {
  readonly room: number;
  readonly count: number;
  readonly grid: HalfGrid;
  readonly width: readonly number[];
}

/** The clock has struck, or the count is used. */
class Struck extends Error {}

class Join {
  private best: number;
  /** Loss of the best combination so far. */
  loss: number | null = null;
  items: readonly (readonly [number, number])[] = [];
  private heard = 0;
  private looked = 0;
  private readonly stored: number;
  private readonly rows: number;
  private readonly room: number;
  private readonly axes: readonly number[];
  private readonly left: Float64Array;
  private readonly low: Int32Array;
  private readonly sides: readonly { readonly groups: readonly GroupWays[]; readonly list: HalfList; readonly levels: readonly Level[] }[];

  constructor(
    private readonly node: DecidedNode,
    sides: readonly [readonly GroupWays[], readonly GroupWays[]],
    private readonly how: { readonly expired: () => boolean; readonly mostWork: number },
  ) {
    const { price } = node;
    this.rows = price.length;
    this.best = this.room = Math.max(node.room, 1e-6);
    this.left = new Float64Array(this.rows);
    const span = Float64Array.from(node.slack, Math.abs);
    for (const groups of sides) for (const { change } of groups) for (const each of change) each.forEach((use, r) => (span[r]! += Math.abs(use)));
    this.axes = Array.from(price.keys())
      .filter((r) => price[r]! > 0)
      .sort((a, b) => span[b]! * price[b]! - span[a]! * price[a]! || a - b)
      .slice(0, MOST_AXES);
    this.low = new Int32Array(this.axes.length);
    this.sides = sides.map((groups) => {
      const list = new HalfList(groups, this.rows, this.room / 2);
      return { groups, list, levels: Array.from({ length: LEVELS }, (_, k) => this.level(list, this.room / 2 ** k, span)) };
    });
    this.stored = this.sides.reduce((sum, { list }) => sum + list.count, 0);
  }

  private level(list: HalfList, room: number, span: Float64Array): Level {
    const width = this.axes.map((r) => Math.max(room / this.node.price[r]!, span[r]! / 60_000, 1e-9));
    const count = list.upTo(room);
    return { room, count, grid: new HalfGrid(list, count, { axes: this.axes, width }), width };
  }

  get work(): number {
    return this.heard + this.looked / LOOKS_A_HEARD + this.stored * HEARD_A_STORED;
  }

  /** Of the two combinations of a plan one loses half the room at most, so it is in a list. */
  run(which: 'all' | 'stored'): void {
    // Most pairs are those of two halves that lose about alike: what they give makes the rest short.
    this.walk(1, -1, this.room / 2);
    if (which === 'stored') return;
    this.walk(0, this.room / 2, this.room);
    this.walk(1, this.room / 2, this.room);
  }

  /** Joins each combination of a half that loses more than `above`, up to `most`, with the list of the other. */
  private walk(side: 0 | 1, above: number, most: number): void {
    const { left, node: { slack }, rows } = this;
    const { list, levels } = this.sides[1 - side]!;
    const few = list.count > FEW ? list.loss[FEW]! : Infinity;
    const walk = new HalfWalk(this.sides[side]!.groups, rows);
    walk.walk(Math.min(this.best, most), (loss, change, at) => {
      if (this.work >= this.how.mostWork || (++this.heard % HEARD_A_LOOK === 0 && this.how.expired())) throw new Struck();
      const room = this.best - loss;
      if (loss <= above || room < 0) return;
      for (let r = 0; r < rows; r++) left[r] = slack[r]! - change[at + r]!;
      const k = 31 - Math.clz32(Math.min(this.room / Math.max(room, 1e-9), MOST_SHARE));
      const other = room < few ? this.amongFew(list, loss) : this.inCells(list, levels[k]!, loss);
      if (other < 0) return;
      walk.room = Math.min(this.best, most);
      this.items = [...walk.items(), ...list.itemsOf(other)];
    });
  }

  /** The combination of a list that makes the best plan better than the best so far, or −1. */
  private amongFew(list: HalfList, loss: number): number {
    let found = -1;
    for (let a = 0; a < list.count && loss + list.loss[a]! <= this.best; a++) if (this.better(list, a, loss)) found = a;
    return found;
  }

  private inCells(list: HalfList, level: Level, loss: number): number {
    const { axes, left, low, node } = this;
    const room = this.best - loss;
    let corners = 0;
    for (let k = 0; k < axes.length; k++) {
      const r = axes[k]!;
      low[k] = Math.floor((left[r]! - room / node.price[r]!) / level.width[k]!);
      if (low[k]! < Math.floor(left[r]! / level.width[k]!)) corners |= 1 << k;
    }
    let found = -1;
    // Two cells along an axis at most, for they are as wide as the room.
    for (let corner = 0; corner < 1 << axes.length; corner++) {
      if ((corner & ~corners) !== 0) continue;
      let cell = 0;
      for (let k = 0; k < axes.length; k++) cell = inCell(cell, low[k]! + ((corner >> k) & 1));
      for (let a = level.grid.first(cell); a >= 0 && loss + list.loss[a]! <= this.best; a = level.grid.after(a)) if (this.better(list, a, loss)) found = a;
    }
    return found;
  }

  /** Does the combination keep the limits and lose less than the best? Then it is the best from now on. */
  private better(list: HalfList, a: number, loss: number): boolean {
    const { rows, left, node } = this;
    this.looked++;
    let sum = loss + list.loss[a]!;
    for (let r = 0; r < rows; r++) {
      const slack = left[r]! - list.change[a * rows + r]!;
      if (slack < 0) return false;
      sum += node.price[r]! * slack;
    }
    if (sum > this.best) return false;
    // Values are whole: the next better plan loses at least 1 less.
    this.best = sum - 1 + ROUNDING;
    this.loss = sum;
    return true;
  }
}

/**
 * Best plan of a node in which only groups are undecided, by joining the combinations of two halves: exact within the room.
 *
 *   loss of both halves + Σ price × what is left ≤ room, and nothing left below zero
 *
 * Only combinations that lose half the room or less are stored; the rest is walked through and joined with them.
 *
 * @param node losses and changes of use
 * @param sides the two halves of its groups
 * @param how reads the clock from time to time; most work in combinations walked through; `stored`: joins the stored ones only, most of the pairs for a small part of the work, and proves nothing
 * @returns least loss with the items that differ from the relaxed choice
 * @throws never
 * @source Horowitz and Sahni, Computing partitions with applications to the knapsack problem, Journal of the ACM 21 (1974), for halves; the bound by prices and the grids are our own
 */
export function joinHalves(node: DecidedNode, sides: readonly [readonly GroupWays[], readonly GroupWays[]], how: { readonly expired: () => boolean; readonly mostWork: number; readonly which: 'all' | 'stored' }): JoinAnswer {
  const join = new Join(node, sides, how);
  let whole = true;
  try {
    join.run(how.which);
  } catch (struck) {
    if (!(struck instanceof Struck)) throw struck;
    whole = false;
  }
  return { loss: join.loss, items: join.items, heard: Math.ceil(join.work), whole };
}
