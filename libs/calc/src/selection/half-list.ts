import type { GroupWays } from './decided-node.js';
import { HalfWalk } from './half-walk.js';

/** Combinations of one half up to a loss, by rising loss: what the other half's combinations are joined with. */
export class HalfList {
  readonly count: number;
  readonly loss: Float64Array;
  /** combination × rows + row */
  readonly change: Float64Array;
  /** Place in the walk of each combination. */
  private readonly place: Uint32Array;

  constructor(
    private readonly groups: readonly GroupWays[],
    readonly rows: number,
    private readonly most: number,
  ) {
    const walk = new HalfWalk(groups, rows);
    let count = 0;
    walk.walk(most, () => count++);
    const loss = new Float64Array(count);
    const change = new Float64Array(count * rows);
    let at = 0;
    walk.walk(most, (each, from, base) => {
      loss[at] = each;
      for (let r = 0; r < rows; r++) change[at * rows + r] = from[base + r]!;
      at++;
    });
    this.count = count;
    this.place = Uint32Array.from(loss.keys()).sort((a, b) => loss[a]! - loss[b]! || a - b);
    this.loss = Float64Array.from(this.place, (p) => loss[p]!);
    this.change = new Float64Array(count * rows);
    this.place.forEach((p, i) => { this.change.set(change.subarray(p * rows, (p + 1) * rows), i * rows); });
  }

  /** How many combinations lose no more than this. */
  upTo(loss: number): number {
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.loss[middle]! <= loss) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** Groups with the items a combination gives them, found by walking to its place again. */
  itemsOf(combination: number): [number, number][] {
    let at = 0;
    let items: [number, number][] = [];
    const walk = new HalfWalk(this.groups, this.rows);
    walk.walk(this.most, () => {
      if (at++ === this.place[combination]) items = walk.items();
    });
    return items;
  }
}
