import { SAME_ticks, type ReadyJob } from './ready-job.js';

/** Widths and lengths as whole cells for the knapsack tables. Exact where all sizes share a step; else rounded to the stated side. */
export interface Grid {
  readonly exact: boolean;
  /** By lie: cells across, rounded up (layouts) and down (bounds). */
  readonly acrossUp: Int32Array;
  readonly acrossDown: Int32Array;
  /** By lie: cells along, rounded up. */
  readonly alongUp: Int32Array;
  /** By offer: whole cells of the roll's width. */
  readonly width: Int32Array;
  /** Ticks of a cell along the roll. */
  readonly alongCell: number;
}

const FINEST = 10_000;

/** The common step of the sizes (1/8 in for rough cuts) where the table stays small, else a fixed fine step. */
export function gridOf(ready: ReadyJob): Grid {
  const widest = Math.max(1, ...ready.offers.map((offer) => offer.width));
  const longest = Math.max(1, ...ready.lies.map((lie) => lie.along));
  const across = stepOf(ready.lies.map((lie) => lie.across), widest);
  const along = stepOf(ready.lies.map((lie) => lie.along), longest);
  const up = (size: number, step: number): number => Math.ceil((size - SAME_ticks) / step);
  return {
    exact: across.exact,
    acrossUp: Int32Array.from(ready.lies, (lie) => up(lie.across, across.step)),
    acrossDown: Int32Array.from(ready.lies, (lie) => Math.floor((lie.across + SAME_ticks) / across.step)),
    alongUp: Int32Array.from(ready.lies, (lie) => up(lie.along, along.step)),
    width: Int32Array.from(ready.offers, (offer) => Math.floor((offer.width + SAME_ticks) / across.step)),
    alongCell: along.step,
  };
}

/** A step all sizes are whole multiples of, where at most `finest` of them make the largest; else that part of the largest. */
export function stepOf(sizes: readonly number[], largest: number, finest = FINEST): { step: number; exact: boolean } {
  const common = sizes.every((size) => Number.isInteger(size)) ? sizes.reduce(gcd, 0) : 0;
  if (common > 0 && largest / common <= finest) return { step: common, exact: true };
  return { step: largest / finest, exact: false };
}

function gcd(a: number, b: number): number {
  while (b > 0) [a, b] = [b, a % b];
  return a;
}
