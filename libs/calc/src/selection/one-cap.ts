import type { Classes } from './classes.js';
import { coreOrder, openClasses } from './core-order.js';
import { searchCore, type SearchLimits } from './core-search.js';
import { breakPoint, hullSteps, type BreakPoint } from './hull-steps.js';

/** Optimum of a multiple-choice knapsack, or the best found with its bound. */
export interface OneCapAnswer {
  /** Item of each class. */
  readonly chosen: Int32Array;
  readonly profit: number;
  /** Price of weight at the break of the linear relaxation. */
  readonly slope: number;
  readonly proved: boolean;
  readonly states: number;
}

/** Lightest item of every class; null when even these do not fit. */
const fits = (classes: Classes): boolean => {
  let lightest = 0;
  for (let i = 0; i < classes.count; i++) lightest += classes.weight[classes.start[i]!]!;
  return lightest <= classes.capacity;
};

/** Changes one class at a time while that earns most and still fits: a first choice to prune against. */
function fill(classes: Classes, broken: BreakPoint): { chosen: Int32Array; profit: number } {
  const chosen = broken.chosen.slice();
  let room = classes.capacity - broken.weight;
  let { profit } = broken;
  for (let round = 0; round < 20; round++) {
    let gain = 0;
    let at = -1;
    let item = -1;
    for (let i = 0; i < classes.count; i++) {
      const base = chosen[i]!;
      for (let j = base + 1; j < classes.start[i + 1]!; j++) {
        if (classes.weight[j]! - classes.weight[base]! > room) break;
        const more = classes.profit[j]! - classes.profit[base]!;
        if (more > gain) {
          gain = more;
          at = i;
          item = j;
        }
      }
    }
    if (at < 0) break;
    room -= classes.weight[item]! - classes.weight[chosen[at]!]!;
    profit += gain;
    chosen[at] = item;
  }
  return { chosen, profit };
}

/**
 * Best choice under one cap: hull steps, break of the linear relaxation, filling, and an expanding core to the proof.
 *
 * @param classes see classesOf
 * @param limits what stops the search early
 * @returns the choice with proof or without; null when not even the cheapest items fit
 * @throws never
 * @source Pisinger, DIKU report 95/1, chapter 7
 */
export function solveOneCap(classes: Classes, limits: SearchLimits): OneCapAnswer | null {
  if (!fits(classes)) return null;
  const broken = breakPoint(classes, hullSteps(classes));
  const filled = fill(classes, broken);
  const slack = classes.capacity - broken.weight;
  const found = filled.profit - broken.profit;
  const core = coreOrder(openClasses(classes, broken, found));
  const best = searchCore(core, { slack, found }, limits);
  if (best.items === null) return { ...filled, slope: broken.slope, proved: best.proved, states: best.states };
  const chosen = broken.chosen.slice();
  for (const item of best.items) chosen[classOf(classes, item)] = item;
  return { chosen, profit: broken.profit + best.profit, slope: broken.slope, proved: best.proved, states: best.states };
}

/** Class an item belongs to, by halving. */
function classOf(classes: Classes, item: number): number {
  let low = 0;
  let high = classes.count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (classes.start[middle]! <= item) low = middle;
    else high = middle - 1;
  }
  return low;
}
