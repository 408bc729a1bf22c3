import type { PlanState } from './plan-state.js';
import type { PricedItems } from './priced-items.js';

/** Changes of single groups of a plan, each with what it earns and uses; visits stay as they are. */
export interface Moves {
  readonly count: number;
  readonly group: Int32Array;
  /** Item the group gets, −1 for none. */
  readonly item: Int32Array;
  readonly gain: Float64Array;
  /** Reduced value given up at the prices. */
  readonly loss: Float64Array;
  /** move × phases + phase */
  readonly cost: Float64Array;
  readonly minutes: Float64Array;
}

/**
 * The moves that give up least at the prices.
 *
 * @param state plan
 * @param priced part at its prices
 * @param pick how many to keep, and an even number 0 … 1 that varies which
 * @returns moves from the least loss up
 */
export function exchangeMoves(state: PlanState, priced: PricedItems, pick: { readonly most: number; readonly even: () => number }): Moves {
  const { model, reduced } = priced;
  const T = model.of.phases.length;
  const all: { g: number; j: number; loss: number; key: number }[] = [];
  for (let g = 0; g < model.groups.length; g++) {
    const now = state.item[g]!;
    const kept = now < 0 ? 0 : reduced[now]!;
    const open = model.units[model.unitOf[g]!]!.visits ? state.openOf(model.unitOf[g]!) : -1;
    const consider = (j: number, value: number): void => {
      const loss = kept - value;
      all.push({ g, j, loss, key: loss * (0.5 + pick.even()) });
    };
    if (now >= 0 && model.must[g] === 0) consider(-1, 0);
    for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) if (j !== now && (open >> model.phase[j]!) % 2 !== 0) consider(j, reduced[j]!);
  }
  all.sort((a, b) => a.key - b.key || a.g - b.g || a.j - b.j);
  all.length = Math.min(all.length, pick.most);
  all.sort((a, b) => a.loss - b.loss || a.g - b.g || a.j - b.j);
  const count = all.length;
  const moves = { count, group: new Int32Array(count), item: new Int32Array(count), gain: new Float64Array(count), loss: new Float64Array(count), cost: new Float64Array(count * T), minutes: new Float64Array(count * T) };
  all.forEach(({ g, j, loss }, k) => {
    moves.group[k] = g;
    moves.item[k] = j;
    moves.loss[k] = loss;
    for (const [item, sign] of [[state.item[g]!, -1], [j, 1]] as const) {
      if (item < 0) continue;
      moves.gain[k]! += sign * model.value[item]!;
      moves.cost[k * T + model.phase[item]!]! += sign * model.cost[item]!;
      moves.minutes[k * T + model.phase[item]!]! += sign * model.minutes[item]!;
    }
  });
  return moves;
}
