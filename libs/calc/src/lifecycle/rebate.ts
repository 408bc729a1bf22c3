/** What a fund pays by: money per area, the most it pays for one project, and the most as a share of the cost. */
export interface RebateTerms {
  readonly rate_cents_m2: number;
  /** `null`: no such limit. */
  readonly cap_cents: number | null;
  readonly costShare: number | null;
}

/**
 * Money a fund gives towards film.
 *
 *   min(area × rate, cap, share × cost)
 *
 * @param project film area in m² that meets the fund's terms, ≥ 0, and the cost of the work in cents, ≥ 0
 * @param terms rate ≥ 0, cap ≥ 0 or none, share 0…1 or none
 * @returns cents with fractions, ≥ 0, never above the cost
 * @throws RangeError when a figure is below zero or a share outside 0…1
 * @source usual form of utility and municipal offers; common practice, no source
 */
export function rebate_cents(project: { readonly area_m2: number; readonly cost_cents: number }, terms: RebateTerms): number {
  const { area_m2, cost_cents } = project;
  if (!(area_m2 >= 0 && cost_cents >= 0)) throw new RangeError(`area_m2 and cost_cents must be ≥ 0, got ${area_m2} and ${cost_cents}`);
  if (!(terms.rate_cents_m2 >= 0 && (terms.cap_cents ?? 0) >= 0)) throw new RangeError(`rate and cap must be ≥ 0, got ${terms.rate_cents_m2} and ${String(terms.cap_cents)}`);
  const share = terms.costShare ?? 1;
  if (!(share >= 0 && share <= 1)) throw new RangeError(`costShare must be 0…1, got ${share}`);
  return Math.min(area_m2 * terms.rate_cents_m2, terms.cap_cents ?? Infinity, share * cost_cents);
}
