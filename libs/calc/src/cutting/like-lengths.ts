import { SAME_ticks, type ReadyJob } from './ready-job.js';

/** Types taken for one shelf: most of about its length, some that stand on each other in twos and threes. */
const NEAR: readonly (readonly [share: number, types: number])[] = [
  [1, 40],
  [1 / 2, 10],
  [1 / 3, 6],
];

/** With more ways to lie than this half as many types do: sizes stand so close that more of them are no better. */
const MANY_LIES = 8000;

/** Finds, among thousands of sizes, the pieces left that suit a shelf of a given length, without looking at the others. */
export class LikeLengths {
  /** Lies, longest first. */
  private readonly order: Int32Array;
  /** By place in the order: the next place, itself included, that may have pieces left. */
  private readonly next: Int32Array;

  constructor(
    private readonly ready: ReadyJob,
    private readonly left: Int32Array,
  ) {
    const { lies } = ready;
    this.order = Int32Array.from(lies.keys()).sort((a, b) => lies[b]!.along - lies[a]!.along || lies[b]!.across - lies[a]!.across || a - b);
    this.next = Int32Array.from({ length: lies.length + 1 }, (_, n) => n);
  }

  /** Types with pieces left that may lie on a shelf as long as the given lie, in rising order. */
  near(lie: number): number[] {
    const { type, along } = this.ready.lies[lie]!;
    const found = new Set([type]);
    for (const [share, types] of NEAR) {
      const goal = found.size + (this.order.length > MANY_LIES ? types / 2 : types);
      for (let n = this.open(this.place(along * share + SAME_ticks)); n < this.order.length && found.size < goal; n = this.open(n + 1)) found.add(this.ready.lies[this.order[n]!]!.type);
    }
    return [...found].sort((a, b) => a - b);
  }

  /** First place in the order whose lie is not longer. */
  private place(along: number): number {
    let from = 0;
    let to = this.order.length;
    while (from < to) {
      const middle = (from + to) >> 1;
      if (this.ready.lies[this.order[middle]!]!.along > along) from = middle + 1;
      else to = middle;
    }
    return from;
  }

  private open(place: number): number {
    let n = place;
    while (n < this.order.length && (this.next[n] !== n || this.left[this.ready.lies[this.order[n]!]!.type]! <= 0)) {
      if (this.next[n] === n) this.next[n] = n + 1;
      n = this.next[n]!;
    }
    for (let at = place; at < n; ) {
      const after = this.next[at]!;
      this.next[at] = n;
      at = after;
    }
    return n;
  }
}
