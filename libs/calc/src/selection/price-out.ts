import type { SelectionBuilding, SelectionGroup, SelectionMultipliers, SelectionProblem } from './problem.js';

/** The bound that a set of multipliers proves. */
export interface PricedOut {
  readonly bound: number;
  /** Sum of the magnitudes added up, for the rounding allowed. */
  readonly size: number;
  readonly findings: readonly string[];
}

/** Reduced values of one group, by phase: the best option of a family when its price is taken off; −∞ without one. */
type ByPhase = readonly number[];

class Pricing {
  private readonly exclusive = new Map<string, number>();
  readonly must: ReadonlySet<string>;
  size = 0;

  constructor(
    private readonly problem: SelectionProblem,
    private readonly m: SelectionMultipliers,
  ) {
    this.must = new Set(problem.must ?? []);
    problem.exclusive?.forEach((pair, e) => {
      for (const id of pair) this.exclusive.set(id, (this.exclusive.get(id) ?? 0) + (m.exclusive[e] ?? 0));
    });
  }

  /** Value of a cent of cap in a phase, spent in a building. */
  private centPrice(building: SelectionBuilding | undefined, t: number): number {
    const owner = building?.owner === undefined ? 0 : (this.m.owners[building.owner] ?? 0);
    return this.m.cap[t]! + owner + (building === undefined ? 0 : (this.m.buildingCap[building.id] ?? 0));
  }

  visitPrice(building: SelectionBuilding, t: number): number {
    const least = (this.m.minSpend[building.id]?.[t] ?? 0) * (building.minSpendIfVisited_cents ?? 0);
    return building.visit_cents * this.centPrice(building, t) + building.visitMinutes * this.m.crewMinutes[t]! + least + (building.visitPrice?.[t] ?? 0);
  }

  byPhase(group: SelectionGroup, building: SelectionBuilding | undefined, family: string | null): ByPhase {
    const off = this.exclusive.get(group.id) ?? 0;
    return this.problem.phases.map((phase, t) => {
      if (group.phases?.includes(t) === false) return -Infinity;
      const cent = this.centPrice(building, t) - (building === undefined ? 0 : (this.m.minSpend[building.id]?.[t] ?? 0));
      let best = -Infinity;
      for (const option of group.options) {
        if (option.phases?.includes(t) === false) continue;
        if (family !== null && option.family !== undefined && option.family !== family) continue;
        const minutes = option.crewMinutes ?? 0;
        // What does not fit a phase by itself cannot be taken in it.
        if (option.cost_cents + (building?.visit_cents ?? 0) > phase.cap_cents || minutes + (building?.visitMinutes ?? 0) > (phase.crewMinutes ?? Infinity)) continue;
        best = Math.max(best, option.value * (phase.valueFactor ?? 1) - option.cost_cents * cent - minutes * this.m.crewMinutes[t]! - off);
      }
      return best;
    });
  }

  /** Best of a group over the open phases, none included unless it must be taken. */
  best(group: SelectionGroup, values: ByPhase, open: number): number {
    let best = this.must.has(group.id) ? -Infinity : 0;
    for (let t = 0; t < values.length; t++) if ((open >> t) % 2 !== 0) best = Math.max(best, values[t]!);
    return best;
  }
}

/** Sets kept together inside one building and apart from other sets: only these are priced; leaving a price out keeps a bound valid. */
function pricedSets(problem: SelectionProblem): { readonly groups: readonly SelectionGroup[]; readonly price: number }[] {
  const groups = new Map(problem.groups.map((group) => [group.id, group]));
  const count = new Map<string, number>();
  for (const set of problem.keepTogether ?? []) for (const id of set.groups) count.set(id, (count.get(id) ?? 0) + 1);
  const out = new Set(problem.mustNot ?? []);
  return (problem.keepTogether ?? []).flatMap((set) => {
    const own = set.groups.map((id) => groups.get(id)!);
    const building = own[0]!.building;
    const alone = building !== undefined && own.every((group) => group.building === building && count.get(group.id) === 1 && !out.has(group.id));
    return alone ? [{ groups: own, price: set.price }] : [];
  });
}

