import { child, Shares, type Branch } from './branching.js';
import { ROUNDING } from './core-order.js';
import { decidedNode, halves, isDecided } from './decided-node.js';
import { joinHalves } from './join-halves.js';
import { worthOf } from './plan-state.js';
import { propagate } from './propagation.js';
import { NodeQueue } from './node-queue.js';
import { fixByLoss } from './reduced-fixing.js';
import type { Relaxation } from './relaxation.js';
import { noRestriction, type Restriction } from './restriction.js';

/** What bounds the tree. */
export interface TreeLimits {
  readonly mostNodes: number;
  readonly expired: () => boolean;
  readonly better: (worth: number, items: Int32Array) => void;
  /** Called with the relaxed choice and prices of a node in which no visit is open any more; gives the best worth known and its work in nodes. */
  readonly visitsDecided?: (chosen: Int32Array, price: Float64Array) => { readonly worth: number; readonly work: number };
}

/** A bounded node with the question that splits it. */
interface TreeNode {
  readonly within: Restriction;
  readonly price: Float64Array;
  readonly bound: number;
  readonly branch: Branch;
  readonly depth: number;
}

/** What the tree has shown. */
export interface TreeAnswer {
  /** Best worth known, from the tree or handed in; −∞ when there is no plan. */
  readonly worth: number;
  readonly items: Int32Array | null;
  /** No plan is worth more; equal to worth when proved. */
  readonly bound: number;
  readonly nodes: number;
  /** Nodes, and joins and plans counted in nodes. */
  readonly work: number;
}

/** Steps on the prices in a node, and at the root. */
const STEPS = 30;
/** Sets of visits for which a plan is made outside the tree. */
const MOST_DECIDED = 30;
/** Combinations of a half, at most: about 100 MB. */
const MOST_COMBINATIONS = 4e5;
/** Combinations that take about as long as bounding a node. */
const COMBINATIONS_A_NODE = 800;
/** Pairs looked at in a join that take about as long as bounding a node. */
const LOOKS_A_NODE = 20_000;

/**
 * Branch and bound over visits, phases and options, each node bounded by the Lagrangian relaxation with prices adjusted to
 * it, and thinned by propagation and reduced values.
 */
class Tree {
  nodes = 0;
  private readonly decided = new Set<string>();
  /** Nodes, and joins counted in nodes. */
  work = 0;
  worth: number;
  items: Int32Array | null = null;
  private readonly queue = new NodeQueue<TreeNode>();
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

  /** Opens the tree, most promising node first; gives the bound of what is left open, −∞ when nothing is. */
  search(root: Restriction, price: Float64Array, ceiling: number): number {
    this.open({ within: root, price, bound: ceiling, depth: 0 });
    while (this.queue.size > 0) {
      const node = this.queue.first()!;
      if (node.bound < this.worth + 1 - ROUNDING) return -Infinity;
      if (this.work >= this.limits.mostNodes || this.limits.expired()) return node.bound;
      this.queue.take();
      for (const yes of [node.branch.first, !node.branch.first]) {
        const within = child(this.relaxation.model, node.within, { branch: node.branch, yes });
        this.open({ within, price: node.price, bound: node.bound, depth: node.depth + 1 });
      }
    }
    return -Infinity;
  }

  /** Bounds a node and queues it unless it is closed. */
  private open(from: { within: Restriction; price: Float64Array; bound: number; depth: number }): void {
    const { model } = this.relaxation;
    const { within } = from;
    this.nodes++;
    this.work++;
    if (propagate(model, within) !== null) return;
    const price = from.price.slice();
    let bound = this.lower(within, price);
    if (bound < this.worth + 1 - ROUNDING) return;
    // What the prices rule out may leave so little that the node closes after all.
    fixByLoss(this.relaxation, bound - (this.worth + 1 - ROUNDING), within);
    if (propagate(model, within) !== null) return;
    bound = Math.min(from.bound, bound, this.lower(within, price));
    if (bound < this.worth + 1 - ROUNDING) return;
    const branch = this.shares.branch(within);
    if (branch === null) this.leaf(within, price);
    else {
      bound = Math.min(bound, this.afterJoin(within, price));
      if (bound < this.worth + 1 - ROUNDING) return;
      if (branch.kind === 'phase' || branch.kind === 'item') this.tellDecided(within, price);
      this.queue.add({ within, price, bound, branch, depth: from.depth });
    }
  }

