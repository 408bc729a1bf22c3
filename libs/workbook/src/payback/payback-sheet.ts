import type { Plan } from '#planning';
import type { Workbook } from 'exceljs';
import { paragraph, section, titleRow } from '../cells.js';
import { printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import type { TablePlace } from '../table.js';
import { writeInputs } from './inputs.js';
import { writeLines } from './lines-sheet.js';
import { moneyModel } from './money-model.js';
import { SPENDING_COLUMN, writePhaseSpending } from './phase-spending.js';
import { rebatesSheet } from './rebates-sheet.js';
import { RESULT_ROWS, type ResultsPlace, writeResults } from './results.js';
import { savingsSheet } from './savings-sheet.js';
import { billsSheet } from '../tariffs/bills-sheet.js';
import { spansSheet } from '../tariffs/spans-sheet.js';
import { tariffsSheet } from '../tariffs/tariffs-sheet.js';
import { payersSheet } from './payers-sheet.js';
import { writeTimeAxis } from './time-axis.js';

export interface PaybackPlace {
  readonly changedCell: string;
  readonly spending: TablePlace;
  readonly results: ResultsPlace;
  readonly linesTable: TablePlace;
}

const NEEDS_RUN: readonly string[] = [
  'Live: the boxed inputs here and on Tariffs (rates, limits, demand prices, fixed charges), Payers, Rebates and Saving by span; every figure of the payback sheets follows by formula. All figures are real, at prices of the study start; money out is below zero.',
  'Needs a new run: which dwellings are chosen and when, caps, windows, films and their figures, which hours a tariff’s periods hold, plants, set points, weather, whole rolls, film life. The choice stays as the plan made it while the inputs move.',
];

/** The payback review: named inputs, results, spending by phase and one time axis, with the lines and the yearly savings on sheets of their own. */
export function paybackSheets(book: Workbook, plan: Plan): PaybackPlace {
  const model = moneyModel(plan);
  const sheet = book.getWorksheet(SHEET.payback) ?? book.addWorksheet(SHEET.payback);
  const linesSheet = book.getWorksheet(SHEET.paybackLines) ?? book.addWorksheet(SHEET.paybackLines);
  const { places } = tariffsSheet(book, plan);
  const spans = spansSheet(book, plan, billsSheet(book, plan, places));
  const savings = savingsSheet(book, { plan, model, sources: { spans, ownerPart: payersSheet(book, plan) } });
  titleRow(sheet, SHEET.payback, `${plan.name}: what the plan pays back, ${plan.terms.view === 'owner' ? 'chosen for the owner' : 'chosen for the whole building'}; model, not calibrated`);
  let row = 3;
  for (const text of NEEDS_RUN) row = paragraph(sheet, row, { text, longest: 190 });
  const inputs = writeInputs(sheet, row + 1, model);
  const resultsRow = inputs.nextRow;
  row = resultsRow + RESULT_ROWS;
  section(sheet, row, 'Spending by phase');
  const spending = writePhaseSpending(sheet, row + 1, { plan, model });
  section(sheet, spending.nextRow, 'One time axis: year 0 is the study start, flows fall at the ends of the years');
  const startYear = Number(plan.terms.studyStart.slice(0, 4));
  const axis = writeTimeAxis(sheet, spending.nextRow + 1, { model, spending, savings, rebates: rebatesSheet(book, plan, model), currency: plan.terms.currency, startYear });
  const lines = writeLines(linesSheet, { plan, model, axis, savings, spans });
  const results = writeResults(sheet, resultsRow, { plan, model, axis, spending, lines });
  const columns = Math.max(axis.lastColumn, SPENDING_COLUMN.over);
  sheet.getColumn(1).width = 38;
  sheet.getColumn(2).width = 13;
  sheet.getColumn(3).width = 13;
  for (let c = 4; c <= columns; c++) sheet.getColumn(c).width = 11.5;
  printed(sheet, { columns, rows: axis.nextRow, headRows: { first: 1, last: 2 }, frozenColumns: 1 });
  return { changedCell: inputs.changedCell, spending, results, linesTable: lines.table };
}
