import type { Missing } from '../lifecycle/index.js';

/** Inverse of a small symmetric matrix by Gauss and Jordan on scaled rows; null where it has none. */
function inverse(matrix: readonly (readonly number[])[]): number[][] | null {
  const n = matrix.length;
  const scale = matrix.map((row, i) => Math.sqrt(Math.abs(row[i]!)) || 1);
  const a = matrix.map((row, i) => [...row.map((value, j) => value / scale[i]! / scale[j]!), ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i;
    [a[k], a[pivot]] = [a[pivot]!, a[k]!];
    const head = a[k]![k]!;
    if (!(Math.abs(head) > 1e-12)) return null;
    a[k] = a[k]!.map((value) => value / head);
    for (let i = 0; i < n; i++) {
      const factor = a[i]![k]!;
      if (i !== k && factor !== 0) a[i] = a[i]!.map((value, j) => value - factor * a[k]![j]!);
    }
  }
  return a.map((row, i) => row.slice(n).map((value, j) => value / scale[i]! / scale[j]!));
}

/**
 * How far the coefficients of a weighted least-squares fit are to be trusted.
 *
 *   covariance = s² × (Xᵀ W X)⁻¹,  s² = weighted sum of squares / (n − p)
 *
 * @param columns one list of values per coefficient, as they were fitted
 * @param weights ≥ 0, one per value
 * @param left the weighted sum of squares left over, and the coefficients counted against the values, those searched for included
 * @returns the covariance matrix, in the order of the columns; or why there is none
 * @throws RangeError when there are no more values than coefficients
 * @source least squares, textbook; the squares are taken as independent from value to value
 */
export function coefficientCovariance(columns: readonly (readonly number[])[], weights: readonly number[], left: { readonly weightedSse: number; readonly coefficients: number }): number[][] | Missing {
  const n = weights.length;
  if (!(n > left.coefficients)) throw new RangeError(`values must be more than the ${left.coefficients} coefficients, got ${n}`);
  const normal = columns.map((row) => columns.map((column) => row.reduce((sum, value, i) => sum + weights[i]! * value * column[i]!, 0)));
  const inverted = inverse(normal);
  if (inverted === null) return { why: 'the columns do not tell each other apart' };
  const variance = left.weightedSse / (n - left.coefficients);
  return inverted.map((row) => row.map((value) => value * variance));
}
