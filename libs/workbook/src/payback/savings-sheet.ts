import type { Plan } from '#planning';
import type { Book } from '../book.js';
import { address, brokenLines, type CellContent, fixed, live, quoted, section, titleLines } from '../cells.js';
import { lineOf, printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import { type Column, setWidths, writeTable } from '../table.js';
import type { SpanSavings } from '../tariffs/spans-sheet.js';
import { type LineMoney, type MoneyModel, toCent } from './money-model.js';
import type { OwnerPart } from './payers-sheet.js';

export const SAVINGS_COLUMN = { building: 2, phase: 3, workYear: 4, firstYear: 5 } as const;

/** Rows of the two blocks: all payers, and the owner's part. */
export interface SavingsPlace {
  readonly whole: { readonly first: number; readonly last: number };
  readonly owner: { readonly first: number; readonly last: number };
  /** Film that comes off and the year of the study it does, as ranges; and by line its area and what taking it off costs, worth today. */
  readonly atEnd: { readonly area: string; readonly end: string; readonly areaCell: (index: number) => string; readonly offCell: (index: number) => string };
}

/** The sheets the yearly savings follow from. */
export interface SavingsSources {
  readonly spans: SpanSavings;
  readonly ownerPart: OwnerPart;
}

const columns = (plan: Plan, model: MoneyModel, value: (l: LineMoney, year: number, index: number) => CellContent): readonly Column<LineMoney>[] => [
  { head: 'Dwelling', unit: '', width: 13, value: (l) => l.line.dwelling },
  { head: 'Building', unit: '', width: 11, value: (l) => l.line.building },
  { head: 'Phase', unit: '', width: 18, value: (l) => l.line.phase },
  { head: 'Work in year', unit: 'of the study', width: 9, format: FORMAT.year, value: (l) => l.workYear },
  ...model.years.map((year): Column<LineMoney> => ({ head: String(year), unit: plan.terms.currency, width: 10, format: FORMAT.money, value: (l, index) => value(l, year, index) })),
];

/** What taking the film of a line off costs, worth at the study start, at the inputs of the run. */
export const offToday = (line: LineMoney, { inputs }: MoneyModel): number => toCent((line.filmAtEnd_m2 * inputs.endRemoval) / (1 + inputs.discount) ** line.endYear);

/** What comes off at the end of the film's life; it stands behind the last year. */
function endColumns(plan: Plan, model: MoneyModel, at: number): readonly Column<LineMoney>[] {
  return [
    { head: 'Film at its end, run', unit: 'm²', width: 8, format: FORMAT.two, value: (l) => l.filmAtEnd_m2 },
    { head: 'Ends in year', unit: 'of the study', width: 8, format: FORMAT.year, value: (l) => l.endYear },
    { head: 'Taking it off, today', unit: plan.terms.currency, width: 9, format: FORMAT.money, value: (l, _, row) => live(`ROUND(${address(at, row)}*end_removal_price/(1+discount_rate)^${address(at + 1, row)},2)`, offToday(l, model)) },
  ];
}

/** Yearly savings of each line: the saving of the span that holds in the year, and the owner's part of it. */
export function savingsSheet(book: Book, of: { readonly plan: Plan; readonly model: MoneyModel; readonly sources: SavingsSources }): SavingsPlace {
  const { plan, model, sources } = of;
  const endsAt = SAVINGS_COLUMN.firstYear + model.years.length;
  const whole = [...columns(plan, model, (l, year) => {
    const span = l.line.inForce[year - l.workYear - 1] ?? null;
    const at = span === null ? undefined : sources.spans.get(l.line.dwelling)?.[span];
    return at === undefined ? 0 : live(at.cell, l.whole[year] ?? 0);
  }), ...endColumns(plan, model, endsAt)];
  const set = { name: SHEET.savings, width: whole.reduce((sum, c) => sum + c.width, 0), repeats: whole.slice(0, 4).reduce((sum, c) => sum + c.width, 0), hasManyRows: true };
  const about = [`${plan.name}: bill as found less bill with the film, less added heating, by year of the study, prices of ${plan.terms.studyStart}, before ageing of the film and price rise`, `Each year takes the saving of the span that holds then from ${SHEET.spans}; which span holds is part of the run. Year 0 is the study start; flows fall at the ends of the years. Film at its end is what is then still on its glass; taking it off is paid in that year.`].flatMap((text) => brokenLines(text, lineOf({ ...set, frozen: { rows: 0, columns: 4 } })));
  const headRow = 3 + about.length;
  const sheet = book.open({ ...set, frozen: { rows: headRow + 1, columns: 4 } });
  setWidths(sheet, whole);
  titleLines(sheet, SHEET.savings, about);
  const next = headRow - 1;
  section(sheet, next, 'All payers');
  const top = writeTable(sheet, next + 1, { columns: whole, rows: model.lines });
  const owner = columns(plan, model, (l, year, index) => {
    if ((l.whole[year] ?? 0) === 0) return 0;
    const { cell } = sources.ownerPart(l.line.payer, year - l.workYear);
    return live(`${address(SAVINGS_COLUMN.firstYear + year, top.firstRow + index)}*${cell}`, l.owner[year] ?? 0);
  });
  section(sheet, top.nextRow, `Owner: the part that stays with the owner by ${SHEET.payers}`);
  const low = writeTable(sheet, top.nextRow + 1, { columns: owner, rows: model.lines });
  printed(sheet, { columns: whole.length, rows: Math.max(low.lastRow, low.firstRow), headRows: { first: top.headRow, last: top.headRow + 1 } });
  const range = (place: { readonly firstRow: number; readonly lastRow: number }) => ({ first: place.firstRow, last: Math.max(place.firstRow, place.lastRow) });
  const [from, to] = [range(top).first, range(top).last];
  const run = (column: number): string => `${quoted(SHEET.savings)}!${fixed(column, from)}:${fixed(column, to)}`;
  const cell = (column: number) => (index: number): string => `${quoted(SHEET.savings)}!${address(column, from + index)}`;
  return { whole: range(top), owner: range(low), atEnd: { area: run(endsAt), end: run(endsAt + 1), areaCell: cell(endsAt), offCell: cell(endsAt + 2) } };
}
