/** What a set of draws says of a quantity. */
export interface DrawSpread {
  /** Nine in ten draws lie above. */
  readonly nineInTenAtLeast: number;
  readonly middle: number;
  /** One in ten draws lies above. */
  readonly oneInTenMoreThan: number;
  readonly mean: number;
}

/**
 * The value that a share of the draws stays below, between two draws in proportion.
 *
 *   position (n − 1)·share in the sorted draws, counted from 0
 *
 * @param sorted draws in rising order; at least one
 * @param share 0…1
 * @returns in the draws' own unit
 * @throws RangeError when there is no draw or share is not 0…1
 * @source Hyndman & Fan, Sample quantiles in statistical packages, The American Statistician 50 (1996), definition 7
 */
export function quantileOf(sorted: ArrayLike<number>, share: number): number {
  if (sorted.length === 0) throw new RangeError('draws must be at least one, got none');
  if (!(share >= 0 && share <= 1)) throw new RangeError(`share must be 0…1, got ${share}`);
  const at = (sorted.length - 1) * share;
  const below = Math.floor(at);
  const low = sorted[below]!;
  return low + (at - below) * ((sorted[Math.min(below + 1, sorted.length - 1)]!) - low);
}

/**
 * Nine-in-ten value, middle, one-in-ten value and mean of draws.
 *
 * @param draws in any order; at least one
 * @returns in the draws' own unit
 * @throws RangeError when there is no draw
 * @source `quantileOf` at 0.1, 0.5 and 0.9
 */
export function spreadOf(draws: ArrayLike<number>): DrawSpread {
  const sorted = Float64Array.from(draws).sort();
  let sum = 0;
  for (const value of sorted) sum += value;
  return { nineInTenAtLeast: quantileOf(sorted, 0.1), middle: quantileOf(sorted, 0.5), oneInTenMoreThan: quantileOf(sorted, 0.9), mean: sum / sorted.length };
}

/**
 * Share of draws that reach a value.
 *
 * @param draws at least one
 * @param value in the draws' own unit
 * @returns 0…1
 * @throws RangeError when there is no draw
 * @source counting
 */
export function shareReaching(draws: ArrayLike<number>, value: number): number {
  if (draws.length === 0) throw new RangeError('draws must be at least one, got none');
  let reached = 0;
  for (let d = 0; d < draws.length; d++) if (draws[d]! >= value) reached++;
  return reached / draws.length;
}
