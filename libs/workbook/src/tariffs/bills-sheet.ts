import type { LineUse, LineUseSpan, MonthUse, Plan } from '#planning';
import type { Book } from '../book.js';
import { address, live, quoted } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';
import { bill, billFormula, charges, chargesFormula, type UseColumns } from './month-bill.js';
import type { TariffPlace } from './tariffs-sheet.js';

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

interface BillRow {
  readonly use: LineUse;
  readonly span: LineUseSpan;
  readonly month: number;
  readonly tariff: TariffPlace;
}

/** Where the twelve months of a span of a line stand, and what they come to now. */
export interface SpanBill {
  readonly dwelling: string;
  readonly span: number;
  readonly firstYear: number;
  readonly savedRange: string;
  readonly saved: number;
  readonly addedGas_kWh: number;
  readonly gas_cents_kWh: number;
}

const DAYS_COLUMN = 6;
const FIRST_USE_COLUMN = 7;

/** How many columns the widest tariff needs. */
interface Widths {
  readonly periods: number;
  readonly sells: number;
  readonly demands: number;
  readonly hasPeak: boolean;
}

function widthsOf(places: Iterable<TariffPlace>): Widths {
  const all = [...places];
  const most = (of: (p: TariffPlace) => number): number => Math.max(0, ...all.map(of));
  return { periods: most((p) => p.energy.length), sells: most((p) => (p.sellRow.some((r) => r !== null) ? p.energy.length : 0)), demands: most((p) => p.demand.length), hasPeak: all.some((p) => p.flatDemand.length > 0) };
}

const sizeOf = (w: Widths): number => w.periods + w.sells + w.demands + (w.hasPeak ? 1 : 0);

function useColumns(w: Widths, from: number): UseColumns {
  const run = (count: number, at: number): number[] => Array.from({ length: count }, (_, i) => at + i);
  return { bought: run(w.periods, from), sold: run(w.sells, from + w.periods), periodPeak: run(w.demands, from + w.periods + w.sells), peak: w.hasPeak ? from + w.periods + w.sells + w.demands : null };
}

function useHeads(w: Widths, of: { readonly label: string; readonly pick: (row: BillRow) => MonthUse }): Column<BillRow>[] {
  const figure = (head: string, unit: string, value: (use: MonthUse) => number | undefined): Column<BillRow> => ({ head: `${head}, ${of.label}`, unit, width: 10, format: FORMAT.two, value: (r) => value(of.pick(r)) ?? null });
  const each = (count: number, make: (i: number) => Column<BillRow>): Column<BillRow>[] => Array.from({ length: count }, (_, i) => make(i));
  const name = (i: number, count: number): string => (count > 1 ? ` period ${String(i + 1)}` : '');
  return [
    ...each(w.periods, (i) => figure(`Use${name(i, w.periods)}`, 'kWh, run', (u) => u.bought_kWh[i])),
    ...each(w.sells, (i) => figure(`Exported${name(i, w.sells)}`, 'kWh, run', (u) => u.sold_kWh[i])),
    ...each(w.demands, (i) => figure(`Demand${name(i, w.demands)}`, 'kW, run', (u) => u.periodPeak_kW[i])),
    ...(w.hasPeak ? [figure('Greatest demand', 'kW, run', (u) => u.peak_kW)] : []),
  ];
}

const found = (r: BillRow): MonthUse => r.span.asFound[r.month]!;
const planned = (r: BillRow): MonthUse => r.span.planned[r.month]!;
const chargesNow = (r: BillRow, use: MonthUse): number => charges(r.tariff, use, { days: DAYS[r.month]!, month: r.month });
const billNow = (r: BillRow, use: MonthUse): number => bill(r.tariff, chargesNow(r, use), DAYS[r.month]!);

