import type { Phase, Portfolio } from '#calc';
import { obligations } from './settlements.js';

/**
 * Phases with what their caps still leave: cap − paid − ordered and not yet paid, never below zero. A plan made after the
 * first orders spends only that.
 */
export function remainingCaps({ phases, ledger }: Pick<Portfolio, 'phases' | 'ledger'>): readonly Phase[] {
  if (ledger.length === 0) return phases;
  const due = obligations(ledger);
  return phases.map((phase) => {
    const paid = ledger.filter((entry) => entry.kind === 'paid' && entry.phase === phase.id).reduce((sum, { amount_cents }) => sum + amount_cents, 0);
    const open = due.filter(({ entry }) => entry.phase === phase.id).reduce((sum, { open_cents }) => sum + open_cents, 0);
    return { ...phase, cap_cents: Math.max(0, phase.cap_cents - paid - open) };
  });
}
