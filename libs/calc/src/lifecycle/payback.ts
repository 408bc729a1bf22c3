import { checkRate, type Missing } from './present-value.js';

const NOISE = 1e-12;

/**
 * The year in which what was paid has come back, with a part of a year.
 *
 *   running sum of flow_y / (1 + rate)^y reaches 0; inside that year the sum is taken to rise evenly
 *
 * A sum short of zero by no more than the noise of division (1e-12 of the outlay) has reached it.
 * A later outlay (removal in the last year) can take the sum below zero again; the first time it reaches zero is given.
 *
 * @param flows_cents flow of year 0, year 1, …; the first is below zero
 * @param rate 0 for simple payback, the discount rate for discounted payback; above −1
 * @returns years, or why the outlay never comes back
 * @throws RangeError when the rate is −1 or less
 * @source NIST Handbook 135, simple and discounted payback; there in whole years, here interpolated inside the year
 */
export function paybackYears(flows_cents: readonly number[], rate = 0): number | Missing {
  checkRate('rate', rate);
  let sum = flows_cents[0] ?? 0;
  if (sum >= 0) return { why: 'nothing is paid at the start, so there is nothing to pay back' };
  const enough = NOISE * sum;
  for (let year = 1; year < flows_cents.length; year++) {
    const flow = flows_cents[year]! / (1 + rate) ** year;
    if (sum + flow >= enough) return Math.min(year, year - 1 - sum / flow);
    sum += flow;
  }
  return { why: `not paid back within ${flows_cents.length - 1} years` };
}