  /** Lets the caller make a plan for visits decided for the first time. */
  private tellDecided(within: Restriction, price: Float64Array): void {
    const visits = within.forced.join();
    if (this.limits.visitsDecided === undefined || this.decided.has(visits) || this.decided.size >= MOST_DECIDED) return;
    this.decided.add(visits);
    const { worth, work } = this.limits.visitsDecided(this.relaxation.chosen, price);
    this.worth = Math.max(this.worth, worth);
    this.work += work;
  }

  /**
   * Looks at all combinations of a node in which only groups are undecided, as far below its bound as there is room for:
   * gives the bound that remains, −∞ when the node is closed.
   */
  private afterJoin(within: Restriction, price: Float64Array): number {
    const { relaxation } = this;
    if (!isDecided(relaxation, within)) return Infinity;
    relaxation.focus(within);
    const bound = relaxation.evaluate(price);
    relaxation.measureSlack();
    const whole = bound - (this.worth + 1 - ROUNDING);
    const all = decidedNode(relaxation, within, { price, room: whole });
    const { sides, count, room } = halves(all, MOST_COMBINATIONS);
    this.work += Math.ceil(count / COMBINATIONS_A_NODE);
    const { loss, items, looked } = joinHalves({ ...all, room }, sides);
    this.work += Math.ceil(looked / LOOKS_A_NODE);
    if (loss !== null) {
      const plan = relaxation.chosen.slice();
      for (const [g, j] of items) plan[g] = j;
      this.take(plan);
      return -Infinity;
    }
    return room >= whole ? -Infinity : bound - room;
  }

  /** Everything decided: the relaxed choice is the only one left, and counts if it keeps the limits. */
  private leaf(within: Restriction, price: Float64Array): void {
    this.relaxation.focus(within);
    this.relaxation.evaluate(price);
    this.relaxation.measureSlack();
    if (this.keepsLimits()) this.take(this.relaxation.chosen);
  }

  private keepsLimits(): boolean {
    return this.relaxation.rows.active.every((r) => this.relaxation.slack[r]! >= 0);
  }

  /** Records a choice that keeps the limits as a plan if it is better. */
  private take(chosen: Int32Array): void {
    const worth = worthOf(this.relaxation.model, chosen);
    if (worth <= this.worth) return;
    this.worth = worth;
    this.items = chosen.slice();
    this.limits.better(worth, this.items);
  }

  /** Steps the prices towards a bound below the target; leaves the relaxation evaluated at the best prices met. */
  private lower(within: Restriction, price: Float64Array): number {
    const { relaxation } = this;
    const { active } = relaxation.rows;
    relaxation.focus(within);
    this.shares.reset();
    let best = Infinity;
    const at = price.slice();
    let pace = 1;
    let idle = 0;
    for (let step = 0; step < STEPS; step++) {
      const bound = relaxation.evaluate(at);
      if (bound < best) {
        idle = bound < best - 1e-4 * Math.abs(best) ? 0 : idle + 1;
        best = bound;
        price.set(at);
      } else idle++;
      if (bound < this.worth + 1 - ROUNDING) return bound;
      relaxation.measureSlack();
      this.shares.add(relaxation.chosen, relaxation.open);
      if (this.keepsLimits()) this.take(this.relaxation.chosen);
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
    return Math.min(best, relaxation.evaluate(price));
  }
}

/**
 * Searches a part to the end, or as far as the limits allow.
 *
 * @param relaxation of the part
 * @param price prices to start from
 * @param from the best plan known (−∞ without one), its bound, limits, and what is fixed beforehand: then the bound holds for that only
 * @returns the best plan, and the bound that the tree has shown
 */
export function searchTree(relaxation: Relaxation, price: Float64Array, from: { readonly worth: number; readonly bound: number; readonly limits: TreeLimits; readonly within?: Restriction }): TreeAnswer {
  const { model } = relaxation;
  // Less than any plan can be worth, so that even the first plan is an improvement.
  let floor = -1;
  for (const v of model.value) floor -= Math.abs(v);
  for (const { price: off } of model.together) floor -= off;
  const tree = new Tree(relaxation, from.limits, { worth: from.worth, floor });
  const bound = tree.search(from.within ?? noRestriction(model), price, from.bound);
  const worth = tree.worth === floor ? -Infinity : tree.worth;
  return { worth, items: tree.items, bound: Math.max(worth, Math.min(bound, from.bound)), nodes: tree.nodes, work: tree.work };
}
