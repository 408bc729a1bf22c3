import { Neighbourhood, type OpenPart } from './neighbourhood.js';
import type { PlanState } from './plan-state.js';
import type { PricedItems } from './priced-items.js';

/** What bounds the improvement. */
export interface ImproveLimits {
  readonly mostRounds: number;
  readonly mostNodes: number;
  readonly expired: () => boolean;
  readonly better: (worth: number) => void;
}

/** Most groups opened at once with all their visits. */
const MOST_IN_UNIT = 40;

/** Even numbers 0 … 1 from a fixed seed: the same problem is always searched in the same way. */
function evenNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Chooses which part of the plan to open next. */
class Openings {
  private readonly even = evenNumbers(20260701);
  private readonly byTension: readonly number[];
  private readonly visitUnits: readonly number[];

  constructor(private readonly priced: PricedItems) {
    const { model } = priced;
    const tension = Float64Array.from(model.groups, (_, g) => priced.tension(g));
    this.byTension = Array.from(model.groups.keys()).filter((g) => tension[g]! < Infinity).sort((a, b) => tension[a]! - tension[b]! || a - b);
    this.visitUnits = Array.from(model.units.keys()).filter((u) => model.units[u]!.visits && model.units[u]!.to - model.units[u]!.from <= MOST_IN_UNIT);
  }

  /** Some groups, the undecided ones more often, and in every other round one or two buildings with their visits. */
  next(round: number, size: number): OpenPart {
    const { model } = this.priced;
    const groups = new Set<number>();
    const units: number[] = [];
    if (this.visitUnits.length > 0 && round % 2 === 0) {
      for (let k = round % 4 === 0 ? 1 : 2; k > 0; k--) {
        const u = this.visitUnits[Math.floor(this.even() * this.visitUnits.length)]!;
        if (units.includes(u)) continue;
        units.push(u);
        for (let g = model.units[u]!.from; g < model.units[u]!.to; g++) groups.add(g);
      }
    }
    const most = Math.min(this.byTension.length, groups.size + size);
    for (let tries = 0; groups.size < most && tries < 10 * size; tries++) {
      const x = this.even();
      groups.add(this.byTension[Math.floor(this.byTension.length * (round % 3 === 0 ? x : x * x))]!);
    }
    return { groups: [...groups].sort((a, b) => a - b), units: units.sort((a, b) => a - b) };
  }
}

/**
 * Improves a plan by opening parts of it and searching each part through, until the bound is met or the rounds are used.
 *
 * @param state plan, changed in place
 * @param priced the part at its best prices
 * @param from worth of the plan (−∞ when not complete), the bound, and limits
 * @returns worth of the plan and nodes looked at
 */
export function improvePlan(state: PlanState, priced: PricedItems, from: { worth: number; bound: number; limits: ImproveLimits }): { worth: number; nodes: number } {
  const { limits, bound } = from;
  const search = new Neighbourhood(state, priced);
  const openings = new Openings(priced);
  let { worth } = from;
  let size = 6;
  let idle = 0;
  for (let round = 0; round < limits.mostRounds && worth < bound; round++) {
    if (round % 16 === 0 && limits.expired()) break;
    const now = search.improve(openings.next(round, size), worth, limits.mostNodes);
    if (now > worth) {
      worth = now;
      idle = 0;
      limits.better(worth);
    } else if (++idle % 60 === 0 && size < 16) size++;
  }
  return { worth, nodes: search.spent };
}
