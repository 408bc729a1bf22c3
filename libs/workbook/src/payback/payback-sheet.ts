import type { Plan } from '#planning';
import type { Book } from '../book.js';
import { address, paragraph, quoted, section, titleRow } from '../cells.js';
import { lineOf, printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import type { FilmPlace } from '../sheets/film-to-buy.js';
import type { TablePlace } from '../table.js';
import { billsSheet } from '../tariffs/bills-sheet.js';
import { spansSheet } from '../tariffs/spans-sheet.js';
import { tariffsSheet } from '../tariffs/tariffs-sheet.js';
import { cashFlowSheet, type CashFlowPlace } from './cash-flow-sheet.js';
import { writeFilmFactors } from './film-factors.js';
import { writeInputs } from './inputs.js';
import { linesSheet } from './lines-sheet.js';
import { moneyModel } from './money-model.js';
import { payersSheet } from './payers-sheet.js';
import { SPENDING_COLUMN, writePhaseSpending } from './phase-spending.js';
import { positionsSheet } from './positions-sheet.js';
import { rebatesSheet } from './rebates-sheet.js';
import { RESULT_ROWS, type ResultsPlace, writeResults } from './results.js';
import { savingsSheet } from './savings-sheet.js';
import { writeTimeAxis } from './time-axis.js';

export interface PaybackPlace {
  readonly changedCell: string;
  readonly spending: TablePlace;
  readonly results: ResultsPlace;
  /** Spending of all years on the time axis, below zero. */
  readonly spentOnAxis: string;
  readonly linesCost: string;
  readonly linesTable: TablePlace;
  readonly cashFlow: CashFlowPlace;
  /** The owner’s parts on the sheet of payers. */
  readonly shares: string;
}

const [LABEL, UNIT, TOTAL, YEAR] = [37, 18, 12.5, 11.45];
const NEEDS_RUN: readonly string[] = [
  `Live: the boxed inputs here and on ${SHEET.tariffs} (rates, limits, demand prices, fixed charges), ${SHEET.film} (roll prices), ${SHEET.payers}, ${SHEET.rebates} and ${SHEET.spans}; every figure of these sheets follows by formula. All figures are real, at prices of the study start; money out is below zero.`,
  'Needs a new run: which dwellings are chosen and when, caps, windows, films and their figures, which hours a tariff’s periods hold, plants, set points, weather, whole rolls, film life. The choice stays as the plan made it while the inputs move.',
];

/** The payback review: inputs, results, spending by phase and one time axis, with lines, yearly savings and cash flow on sheets of their own. */
export function paybackSheets(book: Book, plan: Plan, film: FilmPlace): PaybackPlace {
  const model = moneyModel(plan);
  const tariffs = tariffsSheet(book, plan);
  const bills = billsSheet(book, plan, tariffs.places);
  const spans = spansSheet(book, plan, bills);
  const payers = payersSheet(book, plan);
  const savings = savingsSheet(book, { plan, model, sources: { spans: spans.savings, ownerPart: payers.ownerPart } });
  const rebates = rebatesSheet(book, plan, model);
  const columns = Math.max(model.years.length + 3, SPENDING_COLUMN.over);
  const set = { name: SHEET.payback, frozen: { rows: 2, columns: 3 }, width: LABEL + UNIT + TOTAL + YEAR * (columns - 3), repeats: LABEL + UNIT + TOTAL };
  const sheet = book.open(set);
  titleRow(sheet, SHEET.payback, `${plan.name}: what the plan pays back, ${plan.terms.view === 'owner' ? 'chosen for the owner' : 'chosen for the whole building'}; savings ${plan.bills?.plan.basis ?? 'model, not calibrated'}`);
  let row = 3;
  for (const text of NEEDS_RUN) row = paragraph(sheet, row, { text, longest: lineOf(set) });
  const inputs = writeInputs(sheet, row + 1, { model, currency: plan.terms.currency, elsewhere: [tariffs.changed, film.changed, payers.changed, rebates.changed, spans.changed] });
  const resultsRow = inputs.nextRow;
  const factors = writeFilmFactors(sheet, resultsRow + RESULT_ROWS, { plan, model, film });
  sheet.getRow(factors.nextRow - 1).addPageBreak();
  section(sheet, factors.nextRow, 'Spending by phase');
  const spending = writePhaseSpending(sheet, factors.nextRow + 1, { plan, model, film });
  section(sheet, spending.nextRow, 'One time axis: year 0 is the study start, flows fall at the ends of the years');
  const startYear = Number(plan.terms.studyStart.slice(0, 4));
  const axis = writeTimeAxis(sheet, spending.nextRow + 1, { model, spending, savings, rebates, currency: plan.terms.currency, startYear });
  const paybacks = positionsSheet(book, { plan, model, axis, savings });
  const lines = linesSheet(book, { plan, model, axis, savings, spans: spans.savings, factors: factors.cells, paybacks });
  const results = writeResults(sheet, resultsRow, { plan, model, axis, spending, lines });
  [LABEL, UNIT, TOTAL].forEach((width, i) => {
    sheet.getColumn(i + 1).width = width;
  });
  for (let c = 4; c <= columns; c++) sheet.getColumn(c).width = YEAR;
  printed(sheet, { columns, rows: axis.nextRow, headRows: { first: 1, last: 2 } });
  const cashFlow = cashFlowSheet(book, { plan, model, axis, savings, lines, rebates, spending });
  return { changedCell: inputs.changedCell, spending, results, spentOnAxis: `${quoted(SHEET.payback)}!${address(3, axis.spentRow)}`, linesTable: lines.table, linesCost: lines.cost, cashFlow, shares: payers.shares };
}
