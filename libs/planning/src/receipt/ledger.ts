import type { LedgerEntry } from '#calc';
import type { PhaseLedger } from '../ledger/ledger-types.js';
import { obligations } from '../ledger/settlements.js';
import type { Plan } from '../plan/plan.js';
import { type Figure, part, type ReceiptAt } from './figure.js';
import { added, dollars } from './receipt-numbers.js';
import { BY_HAND, type Receipt, type ReceiptRow, type ReceiptStep, workedOut } from './receipt.js';

type Asked = 'quoted' | 'ordered' | 'invoiced' | 'paid' | 'open' | 'stock' | 'remaining';

/** Columns of the ledger in trade words. */
const COLUMNS: Readonly<Record<Asked, { readonly of: keyof PhaseLedger; readonly title: string; readonly formula: string }>> = {
  quoted: { of: 'quoted_cents', title: 'Open quotes', formula: 'quoted = Σ quotes that hold on the day of the plan and that no order has taken up; they bind nobody' },
  ordered: { of: 'committed_cents', title: 'Ordered', formula: 'ordered = Σ orders, each at its amount or at what was invoiced for it where that is more, and invoices nobody ordered' },
  invoiced: { of: 'invoiced_cents', title: 'Invoiced', formula: 'invoiced = Σ invoices of the year' },
  paid: { of: 'paid_cents', title: 'Paid', formula: 'paid = Σ payments of the year' },
  open: { of: 'open_cents', title: 'To be paid', formula: 'to be paid = Σ orders and invoices of what each comes to − payments against it, never below zero; an order, its invoices and their payments are counted once' },
  stock: { of: 'stock_cents', title: 'Worth of film in store', formula: 'stock on hand = Σ stock entries of the year; an asset, not a payment' },
  remaining: { of: 'remaining_cents', title: 'Remaining of the cap', formula: 'remaining = cap − paid − to be paid; quotes and stock do not count' },
};

interface LedgerFigure extends Pick<Figure, 'id' | 'title'> {
  readonly row: PhaseLedger;
  readonly asked: Asked;
}

const amount = (entry: LedgerEntry): ReceiptStep => ({ label: `${entry.kind} ${entry.id}, ${entry.day}`, substituted: dollars(entry.amount_cents), value: entry.amount_cents, unit: 'cents' });

/** Entries behind a column, and the step of each. */
function stepsOf({ row, asked }: LedgerFigure, { plan, ledger }: { readonly plan: Plan; readonly ledger: readonly LedgerEntry[] }): { readonly steps: ReceiptStep[]; readonly entries: readonly LedgerEntry[] } {
  const here = [...ledger].sort((a, b) => (a.id < b.id ? -1 : 1)).filter((e) => e.phase === row.phase);
  const kind = (of: LedgerEntry['kind']): { steps: ReceiptStep[]; entries: LedgerEntry[] } => {
    const entries = here.filter((e) => e.kind === of);
    return { entries, steps: entries.map(amount) };
  };
  if (asked === 'paid' || asked === 'invoiced' || asked === 'stock') return kind(asked);
  if (asked === 'quoted') {
    const open = new Set((plan.ledger?.quotes ?? []).filter((q) => q.state === 'open').map((q) => q.id));
    const entries = kind('quote').entries.filter((e) => open.has(e.id));
    return { entries, steps: entries.map(amount) };
  }
  const due = obligations([...ledger].sort((a, b) => (a.id < b.id ? -1 : 1))).filter((o) => o.entry.phase === row.phase);
  const entries = here.filter((e) => e.kind !== 'quote' && e.kind !== 'stock');
  const steps = due.map((o): ReceiptStep => asked === 'ordered'
    ? { label: `${o.entry.kind} ${o.entry.id}`, substituted: `the larger of ${dollars(o.entry.kind === 'committed' ? o.entry.amount_cents : 0)} ordered and ${dollars(o.invoiced_cents)} invoiced = ${dollars(o.due_cents)}`, value: o.due_cents, unit: 'cents' }
    : { label: `to be paid for ${o.entry.id}`, substituted: `${dollars(o.due_cents)} − ${dollars(o.paid_cents)} paid = ${dollars(o.open_cents)}`, value: o.open_cents, unit: 'cents' });
  if (asked !== 'remaining') return { steps, entries };
  const minus = [...kind('paid').steps, ...steps].map((s): ReceiptStep => ({ ...s, value: -s.value }));
  return { entries, steps: [{ label: 'cap', substituted: dollars(row.cap_cents ?? 0), value: row.cap_cents ?? 0, unit: 'cents' }, ...minus] };
}

async function ledgerReceipt(of: LedgerFigure, at: ReceiptAt): Promise<Receipt> {
  const { ledger } = (await at.survey()).job.portfolio;
  const { steps, entries } = stepsOf(of, { plan: at.plan, ledger });
  const stated = Number(of.row[COLUMNS[of.asked].of] ?? 0);
  const worked = steps.reduce((sum, s) => sum + s.value, 0);
  const rows = entries.map((e): ReceiptRow => ({ ...e.inventoryRow, columns: ['kind', 'amount', 'settles', 'expires'], of: e.id }));
  return {
    figure: of.id, title: of.title, value: stated, unit: 'cents', formula: COLUMNS[of.asked].formula,
    steps: [...steps, { label: 'sum', substituted: `${steps.length === 0 ? 'nothing is entered' : added(steps.map((s) => dollars(s.value)))} = ${dollars(worked)}`, value: worked, unit: 'cents' }],
    rows: [...(of.asked === 'remaining' ? [{ file: 'plan.json', row: 1, columns: ['phases'], of: `cap of ${of.row.phase}` }] : []), ...rows],
    assumptions: [], compute: null, computeWhy: BY_HAND,
    worked: workedOut(stated, worked, 'entries were added or changed since the plan was made'),
    see: of.asked === 'remaining' ? [`ledger/${part(of.row.phase)}/paid`, `ledger/${part(of.row.phase)}/open`, `phase/${part(of.row.phase)}/left`] : [`ledger/${part(of.row.phase)}/remaining`],
  };
}

/** Money already spoken for, by fiscal year. */
export const ledgerFigures = (plan: Plan): Figure[] =>
  (plan.ledger?.phases ?? []).flatMap((row) =>
    (Object.keys(COLUMNS) as Asked[]).filter((asked) => asked !== 'remaining' || row.remaining_cents !== null).map((asked): Figure => {
      const about = { id: `ledger/${part(row.phase)}/${asked}`, title: `${COLUMNS[asked].title}, ${row.phase}` };
      return { ...about, receipt: (at) => ledgerReceipt({ ...about, row, asked }, at) };
    }),
  );
