import type { Grid } from './grid.js';
import type { ReadyJob } from './ready-job.js';

/**
 * The best stack of pieces for each width and each length of shelf: pieces on top of each other, none wider than the stack.
 * Worth by type; counts are not limited.
 */
export class StackTable {
  /** Lies that set a stack's width, narrowest first, one for each width. */
  readonly classes: readonly number[];
  private readonly order: readonly number[];
  private readonly high: number;
  private readonly worth: Float64Array;
  private readonly mark: Int16Array;
  private readonly row: Float64Array;
  private readonly rowMark: Int16Array;

  constructor(
    private readonly ready: ReadyJob,
    private readonly grid: Grid,
  ) {
    this.order = ready.lies.map((_, k) => k).sort((a, b) => grid.acrossUp[a]! - grid.acrossUp[b]! || a - b);
    this.classes = this.order.filter((k, n) => grid.acrossUp[k]! !== grid.acrossUp[this.order[n + 1] ?? -1]);
    this.high = Math.max(0, ...grid.alongUp);
    this.worth = new Float64Array(this.classes.length * (this.high + 1));
    this.mark = new Int16Array(this.worth.length);
    this.row = new Float64Array(this.high + 1);
    this.rowMark = new Int16Array(this.high + 1);
  }

  /** Fills the table for the given worth of a piece by type. */
  fill(price: Float64Array): void {
    const { row, rowMark, high, grid, ready } = this;
    row.fill(0);
    rowMark.fill(-1);
    let at = 0;
    for (let c = 0; c < this.classes.length; c++) {
      for (; at < this.order.length && grid.acrossUp[this.order[at]!]! <= grid.acrossUp[this.classes[c]!]!; at++) {
        const k = this.order[at]!;
        const one = price[ready.lies[k]!.type]!;
        const step = grid.alongUp[k]!;
        if (one <= 0) continue;
        for (let h = step; h <= high; h++) {
          const with1 = row[h - step]! + one;
          if (with1 > row[h]! * (1 + 1e-12)) {
            row[h] = with1;
            rowMark[h] = k;
          }
        }
      }
      // Room that no piece fills is carried up, so that a cell holds the best of all shorter stacks.
      for (let h = 1; h <= high; h++) {
        if (row[h - 1]! > row[h]!) {
          row[h] = row[h - 1]!;
          rowMark[h] = -1;
        }
      }
      this.worth.set(row, c * (high + 1));
      this.mark.set(rowMark, c * (high + 1));
    }
  }

  worthOf(c: number, h: number): number {
    return this.worth[c * (this.high + 1) + Math.min(h, this.high)]!;
  }

  /** Lies of the stack, from the bottom. */
  lies(c: number, h: number): number[] {
    const lies: number[] = [];
    const row = c * (this.high + 1);
    for (let at = Math.min(h, this.high); at > 0; ) {
      const k = this.mark[row + at]!;
      if (k < 0) {
        at--;
        continue;
      }
      lies.push(k);
      at -= this.grid.alongUp[k]!;
    }
    return lies;
  }
}
