import type { Relaxation } from './relaxation.js';
import type { Restriction } from './restriction.js';

/** Single groups without visits: what loses more than the room cannot be in a better plan. */
function fixPlain(relaxation: Relaxation, at: { u: number; room: number; within: Restriction }): void {
  const { model, reduced } = relaxation;
  const unit = model.units[at.u]!;
  for (let g = unit.from; g < unit.to; g++) {
    const chosen = relaxation.chosen[g]!;
    const best = chosen < 0 ? 0 : reduced[chosen]!;
    for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) if (best - reduced[j]! > at.room) at.within.item[j] = 0;
    if (best > at.room) at.within.must[g] = 1;
  }
}

/** Units with visits: sets of phases, items and leaving out, each with the least it loses. */
function fixVisits(relaxation: Relaxation, at: { u: number; room: number; within: Restriction }): void {
  const { model, reduced } = relaxation;
  const { u, room, within } = at;
  const unit = model.units[u]!;
  const T = model.of.phases.length;
  const top = relaxation.unitValue[u]!;
  const size = unit.to - unit.from;
  // Best value of the unit without the group itself: over sets that hold the phase, and over all sets.
  const beside = new Float64Array(size * T).fill(-Infinity);
  const besideNone = new Float64Array(size).fill(-Infinity);
  let some = 0;
  let every = -1;
  const forced = within.forced[u]!;
  const free = within.may[u]! & ~forced;
  for (let sub = free; ; sub = (sub - 1) & free) {
    const open = sub | forced;
    const value = relaxation.openValue(u, open, within);
    if (top - value <= room) {
      some |= open;
      every &= open;
    }
    for (let i = 0; i < size; i++) {
      const rest = value - relaxation.groupBest(unit.from + i, open, within);
      besideNone[i] = Math.max(besideNone[i]!, rest);
      for (let t = 0; t < T; t++) if ((open >> t) % 2 !== 0) beside[i * T + t] = Math.max(beside[i * T + t]!, rest);
    }
    if (sub === 0) break;
  }
  within.may[u] = within.may[u]! & some;
  within.forced[u] = forced | (every & some);
  for (let i = 0; i < size; i++) {
    const g = unit.from + i;
    for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) {
      if (top - (beside[i * T + model.phase[j]!]! + reduced[j]!) > room) within.item[j] = 0;
    }
    if (top - besideNone[i]! > room) within.must[g] = 1;
  }
}

/**
 * Fixes what no plan worth the target can have: anything that loses more than bound − target at the prices just evaluated.
 *
 * @param relaxation just evaluated within this restriction
 * @param room bound − target
 * @param within restriction, tightened in place
 */
export function fixByLoss(relaxation: Relaxation, room: number, within: Restriction): void {
  relaxation.model.units.forEach((unit, u) => {
    if (!relaxation.oneFamilyLeft(u) || unit.sets.length > 0) return;
    (unit.visits ? fixVisits : fixPlain)(relaxation, { u, room, within });
  });
}
