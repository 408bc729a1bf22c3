import type { PriceLimits } from './best-prices.js';

/** How much work a part may take: steps that are counted, and shares of its time where a clock was given. */
export interface Effort {
  /** Seconds of the reference machine, in steps; null: the built-in counts, or the clock alone where there is one. */
  readonly work_s: number | null;
  /** With a clock and no counted seconds the counts do not end the search. */
  readonly timed: boolean;
  /** Is this share of the part's time used? */
  readonly used: (share: number) => boolean;
  readonly better: (worth: number, bound: number) => void;
  readonly makeMaster?: PriceLimits['makeMaster'];
}

/** Steps a second of the reference machine: one core of the two shared ones the tables of docs/selection.md were measured on. */
const IMPROVE_STEPS_A_SECOND = 4e6;
/** Items priced in nodes of the tree a second. */
const TREE_ITEMS_A_SECOND = 1.5e6;
/** Items priced a second while prices are sought, and items placed a second in first plans. */
const PRICED_ITEMS_A_SECOND = 6e6;
const PLACED_ITEMS_A_SECOND = 6e5;

/** Counts that end each stage without a clock and without counted seconds: some seconds for a hundred groups with tens of options. */
const IMPROVE_WORK = 4e7;
const TREE_WORK = 8e6;
const MOST_PRICE_ROUNDS = 150;

/** Turns the effort allowed into counts for each stage and keeps account of what is used. */
export class Budget {
  private spent_s = 0;

  constructor(
    private readonly effort: Effort,
    private readonly items: number,
  ) {}

  /** Rounds of the best prices: at least enough for a bound worth having. */
  get priceRounds(): number {
    const { work_s } = this.effort;
    return work_s === null ? MOST_PRICE_ROUNDS : Math.max(25, Math.min(MOST_PRICE_ROUNDS, Math.floor((0.4 * work_s * PRICED_ITEMS_A_SECOND) / (this.items + 1))));
  }

  /** First plans made from relaxed choices. */
  get firstPlans(): number {
    const { work_s } = this.effort;
    return work_s === null ? Infinity : Math.max(1, Math.floor((0.15 * work_s * PLACED_ITEMS_A_SECOND) / (this.items + 1)));
  }

  /** Steps of improvement up to a share of the whole. */
  improveSteps(share: number, endless: boolean): number {
    const { work_s, timed } = this.effort;
    if (work_s !== null) return Math.max(0, share * work_s - this.spent_s) * IMPROVE_STEPS_A_SECOND;
    return endless && timed ? Infinity : IMPROVE_WORK;
  }

  /** Nodes of the tree up to a share of the whole. */
  treeNodes(share: number): number {
    const { work_s, timed } = this.effort;
    if (work_s !== null) return Math.ceil((Math.max(0, share * work_s - this.spent_s) * TREE_ITEMS_A_SECOND) / (this.items + 1));
    return timed ? Infinity : Math.ceil(TREE_WORK / (this.items + 1));
  }

  /** Nodes that take about as long as these steps of improvement. */
  nodesOf(steps: number): number {
    return this.effort.work_s === null ? 0 : Math.ceil((steps / IMPROVE_STEPS_A_SECOND) * (TREE_ITEMS_A_SECOND / (this.items + 1)));
  }

  chargeSteps(steps: number): void {
    this.spent_s += steps / IMPROVE_STEPS_A_SECOND;
  }

  chargeNodes(nodes: number): void {
    this.spent_s += (nodes * (this.items + 1)) / TREE_ITEMS_A_SECOND;
  }
}
