import type { Plan } from '#planning';
import type { Book } from '../book.js';
import { address, live, quoted } from '../cells.js';
import { type ChangedInputs, changedInputs } from '../changed-inputs.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';
import type { SpanBill } from './bills-sheet.js';

/** Cell and value of the yearly saving of a line in each of its spans. */
export type SpanSavings = ReadonlyMap<string, readonly { readonly cell: string; readonly saving: number }[]>;

const COLUMN = { saved: 3, gas: 4, gasPrice: 5, net: 6, asRun: 7 } as const;
const netOf = (s: SpanBill): number => s.saved - (s.addedGas_kWh * s.gas_cents_kWh) / 100;

const columns = (money: string): readonly Column<SpanBill>[] => [
  { head: 'Dwelling', unit: '', width: 14, value: (s) => s.dwelling },
  { head: 'From', unit: 'calendar year', width: 10, format: FORMAT.year, value: (s) => s.firstYear },
  { head: 'Saved on the bill', unit: `${money} a year`, width: 13, format: FORMAT.money, value: (s) => live(`SUM(${s.savedRange})`, s.saved) },
  { head: 'Gas heating added', unit: 'kWh a year, run', width: 13, format: FORMAT.two, value: (s) => s.addedGas_kWh },
  { head: 'Price of gas heat', unit: `${money} a kWh, input`, width: 13, format: FORMAT.factor, value: (s) => s.gas_cents_kWh / 100, input: { low: 0, high: 100 } },
  { head: 'Saved, net of heating', unit: `${money} a year`, width: 13, format: FORMAT.money, value: (s, _, row) => live(`${address(COLUMN.saved, row)}-${address(COLUMN.gas, row)}*${address(COLUMN.gasPrice, row)}`, netOf(s)) },
  { head: 'Price of gas heat, as run', unit: `${money} a kWh`, width: 13, format: FORMAT.factor, value: (s) => s.gas_cents_kWh / 100 },
];

/** What each line saves in a year of each span: twelve months of its bills, less gas it makes its heating burn. */
export function spansSheet(book: Book, plan: Plan, bills: readonly SpanBill[]): { readonly savings: SpanSavings; readonly changed: ChangedInputs } {
  const { place } = oneTableSheet(book, {
    name: SHEET.spans,
    about: `${plan.name}: yearly saving of each line while its plant and windows stay the same, at prices of the study start`,
    notes: [`Electric heating is in the bills already. Film ages and prices rise on ${SHEET.payback}.`],
    columns: columns(plan.terms.currency),
    rows: bills,
    none: 'No line, so no saving.',
    frozenColumns: 1,
  });
  const savings = new Map<string, { cell: string; saving: number }[]>();
  bills.forEach((each, i) => {
    const of = savings.get(each.dwelling) ?? [];
    of.push({ cell: `${quoted(SHEET.spans)}!${address(COLUMN.net, place.firstRow + i)}`, saving: netOf(each) });
    savings.set(each.dwelling, of);
  });
  return { savings, changed: changedInputs(SHEET.spans, place, [[COLUMN.gasPrice, COLUMN.asRun]]) };
}
