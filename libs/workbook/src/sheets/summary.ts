import type { PhaseResult, Plan } from '#planning';
import type { Worksheet } from 'exceljs';
import type { Book } from '../book.js';
import { dollarsText } from '#calc';
import { address, type CellContent, dollars, live, paragraph, put, quoted, section, titleRow } from '../cells.js';
import type { LiveResults } from '../payback/results.js';
import { lineOf, printed } from '../print.js';
import { SHEET, SHEET_LINES } from '../sheet-names.js';
import { bold, FORMAT } from '../style.js';
import { type Column, setWidths, type TablePlace, writeTable } from '../table.js';
import { type Check, checksOf, type CheckPlaces } from './checks.js';
import { leftText, notKnown, outlookText, proofText, realisationText, waitingText } from './summary-text.js';


const spendingColumns = (money: string): readonly Column<PhaseResult>[] => {
  const part = (head: string, value: (p: PhaseResult) => number, width = 10.5): Column<PhaseResult> => ({ head, unit: money, width, format: FORMAT.money, isSummed: true, value: (p) => dollars(value(p)) });
  return [
    { head: 'Phase', unit: '', width: 33, value: (p) => p.phase.id },
    part('Cap', (p) => p.phase.cap_cents),
    part('Film', (p) => p.spending.film_cents),
    part('Labour', (p) => p.spending.labour_cents),
    part('Consumables', (p) => p.spending.consumables_cents, 12.8),
    part('Removal', (p) => p.spending.removal_cents, 10),
    part('Visits', (p) => p.spending.visits_cents, 9.5),
    part('Freight', (p) => p.spending.freight_cents, 9.5),
    part('Tax', (p) => p.spending.tax_cents, 9.5),
    part('Contingency', (p) => p.spending.contingency_cents, 12),
    { ...part('Spent', (p) => p.spending.total_cents), value: (p, _, r) => live(`SUM(${address(3, r)}:${address(10, r)})`, dollars(p.spending.total_cents)) },
    { ...part('Left of the cap', (p) => p.left_cents), value: (p, _, r) => live(`${address(2, r)}-${address(11, r)}`, dollars(p.phase.cap_cents - p.spending.total_cents)) },
    { head: 'Dwellings', unit: '', width: 9.5, format: FORMAT.whole, isSummed: true, value: (p) => p.lines },
    { head: 'Panes', unit: '', width: 6.5, format: FORMAT.whole, isSummed: true, value: (p) => p.panes },
    { head: 'Person-hours', unit: 'h', width: 8, format: FORMAT.one, isSummed: true, value: (p) => Math.round(p.minutes.best / 6) / 10 },
    { head: 'The crew has', unit: 'h', width: 7.5, format: FORMAT.one, value: (p) => (p.phase.crewMinutes === null ? '' : Math.round(p.phase.crewMinutes / 6) / 10) },
  ];
};

/** The sentences a manager reads first. */
function answers(plan: Plan): string[] {
  const caps = plan.phases.reduce((sum, p) => sum + p.phase.cap_cents, 0);
  const spent = plan.phases.reduce((sum, p) => sum + p.spending.total_cents, 0);
  const { eligible, payback } = plan;
  const share = (x: number): string => `${(x * 100).toFixed(1)} %`;
  const panes = plan.phases.reduce((sum, p) => sum + p.panes, 0);
  return [
    `Everything eligible costs ${dollarsText(eligible.cost_cents)}; the caps buy ${share(eligible.boughtShare)}. What is eligible and pays costs ${dollarsText(eligible.payingCost_cents)}; the caps buy ${share(eligible.payingBoughtShare)} of it.`,
    `Caps of ${dollarsText(caps)} in ${String(plan.phases.length)} phases; ${dollarsText(spent)} is spent on ${String(plan.lines.length)} dwellings with ${String(panes)} panes.`,
    `First-year saving ${dollarsText(payback.firstYear_cents)}, of which the owner keeps ${dollarsText(payback.firstYearOwner_cents)}. Electricity ${Math.round(payback.firstYear_kWh).toLocaleString('en-US')} kWh less. Simple payback ${payback.simplePayback_yr === null ? 'none' : `${payback.simplePayback_yr.toFixed(1)} years`}.`,
    ...outlookText(plan),
    ...realisationText(plan),
    proofText(plan),
    ...leftText(plan),
  ];
}

