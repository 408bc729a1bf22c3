import type { PartModel } from './part-model.js';
import type { PriceRows } from './price-rows.js';
import type { PlanState } from './plan-state.js';
import { Relaxation } from './relaxation.js';

/** A part seen at fixed prices: reduced values, items of each group by reduced value, prices of visits. */
export class PricedItems {
  readonly reduced: Float64Array;
  readonly visitPrice: Float64Array;
  /** Items of each group from the best reduced value down; ties by place. */
  readonly order: Int32Array;
  /** Rows with a price. */
  private readonly priced: readonly number[];

  constructor(
    readonly model: PartModel,
    private readonly rows: PriceRows,
    readonly price: Float64Array,
  ) {
    const relaxation = new Relaxation(model, rows);
    relaxation.evaluate(price);
    this.reduced = relaxation.reduced;
    this.visitPrice = relaxation.visitPrice;
    this.order = new Int32Array(model.option.length);
    for (let g = 0; g < model.groups.length; g++) {
      const from = model.itemStart[g]!;
      const to = model.itemStart[g + 1]!;
      const items = Array.from({ length: to - from }, (_, i) => from + i);
      items.sort((a, b) => this.reduced[b]! - this.reduced[a]! || a - b);
      this.order.set(items, from);
    }
    this.priced = [...rows.active].filter((r) => price[r]! > 0);
  }

  /** Σ price × what is left of each limit: what the rest of the plan could still be worth at these prices. */
  slackWorth(state: PlanState): number {
    const { rows, model } = this;
    const T = model.of.phases.length;
    let sum = 0;
    for (const r of this.priced) {
      let left: number;
      if (r < rows.minutes) left = state.capLeft[r]!;
      else if (r < rows.owner) left = state.minutesLeft[r - T]!;
      else if (r < rows.cap) left = state.ownerLeft[r - rows.owner]!;
      else if (r < rows.minSpend) left = state.unitLeft[r - rows.cap]!;
      else if (r < rows.exclusive) {
        const at = r - rows.minSpend;
        left = state.spend[at]! - (state.count[at]! > 0 ? model.units[Math.floor(at / T)]!.minSpend : 0);
      } else {
        const { a, b } = model.exclusive[r - rows.exclusive]!;
        left = 1 - (state.item[a]! >= 0 ? 1 : 0) - (state.item[b]! >= 0 ? 1 : 0);
      }
      sum += this.price[r]! * left;
    }
    return sum;
  }

  /** How much a group loses at these prices when its best way is not taken: small where the choice is open. */
  tension(g: number): number {
    const from = this.model.itemStart[g]!;
    const to = this.model.itemStart[g + 1]!;
    if (from === to) return Infinity;
    const first = this.reduced[this.order[from]!]!;
    const second = to - from > 1 ? this.reduced[this.order[from + 1]!]! : -Infinity;
    if (this.model.must[g] === 1) return first - second;
    return first > 0 ? first - Math.max(0, second) : -first;
  }
}
