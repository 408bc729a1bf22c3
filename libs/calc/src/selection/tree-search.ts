import { child, Shares, type Branch } from './branching.js';
import { ROUNDING } from './core-order.js';
import { isDecided } from './decided-node.js';
import { searchDecided } from './decided-search.js';
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
  /** Combinations joined when last looked at; infinite where joining is of no use any more. */
  readonly joined: number;
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
/** Combinations of a half at first, at most, and how many times more when a node is looked at again. */
const FIRST_COMBINATIONS = 4e5;
const MOST_COMBINATIONS = 1e8;
const MORE_COMBINATIONS = 8;
/** Every so many nodes picked by their bound one is dived from. */
const PICKS_A_DIVE = 16;
/** Combinations that take about as long as pricing an item. */
const COMBINATIONS_AN_ITEM = 2;

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
    this.add(this.open({ within: root, price, bound: ceiling, depth: 0 }));
    for (let picked = 0; this.queue.size > 0; picked++) {
      const node = this.queue.first()!;
      if (node.bound < this.worth + 1 - ROUNDING) return -Infinity;
      if (this.ended) return node.bound;
      this.queue.take();
      if (node.joined < Infinity) this.add(this.deepen(node));
      else this.dive(node, picked % PICKS_A_DIVE === 0 ? Infinity : 1);
    }
    return -Infinity;
  }

  private get ended(): boolean {
    return this.work >= this.limits.mostNodes || this.limits.expired();
  }

  private add(node: TreeNode | null): void {
    if (node !== null) this.queue.add(node);
  }

  /** Splits a node, then the answer with the higher bound, and so on while visits or films are open: plans come early, and what they rule out with them. */
  private dive(from: TreeNode, most: number): void {
    let node: TreeNode | null = from;
    for (let steps = 0; node !== null && steps < most && !this.ended; steps++) {
      if (steps > 0 && node.branch.kind !== 'visit' && node.branch.kind !== 'family') break;
      const first = this.answer(node, node.branch.first);
      const second = this.answer(node, !node.branch.first);
      const better = (second?.bound ?? -Infinity) > (first?.bound ?? -Infinity);
      this.add(better ? first : second);
      node = better ? second : first;
    }
    this.add(node);
  }

  /** Opens one answer of a node. */
  private answer({ branch, within, price, bound, depth }: TreeNode, yes: boolean): TreeNode | null {
    return this.open({ within: child(this.relaxation.model, within, { branch, yes }), price, bound, depth: depth + 1 });
  }

  /** Bounds a node; null when it is closed. */
  private open(from: { within: Restriction; price: Float64Array; bound: number; depth: number }): TreeNode | null {
    const { model } = this.relaxation;
    const { within } = from;
    this.nodes++;
    this.work++;
    if (propagate(model, within) !== null) return null;
    const price = from.price.slice();
    let bound = this.lower(within, price);
    if (bound < this.worth + 1 - ROUNDING) return null;
    // What the prices rule out may leave so little that the node closes after all.
    fixByLoss(this.relaxation, bound - (this.worth + 1 - ROUNDING), within);
    if (propagate(model, within) !== null) return null;
    bound = Math.min(from.bound, bound, this.lower(within, price));
    if (bound < this.worth + 1 - ROUNDING) return null;
    const branch = this.shares.branch(within);
    if (branch === null) {
      this.leaf(within, price);
      return null;
    }
    const node: TreeNode = { within, price, bound, branch, depth: from.depth, joined: isDecided(this.relaxation, within) ? 0 : Infinity };
    if (branch.kind === 'phase' || branch.kind === 'item') this.tellDecided(within, price);
    return node.joined === 0 ? this.deepen(node) : node;
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

  /** Joins the combinations of a node in which only groups are undecided, more of them each time; null when it is closed. */
  private deepen(node: TreeNode): TreeNode | null {
    const { limits, relaxation } = this;
    const anItem = COMBINATIONS_AN_ITEM * (relaxation.model.option.length + 1);
    // Half of what is left at most: each of the two halves may have so many.
    const first = node.depth === 0 ? FIRST_COMBINATIONS : FIRST_COMBINATIONS / 8;
    const most = Math.max(first, Math.min(node.joined * MORE_COMBINATIONS, MOST_COMBINATIONS, ((limits.mostNodes - this.work) * anItem) / 2));
    const answer = searchDecided(relaxation, node, { worth: this.worth, most, probe: node.joined === 0 ? 2 * first : 0, expired: limits.expired });
    this.work += 1 + Math.ceil(answer.heard / anItem);
    if (answer.plan !== null) this.take(answer.plan);
    const bound = Math.min(node.bound, answer.bound);
    if (bound < this.worth + 1 - ROUNDING) return null;
    return { ...node, bound, joined: answer.whole && most < MOST_COMBINATIONS ? most : Infinity };
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
