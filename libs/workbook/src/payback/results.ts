import type { Plan } from '#planning';
import type { Worksheet } from 'exceljs';
import { address, dollars, live, type LiveFormula, put, section } from '../cells.js';
import { bold, FORMAT } from '../style.js';
import type { TablePlace } from '../table.js';
import type { LinesPlace } from './lines-sheet.js';
import type { MoneyModel } from './money-model.js';
import { SPENDING_COLUMN } from './phase-spending.js';
import { type AxisPlace, FIRST_YEAR_COLUMN } from './time-axis.js';

/** What the named results come to at the inputs of the run. */
export type LiveResults = Readonly<Record<'npv_whole' | 'npv_owner' | 'first_year_saving' | 'first_year_saving_owner', number>>;

/** Cells of the headline that the first sheet points at. */
export interface ResultsPlace {
  readonly differences: { readonly first: string; readonly last: string };
  readonly spentCell: string;
  readonly now: LiveResults;
  readonly nextRow: number;
}

interface Headline {
  readonly label: string;
  readonly unit: string;
  readonly format: string;
  readonly name?: string;
  readonly now: LiveFormula;
  readonly made: number | string;
}

export const RESULT_ROWS = 14;

const total = (flows: readonly number[]): number => flows.reduce((a, b) => a + b, 0);

function headlines(of: { readonly plan: Plan; readonly model: MoneyModel; readonly axis: AxisPlace; readonly spending: TablePlace; readonly lines: LinesPlace }): Headline[] {
  const { plan, axis, spending, lines } = of;
  const money = plan.terms.currency;
  const { payback } = plan;
  const spent_cents = plan.phases.reduce((sum, p) => sum + p.spending.total_cents, 0);
  const sumRow = (row: number): string => address(3, row);
  const spentNow = -1 * total(axis.results.presentSpent);
  const [whole, owner] = [total(axis.results.presentWhole), total(axis.results.presentOwner)];
  const spent = -1 * total(axis.results.spent);
  const rebateNow = total(axis.results.presentRebates);
  const rebate = total(axis.results.rebates);
  const offNow = total(axis.results.presentRemoval);
  const off = sumRow(axis.presentRemovalRow);
  const netNow = spentNow - rebateNow;
  const netRows = `(${sumRow(axis.presentSpentRow)}+${sumRow(axis.presentRebateRow)})`;
  const first = lines.firstYear;
  const backs = `${address(FIRST_YEAR_COLUMN, axis.backRow)}:${address(axis.lastColumn, axis.backRow)}`;
  const back = Math.max(...axis.results.back);
  const spentCell = spending.totalRow > 0 ? address(SPENDING_COLUMN.total, spending.totalRow) : address(SPENDING_COLUMN.total, spending.firstRow);
  return [
    { label: 'Spent in all phases', unit: money, format: FORMAT.money, name: 'plan_spending', now: live(spentCell, spent), made: dollars(spent_cents) },
    { label: 'Rebates received', unit: money, format: FORMAT.money, name: 'plan_rebates', now: live(address(3, axis.rebateRow), rebate), made: dollars(payback.rebate_cents) },
    { label: 'Taking film off at its end, not discounted', unit: money, format: FORMAT.money, name: 'plan_end_removal', now: live(`-1*${sumRow(axis.removalRow)}`, -1 * total(axis.results.removal)), made: dollars(payback.endRemoval_cents ?? 0) },
    { label: 'Net present value, whole building', unit: money, format: FORMAT.money, name: 'npv_whole', now: live(`${sumRow(axis.presentWholeRow)}+${off}+${netRows}`, whole + offNow - netNow), made: dollars(payback.npv_cents) },
    { label: 'Net present value, owner', unit: money, format: FORMAT.money, name: 'npv_owner', now: live(`${sumRow(axis.presentOwnerRow)}+${off}+${netRows}`, owner + offNow - netNow), made: dollars(payback.npvOwner_cents) },
    { label: 'Saving in a first year, all payers', unit: money, format: FORMAT.money, name: 'first_year_saving', now: live(lines.firstYearSum, first), made: dollars(payback.firstYear_cents) },
    { label: 'Saving in a first year, owner', unit: money, format: FORMAT.money, name: 'first_year_saving_owner', now: live(lines.ownerFirstYearSum, lines.ownerFirstYear), made: dollars(payback.firstYearOwner_cents) },
    { label: 'Savings-to-investment ratio (SIR)', unit: 'ratio', format: FORMAT.two, name: 'plan_sir', now: live(`IF(${netRows}<0,-1*(${sumRow(axis.presentWholeRow)}+${off})/${netRows},0)`, netNow > 0 ? (whole + offNow) / netNow : 0), made: payback.sir },
    { label: 'Simple payback', unit: 'years', format: FORMAT.two, name: 'plan_simple_payback', now: live('IF(first_year_saving>0,(plan_spending-plan_rebates)/first_year_saving,"none")', first > 0 ? (spent - rebate) / first : 'none'), made: payback.simplePayback_yr ?? 'none' },
    { label: 'Discounted payback, from the study start', unit: 'years', format: FORMAT.two, now: live(`IF(MAX(${backs})>0,MAX(${backs}),"none")`, back > 0 ? back : 'none'), made: 'by this sheet' },
  ];
}

