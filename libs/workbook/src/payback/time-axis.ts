import type { Worksheet } from 'exceljs';
import { address, columnName, type LiveFormula, live, put, quoted } from '../cells.js';
import { SHEET } from '../sheet-names.js';
import { bold, FORMAT, headed, ruled, united } from '../style.js';
import type { TablePlace } from '../table.js';
import { type MoneyModel, takenOff, toCent } from './money-model.js';
import { SPENDING_COLUMN, spentInPhase } from './phase-spending.js';
import type { RebatesPlace } from './rebates-sheet.js';
import { SAVINGS_COLUMN, type SavingsPlace } from './savings-sheet.js';

export const FIRST_YEAR_COLUMN = 4;

/** Rows of the time axis that the results and the lines point at. */
export interface AxisPlace {
  readonly discountRow: number;
  readonly priceRow: number;
  /** Effect of the film left, by year of the work. */
  readonly effectRow: ReadonlyMap<number, number>;
  readonly spentRow: number;
  readonly wholeRow: number;
  readonly ownerRow: number;
  /** Present worth of a dollar of yearly saving, by year of the work. */
  readonly worthRow: ReadonlyMap<number, number>;
  readonly presentSpentRow: number;
  readonly rebateRow: number;
  readonly removalRow: number;
  readonly presentRemovalRow: number;
  readonly presentRebateRow: number;
  readonly presentWholeRow: number;
  readonly presentOwnerRow: number;
  readonly backRow: number;
  readonly lastColumn: number;
  readonly nextRow: number;
  readonly results: AxisResults;
}

export interface AxisResults {
  readonly spent: readonly number[];
  readonly whole: readonly number[];
  readonly owner: readonly number[];
  readonly presentSpent: readonly number[];
  readonly rebates: readonly number[];
  readonly presentRebates: readonly number[];
  /** Taking film off at the ends of its lives, below zero. */
  readonly removal: readonly number[];
  readonly presentRemoval: readonly number[];
  readonly presentWhole: readonly number[];
  readonly presentOwner: readonly number[];
  readonly cumulative: readonly number[];
  readonly back: readonly number[];
  readonly base: { readonly whole: ReadonlyMap<number, readonly number[]>; readonly owner: ReadonlyMap<number, readonly number[]> };
}

export const worthOf = (model: MoneyModel, workYear: number): number[] => model.years.map((y) => (model.effect.get(workYear)?.[y] ?? 0) * model.price[y]! * model.discount[y]!);

/** The results of the axis at the plan's own inputs. */
export function axisResults(model: MoneyModel): AxisResults {
  const { years } = model;
  const base = (of: 'whole' | 'owner'): Map<number, number[]> =>
    new Map(model.workYears.map((k) => [k, years.map((y) => model.lines.reduce((sum, l) => sum + (l.workYear === k ? (l[of][y] ?? 0) : 0), 0))]));
  const bases = { whole: base('whole'), owner: base('owner') };
  const flow = (of: 'whole' | 'owner'): number[] => years.map((y) => toCent(model.workYears.reduce((sum, k) => sum + (bases[of].get(k)?.[y] ?? 0) * (model.effect.get(k)?.[y] ?? 0), 0) * model.price[y]!));
  const spent = years.map((y) => -1 * model.phases.reduce((sum, p) => sum + (p.workYear === y ? spentInPhase(p, model) : 0), 0));
  const [whole, owner] = [flow('whole'), flow('owner')];
  const present = (flows: readonly number[]): number[] => flows.map((x, y) => toCent(x * model.discount[y]!));
  const rebates = years.map((y) => model.rebates.reduce((sum, r) => sum + (r.workYear === y ? r.amount : 0), 0));
  const removal = years.map((y) => -1 * takenOff(model.lines, y, model.inputs.endRemoval));
  const [presentSpent, presentRebates, presentWhole, presentOwner, presentRemoval] = [present(spent), present(rebates), present(whole), present(owner), present(removal)];
  const net = years.map((y) => presentSpent[y]! + presentRebates[y]! + presentWhole[y]! + presentRemoval[y]!);
  let sum = 0;
  const cumulative = net.map((x) => (sum += x));
  const back = years.map((y) => (y > 0 && cumulative[y - 1]! < 0 && cumulative[y]! >= 0 ? y - 1 - cumulative[y - 1]! / net[y]! : 0));
  return { spent, whole, owner, rebates, presentRebates, removal, presentRemoval, presentSpent, presentWhole, presentOwner, cumulative, back, base: bases };
}

type YearCell = (year: number, column: string) => LiveFormula | number;

