import type { PayerRule } from '../portfolio/index.js';

/** Who gains from a lower bill; the two sum to 1. */
export interface PayerShares {
  readonly owner: number;
  readonly tenant: number;
}

/**
 * Who keeps the saving of one year on a meter.
 *
 *   owner = vacancy + (1 − vacancy) × (late + (1 − late) × owner's share)
 *
 * `late` is the part of the year in which a ratio bill still follows the old use: the owner keeps the saving until it is reset.
 * While a dwelling stands empty the owner pays.
 *
 * @param rule shares, reset lag and vacancy of the meter
 * @param age_years year since the work, 1 for the first
 * @returns owner's and tenant's share, summing to 1
 * @throws RangeError when a share is not 0…1, the lag is below zero or age_years is not a whole number from 1
 * @source billing classes as in the payer rules of the portfolio; ratio billing principle: common practice
 */
export function payerShares(rule: PayerRule, age_years: number): PayerShares {
  const { ownerShare, resetLag_yr, vacancyShare } = rule;
  for (const [name, share] of Object.entries({ ownerShare, vacancyShare })) {
    if (!(share >= 0 && share <= 1)) throw new RangeError(`${name} must be 0…1, got ${share}`);
  }
  if (!(resetLag_yr >= 0)) throw new RangeError(`resetLag_yr must be 0 or more, got ${resetLag_yr}`);
  if (!(Number.isInteger(age_years) && age_years >= 1)) throw new RangeError(`age_years must be a whole number of 1 or more, got ${age_years}`);
  const late = Math.min(1, Math.max(0, resetLag_yr - (age_years - 1)));
  const occupied = late + (1 - late) * ownerShare;
  const owner = vacancyShare + (1 - vacancyShare) * occupied;
  return { owner, tenant: 1 - owner };
}
