import { wholeBound } from './bound-rounding.js';
import { classesOf, type Classes } from './classes.js';
import type { Compiled } from './compiled.js';
import type { SearchLimits } from './core-search.js';
import type { IndependentPart } from './independent-parts.js';
import type { Multipliers } from './multipliers.js';
import { solveOneCap } from './one-cap.js';
import type { PartAnswer } from './part-answer.js';

/**
 * Is the part a plain multiple-choice knapsack: one phase, minutes that cannot run short, no visit, no limit or rule besides
 * the cap?
 *
 * @param of compiled problem
 * @param part one of its independent parts
 * @returns true when one cap is all there is
 * @throws never
 */
export function hasOneCapOnly(of: Compiled, part: IndependentPart): boolean {
  if (part.phases.length !== 1) return false;
  const inPart = new Set(part.groups);
  if (of.exclusive.some(({ a, b }) => inPart.has(a) && inPart.has(b))) return false;
  if (of.together.some(({ groups, price }) => price > 0 && groups.some((g) => inPart.has(g)))) return false;
  for (const g of part.groups) {
    const building = of.buildings[of.building[g]!];
    if (building === undefined) continue;
    if (building.visit > 0 || building.visitPrice.some((price) => price > 0) || building.visitMinutes > 0 || building.minSpend > 0 || building.oneFamily || building.cap < Infinity || building.owner >= 0) return false;
  }
  const { minutes } = of.phases[part.phases[0]!]!;
  if (minutes === Infinity) return true;
  let most = 0;
  for (const g of part.groups) {
    let ofGroup = 0;
    for (let o = of.optionStart[g]!; o < of.optionStart[g + 1]!; o++) ofGroup = Math.max(ofGroup, of.minutes[o]!);
    most += ofGroup;
  }
  return most <= minutes;
}

/** slope × capacity + Σ classes of the best profit − slope × weight: holds for any slope ≥ 0, whatever the hull made of it. */
function lagrangian(classes: Classes, slope: number): { bound: number; size: number } {
  let bound = slope * classes.capacity;
  let size = bound;
  for (let i = 0; i < classes.count; i++) {
    let best = -Infinity;
    for (let j = classes.start[i]!; j < classes.start[i + 1]!; j++) best = Math.max(best, classes.profit[j]! - slope * classes.weight[j]!);
    bound += best;
    size += Math.abs(best);
  }
  return { bound, size };
}

/**
 * Solves a part that has one cap only and writes its price of a cent.
 *
 * @param of compiled problem
 * @param part see hasOneCapOnly
 * @param to where the price goes, and what stops the search early
 * @returns the choice, proved unless the limits were reached
 * @throws never
 */
export function solveOneCapPart(of: Compiled, part: IndependentPart, to: { readonly multipliers: Multipliers; readonly limits: SearchLimits }): PartAnswer {
  const phase = part.phases[0]!;
  const classes = classesOf(of, part.groups, phase);
  if ('stuck' in classes) {
    return { found: false, impossible: true, why: `${of.groupIds[classes.stuck]!} must be taken, and none of its options fits phase ${phase}`, states: 0 };
  }
  const answer = solveOneCap(classes, to.limits);
  if (answer === null) {
    return { found: false, impossible: true, why: `the cheapest options of what must be taken cost more than the cap of phase ${phase}`, states: 0 };
  }
  to.multipliers.cap[phase] = answer.slope;
  const options: number[] = [];
  for (const item of answer.chosen) if (classes.option[item]! >= 0) options.push(classes.option[item]!);
  const lagrange = lagrangian(classes, answer.slope);
  return { found: true, options, phases: options.map(() => phase), value: answer.profit, ...lagrange, shown: answer.proved ? answer.profit : wholeBound(lagrange.bound, lagrange.size), states: answer.states };
}
