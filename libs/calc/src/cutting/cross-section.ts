import { gridOf, type Grid } from './grid.js';
import { SAME_ticks, type ReadyJob } from './ready-job.js';

/** The cross-section of a roll that is worth most: copies ÷ length by type. */
export interface Section {
  readonly value: number;
  readonly shares: ReadonlyMap<number, number>;
}

interface Pass {
  readonly type: number;
  readonly lies: readonly number[];
}

/** Finds the most valuable cross-section of each offer, a type in it at most as often as it is ordered; widths rounded down. */
export class CrossSections {
  private readonly grid: Grid;
  private readonly groups: readonly (readonly number[])[];
  private readonly value: Float64Array;
  private readonly mark: Int16Array;

  constructor(private readonly ready: ReadyJob) {
    this.grid = gridOf(ready);
    const widest = Math.max(0, ...this.grid.width);
    this.value = new Float64Array(widest + 1);
    this.mark = new Int16Array(widest + 1);
    this.groups = sameLength(ready);
  }

  best(prices: Float64Array): Section[] {
    const found = new Array<Section>(this.ready.offers.length);
    for (const offers of this.groups) {
      const cap = Math.max(...offers.map((o) => this.grid.width[o]!));
      const { free, bounded } = this.passes(prices, { length: this.ready.offers[offers[0]!]!.length, cap });
      this.freePasses(free, prices, cap);
      const marks = bounded.map((pass) => this.boundedPass(pass, prices, cap));
      for (const o of offers) found[o] = this.read({ bounded, marks }, this.grid.width[o]!);
    }
    return found;
  }

  /** Types ordered more often than a roll is wide enough for need no count; the others are laid piece by piece. */
  private passes(prices: Float64Array, of: { readonly length: number; readonly cap: number }): { free: number[]; bounded: Pass[] } {
    const { ready, grid } = this;
    const free: number[] = [];
    const bounded: Pass[] = [];
    let k = 0;
    for (let t = 0; t < ready.types.length; t++) {
      const lies: number[] = [];
      for (; k < ready.lies.length && ready.lies[k]!.type === t; k++) {
        if (ready.lies[k]!.along <= of.length + SAME_ticks && grid.acrossDown[k]! <= of.cap) lies.push(k);
      }
      if (lies.length === 0 || !(prices[t]! > 0)) continue;
      const most = Math.floor(of.cap / Math.max(1, Math.min(...lies.map((lie) => grid.acrossDown[lie]!))));
      if (ready.types[t]!.count >= most) free.push(...lies);
      else for (let n = 0; n < ready.types[t]!.count; n++) bounded.push({ type: t, lies });
    }
    return { free, bounded };
  }

  private freePasses(lies: readonly number[], prices: Float64Array, cap: number): void {
    const { value, mark, grid, ready } = this;
    value.fill(0, 0, cap + 1);
    mark.fill(-1, 0, cap + 1);
    for (const k of lies) {
      const one = prices[ready.lies[k]!.type]! / ready.lies[k]!.along;
      const step = Math.max(1, grid.acrossDown[k]!);
      for (let x = step; x <= cap; x++) {
        const with1 = value[x - step]! + one;
        if (with1 > value[x]! * (1 + 1e-13)) {
          value[x] = with1;
          mark[x] = k;
        }
      }
    }
  }

  private boundedPass(pass: Pass, prices: Float64Array, cap: number): Uint8Array {
    const { value, grid, ready } = this;
    const choice = new Uint8Array(cap + 1);
    const a0 = grid.acrossDown[pass.lies[0]!]!;
    const v0 = prices[pass.type]! / ready.lies[pass.lies[0]!]!.along;
    const second = pass.lies[1] ?? pass.lies[0]!;
    const a1 = pass.lies.length > 1 ? grid.acrossDown[second]! : cap + 1;
    const v1 = prices[pass.type]! / ready.lies[second]!.along;
    for (let x = cap; x >= 0; x--) {
      let top = value[x]!;
      if (x >= a0 && value[x - a0]! + v0 > top) {
        top = value[x - a0]! + v0;
        choice[x] = 1;
      }
      if (x >= a1 && value[x - a1]! + v1 > top) {
        top = value[x - a1]! + v1;
        choice[x] = 2;
      }
      value[x] = top;
    }
    return choice;
  }

  private read(from: { readonly bounded: readonly Pass[]; readonly marks: readonly Uint8Array[] }, cap: number): Section {
    const shares = new Map<number, number>();
    const add = (k: number): void => {
      const lie = this.ready.lies[k]!;
      shares.set(lie.type, (shares.get(lie.type) ?? 0) + 1 / lie.along);
    };
    let x = cap;
    for (let p = from.bounded.length - 1; p >= 0; p--) {
      const choice = from.marks[p]![x]!;
      if (choice === 0) continue;
      const k = from.bounded[p]!.lies[choice - 1]!;
      add(k);
      x -= this.grid.acrossDown[k]!;
    }
    while (x >= 0 && this.mark[x]! >= 0) {
      add(this.mark[x]!);
      x -= Math.max(1, this.grid.acrossDown[this.mark[x]!]!);
    }
    return { value: this.value[cap]!, shares };
  }
}

/** Offers whose length bars the same lies share one table. */
function sameLength(ready: ReadyJob): number[][] {
  const groups = new Map<number, number[]>();
  ready.offers.forEach((offer, o) => {
    const barred = ready.lies.filter((lie) => lie.along > offer.length + SAME_ticks).length;
    groups.set(barred, [...(groups.get(barred) ?? []), o]);
  });
  return [...groups.values()];
}
