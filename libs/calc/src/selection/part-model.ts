import type { Compiled, CompiledBuilding } from './compiled.js';
import type { IndependentPart } from './independent-parts.js';

/** A building of a part, or a single group where nothing ties the groups of a building together. */
export interface Unit {
  /** Index of the compiled building, −1 without one. */
  readonly building: number;
  /** Groups of the unit: from ≤ g < to, numbered inside the part. */
  readonly from: number;
  readonly to: number;
  readonly visit: number;
  readonly visitMinutes: number;
  /** What a visit takes off the value, by phase. */
  readonly visitPrice: readonly number[];
  /** Index of the compiled owner, −1 without one. */
  readonly owner: number;
  readonly cap: number;
  readonly minSpend: number;
  readonly oneFamily: boolean;
  /** A visit costs, takes off value or minutes, or least spend binds: the set of phases it is visited in must be chosen. */
  readonly visits: boolean;
  /** Sets kept together that lie inside the unit and apart from other sets; groups numbered inside the part. */
  readonly sets: readonly UnitSet[];
}

/** Groups kept together; not whole when one of them can never be taken. */
export interface UnitSet {
  readonly groups: readonly number[];
  readonly price: number;
  readonly whole: boolean;
}

/** An independent part as arrays: items are (option, phase) pairs that can matter, sorted by group, phase, option. */
export interface PartModel {
  readonly of: Compiled;
  /** Compiled group of each group of the part. */
  readonly groups: Int32Array;
  readonly unitOf: Int32Array;
  readonly units: readonly Unit[];
  readonly must: Uint8Array;
  readonly itemStart: Int32Array;
  readonly option: Int32Array;
  readonly phase: Int32Array;
  readonly value: Float64Array;
  readonly cost: Float64Array;
  readonly minutes: Float64Array;
  readonly family: Int32Array;
  readonly groupOf: Int32Array;
  readonly exclusive: readonly { readonly a: number; readonly b: number; readonly at: number }[];
  /** Every set with a price, also those no unit holds; −1 stands for a group that cannot be taken. */
  readonly together: readonly { readonly groups: readonly number[]; readonly price: number }[];
}

const visitsMatter = (building: CompiledBuilding): boolean => building.visit + building.visitMinutes + building.minSpend > 0 || building.visitPrice.some((price) => price > 0);

/** Buildings whose groups have nothing to do with each other fall apart into single groups. */
function unitGroups(of: Compiled, part: IndependentPart): { building: number; groups: number[] }[] {
  const inSet = new Set(of.together.flatMap(({ groups, price }) => (price > 0 ? groups : [])));
  const byBuilding = new Map<number, number[]>();
  for (const g of part.groups) {
    const b = of.building[g]!;
    if (b >= 0) {
      const own = byBuilding.get(b);
      if (own === undefined) byBuilding.set(b, [g]);
      else own.push(g);
    }
  }
  const units: { building: number; groups: number[] }[] = [];
  for (const g of part.groups) {
    const b = of.building[g]!;
    const building = of.buildings[b];
    const own = byBuilding.get(b);
    const tied =
      building !== undefined &&
      (visitsMatter(building) || building.cap < Infinity || building.oneFamily || own!.some((each) => inSet.has(each)));
    if (!tied) units.push({ building: b, groups: [g] });
    else if (own![0] === g) units.push({ building: b, groups: own! });
  }
  return units;
}

/** Is an item worth no more and no lighter than another of the same phase and family? The earlier of two equal ones stays. */
function dominated(of: Compiled, j: number, among: { readonly others: readonly number[]; readonly byCost: boolean }): boolean {
  return among.others.some((i) => {
    if (i === j || of.family[i] !== of.family[j]) return false;
    const costs = among.byCost ? of.cost[i]! <= of.cost[j]! : of.cost[i] === of.cost[j];
    if (!costs || of.minutes[i]! > of.minutes[j]! || of.value[i]! < of.value[j]!) return false;
    const equal = of.cost[i] === of.cost[j] && of.minutes[i] === of.minutes[j] && of.value[i] === of.value[j];
    return !equal || i < j;
  });
}

/** Options of a group that can matter in a phase. */
function optionsThatMatter(of: Compiled, g: number, at: { readonly phase: number; readonly minSpend: number; readonly inSet: boolean }): number[] {
  const options: number[] = [];
  const keepWorthless = of.must[g] === 1 || at.minSpend > 0 || at.inSet;
  for (let o = of.optionStart[g]!; o < of.optionStart[g + 1]!; o++) {
    if ((of.allowed[o]! >> at.phase) % 2 !== 0 && (keepWorthless || of.value[o]! > 0)) options.push(o);
  }
  return options.filter((o) => !dominated(of, o, { others: options, byCost: at.minSpend === 0 }));
}

