import type { LedgerEntry } from '#calc';

/** An order, or an invoice nobody ordered, with what was invoiced and paid against it. */
export interface Obligation {
  readonly entry: LedgerEntry;
  readonly invoiced_cents: number;
  readonly paid_cents: number;
  /** What it comes to: the order, or what was invoiced where that is more. */
  readonly due_cents: number;
  /** Due and not yet paid, never below zero. */
  readonly open_cents: number;
}

const sum = (entries: readonly LedgerEntry[]): number => entries.reduce((total, { amount_cents }) => total + amount_cents, 0);

/**
 * Every obligation once: an invoice that settles an order, and a payment that settles either, belong to the order.
 *
 *   due = max(order, its invoices); open = max(0, due − payments of the order and of its invoices)
 */
export function obligations(entries: readonly LedgerEntry[]): readonly Obligation[] {
  const against = (id: string, kind: LedgerEntry['kind']): LedgerEntry[] => entries.filter((entry) => entry.kind === kind && entry.settles === id);
  const orders = entries.filter(({ kind }) => kind === 'committed');
  const ordered = new Set(orders.map(({ id }) => id));
  const alone = entries.filter(({ kind, settles }) => kind === 'invoiced' && !(settles !== null && ordered.has(settles)));
  return [...orders, ...alone].map((entry) => {
    const invoices = entry.kind === 'committed' ? against(entry.id, 'invoiced') : [entry];
    const payers = entry.kind === 'committed' ? [entry, ...invoices] : invoices;
    const paid_cents = sum(payers.flatMap(({ id }) => against(id, 'paid')));
    const invoiced_cents = sum(invoices);
    const due_cents = Math.max(entry.kind === 'committed' ? entry.amount_cents : 0, invoiced_cents);
    return { entry, invoiced_cents, paid_cents, due_cents, open_cents: Math.max(0, due_cents - paid_cents) };
  });
}

/** What of a fiscal year is spoken for: paid, and ordered or invoiced and not yet paid. */
export function spokenFor_cents(ledger: readonly LedgerEntry[], phase: string): number {
  const paid = sum(ledger.filter((entry) => entry.kind === 'paid' && entry.phase === phase));
  return paid + obligations(ledger).filter(({ entry }) => entry.phase === phase).reduce((total, { open_cents }) => total + open_cents, 0);
}
