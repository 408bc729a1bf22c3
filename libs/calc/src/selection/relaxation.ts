import { familiesAmong, type PartModel, type Unit } from './part-model.js';
import { brokenPrice } from './plan-state.js';
import type { PriceRows } from './price-rows.js';
import { noRestriction, type Restriction } from './restriction.js';

const ANY_FAMILY = [-1];

/**
 * The Lagrangian relaxation of a part: with prices on all limits every unit is best off by itself. One object keeps the
 * arrays of all evaluations; the fields hold the last one.
 */
export class Relaxation {
  /** Item of each group in the relaxed choice, −1 for none. */
  readonly chosen: Int32Array;
  /** By unit: phases visited in the relaxed choice. */
  readonly open: Int32Array;
  /** By unit: best reduced value. */
  readonly unitValue: Float64Array;
  /** Reduced value of every item at the prices, visits apart. */
  readonly reduced: Float64Array;
  /** limit − use of the relaxed choice, by row: the slope of the bound in that price. */
  readonly slack: Float64Array;
  /** Best reduced value and item by group and phase, within the family looked at. */
  readonly best: Float64Array;
  private readonly bestItem: Int32Array;
  readonly visitPrice: Float64Array;
  private readonly pairPrice: Float64Array;
  private readonly phases: number;
  /** Items that may be taken, by group: what evaluate looks at. */
  private readonly live: Int32Array;
  private readonly liveStart: Int32Array;
  private within: Restriction;
  private families: (readonly number[])[] = []; // to try, by unit
  /** Sum of the magnitudes of the last bound. */
  size = 0;

  constructor(readonly model: PartModel, readonly rows: PriceRows) {
    const T = model.of.phases.length;
    const n = model.groups.length;
    this.phases = T;
    this.chosen = new Int32Array(n);
    this.open = new Int32Array(model.units.length);
    this.unitValue = new Float64Array(model.units.length);
    this.reduced = new Float64Array(model.option.length);
    this.slack = new Float64Array(rows.count);
    this.best = new Float64Array(n * T);
    this.bestItem = new Int32Array(n * T);
    this.visitPrice = new Float64Array(model.units.length * T);
    this.pairPrice = new Float64Array(n);
    this.live = new Int32Array(model.option.length);
    this.liveStart = new Int32Array(n + 1);
    this.within = noRestriction(model);
    this.focus(this.within);
  }

