import { countBlock, fillRects, type Block, type Laid, type Rect } from './block.js';
import { gridOf, type Grid } from './grid.js';
import { SAME_ticks, type ReadyJob } from './ready-job.js';

/** What the filling of one shelf starts from. */
export interface ShelfStart {
  /** The piece that sets the shelf's length. */
  readonly lie: number;
  /** Pieces still to lay, by type, the starting piece among them. */
  readonly left: Int32Array;
  /** Worth of a piece by type. */
  readonly worth: Float64Array;
  /** Types that may lie on the shelf, in rising order, the starting piece's among them. */
  readonly among: readonly number[];
  /** Roll widths read out at most, those that promise most for their film; default all. */
  readonly widths?: number;
}

/**
 * Fills one shelf as well as the pieces left allow, for each roll that holds it: stacks side by side by a bounded knapsack over the
 * width, free room above short stacks and at the side filled by straight cuts.
 */
export class ShelfFill {
  private readonly grid: Grid;
  /** Lies of each type. */
  readonly byType: readonly (readonly number[])[];
  /** Cells of tables filled so far: the same count on every machine, so a search may be ended by it. */
  work = 0;
  private readonly value: Float64Array;
  private marks: Uint8Array;
  private readonly passType: Int32Array;
  private readonly units: Int32Array;
  private readonly largestFirst: Int32Array;
  private readonly placeByArea: Int32Array;

  constructor(private readonly ready: ReadyJob) {
    this.grid = gridOf(ready);
    const widest = Math.max(1, ...this.grid.width);
    this.value = new Float64Array(widest + 1);
    this.marks = new Uint8Array(64 * (widest + 1));
    this.passType = new Int32Array(4096);
    const byType = ready.types.map((): number[] => []);
    ready.lies.forEach((lie, k) => byType[lie.type]!.push(k));
    this.byType = byType;
    this.units = new Int32Array(ready.lies.length);
    const area = Float64Array.from(ready.lies, (lie) => lie.across * lie.along);
    this.largestFirst = Int32Array.from(ready.lies.keys()).sort((a, b) => area[b]! - area[a]! || a - b);
    this.placeByArea = new Int32Array(ready.lies.length);
    this.largestFirst.forEach((k, place) => (this.placeByArea[k] = place));
  }

  /** One block for each offer that holds the starting piece. */
  blocks(start: ShelfStart): Block[] {
    const { ready, grid } = this;
    const first = ready.lies[start.lie]!;
    let cap = -1;
    for (let o = 0; o < ready.offers.length; o++) if (this.holds(o, start.lie)) cap = Math.max(cap, grid.width[o]! - grid.acrossUp[start.lie]!);
    if (cap < 0) return [];
    start.left[first.type]! -= 1;
    const passes = this.table(start, cap);
    const lies = this.byArea(start);
    const blocks: Block[] = [];
    const seen = new Map<number, Block>();
    for (const o of this.promising(start)) {
      const twin = seen.get(ready.offers[o]!.width);
      const block = twin ?? this.read(start, { passes, lies, cap: grid.width[o]! - grid.acrossUp[start.lie]!, offer: o });
      seen.set(ready.offers[o]!.width, block);
      blocks.push(twin === undefined ? block : { ...twin, offer: o });
    }
    start.left[first.type]! += 1;
    return blocks;
  }

  /** Lies that may fill room left on the shelf, largest first. */
  private byArea(start: ShelfStart): number[] {
    const high = this.ready.lies[start.lie]!.along + SAME_ticks;
    const places: number[] = [];
    for (const t of start.among) if (start.left[t]! > 0) for (const k of this.byType[t]!) if (this.ready.lies[k]!.along <= high) places.push(this.placeByArea[k]!);
    return Array.from(Int32Array.from(places).sort(), (place) => this.largestFirst[place]!);
  }

  /** Offers that hold the starting piece, by the filled table; where few widths are asked for, those with most worth for their film. */
  private promising(start: ShelfStart): number[] {
    const { ready, grid, value } = this;
    const able = [...ready.offers.keys()].filter((o) => this.holds(o, start.lie));
    if (start.widths === undefined || able.length <= start.widths) return able;
    const first = start.worth[ready.lies[start.lie]!.type]!;
    const promise = (o: number): number => (first + value[grid.width[o]! - grid.acrossUp[start.lie]!]!) / (ready.offers[o]!.rate + 1e-9);
    return able.sort((a, b) => promise(b) - promise(a) || a - b).slice(0, start.widths);
  }

  private holds(o: number, k: number): boolean {
    const lie = this.ready.lies[k]!;
    const offer = this.ready.offers[o]!;
    return lie.across <= offer.width + SAME_ticks && lie.along <= offer.length + SAME_ticks && this.grid.acrossUp[k]! <= this.grid.width[o]!;
  }

