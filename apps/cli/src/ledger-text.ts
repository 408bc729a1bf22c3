import { dollarsText } from '#calc';
import type { LedgerReport } from '#planning';
import { tableText } from './said.js';

const money = (cents: number | null): string => (cents === null ? 'no cap' : dollarsText(cents));

/** The ledger by fiscal year, then quotes, stock and what does not add up. */
export function ledgerText({ on, phases, quotes, stock, findings }: LedgerReport): string {
  return [
    `Ledger on ${on}. Remaining is the cap less what is paid and still to be paid; quotes bind nobody.`,
    '',
    tableText(['phase', 'cap', 'quoted', 'ordered', 'invoiced', 'paid', 'to be paid', 'remaining'], phases.map((p) => [p.phase, ...[p.cap_cents, p.quoted_cents, p.committed_cents, p.invoiced_cents, p.paid_cents, p.open_cents, p.remaining_cents].map(money)])),
    ...quotes.map((q) => `quote ${q.id}, ${q.phase}: ${money(q.amount_cents)}, ${q.state}${q.expires === null ? ', without an end' : `, ${q.state === 'expired' ? 'held' : 'holds'} until ${q.expires}`}`),
    ...stock.map((s) => `stock of film ${s.film}: worth ${money(s.worth_cents)}${s.rolls.map((r) => `; ${r.count} × ${r.roll}`).join('')}`),
    ...findings.map((f) => `${f.severity}: ${f.subject}: ${f.text}; ${f.whatToDo}`),
  ].join('\n');
}
