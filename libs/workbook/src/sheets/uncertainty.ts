import type { Influence } from '#calc';
import type { LineChances, LineOutlook, OutlookInput, Plan } from '#planning';
import type { Book } from '../book.js';
import { dollars, section } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import { type Column, writeTable } from '../table.js';

const WIDTHS = [34, 18, 13, 13, 13, 13, 13, 13, 13, 13] as const;
const NONE = 'No draws were made for this plan: how sure it is has not been asked. A run with draws fills this sheet.';

const wordColumns: readonly Column<LineOutlook>[] = [
  { head: 'Dwelling', unit: '', width: 12, value: (l) => l.dwelling },
  { head: 'Phase', unit: '', width: 16, value: (l) => l.phase },
  { head: 'As expected in bills', unit: 'saving over the film’s life, per year', width: 52, value: (l) => l.inBills.words },
  { head: 'Makes the plan', unit: 'of choices made again', width: 11, format: FORMAT.percent, value: (l) => l.inPlanShare ?? 'not asked' },
  { head: 'When it drops out', unit: '', width: 50, value: (l) => l.breakEvens.words.join('; ') },
];

const at = (i: number): number => WIDTHS[i] ?? 13;

/** Three chances of a value and the chance of paying back, in columns from a place on. */
function chances(words: string, { from, money, of }: { readonly from: number; readonly money: string; readonly of: (l: LineOutlook) => LineChances }): Column<LineOutlook>[] {
  const value = (head: string, i: number, pick: (c: LineChances) => number): Column<LineOutlook> => ({ head: `${head}, ${words}`, unit: `${money}, value`, width: at(from + i), format: FORMAT.dollars, value: (l) => dollars(pick(of(l))) });
  return [
    value('9 in 10 at least', 0, (c) => c.value_cents.nineInTenAtLeast),
    value('Middle', 1, (c) => c.value_cents.middle),
    value('1 in 10 more than', 2, (c) => c.value_cents.oneInTenMoreThan),
    { head: `Pays back, ${words}`, unit: 'of draws', width: at(from + 3), format: FORMAT.percent, value: (l) => of(l).paysBackShare },
  ];
}

const figureColumns = (money: string): readonly Column<LineOutlook>[] => [
  { head: 'Dwelling', unit: '', width: at(0), value: (l) => l.dwelling },
  { head: 'Drops out below', unit: 'of the tariff', width: at(1), format: FORMAT.percent, value: (l) => l.breakEvens.priceShare ?? 'never pays' },
  ...chances('modelled', { from: 2, money, of: (l) => l.asModelled }),
  ...chances('in bills', { from: 6, money, of: (l) => l.inBills }),
];

const influenceColumns = (money: string): readonly Column<Influence>[] => [
  { head: 'What moves the plan', unit: 'strongest first', width: at(0), value: (i) => i.parameter },
  { head: 'Rank correlation', unit: '−1 … 1', width: at(1), format: FORMAT.two, value: (i) => i.rankCorrelation },
  { head: 'Value where it is low', unit: `${money}, lowest tenth`, width: at(2), format: FORMAT.dollars, value: (i) => dollars(i.whereLow) },
  { head: 'Value where it is high', unit: `${money}, highest tenth`, width: at(3), format: FORMAT.dollars, value: (i) => dollars(i.whereHigh) },
];

const inputColumns: readonly Column<OutlookInput>[] = [
  { head: 'Drawn', unit: '', width: at(0), value: (i) => i.label },
  { head: 'Unit', unit: '', width: at(1), value: (i) => i.unit },
  { head: 'Shared by', unit: 'scope', width: at(2), value: (i) => i.scope },
  { head: 'Source', unit: '', width: 90, value: (i) => i.source, runsOn: true },
];

function notesOf({ outlook }: Plan): string[] {
  if (outlook === null) return [NONE];
  return [
    `${String(outlook.draws)} draws from seed ${String(outlook.seed)}, each by full runs of the hours; ${outlook.selections === 0 ? 'the choice was not made again' : `the choice made again under ${String(outlook.selections)} of them`}. The same seed gives the same draws.`,
    ...outlook.words,
  ];
}

/** How sure the plan and each line are, in words, and when a line drops out. */
export function uncertaintySheet(book: Book, plan: Plan): void {
  oneTableSheet<LineOutlook>(book, {
    name: SHEET.uncertainty,
    about: `${plan.name}: how sure the savings are, line by line and together; figures on ${SHEET.uncertaintyFigures}`,
    notes: notesOf(plan),
    columns: wordColumns,
    rows: plan.outlook?.lines ?? [],
    none: plan.outlook === null ? 'None drawn.' : 'No line is planned.',
    frozenColumns: 1,
  });
}

/** The figures behind the words: what moves the plan, chances by line, and what was drawn. */
export function uncertaintyFiguresSheet(book: Book, plan: Plan): void {
  const { outlook } = plan;
  const money = plan.terms.currency;
  const { sheet, place } = oneTableSheet<Influence>(book, {
    name: SHEET.uncertaintyFigures,
    about: `${plan.name}: what moves the plan, chances of each line, and what was drawn; values are net present in the plan’s view`,
    notes: outlook === null ? [NONE] : [],
    columns: influenceColumns(money),
    rows: outlook?.influences ?? [],
    none: outlook === null ? 'None drawn.' : 'Nothing was told apart.',
    frozenColumns: 1,
  });
  WIDTHS.forEach((width, i) => {
    sheet.getColumn(i + 1).width = width;
  });
  if (outlook === null) return;
  let row = Math.max(place.lastRow, place.firstRow) + 2;
  const part = <Row>(title: string, columns: readonly Column<Row>[], rows: readonly Row[]): void => {
    section(sheet, row, title);
    row = writeTable(sheet, row + 1, { columns, rows }).nextRow;
  };
  part('Chances by line', figureColumns(money), outlook.lines);
  sheet.getRow(row - 1).addPageBreak();
  part('What was drawn', inputColumns, outlook.inputs);
  sheet.pageSetup.printArea = `A$1:J$${String(row)}`;
  sheet.pageSetup.printTitlesRow = '1:2'; // several tables: the head of the first would stand over the others
}
