import type { Missing } from '../lifecycle/index.js';
import { studentT } from './student-t.js';

/** Change of one meter as it enters a group. */
export interface GroupMember {
  readonly id: string;
  readonly share: number;
  readonly standardError: number;
}

/** Mean change of a group of meters. */
export interface GroupMean {
  readonly share: number;
  readonly standardError: number;
  readonly degrees: number;
  readonly meters: number;
  /** Spread from meter to meter beyond what their bills leave open: people, not film. */
  readonly betweenMeters: number;
  /** By member, summing to 1. */
  readonly weights: ReadonlyMap<string, number>;
}

/** What film saved by the bills, as a share of the use there would have been. */
export interface PooledSaving {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly standardError: number;
  readonly degrees: number;
  readonly confidence: number;
  readonly treated: GroupMean;
  readonly comparison: GroupMean | null;
  readonly outcome: 'use fell' | 'cannot be told' | 'use rose';
}

/**
 * Mean change of a group, weighted by how sure each meter is.
 *
 *   weight = 1 / (error² + between²);  error of the mean = √(Σ w (x − mean)² / ((k − 1) Σ w)), k − 1 degrees of freedom
 *
 * The error is taken from how the meters really differ, so it holds what people change beside what the fits leave open.
 *
 * @param members two or more, errors above 0
 * @returns the mean with its error, or why there is none
 * @throws RangeError when a value is not finite or an error is not above 0
 * @source between: DerSimonian & Laird (1986); error of the mean: Hartung & Knapp, Statistics in Medicine 20 (2001), both from memory
 */
export function groupMean(members: readonly GroupMember[]): GroupMean | Missing {
  for (const m of members) if (!(Number.isFinite(m.share) && m.standardError > 0)) throw new RangeError(`members must have finite shares and errors above 0, got ${m.share} ± ${m.standardError}`);
  const k = members.length;
  if (k < 2) return { why: k === 0 ? 'no meter has enough bills before and after the work' : 'one meter alone cannot show how meters differ' };
  const fixed = members.map((m) => 1 / m.standardError ** 2);
  const sum = fixed.reduce((a, b) => a + b, 0);
  const mean = members.reduce((total, m, i) => total + fixed[i]! * m.share, 0) / sum;
  const excess = members.reduce((total, m, i) => total + fixed[i]! * (m.share - mean) ** 2, 0) - (k - 1);
  const scale = sum - fixed.reduce((total, w) => total + w * w, 0) / sum;
  const between = scale > 0 ? Math.max(0, excess / scale) : 0;
  const weights = members.map((m) => 1 / (m.standardError ** 2 + between));
  const all = weights.reduce((a, b) => a + b, 0);
  const share = members.reduce((total, m, i) => total + weights[i]! * m.share, 0) / all;
  const spread = members.reduce((total, m, i) => total + weights[i]! * (m.share - share) ** 2, 0);
  return { share, standardError: Math.sqrt(spread / ((k - 1) * all)), degrees: k - 1, meters: k, betweenMeters: Math.sqrt(between), weights: new Map(members.map((m, i) => [m.id, weights[i]! / all])) };
}

/**
 * What film saved by the bills: how treated meters changed, less how untreated ones changed over the same time.
 *
 *   saving = mean change of the treated − mean change of the comparison;  error² = sum of both errors²;
 *   interval by Student's t with the degrees of freedom of Welch and Satterthwaite
 *
 * Without a comparison group the change of the treated stands alone, and what the years changed for everybody is in it.
 *
 * @param groups changes of treated and of untreated meters; of the latter two or more, or none is used
 * @param confidence share of cases the interval is to hold, 0.8 by default
 * @returns the saving as a share of the use there would have been, with its interval and what it amounts to; or why there is none
 * @throws RangeError when a value is not finite, an error is not above 0 or confidence is not between 0 and 1
 * @source difference in differences, textbook; degrees of freedom: Welch (1947), from memory
 */
export function pooledSaving(groups: { readonly treated: readonly GroupMember[]; readonly comparison: readonly GroupMember[] }, confidence = 0.8): PooledSaving | Missing {
  const treated = groupMean(groups.treated);
  if ('why' in treated) return { why: `filmed meters: ${treated.why}` };
  const untreated = groupMean(groups.comparison);
  const comparison = 'why' in untreated ? null : untreated;
  const standardError = Math.hypot(treated.standardError, comparison?.standardError ?? 0);
  const degrees =
    standardError > 0 && comparison !== null
      ? standardError ** 4 / (treated.standardError ** 4 / treated.degrees + comparison.standardError ** 4 / comparison.degrees)
      : treated.degrees;
  const share = treated.share - (comparison?.share ?? 0);
  const half = studentT(confidence, degrees) * standardError;
  const [low, high] = [share - half, share + half];
  return { share, low, high, standardError, degrees, confidence, treated, comparison, outcome: low > 0 ? 'use fell' : high < 0 ? 'use rose' : 'cannot be told' };
}
