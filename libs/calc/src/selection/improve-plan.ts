import { evenNumbers } from './even-numbers.js';
import { Exchange } from './exchange.js';
import { fillPlan } from './first-plan.js';
import { Neighbourhood, type OpenPart } from './neighbourhood.js';
import type { PlanState } from './plan-state.js';
import type { PricedItems } from './priced-items.js';

/** What bounds the improvement. */
export interface ImproveLimits {
  /** Rounds, each from a shaken plan. */
  readonly mostRounds: number;
  /** Parts opened between two exchanges. */
  readonly openings: number;
  readonly mostNodes: number;
  /** Steps of all rounds together. */
  readonly mostWork: number;
  readonly expired: () => boolean;
  readonly better: (worth: number) => void;
}

/** Most groups opened at once with all their visits. */
const MOST_IN_UNIT = 40;

/** Chooses which part of the plan to open next. */
class Openings {
  private readonly byTension: readonly number[];
  private readonly visitUnits: readonly number[];

  constructor(
    private readonly priced: PricedItems,
    private readonly even: () => number,
  ) {
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

/** Groups set to another of their best ways when the plan is shaken. */
const SHAKEN = 3;
const WAYS = 4;

/** One plan being improved: parts of it opened and searched through, exchanges made, the whole shaken when stuck. */
class Improvement {
  worth: number;
  private best: Int32Array;
  private readonly even = evenNumbers(20260701);
  private readonly search: Neighbourhood;
  private readonly openings: Openings;
  private readonly exchange: Exchange;
  private round = 0;

  constructor(
    private readonly state: PlanState,
    private readonly priced: PricedItems,
    private readonly from: { readonly worth: number; readonly bound: number; readonly limits: ImproveLimits },
  ) {
    this.worth = from.worth;
    this.best = state.item.slice();
    this.search = new Neighbourhood(state, priced);
    this.openings = new Openings(priced, this.even);
    this.exchange = new Exchange(state, priced, this.even);
  }

  get nodes(): number {
    return this.search.spent + this.exchange.spent;
  }

  private get expired(): boolean {
    return this.nodes >= this.from.limits.mostWork || this.from.limits.expired();
  }

  /** Opens parts of the plan one after the other. */
  private open(worth: number): number {
    let now = worth;
    for (let k = 0; k < this.from.limits.openings && now < this.from.bound; k++, this.round++) {
      if (k % 16 === 0 && this.expired) break;
      now = this.search.improve(this.openings.next(this.round, 6 + (this.round % 9)), now, this.from.limits.mostNodes);
    }
    return now;
  }

  private shake(): void {
    const { state, priced } = this;
    const { model } = priced;
    for (const g of this.openings.next(1, SHAKEN).groups) {
      const way = priced.order[model.itemStart[g]! + Math.floor(this.even() * WAYS)];
      if (way === undefined || model.groupOf[way] !== g || model.must[g] === 1) continue;
      state.clear(g);
      if (state.fits(way)) state.put(way);
    }
    fillPlan(state, priced);
  }

  /** From the plan as it stands to one that neither openings nor exchanges improve. */
  settle(): void {
    let now = this.state.complete() ? this.state.total() : -Infinity;
    for (;;) {
      const opened = this.open(now);
      const exchanged = opened === -Infinity ? opened : this.exchange.round(opened);
      if (exchanged <= now || this.expired) {
        now = Math.max(exchanged, now);
        break;
      }
      now = exchanged;
    }
    if (now <= this.worth) return;
    this.worth = now;
    this.best = this.state.item.slice();
    this.from.limits.better(now);
  }

  run(): void {
    this.settle();
    for (let round = 1; round < this.from.limits.mostRounds && this.worth < this.from.bound && !this.expired; round++) {
      this.state.become(this.best);
      this.shake();
      this.settle();
    }
    this.state.become(this.best);
  }
}

/**
 * Improves a plan: parts of it are opened and searched through, pairs of changes exchanged, and the plan shaken when neither
 * helps, until the bound is met or the rounds are used.
 *
 * @param state plan, changed in place
 * @param priced the part at its best prices
 * @param from worth of the plan (−∞ when not complete), the bound, and limits
 * @returns worth of the plan and steps looked at
 */
export function improvePlan(state: PlanState, priced: PricedItems, from: { readonly worth: number; readonly bound: number; readonly limits: ImproveLimits }): { worth: number; nodes: number } {
  const improvement = new Improvement(state, priced, from);
  improvement.run();
  return { worth: improvement.worth, nodes: improvement.nodes };
}