function unitOf(of: Compiled, b: number, range: { from: number; to: number }): Unit {
  const building = of.buildings[b];
  return {
    building: b,
    ...range,
    visit: building?.visit ?? 0,
    visitMinutes: building?.visitMinutes ?? 0,
    visitPrice: building?.visitPrice ?? of.phases.map(() => 0),
    owner: building?.owner ?? -1,
    cap: building?.cap ?? Infinity,
    minSpend: building?.minSpend ?? 0,
    oneFamily: building?.oneFamily ?? false,
    visits: building !== undefined && visitsMatter(building),
    sets: [],
  };
}

/** Sets of the part, and those that lie inside one unit and share no group with another. */
function placeSets(of: Compiled, local: Int32Array, unitAt: Int32Array) {
  const count = new Map<number, number>();
  for (const { groups } of of.together) for (const g of groups) count.set(g, (count.get(g) ?? 0) + 1);
  const together: { groups: number[]; price: number }[] = [];
  const inUnit = new Map<number, UnitSet[]>();
  for (const { groups, price } of of.together) {
    const own = groups.map((g) => (g < 0 ? -1 : local[g]!));
    if (price === 0 || own.every((g) => g < 0)) continue;
    together.push({ groups: own, price });
    const building = of.building[groups.at(-1)!] ?? -1;
    if (building < 0 || !groups.every((g) => g >= 0 && of.building[g] === building && count.get(g) === 1)) continue;
    const unit = unitAt[own.find((g) => g >= 0)!]!;
    const present = own.filter((g) => g >= 0);
    inUnit.set(unit, [...(inUnit.get(unit) ?? []), { groups: present, price, whole: present.length === own.length }]);
  }
  return { together, inUnit };
}

/** Items of all groups in order of group, phase, option. */
function itemsOf(of: Compiled, part: IndependentPart, at: { groups: Int32Array; units: readonly Unit[]; unitAt: Int32Array }) {
  const inSet = new Set(of.together.flatMap(({ groups, price }) => (price > 0 ? groups : [])));
  const itemStart = new Int32Array(at.groups.length + 1);
  const option: number[] = [];
  const phase: number[] = [];
  const groupOf: number[] = [];
  at.groups.forEach((g, i) => {
    for (const t of part.phases) {
      for (const o of optionsThatMatter(of, g, { phase: t, minSpend: at.units[at.unitAt[i]!]!.minSpend, inSet: inSet.has(g) })) {
        option.push(o);
        phase.push(t);
        groupOf.push(i);
      }
    }
    itemStart[i + 1] = option.length;
  });
  return { itemStart, option: Int32Array.from(option), phase: Int32Array.from(phase), groupOf: Int32Array.from(groupOf) };
}

/**
 * Arrays of one independent part for the search under several caps.
 *
 * @param of compiled problem
 * @param part one of its parts
 * @returns groups ordered by unit; items without those another of the same group, phase and family makes needless
 * @throws never
 */
export function partModel(of: Compiled, part: IndependentPart): PartModel {
  const pieces = unitGroups(of, part);
  const groups = Int32Array.from(pieces.flatMap((piece) => piece.groups));
  const local = new Int32Array(of.groupIds.length).fill(-1);
  groups.forEach((g, i) => (local[g] = i));
  const unitAt = new Int32Array(groups.length);
  let from = 0;
  const bare = pieces.map((piece, u) => {
    const to = from + piece.groups.length;
    unitAt.fill(u, from, to);
    const unit = unitOf(of, piece.building, { from, to });
    from = to;
    return unit;
  });
  const { together, inUnit } = placeSets(of, local, unitAt);
  const units = bare.map((unit, u) => ({ ...unit, sets: inUnit.get(u) ?? [] }));
  const items = itemsOf(of, part, { groups, units, unitAt });
  return {
    of,
    groups,
    unitOf: unitAt,
    units,
    must: Uint8Array.from(groups, (g) => of.must[g]!),
    ...items,
    value: Float64Array.from(items.option, (o, j) => of.value[o]! * of.phases[items.phase[j]!]!.factor),
    cost: Float64Array.from(items.option, (o) => of.cost[o]!),
    minutes: Float64Array.from(items.option, (o) => of.minutes[o]!),
    family: Int32Array.from(items.option, (o) => of.family[o]!),
    exclusive: of.exclusive.flatMap(({ a, b }, at) => (local[a]! < 0 || local[b]! < 0 ? [] : [{ a: local[a]!, b: local[b]!, at }])),
    together,
  };
}

/** Families among items in order of their index; −1 alone when no item has one. */
export function familiesAmong(model: PartModel, items: Int32Array): readonly number[] {
  const families = new Set<number>();
  for (const j of items) if (model.family[j]! >= 0) families.add(model.family[j]!);
  return families.size === 0 ? [-1] : [...families].sort((a, b) => a - b);
}