/** Both views by formula, beside the figures of the run, and whether any input has been changed since. */
function views(sheet: Worksheet, at: number, of: { readonly plan: Plan; readonly changedCell: string; readonly now: LiveResults }): number {
  const { payback, terms } = of.plan;
  section(sheet, at, `Both views: "now" follows the inputs of ${SHEET.payback}, cents may differ by rounding; all else on this sheet is as run`);
  ['Whose money', 'Value now, net present', 'First-year saving now', 'Value as run', 'First-year saving as run', 'Unit'].forEach((text, i) => {
    put(sheet.getCell(at + 1, i + 1), text);
    bold(sheet.getCell(at + 1, i + 1));
    sheet.getCell(at + 1, i + 1).alignment = { wrapText: true, horizontal: i > 0 && i < 5 ? 'right' : 'left', vertical: 'bottom', ...(i === 5 ? { indent: 1 } : {}) };
  });
  sheet.getRow(at + 1).height = 42;
  const row = (r: number, name: string, figures: readonly CellContent[]): void => {
    put(sheet.getCell(r, 1), `${name}${(terms.view === 'owner') === (name === 'Owner') ? ' (the plan’s view)' : ''}`);
    figures.forEach((figure, i) => {
      put(sheet.getCell(r, 2 + i), figure, FORMAT.money);
    });
    put(sheet.getCell(r, 6), terms.currency);
    sheet.getCell(r, 6).alignment = { horizontal: 'left', indent: 1 };
  };
  const { now } = of;
  row(at + 2, 'Whole building', [live('npv_whole', now.npv_whole), live('first_year_saving', now.first_year_saving), dollars(payback.npv_cents), dollars(payback.firstYear_cents)]);
  row(at + 3, 'Owner', [live('npv_owner', now.npv_owner), live('first_year_saving_owner', now.first_year_saving_owner), dollars(payback.npvOwner_cents), dollars(payback.firstYearOwner_cents)]);
  put(sheet.getCell(at + 4, 1), 'Inputs changed since run');
  put(sheet.getCell(at + 4, 2), live(`${quoted(SHEET.payback)}!${of.changedCell}`, 0), FORMAT.whole);
  put(sheet.getCell(at + 4, 6), 'count');
  sheet.getCell(at + 4, 6).alignment = { horizontal: 'left', indent: 1 };
  return at + 5;
}

const squares = (checks: readonly Check[]): number => checks.reduce((s, c) => s + Number(c.formula.result) ** 2, 0);

function writeChecks(sheet: Worksheet, at: number, checks: readonly Check[]): number {
  section(sheet, at, 'Checks: all must be 0');
  checks.forEach((check, i) => {
    put(sheet.getCell(at + 1 + i, 1), check.label);
    put(sheet.getCell(at + 1 + i, 2), check.formula, ['panes', 'dwellings', 'count'].includes(check.unit) ? FORMAT.whole : FORMAT.money);
    put(sheet.getCell(at + 1 + i, 3), check.unit);
    put(sheet.getCell(at + 1 + i, 4), check.how);
    sheet.getCell(at + 1 + i, 3).alignment = { horizontal: 'left', indent: 1 };
  });
  const total = at + 1 + checks.length;
  put(sheet.getCell(total, 1), 'All checks together');
  put(sheet.getCell(total, 2), live(`SUMSQ(${address(2, at + 1)}:${address(2, total - 1)})`, squares(checks)), FORMAT.money);
  put(sheet.getCell(total, 4), 'sum of squares, so that no two make up for each other');
  [1, 2].forEach((c) => bold(sheet.getCell(total, c)));
  return total + 2;
}

/** Every sheet with its reader and what it is for; a click opens it. */
function writeContents(sheet: Worksheet, at: number): number {
  section(sheet, at, 'What is in this book');
  SHEET_LINES.forEach(({ sheet: name, reader, about }, i) => {
    const row = at + 1 + i;
    put(sheet.getCell(row, 1), live(`HYPERLINK("#${quoted(name)}!A1","${name}")`, name));
    sheet.getCell(row, 1).font = { name: 'Arial', size: 10, underline: true };
    put(sheet.getCell(row, 2), reader);
    put(sheet.getCell(row, 4), about);
  });
  return at + 2 + SHEET_LINES.length;
}

/** First sheet: what the caps buy, how sure and how good the choice is, what waits, the checks, what is in the book, and what the tool does not know. */
export function summarySheet(book: Book, plan: Plan, places: CheckPlaces): TablePlace {
  const columns = spendingColumns(plan.terms.currency);
  const set = { name: SHEET.summary, frozen: { rows: 2, columns: 0 }, width: columns.reduce((sum, c) => sum + c.width, 0) };
  const sheet = book.open(set);
  setWidths(sheet, columns);
  titleRow(sheet, plan.name, `Plan ${plan.id}, revision ${String(plan.revision)}, made ${plan.madeOn}; study start ${plan.terms.studyStart}; program ${plan.program}; inputs ${plan.inputHash}. ${plan.bills?.plan.basis === undefined || plan.bills.plan.basis === 'model, not calibrated' ? 'Model, not calibrated' : `Savings ${plan.bills.plan.basis}`}.`);
  let row = 4;
  const texts = (all: readonly string[]): void => {
    for (const text of all) row = paragraph(sheet, row, { text, longest: lineOf(set) });
  };
  texts(answers(plan));
  section(sheet, row + 1, 'Spending by phase, as run');
  const table = writeTable(sheet, row + 2, { columns, rows: plan.phases, total: 'Total' });
  row = views(sheet, table.nextRow, { plan, changedCell: places.payback.changedCell, now: places.payback.results.now });
  const checks = checksOf(plan, { ...places, spending: table });
  put(sheet.getCell(row, 1), 'Checks of the next page');
  put(sheet.getCell(row, 2), live(address(2, row + 2 + checks.length + 1), squares(checks)), FORMAT.money);
  put(sheet.getCell(row, 3), 'must be 0');
  sheet.getCell(row, 3).alignment = { horizontal: 'left', indent: 1 };
  sheet.getRow(row + 1).addPageBreak();
  row = writeChecks(sheet, row + 2, checks);
  section(sheet, row, 'What waits');
  row += 1;
  texts(waitingText(plan));
  row = writeContents(sheet, row + 1);
  section(sheet, row, 'What the tool does not know');
  row += 1;
  texts(notKnown(plan));
  printed(sheet, { columns: columns.length, rows: row, headRows: { first: 1, last: 2 } });
  return table;
}
