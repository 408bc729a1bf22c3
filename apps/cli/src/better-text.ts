import { dollarsText } from '#calc';
import type { BetterPlan } from '#planning';

const cents = dollarsText;

/** A better plan on the way, with what none can pass at that moment. */
export function betterText({ value, bound, by }: BetterPlan): string {
  if (bound === null) return `${by}: ${cents(value)}, no bound yet`;
  return `${by}: ${cents(value)}, none can pass ${cents(bound)} (gap ${(bound > 0 ? (100 * (bound - value)) / bound : 0).toFixed(4)} %)`;
}
