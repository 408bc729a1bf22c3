import ExcelJS from 'exceljs';
import type { Plan } from '#planning';
import { rolloutWorkbook, workbookBytes } from '#workbook';
import { plannedWith } from './planned.js';
import { disagreements, engineOf, formulasOf, valueAt } from './recalculation.js';
import { zipEntry } from './zip-entry.js';

const reopened = async (plan: Plan): Promise<ExcelJS.Workbook> => {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load((await workbookBytes(plan)).buffer as ArrayBuffer);
  return book;
};

const numberAt = (book: ExcelJS.Workbook, sheet: string, address: string): number => Number(book.getWorksheet(sheet)?.getCell(address).result ?? book.getWorksheet(sheet)?.getCell(address).value);

describe('the rollout workbook', () => {
  let plan: Plan;
  let book: ExcelJS.Workbook;
  beforeAll(async () => {
    plan = await plannedWith((p) => ({ ...p, settings: { ...p.settings, realEscalation: 0.012, labourTaxShare: 0.02 } }));
    plan = { ...plan, name: '=1+1', findings: [...plan.findings, { severity: 'note', subject: '@SUM(A1:A9)', text: '-2+3', whatToDo: '+cmd' }] };
    book = await reopened(plan);
  }, 90_000);

  it('stores with every formula the result another engine computes', () => {
    const engine = engineOf(book);
    const formulas = formulasOf(book);
    expect(plan.lines.length).toBeGreaterThan(0);
    expect(formulas.length).toBeGreaterThan(100);
    expect(disagreements(formulas, (f) => valueAt(engine, f.sheet, f.address))).toEqual([]);
  });

  it('gives the plan’s own value, spending and payback by formula, and checks of zero', () => {
    const engine = engineOf(book);
    const name = (of: string): number => Number(engine.calculateFormula(`=${of}`, 0));
    const spent_cents = plan.phases.reduce((sum, p) => sum + p.spending.total_cents, 0);
    expect(name('plan_spending')).toBeCloseTo(spent_cents / 100, 6);
    const years = Math.max(...plan.payback.lines.map((l) => l.phaseYear + l.yearly_cents.length)) + 1;
    const rounding = (plan.lines.length + plan.phases.length + 3 * years) / 100;
    expect(Math.abs(name('npv_whole') - plan.payback.npv_cents / 100)).toBeLessThan(rounding);
    expect(Math.abs(name('npv_owner') - plan.payback.npvOwner_cents / 100)).toBeLessThan(rounding);
    expect(name('plan_simple_payback')).toBeCloseTo(plan.payback.simplePayback_yr ?? NaN, 3);
    const summary = book.getWorksheet('Summary')!;
    const row = summary.getColumn(1).values.findIndex((v) => v === 'All checks together');
    expect(numberAt(book, 'Summary', `B${String(row)}`)).toBe(0);
  });

  it('doubles the saving and leaves the spending when electricity costs twice as much', () => {
    const engine = engineOf(book);
    const name = (of: string): number => Number(engine.calculateFormula(`=${of}`, 0));
    const [value, spent, first] = [name('npv_whole'), name('plan_spending'), name('first_year_saving')];
    const input = book.definedNames.getRanges('electricity_price_factor').ranges[0]!.split('!')[1]!.replaceAll('$', '');
    engine.setCellContents(engine.simpleCellAddressFromString(input, engine.getSheetId('Payback')!)!, 2);
    expect(name('plan_spending')).toBe(spent);
    expect(name('first_year_saving')).toBeCloseTo(2 * first, 1);
    expect(name('npv_whole')).toBeGreaterThan(value);
  });

  it('keeps text as text whatever it starts with, and negative numbers as numbers', () => {
    expect(book.getWorksheet('Summary')!.getCell('A1').value).toBe('=1+1');
    expect(book.getWorksheet('Summary')!.getCell('A1').formula).toBeUndefined();
    const texts: unknown[] = [];
    book.getWorksheet('Findings')!.eachRow((row) => row.eachCell((cell) => texts.push(cell.value)));
    for (const text of ['@SUM(A1:A9)', '-2+3', '+cmd']) expect(texts).toContain(text);
    const spending: number[] = [];
    book.getWorksheet('Payback')!.eachRow((row) => {
      if (row.getCell(1).value === 'Spending (money out is below zero)') spending.push(Number(row.getCell(3).result));
    });
    expect(spending).toHaveLength(1);
    expect(spending[0]).toBeLessThan(0);
  });

  it('has no hidden sheet, joined cells, volatile function or link, and prints in letters of 7 pt or more with its head, pages side by side with their first columns', () => {
    for (const sheet of book.worksheets) {
      expect(sheet.state).toBe('visible');
      expect(sheet.hasMerges).toBe(false);
      expect(sheet.pageSetup).toMatchObject({ fitToPage: true });
      const { fitToWidth, paperSize, orientation, printTitlesColumn } = sheet.pageSetup;
      const [, last] = /:\$?([A-Z]+)/.exec(sheet.pageSetup.printArea!)!;
      let width = 0;
      for (let c = 1; c <= sheet.getColumn(last!).number; c++) width += sheet.getColumn(c).width ?? 9;
      // Figures of Arial 10 are 0.556 of 10 pt wide; margins of half an inch.
      const room_pt = (Number(paperSize) === 5 ? 14 : orientation === 'portrait' ? 8.5 : 11) * 72 - 72;
      expect({ sheet: sheet.name, fits: (0.7 * 5.56 * width) / (fitToWidth ?? 1) <= room_pt + 1 }).toEqual({ sheet: sheet.name, fits: true });
      if ((fitToWidth ?? 1) > 1) expect(printTitlesColumn).toMatch(/^A:[A-Z]$/);
      expect(['portrait', 'landscape']).toContain(sheet.pageSetup.orientation);
      expect(sheet.pageSetup.printArea).toMatch(/^\$?A\$?1:/);
      expect(sheet.pageSetup.printTitlesRow).toMatch(/^\$?\d+:\$?\d+$/);
      expect(sheet.headerFooter.oddFooter).toContain('Page &P of &N');
      expect(sheet.views[0]).toMatchObject({ state: 'frozen' });
    }
    for (const { formula } of formulasOf(book)) {
      expect(formula).not.toMatch(/\b(NOW|TODAY|RAND|RANDBETWEEN|OFFSET|INDIRECT|CELL|INFO|XLOOKUP|LET|FILTER)\s*\(|\[/);
    }
  });

  it('shows the cut size of each pane on a work order, in inches', () => {
    const texts = new Set<unknown>();
    book.getWorksheet('Work orders')!.eachRow((row) => row.eachCell((cell) => texts.add(cell.value)));
    for (const pane of plan.workOrders.flatMap((o) => o.panes)) {
      expect(texts).toContain(pane.pane);
      expect(texts).toContain(pane.cut);
    }
  });

  it('makes a book of an empty plan too, with results that another engine computes', async () => {
    const empty = await plannedWith((p) => ({ ...p, phases: p.phases.map((phase) => ({ ...phase, cap_cents: 0 })) }));
    expect(empty.lines).toHaveLength(0);
    const other = await reopened(empty);
    const engine = engineOf(other);
    expect(disagreements(formulasOf(other), (f) => valueAt(engine, f.sheet, f.address))).toEqual([]);
  }, 90_000);

  it('lists every sheet on the cover, each behind a link that stays in the book', () => {
    const links: string[] = [];
    book.getWorksheet('Summary')!.eachRow((row) => row.eachCell((cell) => cell.formula?.startsWith('HYPERLINK(') === true && links.push(cell.formula)));
    expect(links).toEqual(book.worksheets.filter((s) => s.name !== 'Summary').map((s) => `HYPERLINK("#'${s.name}'!A1","${s.name}")`));
  });

  it('shows pictures with words for those who cannot see them, and nothing of a macro or another file', async () => {
    const bytes = await workbookBytes(plan);
    const drawing = zipEntry(bytes, 'xl/drawings/drawing1.xml');
    const said = [...drawing.matchAll(/<xdr:cNvPr id="\d+" descr="([^"]+)"/g)].map((m) => m[1]!);
    expect(said.length).toBeGreaterThanOrEqual(2);
    expect(said.every((words) => words.includes('sheet'))).toBe(true);
    expect(said).toHaveLength(drawing.split('<xdr:cNvPr').length - 1);
    const types = zipEntry(bytes, '[Content_Types].xml');
    expect(types).not.toMatch(/vbaProject|externalLink/i);
  });

  it('leaves the plan as it was given', () => {
    const before = JSON.stringify(plan);
    rolloutWorkbook(plan);
    expect(JSON.stringify(plan)).toBe(before);
  });
});
