import type { GroupWays } from './decided-node.js';

/** All combinations of ways of one half within the room: losses, changes of use, and how each came about. */
export class HalfList {
  count = 1;
  loss: Float64Array;
  /** combination × rows + row */
  change: Float64Array;
  private parent: Int32Array;
  private way: Int32Array;
  private readonly rows: number;

  constructor(
    private readonly groups: readonly GroupWays[],
    rows: number,
    /** Most loss of a combination, > 0. */
    readonly most: number,
  ) {
    this.rows = rows;
    this.loss = new Float64Array(1024);
    this.change = new Float64Array(1024 * rows);
    this.parent = new Int32Array(1024).fill(-1);
    this.way = new Int32Array(1024);
    groups.forEach((_, g) => this.extend(g, most));
  }

  /** Every combination so far with every other way of one more group. */
  private extend(g: number, room: number): void {
    const { rows } = this;
    const { loss, change } = this.groups[g]!;
    const before = this.count;
    for (let i = 0; i < before; i++) {
      for (let k = 0; k < loss.length; k++) {
        const sum = this.loss[i]! + loss[k]!;
        if (sum > room) break;
        if (this.count === this.loss.length) this.grow();
        const to = this.count++;
        this.loss[to] = sum;
        this.parent[to] = i;
        // Ways of all groups numbered through: group × 1024 + way.
        this.way[to] = g * 1024 + k;
        const step = change[k]!;
        for (let r = 0; r < rows; r++) this.change[to * rows + r] = this.change[i * rows + r]! + step[r]!;
      }
    }
  }

  private grow(): void {
    const size = this.loss.length * 2;
    const wider = <A extends Float64Array | Int32Array>(old: A, grown: A): A => {
      grown.set(old);
      return grown;
    };
    this.loss = wider(this.loss, new Float64Array(size));
    this.change = wider(this.change, new Float64Array(size * this.rows));
    this.parent = wider(this.parent, new Int32Array(size));
    this.way = wider(this.way, new Int32Array(size));
  }

  /** Groups with the items a combination gives them; groups not named keep the relaxed choice. */
  itemsOf(combination: number): [number, number][] {
    const items: [number, number][] = [];
    for (let at = combination; this.parent[at]! >= 0; at = this.parent[at]!) {
      const ways = this.groups[this.way[at]! >> 10]!;
      items.push([ways.group, ways.item[this.way[at]! & 1023]!]);
    }
    return items;
  }
}
