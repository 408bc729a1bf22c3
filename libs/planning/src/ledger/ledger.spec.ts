import fc from 'fast-check';
import type { LedgerEntry, LedgerKind, Phase } from '#calc';
import { ledgerReport } from './ledger-report.js';
import { remainingCaps } from './remaining-caps.js';

const phase = (id: string, cap_cents: number): Phase => ({ id, ownerEntity: 'O', name: id, firstDay: '2026-07-01', lastDay: '2027-06-30', cap_cents, crewMinutes: null });
const line = (named: string, amount_cents: number, of: Partial<LedgerEntry> = {}): LedgerEntry => ({
  id: named.split(' ')[1] ?? '', kind: named.split(' ')[0] as LedgerKind, amount_cents, ownerEntity: 'O', phase: 'O/1', day: '2026-08-01', expires: null, freight_cents: null, minimumOrder_cents: null, film: null, settles: null, note: null, inventoryRow: { file: 'ledger.csv', row: 2 }, ...of,
});
const on = '2026-10-01';
const books = (ledger: readonly LedgerEntry[]) => ({ ledger, phases: [phase('O/1', 10_000), phase('O/2', 5000)], rolls: [] });
const first = (ledger: readonly LedgerEntry[]) => ledgerReport(books(ledger), on).phases[0];

describe('the cost ledger', () => {
  it('counts an order, its invoice and its payment once', () => {
    const order = line('committed PO', 3000);
    expect(first([order])).toMatchObject({ committed_cents: 3000, paid_cents: 0, open_cents: 3000, remaining_cents: 7000 });
    const invoiced = [order, line('invoiced I', 1200, { settles: 'PO' })];
    expect(first(invoiced)).toMatchObject({ committed_cents: 3000, invoiced_cents: 1200, open_cents: 3000, remaining_cents: 7000 });
    const paid = [...invoiced, line('paid P', 1200, { settles: 'I' })];
    expect(first(paid)).toMatchObject({ paid_cents: 1200, open_cents: 1800, remaining_cents: 7000 });
    expect(first([...paid, line('paid P2', 1800, { settles: 'PO' })])).toMatchObject({ paid_cents: 3000, open_cents: 0, remaining_cents: 7000 });
  });

  it('lets invoices above an order count, and says so', () => {
    const entries = [line('committed PO', 3000), line('invoiced I', 3400, { settles: 'PO' })];
    expect(first(entries)).toMatchObject({ committed_cents: 3400, open_cents: 3400, remaining_cents: 6600 });
    expect(ledgerReport(books(entries), on).findings).toMatchObject([{ subject: 'PO', text: 'invoiced $34.00 against an order of $30.00' }]);
  });

  it('counts an invoice and a payment nobody ordered', () => {
    expect(first([line('invoiced I', 500), line('paid P', 700)])).toMatchObject({ open_cents: 500, paid_cents: 700, remaining_cents: 8800 });
  });

  it('lets quotes bind nobody, and says which have expired', () => {
    const quotes = [line('quote Q1', 4000, { expires: '2026-09-30' }), line('quote Q2', 2000, { expires: '2026-10-01' }), line('quote Q3', 900, { expires: '2026-07-01' }), line('committed PO', 900, { settles: 'Q3' })];
    const report = ledgerReport(books(quotes), on);
    expect(report.phases[0]).toMatchObject({ quoted_cents: 2000, expiredQuotes_cents: 4000, remaining_cents: 9100 });
    expect(report.quotes.map(({ id, state }) => [id, state])).toEqual([['Q1', 'expired'], ['Q2', 'open'], ['Q3', 'taken up']]);
    expect(report.findings).toMatchObject([{ severity: 'warning', subject: 'Q1', text: 'the quote of $40.00 expired on 2026-09-30' }]);
  });

  it('shows stock as an asset beside the rolls that can be cut from it', () => {
    const roll = { id: 'B-48', film: 'B', width: { entered: '48', mm: 1219.2 }, length_mm: 9144, price_cents: null, inStock: 1, lot: null, inventoryRow: { file: 'rolls.csv', row: 2 } };
    const entries = [line('stock S', 8000, { film: 'B' }), line('stock S2', 100, { film: 'A' })];
    const report = ledgerReport({ ...books(entries), rolls: [roll] }, on);
    expect(report.stock).toEqual([
      { film: 'A', ownerEntity: 'O', worth_cents: 100, rolls: [] },
      { film: 'B', ownerEntity: 'O', worth_cents: 8000, rolls: [{ roll: 'B-48', width_mm: 1219.2, length_mm: 9144, count: 1 }] },
    ]);
    expect(report.phases[0]?.remaining_cents).toBe(10_000);
    expect(report.findings.map(({ subject }) => subject)).toEqual(['A']);
  });

  it('says when more is spoken for than the cap, and leaves a plan nothing', () => {
    const entries = [line('paid P', 12_000)];
    expect(ledgerReport(books(entries), on).findings).toMatchObject([{ severity: 'error', subject: 'O/1', text: '$20.00 more is paid and ordered than the cap of $100.00' }]);
    expect(remainingCaps(books(entries)).map(({ cap_cents }) => cap_cents)).toEqual([0, 5000]);
  });

  it('never counts a cent twice or loses one, whatever settles what', () => {
    const order = fc.record({ amount: fc.integer({ min: 0, max: 5000 }), invoices: fc.array(fc.record({ amount: fc.integer({ min: 0, max: 3000 }), paid: fc.array(fc.integer({ min: 0, max: 2000 }), { maxLength: 2 }) }), { maxLength: 3 }) });
    fc.assert(fc.property(fc.array(order, { maxLength: 4 }), (orders) => {
      const entries = orders.flatMap(({ amount, invoices }, i) => [line(`committed C${i}`, amount), ...invoices.flatMap((invoice, j) => [line(`invoiced C${i}I${j}`, invoice.amount, { settles: `C${i}` }), ...invoice.paid.map((paid, k) => line(`paid C${i}I${j}P${k}`, paid, { settles: `C${i}I${j}` }))])]);
      const found = first(entries)!;
      const plain = orders.reduce((sum, { amount, invoices }) => {
        const [invoiced, paid] = [invoices.reduce((s, { amount: a }) => s + a, 0), invoices.reduce((s, each) => s + each.paid.reduce((a, b) => a + b, 0), 0)];
        return sum + Math.max(amount, invoiced, paid);
      }, 0);
      return found.paid_cents + found.open_cents === plain && found.remaining_cents === 10_000 - plain && remainingCaps(books(entries))[0]!.cap_cents === Math.max(0, 10_000 - plain);
    }));
  });
});
