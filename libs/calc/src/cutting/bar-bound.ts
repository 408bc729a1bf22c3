import { CoverLp } from './cover-lp.js';
import { gridOf, type Grid } from './grid.js';
import type { ReadyJob } from './ready-job.js';

/** Prices that prove the bound: no cross-section of any roll is worth more than that roll costs per tick. */
export interface BarCertificate {
  /** Value of a piece of each type. */
  readonly price: Float64Array;
  /** What a tick of each offer's length is charged beyond its rate; 0 where film is bought. */
  readonly scarcity: Float64Array;
  readonly bound: number;
}

/**
 * The least any cutting costs, by the bar relaxation: every cross-section of a roll holds pieces whose widths fit beside each other,
 * and the cross-sections that hold a piece are together as long as the piece.
 *
 *   max Σ count × price − Σ stock length × scarcity,   Σ (copies × price / length) ≤ rate + scarcity for every cross-section
 *
 * A type is in a cross-section at most `count` times; a piece that may turn counts either way. Roll ends are ignored.
 *
 * @param ready the job in ticks
 * @param rates what a tick of each offer's length costs
 * @returns piece prices that fit every cross-section, and their sum = the bound in the unit of the rates
 * @source Gilmore & Gomory, Operations Research 9 (1961), on cross-sections; scaling of the prices: Farley, Operations Research 38 (1990), from memory
 */
export function barBound(ready: ReadyJob, rates: Float64Array): BarCertificate {
  const { types, offers } = ready;
  const stock = offers.flatMap((offer, o) => (offer.stock ? [o] : []));
  const need = Float64Array.from(types, (type) => type.count);
  const supply = Float64Array.from(stock, (o) => offers[o]!.supply * offers[o]!.length);
  const lp = new CoverLp(need, supply, penalties(ready, rates));
  const sections = new Sections(ready);
  let best: BarCertificate = { price: new Float64Array(types.length), scarcity: new Float64Array(offers.length), bound: 0 };
  for (let round = 0; round < 60 + 12 * types.length; round++) {
    const duals = Float64Array.from(lp.duals, (dual, r) => (r < types.length ? Math.max(0, dual) : Math.max(0, -dual)));
    const found = sections.best(duals.subarray(0, types.length));
    let worst = 1;
    let added = 0;
    for (let o = 0; o < offers.length; o++) {
      const section = found[o]!;
      const at = stock.indexOf(o);
      const allowed = rates[o]! + (at < 0 ? 0 : duals[types.length + at]!);
      if (section.value > 0) worst = Math.max(worst, allowed > 0 ? section.value / allowed : Infinity);
      if (section.value <= allowed * (1 + 1e-9) + 1e-15) continue;
      lp.add(columnOf(section, rates[o]!, at < 0 ? -1 : types.length + at));
      added++;
    }
    best = better(best, { duals, worst, need, supply, stock });
    if (added === 0 || !lp.solve()) break;
  }
  return best;
}

interface Section {
  value: number;
  readonly copies: Map<number, number>;
}

function columnOf(section: Section, cost: number, stockRow: number): { cost: number; rows: Int32Array; values: Float64Array } {
  const rows = [...section.copies.keys()];
  const values = [...section.copies.values()];
  if (stockRow >= 0) {
    rows.push(stockRow);
    values.push(1);
  }
  return { cost, rows: Int32Array.from(rows), values: Float64Array.from(values) };
}

interface Trial {
  readonly duals: Float64Array;
  readonly worst: number;
  readonly need: Float64Array;
  readonly supply: Float64Array;
  readonly stock: readonly number[];
}

function better(best: BarCertificate, trial: Trial): BarCertificate {
  if (!Number.isFinite(trial.worst)) return best;
  const scale = 1 / (trial.worst * (1 + 1e-9));
  const types = trial.need.length;
  const price = trial.duals.slice(0, types).map((each) => each * scale);
  const scarcity = new Float64Array(best.scarcity.length);
  trial.stock.forEach((o, at) => (scarcity[o] = trial.duals[types + at]!));
  let bound = 0;
  for (let t = 0; t < types; t++) bound += trial.need[t]! * price[t]!;
  trial.stock.forEach((o, at) => (bound -= trial.supply[at]! * scarcity[o]!));
  return bound > best.bound ? { price, scarcity, bound } : best;
}

function penalties(ready: ReadyJob, rates: Float64Array): Float64Array {
  const dearest = Math.max(1e-9, ...rates);
  return Float64Array.from(ready.types, (type) => 10 * dearest * Math.max(type.across, type.along));
}

/** Finds the cross-section of each offer that is worth most, each type at most as often as it is ordered. */
class Sections {
  private readonly grid: Grid;
  private readonly passes: { readonly type: number; readonly lies: readonly number[]; readonly times: number }[];

  constructor(private readonly ready: ReadyJob) {
    const grid = gridOf(ready);
    this.grid = grid;
    const widest = Math.max(...grid.width);
    this.passes = ready.types.map((type, t) => {
      const lies = ready.lies.flatMap((lie, k) => (lie.type === t ? [k] : []));
      const least = Math.max(1, Math.min(...lies.map((k) => grid.acrossDown[k]!)));
      return { type: t, lies, times: Math.min(type.count, Math.floor(widest / least)) };
    });
  }

  best(prices: Float64Array): Section[] {
    return this.ready.offers.map((_, o) => this.bestOf(prices, o));
  }

  private bestOf(prices: Float64Array, o: number): Section {
    const { ready, grid } = this;
    const cap = grid.width[o]!;
    const length = ready.offers[o]!.length;
    const value = new Float64Array(cap + 1);
    const marks: { lies: readonly number[]; choice: Uint8Array }[] = [];
    for (const pass of this.passes) {
      const lies = pass.lies.filter((k) => ready.lies[k]!.along <= length + 1e-3 && grid.acrossDown[k]! <= cap);
      if (lies.length === 0 || prices[pass.type]! <= 0) continue;
      for (let n = 0; n < pass.times; n++) {
        const choice = new Uint8Array(cap + 1);
        for (let x = cap; x >= 0; x--) {
          let top = value[x]!;
          for (let j = 0; j < lies.length; j++) {
            const k = lies[j]!;
            const from = x - grid.acrossDown[k]!;
            if (from < 0) continue;
            const with1 = value[from]! + prices[pass.type]! / ready.lies[k]!.along;
            if (with1 > top * (1 + 1e-13)) {
              top = with1;
              choice[x] = j + 1;
            }
          }
          value[x] = top;
        }
        if (!choice.some((c) => c > 0)) break;
        marks.push({ lies, choice });
      }
    }
    return this.read(marks, cap, value[cap]!);
  }

  private read(marks: { lies: readonly number[]; choice: Uint8Array }[], cap: number, value: number): Section {
    const copies = new Map<number, number>();
    let x = cap;
    for (let m = marks.length - 1; m >= 0; m--) {
      const mark = marks[m]!;
      const j = mark.choice[x]!;
      if (j === 0) continue;
      const k = mark.lies[j - 1]!;
      const lie = this.ready.lies[k]!;
      copies.set(lie.type, (copies.get(lie.type) ?? 0) + 1 / lie.along);
      x -= this.grid.acrossDown[k]!;
    }
    return { value, copies };
  }
}
