/** Coefficients of y ≈ Σ c_j x_j, and the weighted sum of squares left over. */
export interface LinearFit {
  readonly coefficients: readonly number[];
  readonly weightedSse: number;
}

/** Weighted column products; the columns are few, so the normal equations keep their digits. */
function normalEquations(columns: readonly (readonly number[])[], y: readonly number[], weights: readonly number[]): number[][] {
  return columns.map((left) => [...columns, y].map((right) => left.reduce((sum, value, i) => sum + weights[i]! * value * right[i]!, 0)));
}

/** Gauss with the largest pivot; null where the columns do not tell each other apart. */
function solved(rows: number[][]): number[] | null {
  const n = rows.length;
  const scale = rows.map((row, i) => Math.sqrt(Math.abs(row[i]!)) || 1);
  const a = rows.map((row, i) => row.map((value, j) => value / scale[i]! / (j < n ? scale[j]! : 1)));
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i;
    [a[k], a[pivot]] = [a[pivot]!, a[k]!];
    if (!(Math.abs(a[k]![k]!) > 1e-12)) return null;
    for (let i = k + 1; i < n; i++) {
      const factor = a[i]![k]! / a[k]![k]!;
      for (let j = k; j <= n; j++) a[i]![j] = a[i]![j]! - factor * a[k]![j]!;
    }
  }
  const x = Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const rest = a[i]!.slice(i + 1, n).reduce((sum, value, j) => sum + value * x[i + 1 + j]!, 0);
    x[i] = (a[i]![n]! - rest) / a[i]![i]!;
  }
  return x.map((value, i) => value / scale[i]!);
}

/**
 * Least squares with weights on a few columns.
 *
 *   minimise Σ w_i (y_i − Σ_j c_j x_ij)²
 *
 * @param columns one list of values per coefficient, all of the length of y
 * @param y what is to be described
 * @param weights ≥ 0, one per value
 * @returns coefficients and the weighted sum of squares, or null where the columns are dependent or more than the values
 * @source normal equations, scaled; textbook
 */
export function leastSquares(columns: readonly (readonly number[])[], y: readonly number[], weights: readonly number[]): LinearFit | null {
  if (columns.length > y.length) return null;
  const coefficients = solved(normalEquations(columns, y, weights));
  if (coefficients === null) return null;
  const weightedSse = y.reduce((sum, value, i) => {
    const error = value - coefficients.reduce((fitted, c, j) => fitted + c * columns[j]![i]!, 0);
    return sum + weights[i]! * error * error;
  }, 0);
  return { coefficients, weightedSse };
}