/** Headline results by formula, beside what the plan found, with the difference. */
export function writeResults(sheet: Worksheet, at: number, of: { readonly plan: Plan; readonly model: MoneyModel; readonly axis: AxisPlace; readonly spending: TablePlace; readonly lines: LinesPlace }): ResultsPlace {
  section(sheet, at, 'Results');
  ['', 'Unit', 'Now', '', 'Plan', 'Difference, beyond rounding (0 at the plan’s own inputs)'].forEach((text, i) => {
    put(sheet.getCell(at + 1, i + 1), text === '' ? null : text);
    bold(sheet.getCell(at + 1, i + 1));
    if (i === 2 || i === 4) sheet.getCell(at + 1, i + 1).alignment = { horizontal: 'right' };
    if (i === 5) sheet.getCell(at + 1, i + 1).alignment = { horizontal: 'left', indent: 1 };
  });
  const all = headlines(of);
  const first = at + 2;
  const roundingRow = first + all.length;
  all.forEach((each, i) => {
    const row = first + i;
    put(sheet.getCell(row, 1), each.label);
    put(sheet.getCell(row, 2), each.unit);
    put(sheet.getCell(row, 3), each.now, each.format);
    if (each.name !== undefined) sheet.getCell(row, 3).name = each.name;
    bold(sheet.getCell(row, 3));
    put(sheet.getCell(row, 5), each.made, each.format);
    sheet.getCell(row, 5).alignment = { horizontal: 'right' };
    if (typeof each.made === 'number' && typeof each.now.result === 'number') {
      const gap = `${address(3, row)}-${address(5, row)}`;
      const difference = each.now.result - each.made;
      put(sheet.getCell(row, 6), live(`IF(ABS(${gap})<=${address(3, roundingRow)},0,${gap})`, Math.abs(difference) <= rounding(of.model) ? 0 : difference), each.format);
    }
  });
  put(sheet.getCell(roundingRow, 1), 'Rounding left out');
  put(sheet.getCell(roundingRow, 2), of.plan.terms.currency);
  put(sheet.getCell(roundingRow, 3), rounding(of.model), FORMAT.two);
  put(sheet.getCell(roundingRow, 5), 'a cent for each line and phase, three for each year');
  sheet.getCell(roundingRow, 5).alignment = { horizontal: 'left', indent: 1 };
  const now = (name: keyof LiveResults): number => Number(all.find((h) => h.name === name)!.now.result);
  return { now: { npv_whole: now('npv_whole'), npv_owner: now('npv_owner'), first_year_saving: now('first_year_saving'), first_year_saving_owner: now('first_year_saving_owner') }, differences: { first: address(6, first), last: address(6, roundingRow - 1) }, spentCell: address(3, first), nextRow: roundingRow + 2 };
}

/** The plan rounds each line to the cent, the sheet each figure it prints, so that printed totals are the sums of what is printed. */
const rounding = (model: MoneyModel): number => (model.lines.length + model.phases.length + 3 * model.years.length) / 100;
