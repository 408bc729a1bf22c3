import type { PlanState } from './plan-state.js';
import type { PricedItems } from './priced-items.js';

/** Worth per priced resources: what is taken first while limits last. */
function rankOf(priced: PricedItems, j: number): number {
  const worth = priced.model.value[j]!;
  const paid = worth - priced.reduced[j]!;
  return paid > 0 ? worth / paid : worth > 0 ? Infinity : -Infinity;
}

/** Puts the best item of a group that fits; its relaxed item first. */
function place(state: PlanState, priced: PricedItems, at: { g: number; wanted: number }): void {
  const { model } = priced;
  if (at.wanted >= 0 && state.fits(at.wanted)) {
    state.put(at.wanted);
    return;
  }
  for (let i = model.itemStart[at.g]!; i < model.itemStart[at.g + 1]!; i++) {
    const j = priced.order[i]!;
    if (model.must[at.g] === 0 && priced.reduced[j]! <= 0) return;
    if (state.fits(j)) {
      state.put(j);
      return;
    }
  }
}

/** Units that spend too little in a phase lose what they have there, unless it must be. */
function dropShort(state: PlanState, priced: PricedItems): void {
  const { model } = priced;
  model.units.forEach((unit, u) => {
    if (state.spendsEnough(u)) return;
    const T = model.of.phases.length;
    for (let g = unit.from; g < unit.to; g++) {
      const j = state.item[g]!;
      if (j >= 0 && model.must[g] === 0 && state.spend[u * T + model.phase[j]!]! < unit.minSpend) state.clear(g);
    }
  });
}

/** Visits that take off more than what is done in them is worth are not made. */
function dropUnpaid(state: PlanState, priced: PricedItems): void {
  const { model } = priced;
  model.units.forEach((unit, u) => {
    if (!unit.visits) return;
    unit.visitPrice.forEach((price, t) => {
      if (price === 0 || state.count[u * unit.visitPrice.length + t] === 0) return;
      const own = Array.from({ length: unit.to - unit.from }, (_, i) => unit.from + i).filter((g) => state.item[g]! >= 0 && model.phase[state.item[g]!] === t);
      const worth = own.reduce((sum, g) => sum + model.value[state.item[g]!]!, 0);
      if (worth < price && own.every((g) => model.must[g] === 0)) for (const g of own) state.clear(g);
    });
  });
}

/**
 * Takes the change of one group that earns most, while any fits: first for what is visited already, then anywhere.
 *
 * @param state plan, changed in place
 * @param priced the part at its prices
 */
export function fillPlan(state: PlanState, priced: PricedItems): void {
  const { model } = priced;
  const groups = Array.from(model.groups.keys()).sort((a, b) => priced.tension(a) - priced.tension(b) || a - b);
  for (let pass = 0; pass < 3; pass++) {
    let changed = false;
    for (const g of groups) {
      const now = state.item[g]!;
      const kept = state.value - state.brokenAround([g]);
      state.clear(g);
      const without = state.value;
      let best = now;
      let most = kept - without;
      if (model.must[g] === 0 && -state.brokenAround([g]) > most && state.spendsEnough(model.unitOf[g]!)) [best, most] = [-1, -state.brokenAround([g])];
      for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) {
        if (j === now || model.value[j]! <= most || !state.fits(j)) continue;
        state.put(j);
        const worth = state.value - without - state.brokenAround([g]);
        if (worth > most && state.spendsEnough(model.unitOf[g]!)) [best, most] = [j, worth];
        state.clear(g);
      }
      if (best >= 0) state.put(best);
      changed ||= best !== now;
    }
    if (!changed) return;
  }
}

/**
 * A first plan from a relaxed choice: what must be, then the rest by worth per priced resource while it fits, then filling.
 *
 * @param state emptied and filled in place
 * @param priced the part at its prices
 * @param relaxed item of each group in the relaxed choice
 * @returns worth of the plan, −∞ when something that must be is missing
 */
export function firstPlan(state: PlanState, priced: PricedItems, relaxed: Int32Array): number {
  const { model } = priced;
  for (let g = 0; g < relaxed.length; g++) state.clear(g);
  const groups = Array.from(relaxed.keys());
  const rank = groups.map((g) => (relaxed[g]! < 0 ? -Infinity : rankOf(priced, relaxed[g]!)));
  groups.sort((a, b) => model.must[b]! - model.must[a]! || rank[b]! - rank[a]! || a - b);
  for (const g of groups) if (relaxed[g]! >= 0 || model.must[g] === 1) place(state, priced, { g, wanted: relaxed[g]! });
  dropShort(state, priced);
  dropUnpaid(state, priced);
  fillPlan(state, priced);
  return state.complete() ? state.total() : -Infinity;
}
