import type { Compiled } from './compiled.js';

/** Groups that share a limit or a rule with each other and with nobody else. */
export interface IndependentPart {
  readonly groups: readonly number[];
  /** Phases the groups may be taken in. */
  readonly phases: readonly number[];
}

/** Union-find over groups and what links them. */
class Links {
  private readonly up: Int32Array;

  constructor(size: number) {
    this.up = Int32Array.from({ length: size }, (_, i) => i);
  }

  root(of: number): number {
    let at = of;
    while (this.up[at] !== at) at = this.up[at] = this.up[this.up[at]!]!;
    return at;
  }

  join(a: number, b: number): void {
    const x = this.root(a);
    const y = this.root(b);
    if (x !== y) this.up[Math.max(x, y)] = Math.min(x, y);
  }
}

/** Union of the phases of all options of a group. */
const phasesOf = (of: Compiled, group: number): number => {
  let mask = 0;
  for (let o = of.optionStart[group]!; o < of.optionStart[group + 1]!; o++) mask |= of.allowed[o]!;
  return mask;
};

/**
 * Splits the problem into parts that have no phase, building, owner or rule in common; each is solved by itself, and
 * values and bounds add up.
 *
 * @param of compiled problem
 * @returns parts in the order of their first group; groups that fit no phase and need not be done are in none
 * @throws never
 */
export function independentParts(of: Compiled): IndependentPart[] {
  const n = of.groupIds.length;
  const phaseAt = n;
  const buildingAt = n + of.phases.length;
  const ownerAt = buildingAt + of.buildings.length;
  const links = new Links(ownerAt + of.owners.length);
  const masks = Int32Array.from({ length: n }, (_, g) => phasesOf(of, g));
  for (let g = 0; g < n; g++) {
    if (masks[g] === 0) continue;
    for (let t = 0; t < of.phases.length; t++) if ((masks[g]! >> t) % 2 !== 0) links.join(g, phaseAt + t);
    const b = of.building[g]!;
    if (b < 0) continue;
    links.join(g, buildingAt + b);
    if (of.buildings[b]!.owner >= 0) links.join(buildingAt + b, ownerAt + of.buildings[b]!.owner);
  }
  for (const { a, b } of of.exclusive) if (masks[a] !== 0 && masks[b] !== 0) links.join(a, b);
  for (const { groups } of of.together) {
    const first = groups.find((g) => g >= 0 && masks[g] !== 0);
    for (const g of groups) if (g >= 0 && masks[g] !== 0) links.join(first!, g);
  }
  const parts = new Map<number, { groups: number[]; mask: number }>();
  for (let g = 0; g < n; g++) {
    if (masks[g] === 0 && of.must[g] === 0) continue;
    const root = links.root(g);
    let part = parts.get(root);
    if (part === undefined) parts.set(root, (part = { groups: [], mask: 0 }));
    part.groups.push(g);
    part.mask |= masks[g]!;
  }
  return [...parts.values()].map(({ groups, mask }) => ({ groups, phases: of.phases.map((_, t) => t).filter((t) => (mask >> t) % 2 !== 0) }));
}

/** Options of a part, at least 1: its share of the time. */
export function sizeOf(of: Compiled, part: IndependentPart): number {
  let size = 1;
  for (const g of part.groups) size += of.optionStart[g + 1]! - of.optionStart[g]!;
  return size;
}