  private table(start: ShelfStart, cap: number): number {
    const { ready, grid, value, units, byType } = this;
    const high = ready.lies[start.lie]!.along + SAME_ticks;
    value.fill(0, 0, cap + 1);
    let passes = 0;
    for (const t of start.among) {
      const left = start.left[t]!;
      if (left <= 0) continue;
      const lies = byType[t]!;
      let times = 0;
      for (const k of lies) {
        const lie = ready.lies[k]!;
        units[k] = lie.along > high || grid.acrossUp[k]! > cap ? 0 : Math.max(1, Math.min(left, Math.floor(high / lie.along)));
        if (units[k] > 0) times = Math.max(times, Math.min(Math.ceil(left / units[k]), Math.floor(cap / grid.acrossUp[k]!)));
      }
      for (let n = 0; n < times && passes < this.passType.length; n++) {
        this.passType[passes] = t;
        if (!this.pass(start, { cap, pass: passes, type: t })) break;
        passes++;
      }
    }
    return passes;
  }

  private pass(start: ShelfStart, at: { readonly cap: number; readonly pass: number; readonly type: number }): boolean {
    const { grid, value, units } = this;
    const row = at.pass * (at.cap + 1);
    if (row + at.cap + 1 > this.marks.length) {
      const more = new Uint8Array(2 * (row + at.cap + 1));
      more.set(this.marks);
      this.marks = more;
    }
    const marks = this.marks;
    const lies = this.byType[at.type]!;
    const one = start.worth[at.type]!;
    const k0 = lies[0]!;
    const k1 = lies.length > 1 ? lies[1]! : k0;
    const a0 = units[k0]! > 0 ? grid.acrossUp[k0]! : at.cap + 1;
    const a1 = lies.length > 1 && units[k1]! > 0 ? grid.acrossUp[k1]! : at.cap + 1;
    const v0 = one * units[k0]!;
    const v1 = one * units[k1]!;
    const least = Math.min(a0, a1);
    marks.fill(0, row, row + Math.min(least, at.cap + 1));
    this.work += Math.max(0, at.cap + 1 - least);
    let any = 0;
    for (let x = at.cap; x >= least; x--) {
      let top = value[x]!;
      let mark = 0;
      if (x >= a0 && value[x - a0]! + v0 > top) {
        top = value[x - a0]! + v0;
        mark = 1;
      }
      if (x >= a1 && value[x - a1]! + v1 > top) {
        top = value[x - a1]! + v1;
        mark = 2;
      }
      marks[row + x] = mark;
      value[x] = top;
      any |= mark;
    }
    return any > 0;
  }

  private read(start: ShelfStart, at: { readonly passes: number; readonly cap: number; readonly offer: number; readonly lies: readonly number[] }): Block {
    const { ready, grid, units } = this;
    const first = ready.lies[start.lie]!;
    const { left } = start;
    const stacks: { lie: number; copies: number }[] = [{ lie: start.lie, copies: 1 }];
    const rowLength = this.rowLength(start.lie);
    let x = at.cap;
    for (let pass = at.passes - 1; pass >= 0; pass--) {
      const mark = this.marks[pass * rowLength + x]!;
      if (mark === 0) continue;
      const lie = this.byType[this.passType[pass]!]![mark - 1]!;
      x -= grid.acrossUp[lie]!;
      const copies = Math.min(units[lie]!, left[ready.lies[lie]!.type]!);
      left[ready.lies[lie]!.type]! -= copies;
      if (copies > 0) stacks.push({ lie, copies });
    }
    const laid: Laid[] = [];
    const rects: Rect[] = [];
    stacks.sort((a, b) => ready.lies[b.lie]!.along * b.copies - ready.lies[a.lie]!.along * a.copies || a.lie - b.lie);
    let across = 0;
    for (const stack of stacks) {
      const lie = ready.lies[stack.lie]!;
      for (let n = 0; n < stack.copies; n++) laid.push({ lie: stack.lie, x: across, y: n * lie.along });
      const above = first.along - stack.copies * lie.along;
      if (above > 0) rects.push({ x: across, y: stack.copies * lie.along, w: lie.across, h: above });
      across += lie.across;
    }
    const side = ready.offers[at.offer]!.width - across;
    if (side > 0) rects.push({ x: across, y: 0, w: side, h: first.along });
    fillRects(ready, left, { rects, laid, lies: at.lies });
    // The block is only looked at: all but the starting piece, which the caller holds, goes back.
    const block = { offer: at.offer, length: first.along, laid };
    countBlock(ready, block, { counts: left, sign: 1 });
    left[first.type]! -= 1;
    return block;
  }

  private rowLength(lie: number): number {
    const { ready, grid } = this;
    let cap = -1;
    for (let o = 0; o < ready.offers.length; o++) if (this.holds(o, lie)) cap = Math.max(cap, grid.width[o]! - grid.acrossUp[lie]!);
    return cap + 1;
  }
}
