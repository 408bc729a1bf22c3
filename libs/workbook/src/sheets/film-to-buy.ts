import { inchesText, ticksOf_mm } from '#calc';
import type { FilmCut, Plan } from '#planning';
import type { Worksheet } from 'exceljs';
import type { Book } from '../book.js';
import { address, dollars, fixed, live, paragraph, quoted, section, titleRow } from '../cells.js';
import { type ChangedInputs, changedInputs } from '../changed-inputs.js';
import { printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import { type Column, setWidths, type TablePlace, writeTable } from '../table.js';
import { type BoughtRoll, boughtColumns } from './bought-rolls.js';
import { againColumns, againRows, keptColumns, markedCuts } from './film-again.js';

interface EndRow {
  readonly phase: string;
  readonly film: string;
  readonly roll: string;
  readonly width_mm: number;
  readonly length_mm: number;
}

const inches = (length_mm: number): string => inchesText(ticksOf_mm(length_mm));
const share = (part: number, whole: number): number => (whole > 0 ? part / whole : 0);

/** Column of the cost of the run in the first table, for the checks. */
export const FILM_AS_RUN_COLUMN = 10;
const WIDTH = 156;

const buyColumns = (money: string): readonly Column<BoughtRoll>[] => [
  ...boughtColumns(),
  { head: 'Price of a roll', unit: `${money}, input`, width: 13, format: FORMAT.money, value: (r) => dollars(r.price_cents), input: { low: 0, high: 1e7 } },
  { head: 'Cost', unit: money, width: 13, format: FORMAT.money, isSummed: true, value: (r, _, row) => live(`ROUND(${address(6, row)}*${address(7, row)},2)`, dollars(r.count * r.price_cents)) },
  { head: 'Price, as run', unit: money, width: 13, format: FORMAT.money, value: (r) => dollars(r.price_cents) },
  { head: 'Cost, as run', unit: money, width: 13, format: FORMAT.money, isSummed: true, value: (r) => dollars(r.count * r.price_cents) },
];

/** Where the rolls to buy stand, for the money that follows their prices. */
export interface FilmPlace {
  readonly table: TablePlace;
  readonly phases: string;
  readonly films: string;
  readonly cost: string;
  readonly costAsRun: string;
  readonly changed: ChangedInputs;
  /** Rolls for panes to be done again and what is kept of the caps for them; null where there are none. */
  readonly again: { readonly rolls: TablePlace; readonly kept: TablePlace } | null;
}

const COLUMN = { phase: 1, film: 2, price: 7, cost: 8, priceAsRun: 9, costAsRun: 10 } as const;

const useColumns = (): readonly Column<FilmCut>[] => [
  { head: 'Phase', unit: '', width: 18, value: (c) => c.phase },
  { head: 'Film', unit: '', width: 12, value: (c) => c.film },
  { head: 'Pieces', unit: '', width: 32, format: FORMAT.whole, isSummed: true, value: (c) => c.pieces.length },
  { head: 'Pieces', unit: 'm²', width: 12, format: FORMAT.two, isSummed: true, value: (c) => c.pieceArea_m2 },
  { head: 'Bought', unit: 'm²', width: 12, format: FORMAT.two, isSummed: true, value: (c) => c.boughtArea_m2 },
  { head: 'Least that could be bought', unit: 'm², bound', width: 12, format: FORMAT.two, isSummed: true, value: (c) => c.lowerBoundArea_m2 },
  { head: 'Beyond the pieces', unit: 'share of pieces', width: 13, format: FORMAT.percent, value: (c, _, row) => live(`IF(${address(4, row)}>0,${address(5, row)}/${address(4, row)}-1,0)`, c.pieceArea_m2 > 0 ? c.boughtArea_m2 / c.pieceArea_m2 - 1 : 0) },
  { head: 'Beyond the bound', unit: 'share of bound', width: 13, format: FORMAT.percent, value: (c, _, row) => live(`IF(${address(6, row)}>0,${address(5, row)}/${address(6, row)}-1,0)`, c.lowerBoundArea_m2 > 0 ? share(c.boughtArea_m2, c.lowerBoundArea_m2) - 1 : 0) },
];

const endColumns: readonly Column<EndRow>[] = [
  { head: 'Phase', unit: '', width: 18, value: (r) => r.phase },
  { head: 'Film', unit: '', width: 12, value: (r) => r.film },
  { head: 'Roll', unit: '', width: 32, value: (r) => r.roll },
  { head: 'Width', unit: 'in', width: 12, value: (r) => inches(r.width_mm) },
  { head: 'Length', unit: 'in', width: 12, value: (r) => inches(r.length_mm) },
];

/** Film for panes to be done again, in tables of its own: it is kept of the caps and is no part of the lines' spending. */
function writeAgain(sheet: Worksheet, at: number, plan: Plan): FilmPlace['again'] {
  const money = plan.settled?.redoMoney ?? [];
  if (money.length === 0 && markedCuts(plan).length === plan.cuts.length) return null;
  section(sheet, at, 'To be done again: rolls for panes of work before; those cut by an earlier revision stand here until the panes are done');
  const rolls = writeTable(sheet, at + 1, { columns: againColumns(plan.terms.currency), rows: againRows(plan), total: 'Total' });
  section(sheet, rolls.nextRow, 'To be done again: kept of the caps');
  return { rolls, kept: writeTable(sheet, rolls.nextRow + 1, { columns: keptColumns(plan, rolls), rows: money, total: 'Total' }) };
}

/** Whole rolls to buy by phase, film from stock, what is left over, and the waste beside the least possible. */
export function filmSheet(book: Book, plan: Plan): FilmPlace {
  const sheet = book.open({ name: SHEET.film, frozen: { rows: 2, columns: 0 }, width: WIDTH });
  const bought = plan.cuts.flatMap((c) => c.bought.map((b): BoughtRoll => ({ ...b, phase: c.phase, film: c.film })));
  const ends = (pick: 'fromStock' | 'leftover'): EndRow[] => markedCuts(plan).flatMap((c) => c[pick].map((r): EndRow => ({ ...r, phase: c.phase, film: c.film })));
  setWidths(sheet, buyColumns(plan.terms.currency));
  titleRow(sheet, SHEET.film, `${plan.name}: whole rolls by phase; film price before tax and freight. A boxed price may be changed: ${SHEET.payback} follows; what is bought stays as run.`);
  const buy = writeTable(sheet, 4, { columns: buyColumns(plan.terms.currency), rows: bought, total: 'Total' });
  let row = buy.nextRow;
  const none = (rows: readonly unknown[], text: string): void => {
    if (rows.length === 0) row = paragraph(sheet, row, { text, longest: 100 }) + 1;
  };
  none(bought, 'Nothing is bought.');
  const again = writeAgain(sheet, row, plan);
  row = again?.kept.nextRow ?? row;
  section(sheet, row, 'Use of the film');
  row = writeTable(sheet, row + 1, { columns: useColumns(), rows: markedCuts(plan), total: 'Total' }).nextRow;
  section(sheet, row, 'From stock');
  row = writeTable(sheet, row + 1, { columns: endColumns, rows: ends('fromStock') }).nextRow;
  none(ends('fromStock'), 'No film from stock.');
  section(sheet, row, 'Left over, stock for the next phase of the same owner');
  row = writeTable(sheet, row + 1, { columns: endColumns, rows: ends('leftover') }).nextRow;
  none(ends('leftover'), 'Nothing worth keeping.');
  printed(sheet, { columns: 10, rows: row, headRows: { first: 1, last: 2 } });
  const run = (column: number): string => `${quoted(SHEET.film)}!${fixed(column, buy.firstRow)}:${fixed(column, Math.max(buy.firstRow, buy.lastRow))}`;
  return { again, table: buy, phases: run(COLUMN.phase), films: run(COLUMN.film), cost: run(COLUMN.cost), costAsRun: run(COLUMN.costAsRun), changed: changedInputs(SHEET.film, buy, [[COLUMN.price, COLUMN.priceAsRun]]) };
}
