import type { Plan } from '#planning';
import type { Worksheet } from 'exceljs';
import { address, type CellContent, live, paragraph, quoted, titleRow } from '../cells.js';
import { printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import { type Column, setWidths, type TablePlace, writeTable } from '../table.js';
import { type LineMoney, type MoneyModel, sumProduct, toCent } from './money-model.js';
import type { SpanSavings } from '../tariffs/spans-sheet.js';
import { SAVINGS_COLUMN, type SavingsPlace } from './savings-sheet.js';
import { type AxisPlace, FIRST_YEAR_COLUMN, worthOf } from './time-axis.js';

export interface LinesPlace {
  readonly table: TablePlace;
  /** Formula of the saving of all lines in their first years. */
  readonly firstYearSum: string;
  readonly firstYear: number;
}

interface LinesRequest {
  readonly plan: Plan;
  readonly model: MoneyModel;
  readonly axis: AxisPlace;
  readonly savings: SavingsPlace;
  readonly spans: SpanSavings;
}

const FIRST_YEAR_MONEY = 9;
const REBATE = 18;

function costOf(line: LineMoney, model: MoneyModel): number {
  return toCent((line.film + line.consumables) * (1 + model.inputs.materialTax) + line.labour * (1 + model.inputs.labourTax));
}

function columns(of: LinesRequest): readonly Column<LineMoney>[] {
  const { model, axis, savings } = of;
  const money = of.plan.terms.currency;
  const c = address;
  const payback = quoted(SHEET.payback);
  const lastYear = FIRST_YEAR_COLUMN + model.years.length - 1;
  const worth = (k: number): string => `${payback}!${c(FIRST_YEAR_COLUMN, axis.worthRow.get(k)!)}:${c(lastYear, axis.worthRow.get(k)!)}`;
  const saved = (block: 'whole' | 'owner'): Column<LineMoney>['value'] => (l, i) => {
    const row = savings[block].first + i;
    const run = `${quoted(SHEET.savings)}!${c(SAVINGS_COLUMN.firstYear, row)}:${c(SAVINGS_COLUMN.firstYear + model.years.length - 1, row)}`;
    return live(`ROUND(SUMPRODUCT(${run},${worth(l.workYear)})*electricity_price_factor,2)`, savedNow(l, block));
  };
  const savedNow = (l: LineMoney, block: 'whole' | 'owner'): number => toCent(sumProduct(l[block], worthOf(model, l.workYear)));
  const costNow = (l: LineMoney): number => toCent((costOf(l, model) - l.rebate) * model.discount[l.workYear]!);
  const firstSpan = (l: LineMoney): CellContent => {
    const span = of.spans.get(l.line.dwelling)?.[0];
    return span === undefined ? l.firstYear : live(span.cell, l.firstYear);
  };
  const figure = (head: string, value: Column<LineMoney>['value']): Column<LineMoney> => ({ head, unit: money, width: 12, format: FORMAT.money, isSummed: true, value });
  return [
    { head: 'Dwelling', unit: '', width: 13, value: (l) => l.line.dwelling },
    { head: 'Building', unit: '', width: 9, value: (l) => l.line.building },
    { head: 'Phase', unit: '', width: 17, value: (l) => l.line.phase },
    { head: 'Film, run price', unit: money, width: 12, format: FORMAT.money, value: (l) => l.film },
    { head: 'Consumables', unit: money, width: 12, format: FORMAT.money, value: (l) => l.consumables },
    { head: 'Labour and removal, run rate', unit: money, width: 12, format: FORMAT.money, value: (l) => l.labour },
    figure('Installed cost with tax', (l, _, r) => live(`ROUND((${c(4, r)}*film_cost_factor+${c(5, r)})*(1+material_tax)+${c(6, r)}*labour_cost_factor*(1+labour_tax),2)`, costOf(l, model))),
    { head: 'Saving of the first span', unit: `${money} a year`, width: 12, format: FORMAT.money, value: (l) => firstSpan(l) },
    figure('First-year saving', (l, _, r) => live(`ROUND(${c(8, r)}*electricity_price_factor,2)`, toCent(l.firstYear))),
    figure('Cost less rebate, worth today', (l, _, r) => live(`ROUND((${c(7, r)}-${c(REBATE, r)})*${payback}!${c(FIRST_YEAR_COLUMN + l.workYear, axis.discountRow)},2)`, costNow(l))),
    figure('Saving, all payers, worth today', saved('whole')),
    figure('Net present value, whole', (l, _, r) => live(`${c(11, r)}-${c(10, r)}`, savedNow(l, 'whole') - costNow(l))),
    figure('Saving, owner, worth today', saved('owner')),
    figure('Net present value, owner', (l, _, r) => live(`${c(13, r)}-${c(10, r)}`, savedNow(l, 'owner') - costNow(l))),
    { head: 'SIR', unit: 'ratio', width: 8, format: FORMAT.two, value: (l, _, r) => live(`IF(${c(10, r)}>0,${c(11, r)}/${c(10, r)},0)`, costNow(l) > 0 ? savedNow(l, 'whole') / costNow(l) : 0) },
    { head: 'Simple payback', unit: 'years', width: 9, format: FORMAT.two, value: (l, _, r) => live(`IF(${c(9, r)}>0,(${c(7, r)}-${c(REBATE, r)})/${c(9, r)},"none")`, toCent(l.firstYear) > 0 ? (costOf(l, model) - l.rebate) / toCent(l.firstYear) : 'none') },
    { head: 'Discounted payback as run', unit: 'years, re-run', width: 12, format: FORMAT.two, value: (l) => l.line.discountedPayback_yr ?? 'none' },
    { head: 'Rebate of the line', unit: `${money}, run`, width: 11, format: FORMAT.money, isSummed: true, value: (l) => l.rebate },
  ];
}

/** Each line of the plan with its money by live formulas on the named inputs. */
export function writeLines(sheet: Worksheet, of: LinesRequest): LinesPlace {
  const all = columns(of);
  setWidths(sheet, all);
  titleRow(sheet, SHEET.paybackLines, `${of.plan.name}: each line by formula on the inputs of ${SHEET.payback}; cost before visits, freight, whole rolls and contingency`);
  const next = paragraph(sheet, 3, { text: 'Columns marked "run" are typed results: they need a new run. Negative figures carry a minus sign.', longest: 150 });
  const table = writeTable(sheet, next + 1, { columns: all, rows: of.model.lines, total: 'Total' });
  printed(sheet, { columns: all.length, rows: Math.max(table.totalRow, table.firstRow), headRows: { first: table.headRow, last: table.headRow + 1 }, frozenColumns: 1 });
  const firstYear = of.model.lines.reduce((sum, l) => sum + toCent(l.firstYear), 0);
  return { table, firstYear, firstYearSum: `SUM(${quoted(SHEET.paybackLines)}!${address(FIRST_YEAR_MONEY, table.firstRow)}:${address(FIRST_YEAR_MONEY, Math.max(table.firstRow, table.lastRow))})` };
}
