import { normalQuantile } from './normal-quantile.js';

/** How an uncertain quantity spreads. */
export type Distribution =
  | { readonly kind: 'normal'; readonly middle: number; readonly deviation: number; readonly low?: number; readonly high?: number }
  /** Its logarithm is normal: `middle` is the median, `factor` (> 1) takes the median one standard deviation up. */
  | { readonly kind: 'lognormal'; readonly middle: number; readonly factor: number }
  | { readonly kind: 'triangular'; readonly low: number; readonly middle: number; readonly high: number }
  | { readonly kind: 'uniform'; readonly low: number; readonly high: number }
  /** Single values with their chances, which sum to 1. */
  | { readonly kind: 'listed'; readonly values: readonly { readonly value: number; readonly chance: number }[] };

function triangular({ low, middle, high }: Extract<Distribution, { kind: 'triangular' }>, share: number): number {
  if (!(low <= middle && middle <= high)) throw new RangeError(`low, middle and high must be in order, got ${low}, ${middle}, ${high}`);
  if (high === low) return middle;
  const turn = (middle - low) / (high - low);
  if (share < turn) return low + Math.sqrt(share * (high - low) * (middle - low));
  return high - Math.sqrt((1 - share) * (high - low) * (high - middle));
}

function listed({ values }: Extract<Distribution, { kind: 'listed' }>, share: number): number {
  const sum = values.reduce((total, v) => total + v.chance, 0);
  if (values.length === 0 || Math.abs(sum - 1) > 1e-9) throw new RangeError(`chances must sum to 1, got ${sum}`);
  let reached = 0;
  for (const { value, chance } of values) {
    reached += chance;
    if (share < reached) return value;
  }
  return values[values.length - 1]!.value;
}

/**
 * The value an uncertain quantity stays below with a given chance: its quantile.
 *
 *   normal          middle + deviation · z(share), held between low and high
 *   lognormal       middle · factor^z(share)
 *   triangular      inverse of the two parabolas
 *
 * @param distribution how it spreads
 * @param share chance, above 0 and below 1
 * @returns in the quantity's own unit
 * @throws RangeError when the figures of the distribution are out of order, a deviation is negative, a factor below 1, or chances do not sum to 1
 * @source inverses of the distribution functions; NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6, from memory
 */
export function valueAt(distribution: Distribution, share: number): number {
  if (!(share > 0 && share < 1)) throw new RangeError(`share must be above 0 and below 1, got ${share}`);
  switch (distribution.kind) {
    case 'normal': {
      if (!(distribution.deviation >= 0)) throw new RangeError(`deviation must be ≥ 0, got ${distribution.deviation}`);
      const value = distribution.middle + distribution.deviation * normalQuantile(share);
      return Math.min(distribution.high ?? Infinity, Math.max(distribution.low ?? -Infinity, value));
    }
    case 'lognormal':
      if (!(distribution.factor >= 1 && distribution.middle > 0)) throw new RangeError(`factor must be ≥ 1 and middle > 0, got ${distribution.factor} and ${distribution.middle}`);
      return distribution.middle * distribution.factor ** normalQuantile(share);
    case 'triangular':
      return triangular(distribution, share);
    case 'uniform':
      if (!(distribution.low <= distribution.high)) throw new RangeError(`low must not pass high, got ${distribution.low} and ${distribution.high}`);
      return distribution.low + share * (distribution.high - distribution.low);
    case 'listed':
      return listed(distribution, share);
  }
}
