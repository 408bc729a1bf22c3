import ExcelJS from 'exceljs';
import type { FilmCut, Plan, RedoWork, SettledWork } from '#planning';
import { workbookBytes } from '#workbook';
import { plannedWith } from './planned.js';
import { disagreements, engineOf, formulasOf, valueAt } from './recalculation.js';

const reopened = async (plan: Plan): Promise<ExcelJS.Workbook> => {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load((await workbookBytes(plan)).buffer as ArrayBuffer);
  return book;
};
const texts = (book: ExcelJS.Workbook, sheet: string): string[] => {
  const found: string[] = [];
  book.getWorksheet(sheet)!.eachRow((row) => row.eachCell((cell) => typeof cell.value === 'string' && found.push(cell.value)));
  return found;
};
/** Value of a check on the cover, by its label. */
const check = (book: ExcelJS.Workbook, label: string): number => {
  const sheet = book.getWorksheet('Summary')!;
  const row = sheet.getColumn(1).values.findIndex((v) => v === label);
  return Number(sheet.getCell(row, 2).result);
};

/** Two panes of the first cut are done again: one roll of 50.00 for them, kept with 8 % tax. */
function again(plan: Plan): Plan {
  const [first] = plan.cuts;
  const pieces = first!.pieces.slice(0, 2);
  const roll = { roll: 'X-48', width: '48', width_mm: 1219.2, length_mm: 3_048, count: 1, price_cents: 5_000, cost_cents: 5_000 };
  const cut: FilmCut = { ...first!, phase: `${first!.phase} redo`, pieces, bought: [roll], cost_cents: 5_000, unplaced: [], leftover: [], fromStock: [] };
  const work = { phase: first!.phase, panes: pieces.map((p) => ({ pane: p.piece })) } as unknown as RedoWork;
  const settled = { parent: 'P0', asOf: '2026-06-01', done: [], redo: [], redoWork: [work], redoMoney: [{ phase: first!.phase, film_cents: 5_400, work_cents: 3_000, minutes: 60 }], redoCuts: [cut], noAccess: [], spent: [], rollsLeft: [], time: { factor: 1, recorded: 0, visits: 0 } } as unknown as SettledWork;
  return { ...plan, settled };
}

describe('film for panes to be done again', () => {
  let plan: Plan;
  beforeAll(async () => {
    plan = await plannedWith((p) => ({ ...p, settings: { ...p.settings, materialTaxShare: 0.08 } }));
  }, 90_000);

  it('stands on the sheets of film and cuts, marked, and ties out on the cover', async () => {
    const book = await reopened(again(plan));
    const mark = `${plan.cuts[0]!.phase} redo: to be done again`;
    expect(texts(book, 'Film to buy')).toEqual(expect.arrayContaining([mark, 'X-48']));
    expect(texts(book, 'Cut list').filter((t) => t === mark)).toHaveLength(2);
    expect(check(book, 'Panes: plan less cut list')).toBe(0);
    expect(check(book, 'Film: phases less rolls to buy')).toBe(0); // the lines' film is not touched
    expect(check(book, 'Film to be done again: kept less rolls')).toBe(0);
    const engine = engineOf(book);
    expect(disagreements(formulasOf(book), (f) => valueAt(engine, f.sheet, f.address))).toEqual([]);
  });

  it('is missed on the cover where its money or a piece is not there', async () => {
    const good = again(plan);
    const settled = good.settled!;
    const less = await reopened({ ...good, settled: { ...settled, redoMoney: [{ phase: plan.cuts[0]!.phase, film_cents: 5_000, work_cents: 0, minutes: 0 }] } });
    expect(check(less, 'Film to be done again: kept less rolls')).toBe(-4);
    const lost = await reopened({ ...good, settled: { ...settled, redoCuts: settled.redoCuts.map((c) => ({ ...c, pieces: c.pieces.slice(1) })) } });
    expect(check(lost, 'Panes: plan less cut list')).toBe(1);
  });

  it('is not spoken of where no work was recorded', async () => {
    const book = await reopened(plan);
    expect(texts(book, 'Film to buy').some((t) => t.startsWith('To be done again'))).toBe(false);
    expect(texts(book, 'Summary')).not.toContain('Film to be done again: kept less rolls');
  });
});
