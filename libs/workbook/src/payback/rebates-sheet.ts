import type { Plan } from '#planning';
import type { Book } from '../book.js';
import { columnName, quoted } from '../cells.js';
import { type ChangedInputs, changedInputs } from '../changed-inputs.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';
import type { MoneyModel, RebateMoney } from './money-model.js';

/** Ranges of the years and amounts of the rebates, for the time axis. */
export interface RebatesPlace {
  readonly years: string;
  readonly amounts: string;
  readonly buildings: string;
  readonly phases: string;
  readonly changed: ChangedInputs;
}

const COLUMN = { year: 4, amount: 8, asRun: 9, building: 2, phase: 3 } as const;

const columns = (money: string): readonly Column<RebateMoney>[] => [
  { head: 'Offer', unit: '', width: 12, value: (r) => r.rebate.rebate },
  { head: 'Building', unit: '', width: 10, value: (r) => r.rebate.building },
  { head: 'Phase', unit: '', width: 18, value: (r) => r.rebate.phase },
  { head: 'Year', unit: 'of the study', width: 8, format: FORMAT.year, value: (r) => r.workYear },
  { head: 'Glass that counts', unit: 'm², run', width: 10, format: FORMAT.two, value: (r) => r.rebate.area_m2 },
  { head: 'Cost of the work', unit: `${money}, run`, width: 12, format: FORMAT.money, value: (r) => r.rebate.cost_cents / 100 },
  { head: 'Line by line', unit: `${money}, run`, width: 12, format: FORMAT.money, value: (r) => r.rebate.byLine_cents / 100 },
  { head: 'Given to the project', unit: `${money}, input`, width: 12, format: FORMAT.money, isSummed: true, value: (r) => r.amount, input: { low: 0, high: 1e9 } },
  { head: 'Given, as run', unit: money, width: 12, format: FORMAT.money, value: (r) => r.amount },
  { head: 'Why not all of it', unit: '', width: 50, value: (r) => r.rebate.why ?? '' },
];

/** What funds give: one row a project, which is the work of a building in a phase. The amount is an input, for the letter may say otherwise. */
export function rebatesSheet(book: Book, plan: Plan, model: MoneyModel): RebatesPlace {
  const { place } = oneTableSheet(book, {
    name: SHEET.rebates,
    about: `${plan.name}: money from funds, in the year of the work; no cap counts on it`,
    columns: columns(plan.terms.currency),
    rows: model.rebates,
    total: 'Total',
    none: 'No offer of a fund is among the inputs, or none fits a line of the plan.',
  });
  const range = (column: number): string => `${quoted(SHEET.rebates)}!$${columnName(column)}$${String(place.firstRow)}:$${columnName(column)}$${String(Math.max(place.firstRow, place.lastRow))}`;
  return { years: range(COLUMN.year), amounts: range(COLUMN.amount), buildings: range(COLUMN.building), phases: range(COLUMN.phase), changed: changedInputs(SHEET.rebates, place, [[COLUMN.amount, COLUMN.asRun]]) };
}
