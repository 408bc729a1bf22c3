import type { Plan } from '#planning';
import type { Workbook } from 'exceljs';
import { paragraph, section, titleRow } from '../cells.js';
import { printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import { type Column, setWidths, writeTable } from '../table.js';
import type { LineMoney, MoneyModel } from './money-model.js';

export const SAVINGS_COLUMN = { workYear: 3, firstYear: 4 } as const;

/** Rows of the two blocks: all payers, and the owner's part. */
export interface SavingsPlace {
  readonly whole: { readonly first: number; readonly last: number };
  readonly owner: { readonly first: number; readonly last: number };
}

const columns = (plan: Plan, model: MoneyModel, of: (l: LineMoney) => readonly number[]): readonly Column<LineMoney>[] => [
  { head: 'Dwelling', unit: '', width: 13, value: (l) => l.line.dwelling },
  { head: 'Phase', unit: '', width: 17, value: (l) => l.line.phase },
  { head: 'Work in year', unit: 'of the study', width: 9, format: FORMAT.year, value: (l) => l.workYear },
  ...model.years.map((year): Column<LineMoney> => ({ head: String(year), unit: plan.terms.currency, width: 10, format: FORMAT.money, value: (l) => of(l)[year] ?? 0 })),
];

/** Yearly savings of each line: typed results of the run, the workings under the payback. */
export function savingsSheet(book: Workbook, plan: Plan, model: MoneyModel): SavingsPlace {
  const sheet = book.getWorksheet(SHEET.savings) ?? book.addWorksheet(SHEET.savings);
  const whole = columns(plan, model, (l) => l.whole);
  setWidths(sheet, whole);
  titleRow(sheet, SHEET.savings, `${plan.name}: bill as found less bill with the film, less added heating, by year of the study, prices of ${plan.terms.studyStart}, before ageing of the film and price rise`);
  const next = paragraph(sheet, 3, { text: 'Typed results of the run, kept with all their digits: a changed window, film, tariff, plant, set point or weather needs a new run. Year 0 is the study start; flows fall at the ends of the years.', longest: 150 });
  section(sheet, next, 'All payers');
  const top = writeTable(sheet, next + 1, { columns: whole, rows: model.lines });
  section(sheet, top.nextRow, 'Owner: the part that stays with the owner by the payer rule of the meter');
  const low = writeTable(sheet, top.nextRow + 1, { columns: columns(plan, model, (l) => l.owner), rows: model.lines });
  printed(sheet, { columns: whole.length, rows: Math.max(low.lastRow, low.firstRow), headRows: { first: top.headRow, last: top.headRow + 1 }, frozenColumns: 3 });
  const range = (place: { readonly firstRow: number; readonly lastRow: number }) => ({ first: place.firstRow, last: Math.max(place.firstRow, place.lastRow) });
  return { whole: range(top), owner: range(low) };
}
