/** A factor learned from what was really needed, drawn towards 1 while there are few cases. */
export interface LearnedFactor {
  readonly factor: number;
  /** Mean ratio of needed to planned over the cases, as a geometric mean; 1 without any. */
  readonly seen: number;
  readonly cases: number;
  /** Share the cases decide, 0…1. */
  readonly weight: number;
}

/** So many cases count as much as the plan's own figure. */
const CASES_FOR_HALF = 5;

/**
 * Factor on planned minutes from visits that were timed.
 *
 *   factor = exp(n / (n + 5) × mean of ln(needed / planned))
 *
 * @param cases planned and needed of each case, both above 0
 * @returns the factor with how far the cases decide it
 * @throws RangeError when a value is not above 0
 * @source own rule: five visits weigh as much as the plan's own figure
 */
export function learnedFactor(cases: readonly { readonly planned: number; readonly needed: number }[]): LearnedFactor {
  const logs = cases.map(({ planned, needed }) => {
    if (!(planned > 0 && needed > 0 && Number.isFinite(planned) && Number.isFinite(needed))) throw new RangeError(`planned and needed must be above 0, got ${planned} and ${needed}`);
    return Math.log(needed / planned);
  });
  const n = logs.length;
  const mean = n === 0 ? 0 : logs.reduce((a, b) => a + b, 0) / n;
  const weight = n / (n + CASES_FOR_HALF);
  return { factor: Math.exp(weight * mean), seen: Math.exp(mean), cases: n, weight };
}

/**
 * Share of panes that have to be done again, from those that were.
 *
 *   (defects + expected × 20) / (panes + 20)
 *
 * @param counted panes done and panes with a defect, whole numbers, defects ≤ panes
 * @param expected share expected before any pane was done, 0…1
 * @returns share 0…1
 * @throws RangeError outside those ranges
 * @source own rule: the expected share counts as much as twenty panes
 */
export function defectShare(counted: { readonly panes: number; readonly defects: number }, expected: number): number {
  const { panes, defects } = counted;
  if (!(Number.isInteger(panes) && Number.isInteger(defects) && defects >= 0 && panes >= defects)) throw new RangeError(`defects must be 0…panes, got ${defects} of ${panes}`);
  if (!(expected >= 0 && expected <= 1)) throw new RangeError(`expected must be 0…1, got ${expected}`);
  return (defects + expected * 20) / (panes + 20);
}
