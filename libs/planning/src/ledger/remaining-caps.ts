import type { Phase, Portfolio } from '#calc';
import { spokenFor_cents } from './settlements.js';

/**
 * Phases with what their caps still leave: cap − paid − ordered and not yet paid, never below zero. A plan made after the
 * first orders spends only that.
 */
export function remainingCaps({ phases, ledger }: Pick<Portfolio, 'phases' | 'ledger'>): readonly Phase[] {
  return ledger.length === 0 ? phases : phases.map((phase) => ({ ...phase, cap_cents: Math.max(0, phase.cap_cents - spokenFor_cents(ledger, phase.id)) }));
}
