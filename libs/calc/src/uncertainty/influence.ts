import { spreadOf } from './spread.js';

/** How much one uncertain input moves a result. */
export interface Influence {
  readonly parameter: string;
  /** Rank correlation of input and result, −1…1. */
  readonly rankCorrelation: number;
  /** Median result over the tenth of the draws with the lowest input, and with the highest. */
  readonly whereLow: number;
  readonly whereHigh: number;
}

/** Ranks from 1; equal values share the mean of their places. */
function ranksOf(values: ArrayLike<number>): Float64Array {
  const order = Uint32Array.from({ length: values.length }, (_, i) => i).sort((a, b) => values[a]! - values[b]! || a - b);
  const ranks = new Float64Array(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from + 1;
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++;
    for (let i = from; i < to; i++) ranks[order[i]!] = (from + to + 1) / 2;
    from = to;
  }
  return ranks;
}

/**
 * Spearman's rank correlation: do the two rise together, whatever the shape of the curve?
 *
 *   Pearson's correlation of the ranks; equal values share the mean of their ranks
 *
 * @param a shape: [n], n ≥ 2
 * @param b same shape
 * @returns −1…1; 0 when one of them never changes
 * @throws RangeError when the lengths differ or are below 2
 * @source Spearman (1904); Kendall & Gibbons, Rank Correlation Methods, from memory
 */
export function rankCorrelation(a: ArrayLike<number>, b: ArrayLike<number>): number {
  if (a.length !== b.length || a.length < 2) throw new RangeError(`draws must be two lists of the same length from 2, got ${a.length} and ${b.length}`);
  const [ra, rb] = [ranksOf(a), ranksOf(b)];
  const mean = (a.length + 1) / 2;
  let [ab, aa, bb] = [0, 0, 0];
  for (let i = 0; i < ra.length; i++) {
    const [x, y] = [ra[i]! - mean, rb[i]! - mean];
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa === 0 || bb === 0 ? 0 : ab / Math.sqrt(aa * bb);
}

/**
 * What moves a result, strongest first.
 *
 * @param inputs drawn values by parameter, each shape: [draws]
 * @param result shape: [draws]
 * @returns one entry a parameter, by size of the rank correlation, equal ones by name
 * @throws RangeError when lengths differ or are below 2
 * @source `rankCorrelation`; low and high are the lowest and the highest tenth of the drawn input
 */
export function influences(inputs: ReadonlyMap<string, ArrayLike<number>>, result: ArrayLike<number>): Influence[] {
  const all = [...inputs].map(([parameter, drawn]): Influence => {
    const order = Array.from({ length: drawn.length }, (_, i) => i).sort((a, b) => drawn[a]! - drawn[b]! || a - b);
    const tenth = Math.max(1, Math.floor(order.length / 10));
    const median = (places: readonly number[]): number => spreadOf(places.map((i) => result[i]!)).middle;
    return { parameter, rankCorrelation: rankCorrelation(drawn, result), whereLow: median(order.slice(0, tenth)), whereHigh: median(order.slice(-tenth)) };
  });
  return all.sort((a, b) => Math.abs(b.rankCorrelation) - Math.abs(a.rankCorrelation) || (a.parameter < b.parameter ? -1 : 1));
}
