import type { Plan } from '#planning';
import { address, type CellContent, fixed, live, quoted, titleLines } from '../cells.js';
import type { Book } from '../book.js';
import { printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import { type Column, setWidths, type TablePlace, writeTable } from '../table.js';
import type { SpanSavings } from '../tariffs/spans-sheet.js';
import { type LineMoney, type MoneyModel, sumProduct, toCent } from './money-model.js';
import { offToday, SAVINGS_COLUMN, type SavingsPlace } from './savings-sheet.js';
import { type AxisPlace, FIRST_YEAR_COLUMN, worthOf } from './time-axis.js';

export interface LinesPlace {
  readonly table: TablePlace;
  /** Formula of the saving of all lines in their first years. */
  readonly firstYearSum: string;
  readonly firstYear: number;
  readonly ownerFirstYearSum: string;
  readonly ownerFirstYear: number;
  /** Columns of the rows, as ranges from other sheets. */
  readonly buildings: string;
  readonly phases: string;
  readonly cost: string;
}

/** Discounted payback of the lines, in their order; the sheet of positions works it out. */
export interface LinePaybacks {
  readonly cell: (index: number) => string;
  /** Years from the work, or none, at the inputs of the run. */
  readonly years: readonly (number | 'none')[];
}

interface LinesRequest {
  readonly plan: Plan;
  readonly model: MoneyModel;
  readonly axis: AxisPlace;
  readonly savings: SavingsPlace;
  readonly spans: SpanSavings;
  /** Cells of the film factors, in the order of the model's films. */
  readonly factors: readonly string[];
  readonly paybacks: LinePaybacks;
}

/** Columns by place; film by film at the prices of the run stands behind them. */
const AT = { building: 2, phase: 3, year: 4, film: 5, consumables: 6, labour: 7, contractor: 8, cost: 9, span: 10, first: 11, spent: 12, whole: 13, owner: 15, rebate: 20, ownerFirst: 21, films: 22 } as const;

/** Installed cost of a line at the inputs of the run. */
export function costOf(line: LineMoney, model: MoneyModel): number {
  const film = line.film.reduce((sum, f) => sum + f, 0);
  return toCent((film + line.consumables) * (1 + model.inputs.materialTax) + (line.labour + line.contractor) * (1 + model.inputs.labourTax));
}

/** What a line costs less its rebate, worth at the study start, at the inputs of the run. */
export const spentToday = (line: LineMoney, model: MoneyModel): number => toCent((costOf(line, model) - line.rebate) * model.discount[line.workYear]!);

/** The owner's part of the saving of the first year after the work, before ageing and price rise. */
const ownerFirst = (line: LineMoney): number => toCent(line.owner[line.workYear + 1] ?? 0);

type Figure = (head: string, value: Column<LineMoney>['value'], more?: Partial<Column<LineMoney>>) => Column<LineMoney>;

/** Cost side: what the run typed, and the installed cost at today's prices. */
function costColumns(of: LinesRequest, figure: Figure): Column<LineMoney>[] {
  const { model } = of;
  const c = address;
  const now = (row: number): string => of.factors.map((factor, i) => `${c(AT.films + i, row)}*${factor}`).join('+');
  const installed = (r: number): string => `ROUND((${c(AT.film, r)}+${c(AT.consumables, r)})*(1+material_tax)+(${c(AT.labour, r)}*labour_factor+${c(AT.contractor, r)})*(1+labour_tax),2)`;
  return [
    { head: 'Dwelling', unit: '', width: 14, value: (l) => l.line.dwelling },
    { head: 'Building', unit: '', width: 11, value: (l) => l.line.building },
    { head: 'Phase', unit: '', width: 18, value: (l) => l.line.phase },
    { head: 'Year', unit: 'of the study', width: 7, format: FORMAT.year, value: (l) => l.workYear },
    figure('Film', (l, _, r) => live(`(${now(r)})*film_cost_factor`, l.film.reduce((sum, f) => sum + f, 0)), { isSummed: false }),
    figure('Consumables, run', (l) => l.consumables, { isSummed: false, width: 13 }),
    figure('Labour by the hour, run', (l) => l.labour, { isSummed: false }),
    figure('Contractor, run', (l) => l.contractor, { isSummed: false, width: 11 }),
    figure('Installed cost with tax', (l, _, r) => live(installed(r), costOf(l, model))),
  ];
}

function savingColumns(of: LinesRequest, figure: Figure): Column<LineMoney>[] {
  const { model, axis, savings } = of;
  const c = address;
  const payback = quoted(SHEET.payback);
  const lastYear = FIRST_YEAR_COLUMN + model.years.length - 1;
  const worth = (k: number): string => `${payback}!${fixed(FIRST_YEAR_COLUMN, axis.worthRow.get(k)!)}:${fixed(lastYear, axis.worthRow.get(k)!)}`;
  const savedNow = (l: LineMoney, block: 'whole' | 'owner'): number => toCent(sumProduct(l[block], worthOf(model, l.workYear)));
  const saved = (block: 'whole' | 'owner'): Column<LineMoney>['value'] => (l, i) => {
    const row = savings[block].first + i;
    const run = `${quoted(SHEET.savings)}!${c(SAVINGS_COLUMN.firstYear, row)}:${c(SAVINGS_COLUMN.firstYear + model.years.length - 1, row)}`;
    return live(`ROUND(SUMPRODUCT(${run},${worth(l.workYear)})*electricity_price_factor,2)`, savedNow(l, block));
  };
  const off = savings.atEnd.offCell;
  const costNow = (l: LineMoney): number => spentToday(l, model);
  const firstSpan = (l: LineMoney): CellContent => {
    const span = of.spans.get(l.line.dwelling)?.[0];
    return span === undefined ? l.firstYear : live(span.cell, l.firstYear);
  };
  const net = (r: number): string => `(${c(AT.cost, r)}-${c(AT.rebate, r)})`;
  return [
    figure('Saving of the first span', (l) => firstSpan(l), { unit: `${of.plan.terms.currency} a year`, isSummed: false }),
    figure('First-year saving', (l, _, r) => live(`ROUND(${c(AT.span, r)}*electricity_price_factor,2)`, toCent(l.firstYear))),
    figure('Cost less rebate, today', (l, _, r) => live(`ROUND(${net(r)}*${payback}!${fixed(FIRST_YEAR_COLUMN + l.workYear, axis.discountRow)},2)`, costNow(l))),
    figure('Saving, all payers, today', saved('whole')),
    figure('Net present value, whole', (l, i, r) => live(`${c(AT.whole, r)}-${off(i)}-${c(AT.spent, r)}`, savedNow(l, 'whole') - offToday(l, model) - costNow(l))),
    figure('Saving, owner, today', saved('owner')),
    figure('Net present value, owner', (l, i, r) => live(`${c(AT.owner, r)}-${off(i)}-${c(AT.spent, r)}`, savedNow(l, 'owner') - offToday(l, model) - costNow(l))),
    { head: 'SIR', unit: 'ratio', width: 7, format: FORMAT.two, value: (l, i, r) => live(`IF(${c(AT.spent, r)}>0,(${c(AT.whole, r)}-${off(i)})/${c(AT.spent, r)},0)`, costNow(l) > 0 ? (savedNow(l, 'whole') - offToday(l, model)) / costNow(l) : 0) },
    { head: 'Simple payback', unit: 'years', width: 9, format: FORMAT.two, value: (l, _, r) => live(`IF(${c(AT.first, r)}>0,${net(r)}/${c(AT.first, r)},"none")`, toCent(l.firstYear) > 0 ? (costOf(l, model) - l.rebate) / toCent(l.firstYear) : 'none') },
    { head: 'Discounted payback', unit: 'years', width: 11, format: FORMAT.two, value: (_, i) => live(of.paybacks.cell(i), of.paybacks.years[i]!) },
    figure('Rebate of the line, run', (l) => l.rebate),
    figure('First-year saving, owner', (l, i) => live(`ROUND(${quoted(SHEET.savings)}!${c(SAVINGS_COLUMN.firstYear + l.workYear + 1, savings.owner.first + i)}*electricity_price_factor,2)`, ownerFirst(l))),
  ];
}

function columns(of: LinesRequest): readonly Column<LineMoney>[] {
  const money = of.plan.terms.currency;
  const figure: Figure = (head, value, more) => ({ head, unit: money, width: 10.3, format: FORMAT.money, isSummed: true, value, ...more });
  return [
    ...costColumns(of, figure),
    ...savingColumns(of, figure),
    ...of.model.films.map((film, i): Column<LineMoney> => figure(`Film ${film}, run price`, (l) => l.film[i] ?? 0, { isSummed: false })),
  ];
}

const NOTE = '"Today" = worth at the study start. Columns marked "run" are typed results: they need a new run. Net present values and SIR are less what taking film off at its end costs, from Savings by year. Negative figures carry a minus sign.';

/** Row and cells of the lines, known before the sheet is written. */
export const LINES_HEAD = 5;
const firstLine = LINES_HEAD + 2;

/** Cell of what a line costs less its rebate, today, as other sheets point at it. */
export const spentTodayCell = (index: number): string => `${quoted(SHEET.paybackLines)}!${address(AT.spent, firstLine + index)}`;

/** Each line of the plan with its money by live formulas on the named inputs. */
export function linesSheet(book: Book, of: LinesRequest): LinesPlace {
  const all = columns(of);
  const width = all.reduce((sum, c) => sum + c.width, 0);
  const sheet = book.open({ name: SHEET.paybackLines, frozen: { rows: LINES_HEAD + 1, columns: 1 }, width, repeats: all[0]!.width, hasManyRows: true });
  setWidths(sheet, all);
  titleLines(sheet, SHEET.paybackLines, [`${of.plan.name}: each line by formula on the inputs of ${SHEET.payback}; cost before visits, freight, whole rolls and contingency`, NOTE]);
  const table = writeTable(sheet, LINES_HEAD, { columns: all, rows: of.model.lines, total: 'Total' });
  printed(sheet, { columns: all.length, rows: Math.max(table.totalRow, table.firstRow), headRows: { first: table.headRow, last: table.headRow + 1 } });
  const { lines } = of.model;
  const run = (column: number): string => `${quoted(SHEET.paybackLines)}!${fixed(column, table.firstRow)}:${fixed(column, Math.max(table.firstRow, table.lastRow))}`;
  return {
    table,
    firstYear: lines.reduce((sum, l) => sum + toCent(l.firstYear), 0),
    firstYearSum: `SUM(${run(AT.first)})`,
    ownerFirstYear: lines.reduce((sum, l) => sum + ownerFirst(l), 0),
    ownerFirstYearSum: `SUM(${run(AT.ownerFirst)})`,
    buildings: run(AT.building),
    phases: run(AT.phase),
    cost: run(AT.cost),
  };
}
