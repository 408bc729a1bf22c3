import { ROUNDING } from './core-order.js';
import type { PlanState } from './plan-state.js';
import type { PricedItems } from './priced-items.js';

/** What is open in one step of the improvement: groups that may change, units whose visits may change. */
export interface OpenPart {
  readonly groups: readonly number[];
  /** Units, all of whose changeable groups are in `groups`, that may be visited in other phases. */
  readonly units: readonly number[];
}

/** One way to visit the open units. */
interface Visits {
  readonly open: readonly number[];
  /** Reduced value at best, less the price of new visits. */
  readonly ceiling: number;
}

/**
 * Looks through all ways to fill the open part, the rest of the plan fixed, that could beat the plan as it stands: a way is
 * dropped as soon as its reduced value cannot make up for it.
 *
 *   value of the rest + Σ price × limits left − price of new visits + Σ reduced values ≥ value to beat + 1
 */
export class Neighbourhood {
  private order: number[] = [];
  private ceiling: number[] = [];
  private openNow: Int32Array;
  private readonly best: Int32Array;
  private beat = 0;
  private base = 0;
  private whole = false;
  private nodes = 0;
  private touched: readonly number[] = [];
  /** Nodes of all calls, for limits and reports. */
  spent = 0;

  constructor(
    private readonly state: PlanState,
    private readonly priced: PricedItems,
  ) {
    const { model } = priced;
    this.openNow = new Int32Array(model.units.length);
    this.best = new Int32Array(model.groups.length).fill(-1);
  }

  /**
   * Improves the plan inside the open part.
   *
   * @param part what is open
   * @param current worth of the plan, or −∞ while it is not complete
   * @param mostNodes where to stop
   * @returns worth of the plan afterwards; the state is left at the better plan
   */
  improve(part: OpenPart, current: number, mostNodes: number): number {
    const { state, priced } = this;
    const { model } = priced;
    const T = model.of.phases.length;
    this.touched = [...new Set(part.groups.map((g) => model.unitOf[g]!))];
    for (const u of this.touched) this.openNow[u] = state.openOf(u);
    for (const g of part.groups) {
      this.best[g] = state.item[g]!;
      state.clear(g);
    }
    // Sets touched by open groups are taken as kept for the bound; what they cost is known at the leaf.
    const brokenOutside = state.allBroken() - state.brokenAround(part.groups);
    const rest = state.value - brokenOutside;
    this.beat = current;
    this.whole = current === -Infinity;
    this.nodes = mostNodes;
    const slack = priced.slackWorth(state);
    for (const visits of this.waysToVisit(part, T)) {
      if (rest + slack + visits.ceiling < this.beat + 1 - ROUNDING || this.nodes <= 0) break;
      part.units.forEach((u, i) => (this.openNow[u] = visits.open[i]!));
      this.base = rest + slack + this.prepare(part, visits);
      this.descend(0, 0);
    }
    this.spent += mostNodes - this.nodes;
    for (const g of part.groups) if (this.best[g]! >= 0) state.put(this.best[g]!);
    return this.beat;
  }

  /** Best reduced value of a group while its unit is visited in these phases only. */
  private ceilingOf(g: number, open: number): number {
    const { model, order, reduced } = this.priced;
    const must = model.must[g] === 1;
    for (let i = model.itemStart[g]!; i < model.itemStart[g + 1]!; i++) {
      const j = order[i]!;
      if ((open >> model.phase[j]!) % 2 !== 0) return must ? reduced[j]! : Math.max(0, reduced[j]!);
    }
    return must ? -Infinity : 0;
  }

  private openMask(u: number): number {
    return this.priced.model.units[u]!.visits ? this.openNow[u]! : -1;
  }

  /** Every combination of visits of the open units, the most promising first. */
  private waysToVisit(part: OpenPart, T: number): Visits[] {
    const { model, visitPrice } = this.priced;
    let ways: Visits[] = [{ open: [], ceiling: 0 }];
    const openUnits = new Set(part.units);
    for (const g of part.groups) {
      const u = model.unitOf[g]!;
      if (!openUnits.has(u)) ways[0] = { open: [], ceiling: ways[0]!.ceiling + this.ceilingOf(g, this.openMask(u)) };
    }
    for (const u of part.units) {
      const kept = this.state.openOf(u);
      const own = part.groups.filter((g) => model.unitOf[g] === u);
      let usable = kept;
      for (const g of own) for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) usable |= 1 << model.phase[j]!;
      const next: Visits[] = [];
      const free = usable & ~kept;
      for (let more = free; ; more = (more - 1) & free) {
        const open = kept | more;
        let ceiling = 0;
        for (let t = 0; t < T; t++) if ((more >> t) % 2 !== 0) ceiling -= visitPrice[u * T + t]!;
        for (const g of own) ceiling += this.ceilingOf(g, open);
        for (const way of ways) next.push({ open: [...way.open, open], ceiling: way.ceiling + ceiling });
        if (more === 0) break;
      }
      ways = next;
    }
    return ways.sort((a, b) => b.ceiling - a.ceiling);
  }

  /** Orders the groups, fewest promising items first, and sums their ceilings from the end; gives the price of new visits. */
  private prepare(part: OpenPart, visits: Visits): number {
    const { model } = this.priced;
    const own = part.groups.map((g) => ({ g, top: this.ceilingOf(g, this.openMask(model.unitOf[g]!)) }));
    own.sort((a, b) => b.top - a.top || a.g - b.g);
    this.order = own.map(({ g }) => g);
    this.ceiling = new Array<number>(own.length + 1).fill(0);
    let sum = 0;
    for (let i = own.length - 1; i >= 0; i--) this.ceiling[i] = sum += own[i]!.top;
    return visits.ceiling - sum;
  }

  private descend(depth: number, reducedSoFar: number): void {
    const { state, priced } = this;
    const { model } = priced;
    if (depth === this.order.length) {
      this.leaf();
      return;
    }
    const g = this.order[depth]!;
    const open = this.openMask(model.unitOf[g]!);
    const ahead = this.base + reducedSoFar + this.ceiling[depth + 1]!;
    let noneTried = model.must[g] === 1;
    for (let i = model.itemStart[g]!; i <= model.itemStart[g + 1]!; i++) {
      const j = i < model.itemStart[g + 1]! ? priced.order[i]! : -1;
      if (!noneTried && (j < 0 || priced.reduced[j]! < 0)) {
        noneTried = true;
        if (ahead < this.beat + 1 - ROUNDING) return;
        this.descend(depth + 1, reducedSoFar);
      }
      if (j < 0 || this.nodes <= 0 || ahead + priced.reduced[j]! < this.beat + 1 - ROUNDING) return;
      if ((open >> model.phase[j]!) % 2 === 0) continue;
      this.nodes--;
      if (!state.fits(j)) continue;
      state.put(j);
      this.descend(depth + 1, reducedSoFar + priced.reduced[j]!);
      state.clear(g);
    }
  }

  private leaf(): void {
    const { state } = this;
    if (state.value <= this.beat || !this.touched.every((u) => state.spendsEnough(u))) return;
    const worth = state.total();
    // A plan that was not complete before may still lack something outside the open part.
    if (worth <= this.beat || (this.whole && !state.complete())) return;
    this.beat = worth;
    for (const g of this.order) this.best[g] = state.item[g]!;
  }
}