interface AxisRow {
  readonly label: string;
  readonly unit: string;
  readonly format: string;
  readonly total?: LiveFormula;
  readonly isStrong?: boolean;
  readonly cell: YearCell;
}

function writeRow(sheet: Worksheet, row: number, of: AxisRow & { readonly years: readonly number[] }): void {
  put(sheet.getCell(row, 1), of.label);
  put(sheet.getCell(row, 2), of.unit);
  put(sheet.getCell(row, 3), of.total ?? null, of.format);
  of.years.forEach((year) => {
    put(sheet.getCell(row, FIRST_YEAR_COLUMN + year), of.cell(year, columnName(FIRST_YEAR_COLUMN + year)), of.format);
  });
  for (let c = 1; c < FIRST_YEAR_COLUMN + of.years.length; c++) {
    if (of.isStrong === true) bold(sheet.getCell(row, c));
    ruled(sheet.getCell(row, c));
  }
}

function axisHead(sheet: Worksheet, row: number, of: { readonly years: readonly number[]; readonly startYear: number }): void {
  ['Year of the study', 'Unit', 'All years'].forEach((text, i) => {
    put(sheet.getCell(row, i + 1), text);
    headed(sheet.getCell(row, i + 1), i === 2);
    united(sheet.getCell(row + 1, i + 1), false);
  });
  put(sheet.getCell(row + 1, 1), 'ends in');
  of.years.forEach((year) => {
    put(sheet.getCell(row, FIRST_YEAR_COLUMN + year), year, FORMAT.year);
    headed(sheet.getCell(row, FIRST_YEAR_COLUMN + year), true);
    put(sheet.getCell(row + 1, FIRST_YEAR_COLUMN + year), of.startYear + year, FORMAT.year);
    united(sheet.getCell(row + 1, FIRST_YEAR_COLUMN + year), true);
  });
}

const before = (year: number): string => columnName(FIRST_YEAR_COLUMN + year - 1);

/** The part of a year at which the cash position crosses zero upwards, else 0. */
function turned(at: { readonly y: number; readonly c: string; readonly row: number; readonly head: string; readonly net: string; readonly result: number }): LiveFormula | number {
  if (at.y === 0) return 0;
  const last = `${before(at.y)}${String(at.row)}`;
  return live(`IF(AND(${last}<0,${at.c}${String(at.row)}>=0),${at.head}-1-${last}/(${at.net}),0)`, at.result);
}

