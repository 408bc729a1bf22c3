import { drawnShare, normalQuantile } from '#calc';
import type { DrawOrder } from './draw-book.js';

/** How much of a modelled saving is expected to be found: the middle, and the ends between which eight in ten lie. */
export interface ExpectedShare {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export const FOUND_LABEL = 'Share of a modelled saving found in bills';

/** Standard deviations in each draw, the same for all dwellings: models err the same way in all of them. @returns shape: [draws] */
export const foundDeviations = (order: DrawOrder): Float64Array => Float64Array.from({ length: order.draws }, (_, draw) => normalQuantile(drawnShare({ seed: order.seed, parameter: 'found share', scope: '*' }, draw)));

/** The share of a dwelling in each draw: lognormal through its three figures. @returns shape: [draws] */
export function foundShares(expected: ExpectedShare, deviations: Float64Array): Float64Array {
  const { low, middle, high } = expected;
  if (!(low > 0 && low <= middle && middle <= high)) throw new RangeError(`low, middle and high must be above 0 and in order, got ${low}, ${middle}, ${high}`);
  const spread = Math.log(high / low) / 2 / normalQuantile(0.9);
  return deviations.map((z) => middle * Math.exp(spread * z));
}
