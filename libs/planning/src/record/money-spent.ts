import { labour_cents, type LedgerEntry } from '#calc';
import { spokenFor_cents } from '../ledger/settlements.js';
import type { Plan, PhaseResult } from '../plan/plan.js';
import type { DoneLine, SpentMoney } from './settled-work.js';

/** Money of a phase that the ledger says is paid or ordered; null where it says nothing of the phase. */
const ledgerSpent_cents = (ledger: readonly LedgerEntry[], phase: string): number | null =>
  ledger.some((e) => e.phase === phase && e.kind !== 'quote' && e.kind !== 'stock') ? spokenFor_cents(ledger, phase) : null;

/** Cost of what was done in a phase, where no ledger says it: all film of the phase is bought, the own crew's work counts with its recorded minutes, a contractor's at his price, visits by building. */
function planCost_cents(plan: Plan, of: { readonly phase: PhaseResult; readonly done: readonly DoneLine[] }): number {
  const { spending, visits } = of.phase;
  const { terms } = plan;
  const lines = plan.lines.filter((l) => of.done.some((d) => d.dwelling === l.dwelling));
  const consumables = lines.reduce((sum, l) => sum + l.option.cost.consumables_cents, 0);
  const work = of.done.reduce((sum, d) => sum + labourOf(plan, d), 0);
  const visited = new Set(of.done.map((d) => d.building)).size;
  const film = spending.film_cents + spending.freight_cents;
  const taxes = (film + consumables) * terms.materialTaxShare + work * terms.labourTaxShare;
  return Math.round(film + consumables + work + taxes + (visits.length === 0 ? 0 : (spending.visits_cents * visited) / visits.length));
}

/** Paid labour of a done line: a contractor's as agreed, the own crew's by the minute and only where it is paid in cash. */
function labourOf({ lines, terms }: Plan, done: DoneLine): number {
  const option = lines.find((l) => l.dwelling === done.dwelling)?.option;
  const agreed = option === undefined ? 0 : option.cost.labour_cents + option.cost.removal_cents;
  if (option?.crew === 'contractor') return agreed;
  if (!terms.labourIsCash) return 0;
  return done.real_min === null ? agreed : labour_cents(done.real_min, terms.labour_cents_h);
}

/** What is spent in each phase of the plan before, earlier revisions counted in; phases nothing was spent in are left out. */
export function moneySpent(plan: Plan, done: readonly DoneLine[], ledger: readonly LedgerEntry[]): SpentMoney[] {
  const before = new Map((plan.settled?.spent ?? []).map((s) => [s.phase, s.spent_cents]));
  return plan.phases.flatMap((phase): SpentMoney[] => {
    const { id } = phase.phase;
    const byLedger = ledgerSpent_cents(ledger, id);
    if (byLedger !== null) return [{ phase: id, spent_cents: byLedger, basis: 'ledger' }];
    const own = done.filter((d) => d.phase === id);
    const spent_cents = (before.get(id) ?? 0) + (own.length === 0 ? 0 : planCost_cents(plan, { phase, done: own }));
    return spent_cents === 0 ? [] : [{ phase: id, spent_cents, basis: 'plan cost and recorded minutes' }];
  });
}
