import type { FailureBreakEven } from './energy-types.js';

/** What the break-even of an option is worked out from. */
export interface FailureCase {
  /** Net present value without any failure, in the plan's view, in the earliest phase open to it. */
  readonly value_cents: number;
  readonly panes: number;
  /** Glass and work; null where nobody said. */
  readonly paneReplacement_cents: number | null;
  readonly years: number;
  readonly realDiscountRate: number;
}

/**
 * The yearly share of filmed panes whose replacement uses the option's value up.
 *
 *   share = NPV / (panes × replacement × Σ 1/(1+r)ᵗ), t = 1 … years of the film's life
 *
 * It says how much breakage the option could bear; how much there is, is not guessed. A broken pane's lost saving is not counted.
 */
export function failureBreakEven(of: FailureCase): FailureBreakEven {
  if (of.paneReplacement_cents === null) return { share_1_yr: null, why: 'no price of a replaced pane is given for the building' };
  if (of.paneReplacement_cents <= 0) return { share_1_yr: null, why: 'a replaced pane costs nothing' };
  if (of.value_cents <= 0) return { share_1_yr: null, why: 'not worth its cost even if no pane fails' };
  let annuity = 0;
  for (let year = 1; year <= of.years; year++) annuity += (1 + of.realDiscountRate) ** -year;
  return { share_1_yr: of.value_cents / (of.panes * of.paneReplacement_cents * annuity), why: null };
}
