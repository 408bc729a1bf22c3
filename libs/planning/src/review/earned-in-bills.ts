import type { Plan } from '../plan/plan.js';

const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

/**
 * Which figure is which: money as modelled, the share of the modelled savings at which the plan earns its cost, and the share expected in
 * bills. Savings over all costs is SIR, so at 1 / SIR of the savings the two are equal.
 */
export function earnedInBillsWords({ bills, payback, lines }: Pick<Plan, 'bills' | 'payback' | 'lines'>): string[] {
  if (lines.length === 0) return [];
  const asFound = bills?.setting === 'as-found';
  const counted = asFound ? 'the savings counted here' : 'the modelled savings';
  const even = payback.sir > 1 ? `The plan earns its cost back, for all payers together, when ${percent(1 / payback.sir)} of ${counted} are found` : `The plan does not earn its cost back on ${counted}`;
  if (bills === undefined || asFound) return [`${even}.`];
  const { low, middle, high } = bills.plan;
  const holds = payback.sir * middle >= 1;
  return [`${even}; ${percent(middle)} are expected in bills (eight in ten between ${percent(low)} and ${percent(high)}): as expected it ${holds ? 'does earn its cost back' : 'does not earn its cost back, so compare bills before the next cap is spent'}.`];
}
