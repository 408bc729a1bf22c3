import type { PriceStep } from './tariff.js';

/** The part of an amount that falls into one step. */
export interface StepShare {
  readonly tier: number;
  readonly amount: number;
  readonly cents: number;
}

const upperEnd = (step: PriceStep, days: number): number => (step.daily ? step.upTo * days : step.upTo);

/**
 * Cost of a month's kWh, or of a peak in kW, by rising steps.
 *
 *   Σ over steps of (min(amount, upper end) − lower end) × price; a daily upper end is multiplied by the days of the month
 *
 * @param steps steps of one period, in rising order, the last without an end
 * @param amount kWh or kW of the month, ≥ 0
 * @param days days of the month
 * @returns cents, with fractions
 * @source tier rule of the U.S. Utility Rate Database: `max` is cumulative within the month
 */
export function stepsCost_cents(steps: readonly PriceStep[], amount: number, days: number): number {
  let below = 0;
  let cost_cents = 0;
  for (const step of steps) {
    const top = upperEnd(step, days);
    const part = Math.min(amount, top) - below;
    if (!(part > 0)) break;
    cost_cents += part * step.price_cents;
    below = top;
  }
  return cost_cents;
}

/** The same cost step by step; an amount of nothing still names its first step. */
export function stepShares(steps: readonly PriceStep[], amount: number, days: number): StepShare[] {
  const ends = steps.map((step) => upperEnd(step, days));
  const shares = steps.map((step, tier) => {
    const part = Math.max(0, Math.min(amount, ends[tier]!) - (ends[tier - 1] ?? 0));
    return { tier, amount: part, cents: part * step.price_cents };
  });
  return shares.filter((share) => share.tier === 0 || share.amount > 0);
}
