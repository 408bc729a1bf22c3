import { bestPrices, type BestPrices } from './best-prices.js';
import type { Compiled } from './compiled.js';
import { Budget, type Effort } from './effort.js';
import { firstPlan } from './first-plan.js';
import { improvePlan, type ImproveLimits } from './improve-plan.js';
import type { IndependentPart } from './independent-parts.js';
import type { Multipliers } from './multipliers.js';
import type { PartAnswer } from './part-answer.js';
import { partModel, type PartModel } from './part-model.js';
import { PlanState } from './plan-state.js';
import { keepPrices, priceRows } from './price-rows.js';
import { PricedItems } from './priced-items.js';
import { propagate } from './propagation.js';
import { Relaxation } from './relaxation.js';
import { noRestriction } from './restriction.js';
import { searchTree, type TreeAnswer, type TreeLimits } from './tree-search.js';
import { wholeBound } from './bound-rounding.js';

const FIRST_ROUNDS = 3;
const LAST_ROUNDS = 4;
const OPENINGS = 100;
const NODES_IN_ROUND = 4000;
/** Parts with more items than this are not searched to the end. */
const MOST_TREE_ITEMS = 20_000;
/** Visited buildings from which on their visits are settled first. */
const MANY_VISITED = 30;
/** Blocks the built-in simplex mixes at most; a solver handed in takes one a unit. */
const MOST_BLOCKS = 64;

/** The search of one part while it runs. */
class PartSearch {
  readonly state: PlanState;
  worth = -Infinity;
  proved = false;
  states = 0;
  private readonly effort: Effort;
  private readonly budget: Budget;
  private readonly priced: PricedItems;
  private ceiling: number;
  private told = -Infinity;

  constructor(
    private readonly relaxation: Relaxation,
    private readonly prices: BestPrices,
    allowed: { readonly effort: Effort; readonly budget: Budget },
  ) {
    this.effort = allowed.effort;
    this.budget = allowed.budget;
    this.state = new PlanState(relaxation.model);
    this.priced = new PricedItems(relaxation.model, relaxation.rows, prices.price);
    this.ceiling = wholeBound(prices.bound, prices.size);
  }

  /** The best of the plans made from the relaxed choices. */
  first(): void {
    let best: Int32Array | null = null;
    for (const choice of [...this.prices.choices].reverse().slice(0, this.budget.firstPlans)) {
      const worth = firstPlan(this.state, this.priced, choice);
      if (worth > this.worth || best === null) [this.worth, best] = [worth, this.state.item.slice()];
      if (this.effort.used(0.3)) break;
    }
    if (best !== null) this.state.become(best);
    this.tell(this.worth);
  }

  improve(rounds: number, share: number): void {
    if (this.done) return;
    const answer = improvePlan(this.state, this.priced, { worth: this.worth, bound: this.ceiling, limits: this.limits(rounds, share) });
    this.worth = answer.worth;
    this.states += answer.nodes;
    this.budget.chargeSteps(answer.nodes);
  }

  /**
   * The best plan whose visits are those the best prices mix: what no plan in the mix visits stays unvisited. With few buildings the whole tree
   * comes to plans as soon.
   */
  settleVisits(share: number): void {
    const { model } = this.relaxation;
    const visited = model.units.filter(({ visits }) => visits).length;
    if (this.done || model.option.length > MOST_TREE_ITEMS || visited < MANY_VISITED) return;
    const within = noRestriction(model);
    model.units.forEach((unit, u) => {
      if (!unit.visits) return;
      within.forced[u] = this.prices.mixed.forced[u]!;
      within.may[u] = this.prices.mixed.may[u]!;
    });
    const answer = searchTree(this.relaxation, this.prices.price, { worth: this.worth, bound: this.prices.bound, within, limits: this.treeLimits(share) });
    this.keep(answer);
  }

  /** A plan made and improved at the prices of a node whose visits are decided; kept if it is better. */
  private planFor(chosen: Int32Array, at: { price: Float64Array; share: number }): { worth: number; work: number } {
    const state = new PlanState(this.relaxation.model);
    const priced = new PricedItems(this.relaxation.model, this.relaxation.rows, at.price);
    const worth = firstPlan(state, priced, chosen);
    const answer = improvePlan(state, priced, { worth, bound: this.ceiling, limits: this.limits(1, at.share) });
    this.states += answer.nodes;
    if (answer.worth > this.worth) {
      this.worth = answer.worth;
      this.state.become(state.item);
    }
    return { worth: this.worth, work: this.budget.nodesOf(answer.nodes) };
  }

