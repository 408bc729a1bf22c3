import type { SelectionProblem } from './problem.js';

/**
 * A selection problem as arrays: everything sorted by id, so that the order of the input cannot matter, and what can
 * never be taken left out. Groups, options, buildings and owners are indices from here on.
 */
export interface Compiled {
  readonly groupIds: readonly string[];
  /** Options of group g are optionStart[g] … optionStart[g+1] − 1. */
  readonly optionStart: Int32Array;
  readonly optionIds: readonly string[];
  readonly cost: Float64Array;
  readonly value: Float64Array;
  readonly minutes: Float64Array;
  /** Index into families, or −1. */
  readonly family: Int32Array;
  /** Bit t set: may be taken in phase t. */
  readonly allowed: Int32Array;
  /** Index into buildings, or −1. */
  readonly building: Int32Array;
  readonly must: Uint8Array;
  readonly phases: readonly { readonly cap: number; readonly minutes: number; readonly factor: number }[];
  readonly buildings: readonly CompiledBuilding[];
  readonly owners: readonly { readonly id: string; readonly cap: number }[];
  /** Pairs of groups with the place of the pair in the input. */
  readonly exclusive: readonly { readonly a: number; readonly b: number; readonly at: number }[];
  readonly together: readonly { readonly groups: readonly number[]; readonly price: number }[];
}

/** A building with its limits; missing limits are infinite or zero. */
export interface CompiledBuilding {
  readonly id: string;
  readonly visit: number;
  readonly visitMinutes: number;
  /** What a visit takes off the value, by phase. */
  readonly visitPrice: readonly number[];
  /** Index into owners, or −1. */
  readonly owner: number;
  readonly cap: number;
  readonly minSpend: number;
  readonly oneFamily: boolean;
}

const byId = <T extends { readonly id: string }>(list: readonly T[]): readonly T[] => {
  for (let i = 1; i < list.length; i++) {
    if (list[i - 1]!.id >= list[i]!.id) return [...list].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  }
  return list;
};

const indexOf = (list: readonly { readonly id: string }[]): Map<string, number> => new Map(list.map((each, i) => [each.id, i]));

const maskOf = (phases: readonly number[] | undefined, all: number): number => {
  if (phases === undefined) return all;
  let mask = 0;
  for (const t of phases) mask |= 1 << t;
  return mask & all;
};

/** Arrays of all options, filled group by group. */
function optionArrays(groups: SelectionProblem['groups'], phases: Compiled['phases'], visitOf: (group: number) => CompiledBuilding | undefined) {
  const count = groups.reduce((sum, group) => sum + group.options.length, 0);
  const all = (1 << phases.length) - 1;
  const out = {
    optionStart: new Int32Array(groups.length + 1),
    optionIds: new Array<string>(count),
    cost: new Float64Array(count),
    value: new Float64Array(count),
    minutes: new Float64Array(count),
    family: new Int32Array(count).fill(-1),
    allowed: new Int32Array(count),
  };
  const families = new Map<string, number>();
  let at = 0;
  groups.forEach((group, g) => {
    const ofGroup = maskOf(group.phases, all);
    const visit = visitOf(g);
    for (const option of byId(group.options)) {
      out.optionIds[at] = option.id;
      out.cost[at] = option.cost_cents;
      out.value[at] = option.value;
      out.minutes[at] = option.crewMinutes ?? 0;
      if (option.family !== undefined) {
        if (!families.has(option.family)) families.set(option.family, families.size);
        out.family[at] = families.get(option.family)!;
      }
      let mask = option.phases === undefined ? ofGroup : maskOf(option.phases, ofGroup);
      for (let t = 0; t < phases.length; t++) {
        const { cap, minutes } = phases[t]!;
        if (out.cost[at]! + (visit?.visit ?? 0) > cap || out.minutes[at]! + (visit?.visitMinutes ?? 0) > minutes) mask &= ~(1 << t);
      }
      out.allowed[at++] = mask;
    }
    out.optionStart[g + 1] = at;
  });
  return out;
}

/**
 * Turns a checked problem into arrays sorted by id.
 *
 * @param problem as checked by checkProblem
 * @returns the same problem with groups of `mustNot` left out and phases an option cannot fit taken off it
 * @throws never; checkProblem has found what could be wrong
 */
export function compile(problem: SelectionProblem): Compiled {
  const out = problem.mustNot === undefined || problem.mustNot.length === 0 ? null : new Set(problem.mustNot);
  const groups = byId(out === null ? problem.groups : problem.groups.filter((group) => !out.has(group.id)));
  const phases = problem.phases.map((phase) => ({ cap: phase.cap_cents, minutes: phase.crewMinutes ?? Infinity, factor: phase.valueFactor ?? 1 }));
  const owners = byId(problem.owners ?? []).map((owner) => ({ id: owner.id, cap: owner.cap_cents }));
  const ownerAt = indexOf(owners);
  const buildings = byId(problem.buildings ?? []).map((building) => ({
    id: building.id,
    visit: building.visit_cents,
    visitMinutes: building.visitMinutes,
    visitPrice: building.visitPrice ?? phases.map(() => 0),
    owner: building.owner === undefined ? -1 : ownerAt.get(building.owner)!,
    cap: building.cap_cents ?? Infinity,
    minSpend: building.minSpendIfVisited_cents ?? 0,
    oneFamily: building.oneFamily ?? false,
  }));
  const buildingAt = indexOf(buildings);
  const building = Int32Array.from(groups, (group) => (group.building === undefined ? -1 : (buildingAt.get(group.building) ?? -1)));
  const groupAt = indexOf(groups);
  const must = new Uint8Array(groups.length);
  for (const id of problem.must ?? []) if (groupAt.has(id)) must[groupAt.get(id)!] = 1;
  const exclusive = (problem.exclusive ?? []).flatMap(([x, y], at) => {
    const a = groupAt.get(x);
    const b = groupAt.get(y);
    return a === undefined || b === undefined ? [] : [{ a: Math.min(a, b), b: Math.max(a, b), at }];
  });
  exclusive.sort((x, y) => x.a - y.a || x.b - y.b || x.at - y.at);
  return {
    groupIds: groups.map((group) => group.id),
    ...optionArrays(groups, phases, (g) => buildings[building[g]!]),
    building,
    must,
    phases,
    buildings,
    owners,
    exclusive,
    together: (problem.keepTogether ?? []).map(({ groups: ids, price }) => ({
      // A group that must not be taken breaks its set for good, so it is kept as −1.
      groups: ids.map((id) => groupAt.get(id) ?? -1).sort((a, b) => a - b),
      price,
    })).sort((x, y) => x.groups[0]! - y.groups[0]! || x.price - y.price),
  };
}
