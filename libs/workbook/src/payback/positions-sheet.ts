import type { Plan } from '#planning';
import type { Book } from '../book.js';
import { address, type CellContent, live, quoted } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';
import { type LinePaybacks, spentToday, spentTodayCell } from './lines-sheet.js';
import type { LineMoney, MoneyModel } from './money-model.js';
import { SAVINGS_COLUMN, type SavingsPlace } from './savings-sheet.js';
import { type AxisPlace, FIRST_YEAR_COLUMN, worthOf } from './time-axis.js';

interface Sources {
  readonly plan: Plan;
  readonly model: MoneyModel;
  readonly axis: AxisPlace;
  readonly savings: SavingsPlace;
}

const AT = { below: 4, payback: 5, first: 6 } as const;

/** Running sum of a line's discounted flows by year of the study, from the year of its work until it reaches 0, where it stays. */
function positionsOf(line: LineMoney, model: MoneyModel): readonly (number | null)[] {
  const worth = worthOf(model, line.workYear);
  let sum = 0;
  return model.years.map((year) => {
    if (year < line.workYear) return null;
    if (year === line.workYear) sum = -1 * spentToday(line, model);
    else if (sum < 0) sum += (line.whole[year] ?? 0) * worth[year]! - (year === line.endYear ? line.filmAtEnd_m2 * model.inputs.endRemoval * model.discount[year]! : 0);
    return sum;
  });
}

const belowOf = (positions: readonly (number | null)[]): number => positions.filter((p) => p !== null && p < 0).length;

/** Years from the work until the sum is back at 0, straight between the years. */
function paybackOf(positions: readonly (number | null)[], workYear: number): number | 'none' {
  const below = belowOf(positions);
  const [before, after] = [positions[workYear + below - 1], positions[workYear + below]];
  if (below === 0 || typeof before !== 'number' || typeof after !== 'number') return 'none';
  return below - 1 - before / (after - before);
}

/** The running sum of each line's discounted flows, all payers, and the discounted payback that follows from it. */
export function positionsSheet(book: Book, of: Sources): LinePaybacks {
  const { plan, model, axis, savings } = of;
  const last = AT.first + model.years.length - 1;
  const positions = model.lines.map((l) => positionsOf(l, model));
  const payback = positions.map((p, i) => paybackOf(p, model.lines[i]!.workYear));
  const onAxis = (row: number, year: number): string => `${quoted(SHEET.payback)}!${address(FIRST_YEAR_COLUMN + year, row)}`;
  const position = (l: LineMoney, year: number, at: { readonly index: number; readonly row: number }): CellContent => {
    const now = positions[at.index]![year] ?? null;
    if (now === null) return null;
    if (year === l.workYear) return live(`-1*${spentTodayCell(at.index)}`, now);
    const before = address(AT.first + year - 1, at.row);
    const saved = `${quoted(SHEET.savings)}!${address(SAVINGS_COLUMN.firstYear + year, savings.whole.first + at.index)}`;
    const off = year === l.endYear ? `-${savings.atEnd.areaCell(at.index)}*end_removal_price*${onAxis(axis.discountRow, year)}` : '';
    return live(`IF(${before}>=0,${before},${before}+${saved}*${onAxis(axis.worthRow.get(l.workYear)!, year)}*electricity_price_factor${off})`, now);
  };
  const years = (l: LineMoney, row: number): string => {
    const run = `${address(AT.first + l.workYear, row)}:${address(last, row)}`;
    const below = address(AT.below, row);
    return `IF(AND(${below}>0,${address(last, row)}>=0),${below}-1-INDEX(${run},1,${below})/(INDEX(${run},1,${below}+1)-INDEX(${run},1,${below})),"none")`;
  };
  const columns: readonly Column<LineMoney>[] = [
    { head: 'Dwelling', unit: '', width: 13, value: (l) => l.line.dwelling },
    { head: 'Phase', unit: '', width: 18, value: (l) => l.line.phase },
    { head: 'Work in year', unit: 'of the study', width: 9, format: FORMAT.year, value: (l) => l.workYear },
    { head: 'Years below 0', unit: 'count', width: 9, format: FORMAT.year, value: (_, i, row) => live(`COUNTIF(${address(AT.first, row)}:${address(last, row)},"<0")`, belowOf(positions[i]!)) },
    { head: 'Discounted payback', unit: 'years', width: 11, format: FORMAT.two, value: (l, i, row) => live(years(l, row), payback[i]!) },
    ...model.years.map((year): Column<LineMoney> => ({ head: String(year), unit: plan.terms.currency, width: 10, format: FORMAT.money, value: (l, index, row) => position(l, year, { index, row }) })),
  ];
  const { place } = oneTableSheet(book, {
    name: SHEET.positions,
    about: `${plan.name}: running sum of each line, cost less rebate against savings of all payers less taking film off at its end, worth at the study start`,
    notes: ['The sum stays where it is once it has reached 0. Discounted payback counts from the work and is taken straight inside the last year; "none" = the sum does not reach 0 while the film lasts.'],
    columns,
    rows: model.lines,
    none: 'No line, so nothing to pay back.',
    frozenColumns: 2,
  });
  return { cell: (index) => `${quoted(SHEET.positions)}!${address(AT.payback, place.firstRow + index)}`, years: payback };
}
