import type { TariffClock } from './tariff-clock.js';
import { yearCost_cents } from './year-cost.js';

/** What a kWh that film saves is worth, beside what a kWh costs on average. */
export interface WeightedPrice {
  /** Money saved over kWh saved; `why` where nothing is saved. */
  readonly saved_cents_kWh: number | { readonly why: string };
  /** The whole bill as found over its kWh, fixed charges in it; `why` where nothing is used. */
  readonly average_cents_kWh: number | { readonly why: string };
}

/**
 * The price of the kWh that a measure saves, weighted by when it saves them.
 *
 *   saved = (bill before − bill after) / (kWh before − kWh after);  average = bill before / kWh before
 *
 * Film saves in the afternoon: under a tariff by time of use the first can be far above the second; under a minimum charge far
 * below.
 *
 * @param clock the tariff laid over the year
 * @param use hourly use before and after, 8760 hours each
 * @returns both prices in cents per kWh
 * @throws RangeError when the use does not hold 8760 finite values
 * @source definition
 */
export function weightedPrice_cents_kWh(
  clock: TariffClock,
  use: { readonly before_kWh: Float64Array; readonly after_kWh: Float64Array },
): WeightedPrice {
  const before_cents = yearCost_cents(clock, use.before_kWh);
  const after_cents = yearCost_cents(clock, use.after_kWh);
  const before = use.before_kWh.reduce((sum, kWh) => sum + kWh, 0);
  const saved = before - use.after_kWh.reduce((sum, kWh) => sum + kWh, 0);
  // Sums of 8760 hours agree to about twelve digits; a smaller difference is no saving.
  const isNothing = Math.abs(saved) <= 1e-9 * Math.max(1, Math.abs(before));
  return {
    saved_cents_kWh: isNothing ? { why: 'no electricity is saved' } : (before_cents - after_cents) / saved,
    average_cents_kWh: before > 0 ? before_cents / before : { why: 'no electricity is used' },
  };
}