  /** Takes up a restriction; to be called again whenever it was tightened. */
  focus(within: Restriction): void {
    const { model, live, liveStart } = this;
    this.within = within;
    let at = 0;
    for (let g = 0; g < model.groups.length; g++) {
      for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) if (within.item[j] === 1) live[at++] = j;
      liveStart[g + 1] = at;
    }
    this.families = model.units.map((unit) => (unit.oneFamily ? familiesAmong(model, live.subarray(liveStart[unit.from], liveStart[unit.to])) : ANY_FAMILY));
  }

  /** Are films out of the question in a unit: any may be mixed, or one is left? */
  oneFamilyLeft(u: number): boolean {
    return this.families[u]!.length === 1;
  }

  /** Bound at the prices within the restriction in focus; −∞ when it leaves a unit without a choice. */
  evaluate(price: Float64Array): number {
    const { rows, model, within } = this;
    this.pairPrice.fill(0);
    model.exclusive.forEach(({ a, b }, e) => {
      this.pairPrice[a]! += price[rows.exclusive + e]!;
      this.pairPrice[b]! += price[rows.exclusive + e]!;
    });
    let bound = 0;
    for (const r of rows.active) {
      if (price[r] !== 0) bound += price[r]! * rows.limit[r]!;
    }
    this.size = bound;
    for (let u = 0; u < model.units.length; u++) {
      this.priceUnit(u, price);
      const value = this.solveUnit(u, within);
      this.unitValue[u] = value;
      bound += value;
      this.size += Math.abs(value);
    }
    return bound;
  }

  /** Reduced values of the unit's items and prices of its visits. */
  private priceUnit(u: number, price: Float64Array): void {
    const { model, rows, phases: T } = this;
    const unit = model.units[u]!;
    const base = (unit.owner >= 0 ? price[rows.owner + unit.owner]! : 0) + price[rows.cap + u]!;
    for (let t = 0; t < T; t++) {
      const least = price[rows.minSpend + u * T + t]! * unit.minSpend;
      this.visitPrice[u * T + t] = unit.visit * (price[t]! + base) + unit.visitMinutes * price[T + t]! + least + unit.visitPrice[t]!;
    }
    for (let g = unit.from; g < unit.to; g++) {
      const off = this.pairPrice[g]!;
      for (let i = this.liveStart[g]!; i < this.liveStart[g + 1]!; i++) {
        const j = this.live[i]!;
        const t = model.phase[j]!;
        const cent = price[t]! + base - price[rows.minSpend + u * T + t]!;
        this.reduced[j] = model.value[j]! - model.cost[j]! * cent - model.minutes[j]! * price[T + t]! - off;
      }
    }
  }

  private solveUnit(u: number, within: Restriction): number {
    const { model } = this;
    const unit = model.units[u]!;
    if (!unit.visits && !unit.oneFamily && unit.sets.length === 0) return this.solvePlain(unit, u, within);
    let best = -Infinity;
    for (const family of this.families[u]!) {
      this.bestByPhase(unit, family);
      const open = this.bestOpen(u, within, best);
      if (open === null) continue;
      best = open.value;
      this.open[u] = open.mask;
      this.takeOpen(unit, open.mask, within);
    }
    return best;
  }

  /** Every group for itself, all phases open. */
  private solvePlain(unit: Unit, u: number, within: Restriction): number {
    const { model } = this;
    let sum = 0;
    let open = 0;
    for (let g = unit.from; g < unit.to; g++) {
      let best = within.must[g] === 1 ? -Infinity : 0;
      let item = -1;
      for (let i = this.liveStart[g]!; i < this.liveStart[g + 1]!; i++) {
        const j = this.live[i]!;
        if (this.reduced[j]! > best) best = this.reduced[(item = j)]!;
      }
      this.chosen[g] = item;
      if (item >= 0) open |= 1 << model.phase[item]!;
      sum += best;
    }
    this.open[u] = open;
    return sum;
  }

  /** Best item of each group and phase; family −1 takes all. */
  private bestByPhase(unit: Unit, family: number): void {
    const { model, phases: T } = this;
    this.best.fill(-Infinity, unit.from * T, unit.to * T);
    this.bestItem.fill(-1, unit.from * T, unit.to * T);
    for (let g = unit.from; g < unit.to; g++) {
      for (let i = this.liveStart[g]!; i < this.liveStart[g + 1]!; i++) {
        const j = this.live[i]!;
        if (family >= 0 && model.family[j]! >= 0 && model.family[j] !== family) continue;
        const at = g * T + model.phase[j]!;
        if (this.reduced[j]! > this.best[at]!) {
          this.best[at] = this.reduced[j]!;
          this.bestItem[at] = j;
        }
      }
    }
  }

  /** Best of a group over open phases. */
  groupBest(g: number, open: number, within: Restriction): number {
    let best = within.must[g] === 1 ? -Infinity : 0;
    for (let t = 0, at = g * this.phases; t < this.phases; t++, at++) if ((open >> t) % 2 !== 0 && this.best[at]! > best) best = this.best[at]!;
    return best;
  }

  /** Value of a unit with just these phases visited, for the family looked at. */
  openValue(u: number, open: number, within: Restriction): number {
    const unit = this.model.units[u]!;
    let sum = 0;
    if (unit.visits) for (let t = 0; t < this.phases; t++) if ((open >> t) % 2 !== 0) sum -= this.visitPrice[u * this.phases + t]!;
    for (let g = unit.from; g < unit.to; g++) sum += this.groupBest(g, open, within);
    for (const set of unit.sets) {
      for (const g of set.groups) sum -= this.groupBest(g, open, within);
      sum += this.setBest(set, open, within).value;
    }
    return sum;
  }

  /** A set parted and paid for (way −2), not taken (−1), or together in a phase. */
  private setBest(set: Unit['sets'][number], open: number, within: Restriction): { value: number; way: number } {
    let value = -set.price;
    let must = false;
    for (const g of set.groups) {
      value += this.groupBest(g, open, within);
      must ||= within.must[g] === 1;
    }
    let way = must || value >= 0 ? -2 : -1;
    if (way === -1) value = 0;
    for (let t = 0; set.whole && t < this.phases; t++) {
      if ((open >> t) % 2 === 0) continue;
      let sum = 0;
      for (const g of set.groups) sum += this.best[g * this.phases + t]!;
      if (sum > value) [value, way] = [sum, t];
    }
    return { value, way };
  }

  /** Best set of phases to visit, if it beats what another family gave. */
  private bestOpen(u: number, within: Restriction, beat: number): { mask: number; value: number } | null {
    const unit = this.model.units[u]!;
    const may = within.may[u]!;
    if (!unit.visits) {
      const value = this.openValue(u, may, within);
      return value > beat ? { mask: may, value } : null;
    }
    let best: { mask: number; value: number } | null = null;
    // All masks inside `may` that hold `forced`, from the fullest down to the emptiest; of equal ones the emptier is taken.
    const free = may & ~within.forced[u]!;
    for (let sub = free; ; sub = (sub - 1) & free) {
      const mask = sub | within.forced[u]!;
      const value = this.openValue(u, mask, within);
      if (value > beat && value >= (best?.value ?? -Infinity)) best = { mask, value };
      if (sub === 0) return best;
    }
  }

  private takeOpen(unit: Unit, open: number, within: Restriction): void {
    const T = this.phases;
    for (let g = unit.from; g < unit.to; g++) {
      let best = within.must[g] === 1 ? -Infinity : 0;
      let item = -1;
      for (let t = 0; t < T; t++) {
        if ((open >> t) % 2 !== 0 && this.best[g * T + t]! > best) {
          best = this.best[g * T + t]!;
          item = this.bestItem[g * T + t]!;
        }
      }
      this.chosen[g] = item;
    }
    for (const set of unit.sets) {
      const { way } = this.setBest(set, open, within);
      if (way > -2) for (const g of set.groups) this.chosen[g] = way < 0 ? -1 : this.bestItem[g * T + way]!;
    }
  }

  /** limit − use of the relaxed choice in every active row; a visited phase without an item still counts as visited. */
  measureSlack(): void {
    const { model, rows } = this;
    for (const r of rows.active) this.slack[r] = rows.limit[r]!;
    for (let u = 0; u < model.units.length; u++) this.useUnit(u, this.slack, -1);
  }

  /** Adds sign × the use of a unit's relaxed choice to a list of rows and gives the value of its items less the price of its visits. */
  useUnit(u: number, to: Float64Array, sign: number): number {
    const { model, rows, phases: T } = this;
    const unit = model.units[u]!;
    const ownerRow = rows.owner + unit.owner;
    let value = 0;
    if (unit.visits) {
      for (let t = 0; t < T; t++) {
        if ((this.open[u]! >> t) % 2 === 0) continue;
        to[t]! += sign * unit.visit;
        to[T + t]! += sign * unit.visitMinutes;
        if (unit.owner >= 0) to[ownerRow]! += sign * unit.visit;
        to[rows.cap + u]! += sign * unit.visit;
        to[rows.minSpend + u * T + t]! += sign * unit.minSpend;
        value -= unit.visitPrice[t]!;
      }
    }
    for (let g = unit.from; g < unit.to; g++) {
      const j = this.chosen[g]!;
      if (j < 0) continue;
      const t = model.phase[j]!;
      const cost = sign * model.cost[j]!;
      value += model.value[j]!;
      to[t]! += cost;
      to[T + t]! += sign * model.minutes[j]!;
      if (unit.owner >= 0) to[ownerRow]! += cost;
      to[rows.cap + u]! += cost;
      to[rows.minSpend + u * T + t]! -= cost;
    }
    // Pairs are few; each is used by either of its groups.
    for (let e = 0; e < model.exclusive.length; e++) {
      const { a, b } = model.exclusive[e]!;
      if (model.unitOf[a] === u && this.chosen[a]! >= 0) to[rows.exclusive + e]! += sign;
      if (model.unitOf[b] === u && this.chosen[b]! >= 0) to[rows.exclusive + e]! += sign;
    }
    for (const set of unit.sets) value -= brokenPrice(model, this.chosen, { ...set, groups: set.whole ? set.groups : [...set.groups, -1] });
    return value;
  }
}