/** Best reduced value of a set: parted and paid for, together in one open phase, or not at all. */
function setBest(pricing: Pricing, set: { readonly groups: readonly SelectionGroup[]; readonly price: number }, at: { values: ReadonlyMap<string, ByPhase>; open: number }): number {
  const sum = (of: (group: SelectionGroup) => number): number => set.groups.reduce((total, group) => total + of(group), 0);
  const values = (group: SelectionGroup): ByPhase => at.values.get(group.id)!;
  let best = sum((group) => pricing.best(group, values(group), at.open)) - set.price;
  if (!set.groups.some((group) => pricing.must.has(group.id))) best = Math.max(best, 0);
  for (let t = 0; at.open >> t > 0; t++) if ((at.open >> t) % 2 !== 0) best = Math.max(best, sum((group) => values(group)[t]!));
  return best;
}

/** Best reduced value of a building over its families and sets of visited phases. */
function buildingBest(pricing: Pricing, building: SelectionBuilding, own: { groups: readonly SelectionGroup[]; sets: ReturnType<typeof pricedSets>; phases: number }): number {
  const inSet = new Set(own.sets.flatMap((set) => set.groups.map((group) => group.id)));
  const families = building.oneFamily === true ? new Set(own.groups.flatMap((group) => group.options.flatMap((option) => option.family ?? []))) : new Set<string>();
  const prices = Array.from({ length: own.phases }, (_, t) => pricing.visitPrice(building, t));
  const visits = prices.some((price) => price > 0);
  let best = -Infinity;
  for (const family of families.size === 0 ? [null] : families) {
    const values = new Map(own.groups.map((group) => [group.id, pricing.byPhase(group, building, family)]));
    for (let open = visits ? 0 : (1 << own.phases) - 1; open < 1 << own.phases; open++) {
      let sum = 0;
      for (let t = 0; t < own.phases; t++) if ((open >> t) % 2 !== 0) sum -= prices[t]!;
      for (const group of own.groups) if (!inSet.has(group.id)) sum += pricing.best(group, values.get(group.id)!, open);
      for (const set of own.sets) sum += setBest(pricing, set, { values, open });
      best = Math.max(best, sum);
    }
  }
  return best;
}

function signFindings(m: SelectionMultipliers): string[] {
  const all = [...m.cap, ...m.crewMinutes, ...Object.values(m.owners), ...Object.values(m.buildingCap), ...Object.values(m.minSpend).flat(), ...m.exclusive];
  return all.every((price) => price >= 0 && Number.isFinite(price)) ? [] : ['multipliers must be ≥ 0'];
}

/**
 * Works out the bound that stored multipliers prove, from the problem alone.
 *
 *   Σ limits × multipliers + Σ buildings of the best reduced value over visited phases, families and options
 *
 * @param problem as given to select
 * @param m stored multipliers
 * @returns the bound, not rounded; findings when a multiplier is below zero
 * @throws never for a problem select takes
 * @source Lagrangian relaxation
 */
export function priceOut(problem: SelectionProblem, m: SelectionMultipliers): PricedOut {
  const pricing = new Pricing(problem, m);
  const terms: number[] = [];
  problem.phases.forEach((phase, t) => terms.push(m.cap[t]! * phase.cap_cents, m.crewMinutes[t] === 0 ? 0 : m.crewMinutes[t]! * (phase.crewMinutes ?? Infinity)));
  for (const owner of problem.owners ?? []) terms.push((m.owners[owner.id] ?? 0) * owner.cap_cents);
  for (const price of m.exclusive) terms.push(price);
  const out = new Set(problem.mustNot ?? []);
  const byBuilding = new Map<string, SelectionGroup[]>();
  const everyPhase = (1 << problem.phases.length) - 1;
  const listed = new Set((problem.buildings ?? []).map((building) => building.id));
  for (const group of problem.groups) {
    if (out.has(group.id)) continue;
    if (group.building !== undefined && listed.has(group.building)) {
      const own = byBuilding.get(group.building);
      if (own === undefined) byBuilding.set(group.building, [group]);
      else own.push(group);
    } else terms.push(pricing.best(group, pricing.byPhase(group, undefined, null), everyPhase));
  }
  const sets = pricedSets(problem).filter((set) => listed.has(set.groups[0]!.building!));
  for (const building of problem.buildings ?? []) {
    const cap = m.buildingCap[building.id] ?? 0;
    if (cap !== 0) terms.push(cap * (building.cap_cents ?? Infinity));
    const groups = byBuilding.get(building.id) ?? [];
    const own = { groups, sets: sets.filter((set) => set.groups[0]!.building === building.id), phases: problem.phases.length };
    if (groups.length > 0) terms.push(buildingBest(pricing, building, own));
  }
  return { bound: terms.reduce((a, b) => a + b, 0), size: terms.reduce((a, b) => a + Math.abs(b), 0), findings: signFindings(m) };
}
