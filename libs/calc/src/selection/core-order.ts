import type { Classes } from './classes.js';
import type { BreakPoint } from './hull-steps.js';

/** Slack on every comparison of a bound with a whole number: products stay below 1e11, so their rounding stays below 1e-4. */
export const ROUNDING = 1e-3;

/** A class the search may still change, measured from its item in the break choice; that item itself is (0, 0) and not listed. */
export interface OpenClass {
  readonly at: number;
  readonly weight: Float64Array;
  readonly profit: Float64Array;
  readonly item: Int32Array;
  /** Best profit per weight added, 0 if nothing heavier is left. */
  readonly up: number;
  /** Least profit per weight given up, infinite if nothing lighter is left. */
  readonly down: number;
}

function openClass(classes: Classes, broken: BreakPoint, pick: { at: number; items: readonly number[] }): OpenClass {
  const base = broken.chosen[pick.at]!;
  const weight = Float64Array.from(pick.items, (j) => classes.weight[j]! - classes.weight[base]!);
  const profit = Float64Array.from(pick.items, (j) => classes.profit[j]! - classes.profit[base]!);
  let up = 0;
  let down = Infinity;
  for (let k = 0; k < weight.length; k++) {
    const slope = profit[k]! / weight[k]!;
    if (weight[k]! > 0) up = Math.max(up, slope);
    else down = Math.min(down, slope);
  }
  return { at: pick.at, weight, profit, item: Int32Array.from(pick.items), up, down };
}

/**
 * Classes that can still matter: an item stays when the linear bound with it is above what is already found.
 *
 *   profit change + slope × (room − weight change) ≥ found + 1
 *
 * @param classes all classes
 * @param broken the break choice
 * @param found profit already reached, above that of the break choice
 * @returns open classes in the order of classes
 * @throws never
 * @source Pisinger, DIKU report 95/1, eq. 7.15
 */
export function openClasses(classes: Classes, broken: BreakPoint, found: number): OpenClass[] {
  const room = classes.capacity - broken.weight;
  const open: OpenClass[] = [];
  const items: number[] = [];
  for (let i = 0; i < classes.count; i++) {
    const base = broken.chosen[i]!;
    items.length = 0;
    for (let j = classes.start[i]!; j < classes.start[i + 1]!; j++) {
      const dw = classes.weight[j]! - classes.weight[base]!;
      const dp = classes.profit[j]! - classes.profit[base]!;
      if (j !== base && dp + broken.slope * (room - dw) >= found + 1 - ROUNDING) items.push(j);
    }
    if (items.length > 0) open.push(openClass(classes, broken, { at: i, items }));
  }
  return open;
}

/** A class of the core with the gradients of all classes after it: the two-sided bound of the states that leave it. */
export interface CoreClass extends OpenClass {
  readonly restUp: number;
  readonly restDown: number;
}

/**
 * Order of the core: by turns the class that gains most per weight added and the one that loses least per weight given up.
 *
 * @param open open classes
 * @returns the same classes, each with the best gradients of the classes still to come
 * @throws never
 * @source Pisinger, DIKU report 95/1, sections 7.4–7.6 and the two-gradient bound 7.24
 */
export function coreOrder(open: readonly OpenClass[]): CoreClass[] {
  const byUp = open.map((_, i) => i).sort((a, b) => open[b]!.up - open[a]!.up || a - b);
  const byDown = open.map((_, i) => i).sort((a, b) => open[a]!.down - open[b]!.down || a - b);
  const taken = new Uint8Array(open.length);
  let u = 0;
  let d = 0;
  const core: CoreClass[] = [];
  for (let turn = 0; core.length < open.length; turn++) {
    const next = turn % 2 === 0 ? byUp[u]! : byDown[d]!;
    taken[next] = 1;
    while (u < byUp.length && taken[byUp[u]!] === 1) u++;
    while (d < byDown.length && taken[byDown[d]!] === 1) d++;
    core.push({
      ...open[next]!,
      restUp: u < byUp.length ? open[byUp[u]!]!.up : 0,
      restDown: d < byDown.length ? open[byDown[d]!]!.down : Infinity,
    });
  }
  return core;
}
