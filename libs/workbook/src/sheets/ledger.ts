import { dollarsText } from '#calc';
import type { PhaseLedger, Plan } from '#planning';
import type { Book } from '../book.js';
import { address, dollars, live } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';

const quoteText = (plan: Plan): string[] =>
  (plan.ledger?.quotes ?? []).map((q) => `Quote ${q.id}, ${q.phase}: ${dollarsText(q.amount_cents)}, ${q.state}${q.expires === null ? ', without an end' : `, holds until ${q.expires}`}.`);
const stockText = (plan: Plan): string[] =>
  (plan.ledger?.stock ?? []).map((s) => `Stock of film ${s.film}: worth ${dollarsText(s.worth_cents)} by the ledger; rolls that can be cut: ${s.rolls.length === 0 ? 'none' : s.rolls.map((r) => `${r.count} × ${r.roll}`).join(', ')}.`);

/** Money already spoken for when the plan was made, and what the caps still left. */
export function ledgerSheet(book: Book, plan: Plan): void {
  const money = plan.terms.currency;
  const part = (head: string, cents: (p: PhaseLedger) => number): { head: string; unit: string; width: number; format: string; isSummed: true; value: (p: PhaseLedger) => number } => ({ head, unit: money, width: 13, format: FORMAT.money, isSummed: true, value: (p) => dollars(cents(p)) });
  oneTableSheet<PhaseLedger>(book, {
    name: SHEET.ledger,
    about: `${plan.name}: money spoken for by owner entity and fiscal year, on ${plan.ledger?.on ?? plan.madeOn}`,
    notes: [
      'Remaining = cap less paid less ordered and not yet paid; the plan spends no more. An invoice belongs to the order it settles and a payment to its invoice, so each is counted once. Quotes bind nobody. Stock is an asset, paid in the year it was bought.',
      ...quoteText(plan),
      ...stockText(plan),
    ],
    columns: [
      { head: 'Owner entity', unit: '', width: 14, value: (p) => p.ownerEntity },
      { head: 'Phase', unit: '', width: 18, value: (p) => p.phase },
      part('Cap', (p) => p.cap_cents ?? 0),
      part('Quoted', (p) => p.quoted_cents),
      part('Ordered', (p) => p.committed_cents),
      part('Invoiced', (p) => p.invoiced_cents),
      part('Paid', (p) => p.paid_cents),
      part('To be paid', (p) => p.open_cents),
      { head: 'Remaining', unit: money, width: 13, format: FORMAT.money, isSummed: true, value: (p, _, row) => live(`${address(3, row)}-${address(7, row)}-${address(8, row)}`, dollars((p.cap_cents ?? 0) - p.paid_cents - p.open_cents)) },
      part('Stock on hand', (p) => p.stock_cents),
    ],
    rows: plan.ledger?.phases ?? [],
    total: 'Total',
    none: 'No ledger is kept: the plan works with the full caps.',
    frozenColumns: 2,
  });
}