  private treeLimits(share: number): TreeLimits {
    return {
      mostNodes: this.budget.treeNodes(share),
      expired: () => this.effort.used(share),
      better: (worth) => { this.tell(worth); },
      visitsDecided: (chosen, price) => this.planFor(chosen, { price, share }),
    };
  }

  private limits(rounds: number, share: number): ImproveLimits {
    return {
      mostRounds: rounds,
      openings: OPENINGS,
      mostNodes: NODES_IN_ROUND,
      mostWork: this.budget.improveSteps(share, rounds === Infinity),
      expired: () => this.effort.used(share),
      better: (worth: number) => { this.tell(worth); },
    };
  }

  private keep(answer: TreeAnswer): void {
    this.states += answer.nodes;
    this.budget.chargeNodes(answer.work);
    if (answer.items === null || answer.worth <= this.worth) return;
    this.worth = answer.worth;
    this.state.become(answer.items);
  }

  /** Branch and bound, for parts small enough. */
  prove(share: number): void {
    const items = this.relaxation.model.option.length;
    if (this.done || items > MOST_TREE_ITEMS) return;
    const answer = searchTree(this.relaxation, this.prices.price, { worth: this.worth, bound: this.prices.bound, limits: this.treeLimits(share) });
    this.keep(answer);
    this.ceiling = Math.min(this.ceiling, answer.bound === -Infinity ? -Infinity : wholeBound(answer.bound, this.prices.size));
    this.proved = answer.bound <= this.worth;
  }

  get done(): boolean {
    return this.proved || this.worth >= this.ceiling;
  }

  get bound(): number {
    return this.proved ? this.worth : this.ceiling;
  }

  /** Tells of a plan if it is the best yet told of. */
  private tell(worth: number): void {
    if (worth <= this.told) return;
    this.told = worth;
    this.effort.better(worth, this.ceiling);
  }
}

function answerOf(model: PartModel, prices: BestPrices, search: PartSearch): PartAnswer {
  if (search.worth === -Infinity) {
    const why = search.proved ? 'every choice was ruled out by search: what must be taken does not fit the limits' : 'no choice that takes all that must be taken was found within the limits of the search';
    return { found: false, impossible: search.proved, why, states: search.states };
  }
  const items = [...search.state.item].filter((j) => j >= 0);
  return {
    found: true,
    options: items.map((j) => model.option[j]!),
    phases: items.map((j) => model.phase[j]!),
    value: search.worth,
    bound: prices.bound,
    size: prices.size,
    shown: search.bound,
    states: search.states,
  };
}

/**
 * Solves a part with several limits: best prices, plans made from the relaxed choices, improvement by opening parts of the
 * plan, and branch and bound where the part is small; more improvement with what effort is left.
 *
 * @param of compiled problem
 * @param part one of its independent parts
 * @param to where the prices go, and the effort allowed
 * @returns the best choice found with its bound, or why there is none
 * @throws never
 * @source Lagrangian relaxation and Dantzig–Wolfe decomposition by building
 */
export function solveSeveralCapsPart(of: Compiled, part: IndependentPart, to: { readonly multipliers: Multipliers; readonly effort: Effort }): PartAnswer {
  const model = partModel(of, part);
  const why = propagate(model, noRestriction(model));
  if (why !== null) return { found: false, impossible: true, why, states: 0 };
  const rows = priceRows(model);
  const relaxation = new Relaxation(model, rows);
  const { effort } = to;
  const budget = new Budget(effort, model.option.length);
  const prices = bestPrices(relaxation, {
    mostRounds: budget.priceRounds,
    mostBlocks: effort.makeMaster === undefined ? MOST_BLOCKS : Infinity,
    expired: () => effort.used(0.4),
    ...(effort.makeMaster === undefined ? {} : { makeMaster: effort.makeMaster }),
  });
  keepPrices(relaxation, prices.price, to.multipliers);
  const search = new PartSearch(relaxation, prices, { effort, budget });
  search.first();
  search.improve(FIRST_ROUNDS, 0.15);
  search.settleVisits(0.5);
  search.prove(0.9);
  search.improve(effort.timed || effort.work_s !== null ? Infinity : LAST_ROUNDS, 1);
  return answerOf(model, prices, search);
}