function columns(money: string, w: Widths): { readonly columns: readonly Column<BillRow>[]; readonly saved: number } {
  const size = sizeOf(w);
  const [before, after] = [useColumns(w, FIRST_USE_COLUMN), useColumns(w, FIRST_USE_COLUMN + size)];
  const at = FIRST_USE_COLUMN + 2 * size;
  const days = (row: number): string => `$${address(DAYS_COLUMN, row)}`;
  const charged = (head: string, cols: UseColumns, pick: (r: BillRow) => MonthUse): Column<BillRow> => ({ head, unit: money, width: 11, format: FORMAT.money, value: (r, _, row) => live(chargesFormula(r.tariff, { columns: cols, row, days: days(row), month: r.month }), chargesNow(r, pick(r))) });
  const billed = (head: string, column: number, pick: (r: BillRow) => MonthUse): Column<BillRow> => ({ head, unit: money, width: 11, format: FORMAT.money, value: (r, _, row) => live(billFormula(r.tariff, { charges: address(column, row), days: days(row) }), billNow(r, pick(r))) });
  return {
    saved: at + 4,
    columns: [
      { head: 'Dwelling', unit: '', width: 12, value: (r) => r.use.dwelling },
      { head: 'Meter', unit: '', width: 12, value: (r) => r.use.meter },
      { head: 'Tariff', unit: '', width: 10, value: (r) => r.use.tariff },
      { head: 'From', unit: 'calendar year', width: 9, format: FORMAT.year, value: (r) => r.span.firstYear },
      { head: 'Month', unit: 'number', width: 7, format: FORMAT.year, value: (r) => r.month + 1 },
      { head: 'Days', unit: 'days', width: 6, format: FORMAT.year, value: (r) => DAYS[r.month]! },
      ...useHeads(w, { label: 'as found', pick: found }),
      ...useHeads(w, { label: 'with film', pick: planned }),
      charged('Charges as found', before, found),
      charged('Charges with film', after, planned),
      billed('Bill as found', at, found),
      billed('Bill with film', at + 1, planned),
      { head: 'Saved', unit: money, width: 11, format: FORMAT.money, value: (r, _, row) => live(`${address(at + 2, row)}-${address(at + 3, row)}`, billNow(r, found(r)) - billNow(r, planned(r))) },
    ],
  };
}

/** The bills of every line's meter by month, as found and with its film, in each span of years: use typed by the run, money by the tariffs. */
export function billsSheet(book: Book, plan: Plan, places: ReadonlyMap<string, TariffPlace>): SpanBill[] {
  const rows = plan.uses.flatMap((use) => use.spans.flatMap((span) => DAYS.map((_, month): BillRow => ({ use, span, month, tariff: places.get(use.tariff)! }))));
  const made = columns(plan.terms.currency, widthsOf(places.values()));
  const { place } = oneTableSheet(book, {
    name: SHEET.bills,
    about: `${plan.name}: bill of each line's meter by month, as found and with its film, prices of ${SHEET.tariffs}`,
    notes: ['kWh and kW are typed results of the run: what else hangs on a shared meter is in them as it stood when the line was valued. A new span begins when the plant or a window is replaced. Money follows the prices; a bill is not rounded here.'],
    columns: made.columns,
    rows,
    none: 'No line, so no bill.',
    frozenColumns: 1,
  });
  let at = place.firstRow;
  return plan.uses.flatMap((use) =>
    use.spans.map((span, i): SpanBill => {
      const [first, last] = [at, at + 11];
      at += 12;
      const months = rows.slice(first - place.firstRow, first - place.firstRow + 12);
      const saved = months.reduce((sum, r) => sum + billNow(r, found(r)) - billNow(r, planned(r)), 0);
      return { dwelling: use.dwelling, span: i, firstYear: span.firstYear, savedRange: `${quoted(SHEET.bills)}!${address(made.saved, first)}:${address(made.saved, last)}`, saved, addedGas_kWh: span.addedGas_kWh, gas_cents_kWh: use.gas_cents_kWh };
    }),
  );
}
