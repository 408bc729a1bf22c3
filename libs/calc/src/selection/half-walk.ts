import type { GroupWays } from './decided-node.js';

/** Hears of one combination: its loss, and its change of use from a place on in one long list. */
export type Hear = (loss: number, change: Float64Array, at: number) => void;

/**
 * Walks through all combinations of ways of one half within a room, storing none. Groups stand by their smallest loss, so
 * that a group whose first way is too much ends the row.
 */
export class HalfWalk {
  private readonly groups: readonly GroupWays[];
  /** Ways of group g are start[g] … start[g+1] − 1, by rising loss. */
  private readonly start: Int32Array;
  private readonly loss: Float64Array;
  /** way × rows + row */
  private readonly step: Float64Array;
  /** Sum of the steps, depth by depth. */
  private readonly change: Float64Array;
  private readonly group: Int32Array;
  private readonly way: Int32Array;
  private depth = 0;
  private hear: Hear = () => undefined;
  /** Most loss of a combination; the one who hears may lower it. */
  room = 0;

  constructor(
    groups: readonly GroupWays[],
    private readonly rows: number,
  ) {
    this.groups = groups.filter(({ loss }) => loss.length > 0).sort((a, b) => a.loss[0]! - b.loss[0]! || a.group - b.group);
    const all = this.groups.flatMap((each) => each.loss.map((loss, k) => ({ loss, change: each.change[k]! })));
    this.loss = Float64Array.from(all, ({ loss }) => loss);
    this.step = new Float64Array(all.length * rows);
    all.forEach(({ change }, k) => { this.step.set(change, k * rows); });
    this.start = new Int32Array(this.groups.length + 1);
    this.groups.forEach(({ loss }, g) => (this.start[g + 1] = this.start[g]! + loss.length));
    this.change = new Float64Array((this.groups.length + 1) * rows);
    this.group = new Int32Array(this.groups.length);
    this.way = new Int32Array(this.groups.length);
  }

  /** Every combination in a fixed order, none changed first. */
  walk(room: number, hear: Hear): void {
    this.room = room;
    this.hear = hear;
    this.depth = 0;
    hear(0, this.change, 0);
    this.extend(0, 0);
  }

  private extend(from: number, before: number): void {
    const { rows, change, loss, start, step } = this;
    const base = this.depth * rows;
    for (let g = from; g < this.groups.length; g++) {
      const end = start[g + 1]!;
      let k = start[g]!;
      if (before + loss[k]! > this.room) return;
      for (; k < end; k++) {
        const sum = before + loss[k]!;
        if (sum > this.room) break;
        for (let r = 0; r < rows; r++) change[base + rows + r] = change[base + r]! + step[k * rows + r]!;
        this.group[this.depth] = g;
        this.way[this.depth++] = k;
        this.hear(sum, change, base + rows);
        this.extend(g + 1, sum);
        this.depth--;
      }
    }
  }

  /** Groups of the combination heard last, with the items it gives them. */
  items(): [number, number][] {
    return Array.from({ length: this.depth }, (_, d) => {
      const g = this.group[d]!;
      return [this.groups[g]!.group, this.groups[g]!.item[this.way[d]! - this.start[g]!]!];
    });
  }
}