/** One time axis for the whole plan: factors, flows, present values and the cash position, by live formulas. */
export function writeTimeAxis(sheet: Worksheet, at: number, of: { readonly model: MoneyModel; readonly spending: TablePlace; readonly savings: SavingsPlace; readonly rebates: RebatesPlace; readonly currency: string; readonly startYear: number }): AxisPlace {
  const { model, spending, savings, currency } = of;
  const { years, workYears } = model;
  const results = axisResults(model);
  axisHead(sheet, at, { years, startYear: of.startYear });
  let row = at + 2;
  const lastColumn = FIRST_YEAR_COLUMN + years.length - 1;
  const write = (each: AxisRow): number => {
    writeRow(sheet, row, { ...each, years });
    row += 1;
    return row - 1;
  };
  const across = (r: number): string => `${address(FIRST_YEAR_COLUMN, r)}:${address(lastColumn, r)}`;
  const sum = (flows: readonly number[]): LiveFormula => live(`SUM(${across(row)})`, flows.reduce((a, b) => a + b, 0));
  const head = (c: string): string => `${c}$${String(at)}`;
  const priceRow = write({ label: 'Energy price beside the study start', unit: 'times', format: FORMAT.factor, cell: (y, c) => live(`(1+price_rise)^${head(c)}`, model.price[y]!) });
  const discountRow = write({ label: 'Worth today of a dollar then', unit: 'times', format: FORMAT.factor, cell: (y, c) => live(`1/(1+discount_rate)^${head(c)}`, model.discount[y]!) });
  const block = (label: string, format: string, cell: (k: number) => YearCell): Map<number, number> => new Map(workYears.map((k) => [k, write({ label: `${label}, work in year ${String(k)}`, unit: format === FORMAT.money ? currency : 'times', format, cell: cell(k) })]));
  const effectRow = block('Effect of the film left', FORMAT.factor, (k) => (y, c) => live(`IF(${head(c)}>${String(k)},(1-film_degradation)^(${head(c)}-${String(k)}-1),0)`, model.effect.get(k)?.[y] ?? 0));
  const worthRow = block('Worth today of a dollar saved', FORMAT.factor, (k) => (y, c) => live(`${c}${String(effectRow.get(k))}*${c}${String(priceRow)}*${c}${String(discountRow)}`, worthOf(model, k)[y]!));
  const baseRows = (of2: 'whole' | 'owner', label: string): Map<number, number> => {
    const { first, last } = savings[of2];
    const column = (c: string): string => `${quoted(SHEET.savings)}!$${c}$${String(first)}:$${c}$${String(last)}`;
    return block(label, FORMAT.money, (k) => (y) => live(`SUMIF(${column(columnName(SAVINGS_COLUMN.workYear))},${String(k)},${column(columnName(SAVINGS_COLUMN.firstYear + y))})`, results.base[of2].get(k)?.[y] ?? 0));
  };
  const baseWhole = baseRows('whole', 'Saving as run, all payers');
  const baseOwner = baseRows('owner', 'Saving as run, owner');
  const ends = (rows: ReadonlyMap<number, number>): { readonly top: number; readonly low: number } => ({ top: rows.get(workYears[0]!)!, low: rows.get(workYears[workYears.length - 1]!)! });
  const saved = (rows: ReadonlyMap<number, number>, flows: readonly number[]): YearCell => {
    const [b, e] = [ends(rows), ends(effectRow)];
    return (y, c) => live(`ROUND(SUMPRODUCT(${c}${String(b.top)}:${c}${String(b.low)},${c}${String(e.top)}:${c}${String(e.low)})*${c}${String(priceRow)}*electricity_price_factor,2)`, flows[y]!);
  };
  const range = (column: number): string => `$${columnName(column)}$${String(spending.firstRow)}:$${columnName(column)}$${String(Math.max(spending.firstRow, spending.lastRow))}`;
  const spentRow = write({ label: 'Spending (money out is below zero)', unit: currency, format: FORMAT.money, total: sum(results.spent), cell: (y, c) => live(`-1*SUMIF(${range(SPENDING_COLUMN.workYear)},${head(c)},${range(SPENDING_COLUMN.total)})`, results.spent[y]!) });
  const rebateRow = write({ label: 'Rebates received', unit: currency, format: FORMAT.money, total: sum(results.rebates), cell: (y, c) => live(`SUMIF(${of.rebates.years},${head(c)},${of.rebates.amounts})`, results.rebates[y]!) });
  const wholeRow = write({ label: 'Saving, all payers', unit: currency, format: FORMAT.money, total: sum(results.whole), cell: saved(baseWhole, results.whole) });
  const ownerRow = write({ label: 'of which the owner keeps', unit: currency, format: FORMAT.money, total: sum(results.owner), cell: saved(baseOwner, results.owner) });
  const removalRow = write({ label: 'Taking film off at its end, owner', unit: currency, format: FORMAT.money, total: sum(results.removal), cell: (y, c) => live(`-1*ROUND(SUMIF(${savings.atEnd.end},${head(c)},${savings.atEnd.area})*end_removal_price,2)`, results.removal[y]!) });
  const today = (label: string, flows: readonly number[], from: number): number => write({ label, unit: currency, format: FORMAT.money, total: sum(flows), cell: (y, c) => live(`ROUND(${c}${String(from)}*${c}${String(discountRow)},2)`, flows[y]!) });
  const presentSpentRow = today('Spending, worth today', results.presentSpent, spentRow);
  const presentRebateRow = today('Rebates, worth today', results.presentRebates, rebateRow);
  const presentWholeRow = today('Saving, all payers, worth today', results.presentWhole, wholeRow);
  const presentOwnerRow = today('Saving, owner, worth today', results.presentOwner, ownerRow);
  const presentRemovalRow = today('Taking film off, worth today', results.presentRemoval, removalRow);
  const net = (c: string): string => [presentSpentRow, presentRebateRow, presentWholeRow, presentRemovalRow].map((r) => `${c}${String(r)}`).join('+');
  const cumulativeRow = write({ label: 'Cash position, all payers, worth today', unit: currency, format: FORMAT.money, isStrong: true, cell: (y, c) => live(`${y === 0 ? '' : `${before(y)}${String(row)}+`}${net(c)}`, results.cumulative[y]!) });
  const backRow = write({ label: 'Year in which it turns to plus', unit: 'years', format: FORMAT.two, cell: (y, c) => turned({ y, c, row: cumulativeRow, head: head(c), net: net(c), result: results.back[y]! }) });
  return { discountRow, priceRow, effectRow, spentRow, wholeRow, ownerRow, worthRow, presentSpentRow, rebateRow, presentRebateRow, removalRow, presentRemovalRow, presentWholeRow, presentOwnerRow, backRow, lastColumn, nextRow: row + 1, results };
}
