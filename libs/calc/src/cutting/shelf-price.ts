import type { Block, Laid } from './block.js';
import { gridOf, type Grid } from './grid.js';
import { SAME_ticks, type ReadyJob } from './ready-job.js';
import { StackTable } from './stack-table.js';

/** A shelf found by pricing, with the worth of its pieces. */
export interface PricedShelf {
  readonly block: Block;
  readonly worth: number;
}

/** Finds, for given piece prices, the shelf of every length and roll that is worth most: stacks side by side (three-stage cutting). */
export class ShelfPrice {
  private readonly grid: Grid;
  private readonly stacks: StackTable;
  private readonly worth: Float64Array;
  private readonly mark: Int16Array;
  private readonly heights: readonly number[];
  private at = 0;

  constructor(private readonly ready: ReadyJob) {
    this.grid = gridOf(ready);
    this.stacks = new StackTable(ready, this.grid);
    const widest = Math.max(0, ...this.grid.width);
    this.worth = new Float64Array(widest + 1);
    this.mark = new Int16Array(widest + 1);
    this.heights = shelfLengths(this.grid.alongUp);
  }

  /** Lengths tried in one call; with many sizes only some, the next ones in the next call. */
  get perRound(): number {
    return Math.min(this.heights.length, Math.max(8, Math.ceil(MOST_CELLS / (this.stacks.classes.length * this.worth.length))));
  }

  /** Calls after which every length was tried. */
  get fullTurn(): number {
    return Math.ceil(this.heights.length / this.perRound);
  }

  /** Shelves whose pieces are worth more than their film, the best for each offer and length. `charge` = extra cost of a tick by offer. */
  improving(price: Float64Array, charge: Float64Array): PricedShelf[] {
    const { ready, grid } = this;
    this.stacks.fill(price);
    if (this.heights.length === 0) return [];
    const found: PricedShelf[] = [];
    for (let n = 0; n < this.perRound; n++) {
      const height = this.heights[this.at % this.heights.length]!;
      this.at++;
      this.fillWidth(height);
      const length = height * grid.alongCell;
      for (let o = 0; o < ready.offers.length; o++) {
        const offer = ready.offers[o]!;
        if (length > offer.length + SAME_ticks) continue;
        if (this.worth[grid.width[o]!]! <= (offer.rate + charge[o]!) * length * (1 + 1e-7)) continue;
        const block = this.read(o, height);
        if (block !== null) found.push({ block, worth: this.worth[grid.width[o]!]! });
      }
    }
    return found;
  }

  private fillWidth(height: number): void {
    const { worth, mark, stacks, grid } = this;
    worth.fill(0);
    mark.fill(-1);
    let before = 0;
    for (let c = 0; c < stacks.classes.length; c++) {
      const one = stacks.worthOf(c, height);
      // A wider stack that is worth no more than a narrower one is never of use.
      if (one <= before * (1 + 1e-12)) continue;
      before = one;
      const step = grid.acrossUp[stacks.classes[c]!]!;
      for (let x = step; x < worth.length; x++) {
        const with1 = worth[x - step]! + one;
        if (with1 > worth[x]! * (1 + 1e-12)) {
          worth[x] = with1;
          mark[x] = c;
        }
      }
    }
    for (let x = 1; x < worth.length; x++) {
      if (worth[x - 1]! > worth[x]!) {
        worth[x] = worth[x - 1]!;
        mark[x] = -1;
      }
    }
  }

  private read(offer: number, height: number): Block | null {
    const { ready, grid, stacks } = this;
    const columns: { lies: number[]; width: number; length: number }[] = [];
    for (let x = grid.width[offer]!; x > 0; ) {
      const c = this.mark[x]!;
      if (c < 0) {
        x--;
        continue;
      }
      const lies = stacks.lies(c, height);
      const width = Math.max(...lies.map((k) => ready.lies[k]!.across));
      columns.push({ lies, width, length: lies.reduce((sum, k) => sum + ready.lies[k]!.along, 0) });
      x -= grid.acrossUp[stacks.classes[c]!]!;
    }
    if (columns.length === 0) return null;
    columns.sort((a, b) => b.length - a.length || b.width - a.width || a.lies[0]! - b.lies[0]!);
    const laid: Laid[] = [];
    let x = 0;
    for (const column of columns) {
      let y = 0;
      for (const k of [...column.lies].sort((a, b) => ready.lies[b]!.across - ready.lies[a]!.across || a - b)) {
        laid.push({ lie: k, x, y });
        y += ready.lies[k]!.along;
      }
      x += column.width;
    }
    return { offer, length: columns[0]!.length, laid };
  }
}

const FEW = 48;
const MOST_CELLS = 4e6;

/** Lengths of shelves to try: those of single pieces and, where there are few, of two pieces on each other. */
function shelfLengths(along: Int32Array): number[] {
  const single = [...new Set(along)];
  const longest = Math.max(0, ...single);
  const all = new Set(single);
  if (single.length <= FEW) for (const a of single) for (const b of single) if (a + b <= longest) all.add(a + b);
  return [...all].sort((a, b) => a - b);
}
