import type { Classes } from './classes.js';

/** Steps along the upper hulls of all classes: class and item reached, what the step costs and earns. */
export interface HullSteps {
  readonly count: number;
  readonly ofClass: Int32Array;
  readonly item: Int32Array;
  readonly weight: Float64Array;
  /** Profit per weight of the step, falling inside a class. */
  readonly slope: Float64Array;
}

/**
 * Upper hull of each class from its lightest item on.
 *
 * @param classes undominated, see classesOf
 * @returns steps class by class, slopes strictly falling inside a class
 * @throws never
 * @source Pisinger, Algorithms for Knapsack Problems, DIKU report 95/1, section 7.2 (LP-dominance)
 */
export function hullSteps(classes: Classes): HullSteps {
  const { count, start, weight, profit } = classes;
  const most = Math.max(0, weight.length - count);
  const out = { ofClass: new Int32Array(most), item: new Int32Array(most), weight: new Float64Array(most), slope: new Float64Array(most) };
  let at = 0;
  for (let i = 0; i < count; i++) {
    const first = at;
    let from = start[i]!;
    for (let j = start[i]! + 1; j < start[i + 1]!; j++) {
      let slope = (profit[j]! - profit[from]!) / (weight[j]! - weight[from]!);
      while (at > first && slope >= out.slope[at - 1]!) {
        at--;
        from = at > first ? out.item[at - 1]! : start[i]!;
        slope = (profit[j]! - profit[from]!) / (weight[j]! - weight[from]!);
      }
      out.ofClass[at] = i;
      out.item[at] = j;
      out.weight[at] = weight[j]! - weight[from]!;
      out.slope[at++] = slope;
      from = j;
    }
  }
  return { count: at, ...out };
}

/** Where the linear relaxation stops: the price of weight, and the whole choice just before its one broken step. */
export interface BreakPoint {
  readonly slope: number;
  /** Item of each class. */
  readonly chosen: Int32Array;
  readonly weight: number;
  readonly profit: number;
}

/** Slope of the step at which the steps, taken steepest first, pass `room`; 0 when all fit. Three-way partition around a pivot. */
function breakSlope(steps: HullSteps, room: number): number {
  const slope = steps.slope.slice(0, steps.count);
  const weight = steps.weight.slice(0, steps.count);
  let low = 0;
  let high = steps.count;
  let left = room;
  const swap = (a: number, b: number): void => {
    const s = slope[a]!;
    const w = weight[a]!;
    slope[a] = slope[b]!;
    weight[a] = weight[b]!;
    slope[b] = s;
    weight[b] = w;
  };
  while (low < high) {
    const x = slope[low]!;
    const y = slope[(low + high) >> 1]!;
    const z = slope[high - 1]!;
    const pivot = Math.max(Math.min(x, y), Math.min(Math.max(x, y), z));
    let above = low;
    let below = high;
    let aboveWeight = 0;
    let equalWeight = 0;
    for (let i = low; i < below; ) {
      if (slope[i]! > pivot) {
        aboveWeight += weight[i]!;
        swap(i++, above++);
      } else if (slope[i]! < pivot) swap(i, --below);
      else equalWeight += weight[i++]!;
    }
    if (aboveWeight > left) high = above;
    else if (aboveWeight + equalWeight > left) return pivot;
    else {
      left -= aboveWeight + equalWeight;
      low = below;
    }
  }
  return 0;
}

/**
 * Optimum of the linear relaxation: hull steps of all classes, steepest first, until the capacity is used.
 *
 *   bound = profit + slope × (capacity − weight)
 *
 * @param classes with lightest items that fit together
 * @param steps their hull steps
 * @returns price of weight and the whole choice before the broken step
 * @throws never
 * @source Pisinger 95/1, section 7.2; Zemel 1984 for finding the slope in linear time
 */
export function breakPoint(classes: Classes, steps: HullSteps): BreakPoint {
  const chosen = classes.start.slice(0, classes.count);
  let weight = 0;
  for (let i = 0; i < classes.count; i++) weight += classes.weight[chosen[i]!]!;
  const slope = breakSlope(steps, classes.capacity - weight);
  for (let s = 0; s < steps.count; s++) {
    if (steps.slope[s]! <= slope) continue;
    chosen[steps.ofClass[s]!] = steps.item[s]!;
    weight += steps.weight[s]!;
  }
  for (let s = 0; s < steps.count; s++) {
    if (steps.slope[s] !== slope || slope === 0) continue;
    if (weight + steps.weight[s]! > classes.capacity) break;
    chosen[steps.ofClass[s]!] = steps.item[s]!;
    weight += steps.weight[s]!;
  }
  let profit = 0;
  for (let i = 0; i < classes.count; i++) profit += classes.profit[chosen[i]!]!;
  return { slope, chosen, weight, profit };
}
