import { phaseYear } from '../options/value.js';
import type { Plan } from '../plan/plan.js';

/** Net present value at the share of the modelled savings that bills are expected to show, cents, all payers. */
export interface NpvExpected {
  readonly low_cents: number;
  readonly middle_cents: number;
  readonly high_cents: number;
}

/**
 * What the plan is worth when as much of the modelled savings is found as studies and bills let expect, the same share in all lines.
 *
 *   share × (NPV + N) − N          N = present value of what is paid, taking film off at its end in it, less what funds give
 *
 * @returns null where no share is known, or the savings of the plan count as found already
 */
export function npvExpected({ bills, payback, phases, terms }: Pick<Plan, 'bills' | 'payback' | 'phases' | 'terms'>): NpvExpected | null {
  if (bills === undefined || bills.setting === 'as-found') return null;
  const rate = terms.realDiscountRate;
  const yearOf = new Map(phases.map(({ phase }) => [phase.id, phaseYear(phase, terms.studyStart)]));
  const now = (cents: number, phase: string): number => cents / (1 + rate) ** (yearOf.get(phase) ?? 0);
  const paid = phases.reduce((sum, { phase, spending }) => sum + now(spending.total_cents, phase.id), 0);
  const removal = payback.lines.reduce((sum, l) => sum + (l.endRemoval_cents ?? 0) / (1 + rate) ** (l.phaseYear + l.life_yr), 0);
  const net = paid - payback.rebates.reduce((sum, rebate) => sum + now(rebate.cents, rebate.phase), 0) + removal;
  const at = (share: number): number => share * (payback.npv_cents + net) - net;
  const { low, middle, high } = bills.plan;
  return { low_cents: at(low), middle_cents: at(middle), high_cents: at(high) };
}
