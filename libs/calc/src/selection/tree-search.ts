import { child, Shares } from './branching.js';
import { ROUNDING } from './core-order.js';
import { worthOf } from './plan-state.js';
import { propagate } from './propagation.js';
import { fixByLoss } from './reduced-fixing.js';
import { noRestriction, type Relaxation, type Restriction } from './relaxation.js';

/** What bounds the tree. */
export interface TreeLimits {
  readonly mostNodes: number;
  readonly expired: () => boolean;
  readonly better: (worth: number, items: Int32Array) => void;
}

/** What the tree has shown. */
export interface TreeAnswer {
  /** Best worth known, from the tree or handed in; −∞ when there is no plan. */
  readonly worth: number;
  readonly items: Int32Array | null;
  /** No plan is worth more; equal to worth when proved. */
  readonly bound: number;
  readonly nodes: number;
}

/** Steps on the prices in a node, and at the root. */
const STEPS = 30;

/**
 * Branch and bound over visits, phases and options, each node bounded by the Lagrangian relaxation with prices adjusted to
 * it, and thinned by propagation and reduced values.
 */
class Tree {
  nodes = 0;
  worth: number;
  items: Int32Array | null = null;
  private readonly shares: Shares;
  private readonly scale: Float64Array;

  constructor(
    private readonly relaxation: Relaxation,
    private readonly limits: TreeLimits,
    from: { readonly worth: number; readonly floor: number },
  ) {
    this.worth = Math.max(from.worth, from.floor);
    this.shares = new Shares(relaxation.model);
    // Rows are measured in shares of their limit, so that cents and minutes weigh alike.
    let cost = 1;
    for (const c of relaxation.model.cost) cost = Math.max(cost, c);
    this.scale = relaxation.rows.limit.map((limit) => (limit > 0 ? limit : cost));
  }

  /** Bound of the subtree: no plan in it is worth more than this or the best known. */
  search(within: Restriction, price: Float64Array, parent: number): number {
    if (this.nodes >= this.limits.mostNodes || (this.nodes % 64 === 0 && this.limits.expired())) return parent;
    this.nodes++;
    if (propagate(this.relaxation.model, within) !== null) return -Infinity;
    const own = price.slice();
    let bound = this.lower(within, own);
    if (bound < this.worth + 1 - ROUNDING) return -Infinity;
    // What the prices rule out may leave so little that the node closes after all.
    fixByLoss(this.relaxation, bound - (this.worth + 1 - ROUNDING), within);
    if (propagate(this.relaxation.model, within) !== null) return -Infinity;
    bound = Math.min(bound, this.lower(within, own));
    if (bound < this.worth + 1 - ROUNDING) return -Infinity;
    bound = Math.min(bound, parent);
    const branch = this.shares.branch(within);
    if (branch === null) return this.leaf(within, own);
    let least = -Infinity;
    for (const yes of [branch.first, !branch.first]) {
      least = Math.max(least, this.search(child(this.relaxation.model, within, { branch, yes }), own, bound));
      if (bound < this.worth + 1 - ROUNDING) return -Infinity;
    }
    return least;
  }

  /** Everything decided: the relaxed choice is the only one left, and counts if it keeps the limits. */
  private leaf(within: Restriction, price: Float64Array): number {
    this.relaxation.evaluate(price, within);
    this.relaxation.measureSlack();
    if (this.keepsLimits()) this.take();
    return -Infinity;
  }

  private keepsLimits(): boolean {
    return this.relaxation.rows.active.every((r) => this.relaxation.slack[r]! >= 0);
  }

  /** Records the relaxed choice as a plan if it is better. */
  private take(): void {
    const worth = worthOf(this.relaxation.model, this.relaxation.chosen);
    if (worth <= this.worth) return;
    this.worth = worth;
    this.items = this.relaxation.chosen.slice();
    this.limits.better(worth, this.items);
  }

  /** Steps the prices towards a bound below the target; leaves the relaxation evaluated at the best prices met. */
  private lower(within: Restriction, price: Float64Array): number {
    const { relaxation } = this;
    const { active } = relaxation.rows;
    this.shares.reset();
    let best = Infinity;
    const at = price.slice();
    let pace = 1;
    let idle = 0;
    for (let step = 0; step < STEPS; step++) {
      const bound = relaxation.evaluate(at, within);
      if (bound < best) {
        idle = bound < best - 1e-4 * Math.abs(best) ? 0 : idle + 1;
        best = bound;
        price.set(at);
      } else idle++;
      if (bound < this.worth + 1 - ROUNDING) return bound;
      relaxation.measureSlack();
      this.shares.add(relaxation.chosen, relaxation.open);
      if (this.keepsLimits()) this.take();
      if (idle >= 4) {
        pace /= 2;
        idle = 0;
        at.set(price);
        if (pace < 0.05) break;
        continue;
      }
      let norm = 0;
      for (const r of active) {
        const s = relaxation.slack[r]! / this.scale[r]!;
        if (at[r]! > 0 || s < 0) norm += s * s;
      }
      if (norm === 0) break;
      const stride = (pace * (bound - this.worth)) / norm;
      for (const r of active) at[r] = Math.max(0, at[r]! - (stride * relaxation.slack[r]!) / (this.scale[r]! * this.scale[r]!));
    }
    return Math.min(best, relaxation.evaluate(price, within));
  }
}

/**
 * Searches a part to the end, or as far as the limits allow.
 *
 * @param relaxation of the part
 * @param price prices to start from
 * @param from the best plan known (−∞ without one), its bound, and limits
 * @returns the best plan, and the bound that the tree has shown
 */
export function searchTree(relaxation: Relaxation, price: Float64Array, from: { readonly worth: number; readonly bound: number; readonly limits: TreeLimits }): TreeAnswer {
  const { model } = relaxation;
  // Less than any plan can be worth, so that even the first plan is an improvement.
  let floor = -1;
  for (const v of model.value) floor -= Math.abs(v);
  for (const { price: off } of model.together) floor -= off;
  const tree = new Tree(relaxation, from.limits, { worth: from.worth, floor });
  const bound = tree.search(noRestriction(model), price, from.bound);
  const worth = tree.worth === floor ? -Infinity : tree.worth;
  return { worth, items: tree.items, bound: Math.max(worth, Math.min(bound, from.bound)), nodes: tree.nodes };
}
