import type { Influence } from '#calc';
import type { LineChances, LineOutlook, OutlookInput, Plan } from '#planning';
import type { Book } from '../book.js';
import { dollars } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { Column } from '../table.js';

const WIDTHS = [15, 13, 12, 12, 12, 12, 12, 12, 12, 12] as const;
const NONE = 'No draws were made for this plan: how sure it is has not been asked. A run with draws fills this sheet.';

const wordColumns: readonly Column<LineOutlook>[] = [
  { head: 'Dwelling', unit: '', width: 12, value: (l) => l.dwelling },
  { head: 'Phase', unit: '', width: 18, value: (l) => l.phase },
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
  { head: 'What moves the plan', unit: 'strongest first', width: 44, value: (i) => i.parameter },
  { head: 'Rank correlation', unit: '−1 … 1', width: 13, format: FORMAT.two, value: (i) => i.rankCorrelation },
  { head: 'Value where it is low', unit: `${money}, lowest tenth`, width: 16, format: FORMAT.dollars, value: (i) => dollars(i.whereLow) },
  { head: 'Value where it is high', unit: `${money}, highest tenth`, width: 16, format: FORMAT.dollars, value: (i) => dollars(i.whereHigh) },
];

const inputColumns: readonly Column<OutlookInput>[] = [
  { head: 'Drawn', unit: '', width: 34, value: (i) => i.label },
  { head: 'Unit', unit: '', width: 18, value: (i) => i.unit },
  { head: 'Shared by', unit: 'scope', width: 14, value: (i) => i.scope },
  { head: 'Source', unit: '', width: 90, value: (i) => i.source },
];

/** How near the best the choices made again end. */
function gapText({ selectionGap }: NonNullable<Plan['outlook']>): string[] {
  if (selectionGap === undefined || selectionGap === null) return [];
  return [`Those choices end after a counted bit of work: half of them within ${(selectionGap.middle * 100).toFixed(2)} % of their own bounds, the worst ${(selectionGap.worst * 100).toFixed(2)} % below.`];
}

function notesOf({ outlook }: Plan): string[] {
  if (outlook === null) return [NONE];
  return [
    `${String(outlook.draws)} draws from seed ${String(outlook.seed)}, each by full runs of the hours; ${outlook.selections === 0 ? 'the choice was not made again' : `the choice made again under ${String(outlook.selections)} of them`}. The same seed gives the same draws.`,
    ...gapText(outlook),
    ...outlook.words,
  ];
}

/** How sure the plan and each line are, in words, and when a line drops out. */
export function uncertaintySheet(book: Book, plan: Plan): void {
  oneTableSheet<LineOutlook>(book, {
    name: SHEET.uncertainty,
    isAsRun: true,
    about: `${plan.name}: how sure the savings are, line by line and together; figures on ${SHEET.chances}`,
    notes: notesOf(plan),
    columns: wordColumns,
    rows: plan.outlook?.lines ?? [],
    none: plan.outlook === null ? 'None drawn.' : 'No line is planned.',
    frozenColumns: 1,
  });
}

/** What moves the plan: influences, strongest first. */
export function uncertaintyFiguresSheet(book: Book, plan: Plan): void {
  const { outlook } = plan;
  oneTableSheet<Influence>(book, {
    name: SHEET.uncertaintyFigures,
    isAsRun: true,
    about: `${plan.name}: what moves the plan; values are net present in the plan’s view`,
    notes: outlook === null ? [NONE] : [],
    columns: influenceColumns(plan.terms.currency),
    rows: outlook?.influences ?? [],
    none: outlook === null ? 'None drawn.' : 'Nothing was told apart.',
    frozenColumns: 1,
  });
}

/** The chances behind the words of each line. */
export function chancesSheet(book: Book, plan: Plan): void {
  const { outlook } = plan;
  oneTableSheet<LineOutlook>(book, {
    name: SHEET.chances,
    isAsRun: true,
    about: `${plan.name}: chances of each line; values are net present in the plan’s view`,
    notes: outlook === null ? [NONE] : [],
    columns: figureColumns(plan.terms.currency),
    rows: outlook?.lines ?? [],
    none: outlook === null ? 'None drawn.' : 'No line is planned.',
    frozenColumns: 1,
  });
}

/** What was drawn, each input with its source. */
export function drawnSheet(book: Book, plan: Plan): void {
  const { outlook } = plan;
  oneTableSheet<OutlookInput>(book, {
    name: SHEET.drawn,
    isAsRun: true,
    about: `${plan.name}: the inputs that were drawn and where their ranges come from`,
    columns: inputColumns,
    rows: outlook?.inputs ?? [],
    none: 'None drawn.',
  });
}
