import type { Plan } from '#planning';
import type { Worksheet } from 'exceljs';
import type { Book } from '../book.js';
import { address, brokenLines, columnName, fixed, live, type LiveFormula, put, quoted, section, sumWhere, titleLines } from '../cells.js';
import { lineOf, printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import { bold, FORMAT, ruled } from '../style.js';
import { type Column, setWidths, type TablePlace, writeTable } from '../table.js';
import { type FlowKind, type FlowRow, flowRows } from './cash-flow-rows.js';
import type { LinesPlace } from './lines-sheet.js';
import type { MoneyModel } from './money-model.js';
import { SPENDING_COLUMN } from './phase-spending.js';
import type { RebatesPlace } from './rebates-sheet.js';
import { SAVINGS_COLUMN, type SavingsPlace } from './savings-sheet.js';
import { type AxisPlace, FIRST_YEAR_COLUMN } from './time-axis.js';

interface Sources {
  readonly plan: Plan;
  readonly model: MoneyModel;
  readonly axis: AxisPlace;
  readonly savings: SavingsPlace;
  readonly lines: LinesPlace;
  readonly rebates: RebatesPlace;
  readonly spending: TablePlace;
}

/** Range of the differences from the time axis, which must all be 0. */
export interface CashFlowPlace {
  readonly differences: string;
  /** Sum of the film work of all buildings, below zero. */
  readonly filmWork: string;
}

const AT = { phase: 2, building: 3, payer: 4, kind: 5, year: 6, all: 7, first: 8 } as const;
const HALF_CENT = 0.005;
const WORDS: Readonly<Record<FlowKind, string>> = { 'film work': 'film work', 'belongs to the phase': 'visits, freight, whole rolls, contingency', rebates: 'rebates', saving: 'saving', 'taking film off': 'taking film off' };

/** Formula of one year of a stream, from the payback sheets. */
function flowFormula(row: FlowRow, at: { readonly year: number; readonly sheetRow: number; readonly of: Sources }): string {
  const { axis, lines, rebates, savings, spending } = at.of;
  const [phase, building] = [`$${address(AT.phase, at.sheetRow)}`, `$${address(AT.building, at.sheetRow)}`];
  switch (row.kind) {
    case 'film work':
      return `-1*${sumWhere(lines.cost, [[lines.phases, phase], [lines.buildings, building]])}`;
    case 'belongs to the phase':
      return `${sumWhere(lines.cost, [[lines.phases, phase]])}-${quoted(SHEET.payback)}!${fixed(SPENDING_COLUMN.total, spending.firstRow + row.phaseAt)}`;
    case 'rebates':
      return sumWhere(rebates.amounts, [[rebates.phases, phase], [rebates.buildings, building]]);
    case 'taking film off': {
      const { area, end } = savings.atEnd;
      return `-1*ROUND(${sumWhere(area, [[lines.phases, phase], [lines.buildings, building], [end, at.year]])}*end_removal_price,2)`;
    }
    case 'saving': {
      const column = (c: number, block: 'whole' | 'owner'): string => `${quoted(SHEET.savings)}!${fixed(c, savings[block].first)}:${fixed(c, savings[block].last)}`;
      const sum = (block: 'whole' | 'owner'): string => sumWhere(column(SAVINGS_COLUMN.firstYear + at.year, block), [[column(SAVINGS_COLUMN.phase, block), phase], [column(SAVINGS_COLUMN.building, block), building]]);
      const on = (r: number): string => `${quoted(SHEET.payback)}!${fixed(FIRST_YEAR_COLUMN + at.year, r)}`;
      const base = row.payer === 'owner' ? sum('owner') : `(${sum('whole')}-${sum('owner')})`;
      return `ROUND(${base}*${on(axis.effectRow.get(row.phase.workYear)!)}*${on(axis.priceRow)}*electricity_price_factor,2)`;
    }
  }
}

function columns(of: Sources): readonly Column<FlowRow>[] {
  const { plan, model } = of;
  const money = plan.terms.currency;
  const start = Number(plan.terms.studyStart.slice(0, 4));
  const last = AT.first + model.years.length - 1;
  const isIn = (r: FlowRow, year: number): boolean => (r.endYears !== undefined ? r.endYears.has(year) : r.kind === 'saving' ? year > r.phase.workYear : year === r.phase.workYear);
  return [
    { head: 'Owner entity', unit: '', width: 11, value: (r) => r.ownerEntity },
    { head: 'Fiscal year', unit: 'phase', width: 18, value: (r) => r.phase.result.phase.id },
    { head: 'Building', unit: '', width: 10, value: (r) => r.building },
    { head: 'Payer', unit: '', width: 9, value: (r) => r.payer },
    { head: 'What', unit: '', width: 22, value: (r) => WORDS[r.kind] },
    { head: 'Work', unit: 'in year', width: 6, format: FORMAT.year, value: (r) => r.phase.workYear },
    { head: 'All years', unit: money, width: 12, format: FORMAT.money, isSummed: true, value: (r, _, row) => live(`SUM(${address(AT.first, row)}:${address(last, row)})`, r.now.reduce((a, b) => a + b, 0)) },
    ...model.years.map((year): Column<FlowRow> => ({ head: `Year ${String(year)}`, unit: `ends ${String(start + year)}`, width: 9.8, format: FORMAT.money, isSummed: true, value: (r, _, sheetRow) => (isIn(r, year) ? live(flowFormula(r, { year, sheetRow, of }), r.now[year]!) : 0) })),
  ];
}

interface Sum {
  readonly label: string;
  /** Which rows of the table, as criteria on their columns. */
  readonly where: readonly (readonly [column: number, is: string])[];
  readonly has: (r: FlowRow) => boolean;
}

const SUMS: readonly Sum[] = [
  { label: 'Spending', where: [[AT.kind, WORDS['film work']], [AT.kind, WORDS['belongs to the phase']]], has: (r) => r.kind === 'film work' || r.kind === 'belongs to the phase' },
  { label: 'Rebates', where: [[AT.kind, WORDS.rebates]], has: (r) => r.kind === 'rebates' },
  { label: 'Taking film off', where: [[AT.kind, WORDS['taking film off']]], has: (r) => r.kind === 'taking film off' },
  { label: 'Owner, net', where: [[AT.payer, 'owner']], has: (r) => r.payer === 'owner' },
  { label: 'Tenants, net', where: [[AT.payer, 'tenants']], has: (r) => r.payer === 'tenants' },
];

interface SumRows {
  readonly rows: readonly FlowRow[];
  readonly table: TablePlace;
  readonly of: Sources;
}

/** Sums by kind and payer, and their differences from the time axis. Returns the range of the differences. */
function writeSums(sheet: Worksheet, at: number, { rows, table, of }: SumRows): { readonly differences: string; readonly nextRow: number } {
  const { model, axis } = of;
  section(sheet, at, `By payer, and checked against the time axis of ${SHEET.payback}`);
  const row = (r: number, label: string, cell: (column: string, year: number) => LiveFormula): void => {
    put(sheet.getCell(r, 1), label);
    bold(sheet.getCell(r, 1));
    model.years.forEach((year) => {
      put(sheet.getCell(r, AT.first + year), cell(columnName(AT.first + year), year), FORMAT.money);
    });
    for (let c = 1; c < AT.first + model.years.length; c++) ruled(sheet.getCell(r, c));
  };
  const span = (column: string): string => `${column}$${String(table.firstRow)}:${column}$${String(table.lastRow)}`;
  const sum = (has: Sum['has'], year: number): number => rows.reduce((total, r) => total + (has(r) ? r.now[year]! : 0), 0);
  SUMS.forEach((s, i) => {
    row(at + 1 + i, s.label, (c, year) => live(s.where.map(([column, is]) => `SUMIF(${span(`$${columnName(column)}`)},"${is}",${span(c)})`).join('+'), sum(s.has, year)));
  });
  const [spent, rebate, removal, owner, tenants] = [1, 2, 3, 4, 5].map((i) => at + i);
  const allowed = at + 1 + SUMS.length;
  row(allowed, 'Rounding left out, half a cent a row', () => live(`ROWS(${span('A')})*0.005`, (table.lastRow - table.firstRow + 1) * HALF_CENT));
  const on = (r: number, year: number): string => `${quoted(SHEET.payback)}!${fixed(FIRST_YEAR_COLUMN + year, r)}`;
  const first = allowed + 1;
  const differences: readonly (readonly [string, (c: string, year: number) => string])[] = [
    ['Spending less time axis, must be 0', (c, y) => `${c}${String(spent)}-${on(axis.spentRow, y)}`],
    ['Rebates less time axis, must be 0', (c, y) => `${c}${String(rebate)}-${on(axis.rebateRow, y)}`],
    ['Taking film off less time axis, must be 0', (c, y) => `${c}${String(removal)}-${on(axis.removalRow, y)}`],
    ['Owner less time axis, must be 0', (c, y) => `${c}${String(owner)}-${on(axis.spentRow, y)}-${on(axis.rebateRow, y)}-${on(axis.removalRow, y)}-${on(axis.ownerRow, y)}`],
    ['Tenants less time axis, must be 0', (c, y) => `${c}${String(tenants)}-${on(axis.wholeRow, y)}+${on(axis.ownerRow, y)}`],
  ];
  differences.forEach(([label, formula], i) => {
    row(first + i, label, (c, year) => live(`IF(ABS(${formula(c, year)})<=${c}${String(allowed)},0,ROUND(${formula(c, year)},2))`, 0));
  });
  const low = first + differences.length - 1;
  return { differences: `${quoted(SHEET.cashFlow)}!${fixed(AT.first, first)}:${fixed(AT.first + model.years.length - 1, low)}`, nextRow: low + 1 };
}

/** When fiscal years begin beside the years of the study. */
function fiscalText(plan: Plan): string {
  const begins = [...new Set(plan.phases.map((p) => `${p.phase.ownerEntity} from ${p.phase.firstDay.slice(5)}`))].sort();
  return `A fiscal year is a phase of its owner entity (${begins.join('; ')}; month and day); the years of the study begin on ${plan.terms.studyStart.slice(5)}. Work is paid in the year of the study in which its fiscal year begins; savings fall at the ends of the years after it.`;
}

/** The plan's money by fiscal year of the work, owner entity, building and payer, by formula from the payback sheets. */
export function cashFlowSheet(book: Book, of: Sources): CashFlowPlace {
  const { plan, model } = of;
  const all = columns(of);
  const widthOf = (columnsOf: typeof all): number => columnsOf.reduce((sum, c) => sum + c.width, 0);
  const set = { name: SHEET.cashFlow, width: widthOf(all), repeats: widthOf(all.slice(0, AT.kind)) };
  const notes = [`${plan.name}: cash flow by fiscal year, owner entity, building and payer, real, at prices of ${plan.terms.studyStart}`, fiscalText(plan), 'Money out is below zero. Visits, freight, whole rolls and contingency belong to the phase and are not shared out over buildings; own labour that is not paid is taken off there. Nothing here is discounted.'].flatMap((text) => brokenLines(text, lineOf({ ...set, frozen: { rows: 0, columns: AT.kind } })));
  const head = 3 + notes.length;
  const sheet = book.open({ ...set, frozen: { rows: head + 1, columns: AT.kind } });
  setWidths(sheet, all);
  titleLines(sheet, SHEET.cashFlow, notes);
  const rows = flowRows(plan, model);
  const table = writeTable(sheet, head, { columns: all, rows, total: 'Net' });
  const place = { ...table, lastRow: Math.max(table.firstRow, table.lastRow) };
  const sums = writeSums(sheet, place.lastRow + 3, { rows, table: place, of });
  printed(sheet, { columns: all.length, rows: sums.nextRow, headRows: { first: head, last: head + 1 } });
  const on = (column: number): string => `${quoted(SHEET.cashFlow)}!${fixed(column, place.firstRow)}:${fixed(column, place.lastRow)}`;
  return { differences: sums.differences, filmWork: `SUMIF(${on(AT.kind)},"${WORDS['film work']}",${on(AT.all)})` };
}
