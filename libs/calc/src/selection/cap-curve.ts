import { checkProblem } from './check-problem.js';
import { compile, type Compiled } from './compiled.js';
import type { SelectionProblem } from './problem.js';
import { unitHull } from './unit-hull.js';

/** A cap at which a whole plan meets the bound exactly. */
export interface CapPoint {
  readonly cap_cents: number;
  /** Worth of the best plan at this cap; between two points no plan is worth more than the straight line. */
  readonly value: number;
  /** What changes from the point before: the option a group takes from here on, null for none any more. */
  readonly steps: readonly { readonly group: string; readonly option: string | null }[];
}

/** Why a limit besides the cap stands in the way of an exact curve; null when none does. */
function otherLimit(of: Compiled): string | null {
  if (of.phases.length !== 1) return 'the curve is exact for one phase only';
  if (of.exclusive.length > 0 || of.together.some(({ price }) => price > 0)) return 'the curve is exact where no dwellings exclude each other or are kept together';
  if (of.owners.length > 0 || of.buildings.some(({ cap, minSpend }) => cap < Infinity || minSpend > 0)) return 'the curve is exact where the cap of the phase is the only one';
  let minutes = 0;
  for (let g = 0; g < of.groupIds.length; g++) minutes += of.minutes.subarray(of.optionStart[g], of.optionStart[g + 1]).reduce((most, m) => Math.max(most, m), 0);
  for (const { visitMinutes } of of.buildings) minutes += visitMinutes;
  return minutes > of.phases[0]!.minutes ? 'the curve is exact where crew minutes cannot run short' : null;
}

/** Buildings whose visit or film ties their groups together, and all other groups by themselves. */
function unitsOf(of: Compiled): { readonly b: number; readonly groups: number[] }[] {
  const units = new Map<string, { b: number; groups: number[] }>();
  for (let g = 0; g < of.groupIds.length; g++) {
    const building = of.buildings[of.building[g]!];
    const isTied = building !== undefined && (building.visit > 0 || building.visitPrice.some((price) => price > 0) || building.oneFamily);
    const b = isTied ? of.building[g]! : -1;
    const key = isTied ? `building ${b}` : `group ${g}`;
    const unit = units.get(key);
    if (unit === undefined) units.set(key, { b, groups: [g] });
    else unit.groups.push(g);
  }
  return [...units.values()];
}

/**
 * Value against cap for one cap, as exact breakpoints, visits and one film a building counted: where every building stands at a corner of its
 * own hull, the plan is the best one at its cost.
 *
 * @param problem one phase, no limit but its cap, which is not looked at
 * @returns points of rising cap; the slope between two is the value of the next cent; or why there is no curve
 * @throws RangeError as select does
 * @source Pisinger, DIKU report 95/1, section 7.2: steps of the hulls by falling slope; a building's hull is that of its merged steps after its visit
 */
export function capCurve(problem: SelectionProblem): readonly CapPoint[] | { readonly why: string } {
  checkProblem(problem);
  const dearest = problem.groups.reduce((sum, group) => sum + group.options.reduce((most, { cost_cents }) => Math.max(most, cost_cents), 0), 0);
  const visits = (problem.buildings ?? []).reduce((sum, { visit_cents }) => sum + visit_cents, 0);
  const of = compile({ ...problem, phases: problem.phases.map((phase) => ({ ...phase, cap_cents: dearest + visits })) });
  const why = otherLimit(of);
  if (why !== null) return { why };
  let cap_cents = 0;
  let value = 0;
  const segments: { unit: number; cost: number; value: number; steps: CapPoint['steps'] }[] = [];
  for (const [unit, { b, groups }] of unitsOf(of).entries()) {
    const hull = unitHull(of, groups, b);
    if (hull === null) return { why: `${groups.map((g) => of.groupIds[g]!).join(', ')} must be taken and has no option` };
    cap_cents += hull[0]!.cost;
    value += hull[0]!.value;
    for (let k = 1; k < hull.length; k++) {
      const [from, to] = [hull[k - 1]!, hull[k]!];
      const changed = groups.filter((g) => to.tag.get(g) !== from.tag.get(g));
      segments.push({ unit, cost: to.cost - from.cost, value: to.value - from.value, steps: changed.map((g) => ({ group: of.groupIds[g]!, option: of.optionIds[to.tag.get(g)!] ?? null })) });
    }
  }
  segments.sort((x, y) => y.value * x.cost - x.value * y.cost || x.unit - y.unit);
  return [{ cap_cents, value, steps: [] }, ...segments.map((s): CapPoint => ({ cap_cents: (cap_cents += s.cost), value: (value += s.value), steps: s.steps }))];
}
