import { checkProblem } from './check-problem.js';
import { classesOf } from './classes.js';
import { compile } from './compiled.js';
import { hullSteps } from './hull-steps.js';
import { independentParts } from './independent-parts.js';
import { hasOneCapOnly } from './one-cap-part.js';
import type { SelectionProblem } from './problem.js';

/** A cap at which a whole plan meets the bound exactly. */
export interface CapPoint {
  readonly cap_cents: number;
  /** Worth of the best plan at this cap; between two points no plan is worth more than the straight line. */
  readonly value: number;
  /** Option whose step ends here; null at the first point. */
  readonly step: { readonly group: string; readonly option: string } | null;
}

/**
 * Value against cap for one cap, as exact breakpoints: where the linear relaxation is whole, the plan there is the best one.
 *
 * @param problem one phase, nothing but a cap; its own cap is not looked at
 * @returns points of rising cap; the slope between two is the value of the next cent; or why there is no curve
 * @throws RangeError as select does
 * @source Pisinger, DIKU report 95/1, section 7.2: steps of the hulls by falling slope
 */
export function capCurve(problem: SelectionProblem): readonly CapPoint[] | { readonly why: string } {
  checkProblem(problem);
  const dearest = problem.groups.reduce((sum, group) => sum + group.options.reduce((most, { cost_cents }) => Math.max(most, cost_cents), 0), 0);
  const of = compile({ ...problem, phases: problem.phases.map((phase) => ({ ...phase, cap_cents: dearest })) });
  if (of.phases.length !== 1) return { why: 'the curve is exact for one phase only' };
  const parts = independentParts(of);
  if (!parts.every((part) => hasOneCapOnly(of, part))) return { why: 'the curve is exact where the cap is the only limit' };
  const classes = classesOf(of, parts.flatMap(({ groups }) => groups), 0);
  if ('stuck' in classes) return { why: `${of.groupIds[classes.stuck]!} must be taken and has no option` };
  const groups = parts.flatMap((part) => part.groups);
  let cap_cents = 0;
  let value = 0;
  for (let i = 0; i < classes.count; i++) {
    cap_cents += classes.weight[classes.start[i]!]!;
    value += classes.profit[classes.start[i]!]!;
  }
  const points: CapPoint[] = [{ cap_cents, value, step: null }];
  const steps = hullSteps(classes);
  const order = Array.from({ length: steps.count }, (_, s) => s).sort((a, b) => steps.slope[b]! - steps.slope[a]! || a - b);
  const at = classes.start.slice(0, classes.count);
  for (const s of order) {
    const i = steps.ofClass[s]!;
    const to = steps.item[s]!;
    cap_cents += steps.weight[s]!;
    value += classes.profit[to]! - classes.profit[at[i]!]!;
    at[i] = to;
    points.push({ cap_cents, value, step: { group: of.groupIds[groups[i]!]!, option: of.optionIds[classes.option[to]!]! } });
  }
  return points;
}
