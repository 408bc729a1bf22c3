import type { Compiled } from './compiled.js';
import { type HullPoint, upperHull } from './upper-hull.js';

/** What is taken of a unit: option of each of its groups, −1 for none. */
export type UnitChoice = ReadonlyMap<number, number>;

/** Hull of one group in the only phase there is, for one family of films (−1 takes all). */
function groupHull(of: Compiled, g: number, family: number): HullPoint<number>[] {
  const points: HullPoint<number>[] = of.must[g] === 1 ? [] : [{ cost: 0, value: 0, tag: -1 }];
  const { factor } = of.phases[0]!;
  for (let o = of.optionStart[g]!; o < of.optionStart[g + 1]!; o++) {
    const fits = family < 0 || of.family[o]! < 0 || of.family[o] === family;
    if (fits && of.allowed[o] === 1) points.push({ cost: of.cost[o]!, value: of.value[o]! * factor, tag: o });
  }
  return points.length === 0 ? [] : upperHull(points);
}

/** All ways of the unit's groups with one family, by falling value per cent, on top of what a visit takes; null when a must has no option. */
function familyPoints(of: Compiled, groups: readonly number[], at: { readonly family: number; readonly cost: number; readonly value: number }): HullPoint<UnitChoice>[] | null {
  const hulls = groups.map((g) => groupHull(of, g, at.family));
  if (hulls.some((hull) => hull.length === 0)) return null;
  let { cost, value } = at;
  let choice: UnitChoice = new Map(groups.map((g, i) => [g, hulls[i]![0]!.tag]));
  for (const hull of hulls) [cost, value] = [cost + hull[0]!.cost, value + hull[0]!.value];
  const steps = hulls.flatMap((hull, i) => hull.slice(1).map((to, k) => ({ g: groups[i]!, to, cost: to.cost - hull[k]!.cost, value: to.value - hull[k]!.value })));
  steps.sort((a, b) => b.value * a.cost - a.value * b.cost || a.g - b.g || a.to.cost - b.to.cost);
  const points: HullPoint<UnitChoice>[] = [{ cost, value, tag: choice }];
  for (const step of steps) {
    cost += step.cost;
    value += step.value;
    choice = new Map(choice).set(step.g, step.to.tag);
    points.push({ cost, value, tag: choice });
  }
  return points;
}

/**
 * The hull of a building or of a single group: value against cost where its visit is paid once and, if need be, one film is used throughout.
 *
 * @param of compiled problem of one phase
 * @param groups of the unit
 * @param b compiled building whose visit and film rule count, −1 for a group by itself
 * @returns the hull, or null when something that must be taken has no option
 */
export function unitHull(of: Compiled, groups: readonly number[], b: number): HullPoint<UnitChoice>[] | null {
  const building = of.buildings[b];
  const families = building?.oneFamily === true ? new Set(groups.flatMap((g) => Array.from(of.family.subarray(of.optionStart[g], of.optionStart[g + 1])).filter((f) => f >= 0))) : new Set<number>();
  const start = { cost: building?.visit ?? 0, value: -(building?.visitPrice[0] ?? 0) };
  const points = [...(families.size === 0 ? [-1] : families)].flatMap((family) => familyPoints(of, groups, { family, ...start }) ?? []);
  if (groups.every((g) => of.must[g] === 0)) points.unshift({ cost: 0, value: 0, tag: new Map(groups.map((g) => [g, -1])) });
  return points.length === 0 ? null : upperHull(points);
}
