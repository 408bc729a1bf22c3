import { dollarsText, type LedgerEntry, type Phase, type Portfolio, type Roll } from '#calc';
import type { LedgerFinding, LedgerReport, PhaseLedger, QuoteState, StockOnHand } from './ledger-types.js';
import { obligations, type Obligation } from './settlements.js';

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What the ledger is read from. */
export type LedgerBooks = Pick<Portfolio, 'ledger' | 'phases' | 'rolls'>;

const total = (entries: readonly LedgerEntry[], kind: LedgerEntry['kind']): number => entries.filter((entry) => entry.kind === kind).reduce((sum, { amount_cents }) => sum + amount_cents, 0);

function quotesOf(entries: readonly LedgerEntry[], on: string): QuoteState[] {
  const taken = new Set(entries.filter(({ kind }) => kind === 'committed').map(({ settles }) => settles));
  return entries
    .filter(({ kind }) => kind === 'quote')
    .map(({ id, phase, amount_cents, freight_cents, minimumOrder_cents, expires }) => ({ id, phase, amount_cents, freight_cents, minimumOrder_cents, expires, state: taken.has(id) ? 'taken up' : expires !== null && expires < on ? 'expired' : 'open' }));
}

function phaseLedger(id: string, of: { readonly entries: readonly LedgerEntry[]; readonly phase: Phase | undefined; readonly quotes: readonly QuoteState[]; readonly due: readonly Obligation[] }): PhaseLedger {
  const entries = of.entries.filter(({ phase }) => phase === id);
  const due = of.due.filter(({ entry }) => entry.phase === id);
  const [paid, open] = [total(entries, 'paid'), due.reduce((sum, { open_cents }) => sum + open_cents, 0)];
  const quoted = (state: QuoteState['state']): number => of.quotes.filter((quote) => quote.phase === id && quote.state === state).reduce((sum, { amount_cents }) => sum + amount_cents, 0);
  const cap_cents = of.phase?.cap_cents ?? null;
  return {
    ownerEntity: of.phase?.ownerEntity ?? entries[0]?.ownerEntity ?? '', phase: id, cap_cents, quoted_cents: quoted('open'), expiredQuotes_cents: quoted('expired'),
    committed_cents: due.reduce((sum, { due_cents }) => sum + due_cents, 0), invoiced_cents: total(entries, 'invoiced'), paid_cents: paid, open_cents: open,
    stock_cents: total(entries, 'stock'), remaining_cents: cap_cents === null ? null : cap_cents - paid - open,
  };
}

const cuttable = ({ id, width, length_mm, inStock }: Roll): StockOnHand['rolls'][number] => ({ roll: id, width_mm: width.mm, length_mm, count: inStock });

function stockOf({ ledger, rolls }: LedgerBooks): StockOnHand[] {
  const inStock = rolls.filter((roll) => roll.inStock > 0);
  const lines = ledger.filter(({ kind, film }) => kind === 'stock' && film !== null);
  const films = [...new Set([...inStock.map(({ film }) => film), ...lines.map(({ film }) => film ?? '')])].sort(byText);
  return films.map((film) => {
    const ofFilm = lines.filter((line) => line.film === film);
    return { film, ownerEntity: ofFilm[0]?.ownerEntity ?? null, worth_cents: ofFilm.reduce((sum, { amount_cents }) => sum + amount_cents, 0), rolls: inStock.filter((roll) => roll.film === film).map(cuttable) };
  });
}

function findingsOf(of: Pick<LedgerReport, 'phases' | 'quotes' | 'stock' | 'on'> & { readonly due: readonly Obligation[] }): LedgerFinding[] {
  const expired = of.quotes.filter(({ state }) => state === 'expired').map((quote): LedgerFinding => ({ severity: 'warning', subject: quote.id, text: `the quote of ${dollarsText(quote.amount_cents)} expired on ${quote.expires ?? ''}`, whatToDo: 'ask for a new one before ordering; nothing of it counts against the cap' }));
  const small = of.quotes.filter((quote) => quote.state === 'open' && quote.minimumOrder_cents !== null && quote.amount_cents < quote.minimumOrder_cents).map((quote): LedgerFinding => ({ severity: 'warning', subject: quote.id, text: `the quote of ${dollarsText(quote.amount_cents)} is under its smallest order of ${dollarsText(quote.minimumOrder_cents ?? 0)}`, whatToDo: 'order more, or ask for a price of this quantity' }));
  const overpaid = of.due.filter(({ paid_cents, due_cents }) => paid_cents > due_cents).map(({ entry, paid_cents, due_cents }): LedgerFinding => ({ severity: 'warning', subject: entry.id, text: `paid ${dollarsText(paid_cents)} against ${dollarsText(due_cents)}`, whatToDo: 'all that was paid counts against the cap; correct the entry or ask for the credit' }));
  const above = of.due.filter(({ entry, invoiced_cents }) => entry.kind === 'committed' && invoiced_cents > entry.amount_cents).map(({ entry, invoiced_cents }): LedgerFinding => ({ severity: 'warning', subject: entry.id, text: `invoiced ${dollarsText(invoiced_cents)} against an order of ${dollarsText(entry.amount_cents)}`, whatToDo: 'the invoices count; look at the difference' }));
  const over = of.phases.filter(({ remaining_cents }) => remaining_cents !== null && remaining_cents < 0).map((phase): LedgerFinding => ({ severity: 'error', subject: phase.phase, text: `${dollarsText(-(phase.remaining_cents ?? 0))} more is paid and ordered than the cap of ${dollarsText(phase.cap_cents ?? 0)}`, whatToDo: 'raise the cap or take an order back; a plan can spend nothing more in this year' }));
  const uncut = of.stock.filter(({ rolls, worth_cents }) => rolls.length === 0 && worth_cents !== 0).map(({ film }): LedgerFinding => ({ severity: 'warning', subject: film, text: 'the ledger has stock of this film, and rolls.csv has no roll of it in stock', whatToDo: 'write the rolls with width, length left and in_stock into rolls.csv: only they can be cut' }));
  return [...over, ...expired, ...small, ...overpaid, ...above, ...uncut];
}

/** The ledger by owner entity and fiscal year as it stands on a day, with its quotes, its stock, and what does not add up. */
export function ledgerReport(books: LedgerBooks, on: string): LedgerReport {
  const entries = [...books.ledger].sort((a, b) => byText(a.id, b.id));
  const [due, quotes] = [obligations(entries), quotesOf(entries, on)];
  const known = new Map(books.phases.map((phase) => [phase.id, phase]));
  const ids = [...new Set([...known.keys(), ...entries.map(({ phase }) => phase)])].sort(byText);
  const phases = ids.map((id) => phaseLedger(id, { entries, phase: known.get(id), quotes, due }));
  const stock = stockOf(books);
  return { on, phases, quotes, stock, findings: findingsOf({ on, phases, quotes, stock, due }) };
}
