import type ExcelJS from 'exceljs';
import type { Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { type Change, changes, moneyCells, RICH } from './changed-inputs.js';
import { plannedWith } from './planned.js';
import { disagreements, engineOf, valueAt } from './recalculation.js';

const LABELS = ['tariff rate', 'step limit', 'demand price', 'discount rate', 'owner’s share', 'film price', 'price of a film’s rolls', 'labour rate', 'taking film off at its end'];

describe('a changed input of the workbook', () => {
  let plan: Plan;
  let book: ExcelJS.Workbook;
  let all: Change[];
  beforeAll(async () => {
    plan = await plannedWith((p) => ({ ...p, tariffs: [RICH], settings: { ...p.settings, realEscalation: 0.01, labourTaxShare: 0.02, endRemoval_cents_m2: 1_200 } }));
    book = rolloutWorkbook(plan);
    all = changes(plan, book);
  }, 180_000);

  it('of nothing changes nothing: the book and another engine agree to begin with', () => {
    expect(plan.lines.length).toBeGreaterThan(1);
    const engine = engineOf(book);
    const cells = moneyCells(plan);
    expect(cells.length).toBeGreaterThan(500);
    expect(disagreements(cells, (f) => valueAt(engine, f.sheet, f.address))).toEqual([]);
  }, 60_000);

  it('of the price of taking film off moves the net present value as the planning’s own review does', () => {
    const change = all.find((c) => c.label === 'taking film off at its end')!;
    const [edit] = change.edits;
    const engine = engineOf(book);
    const npv = (): number => Number(engine.getNamedExpressionValue('npv_whole'));
    const cents = (plan.payback.lines.length + plan.phases.length + 3 * 30) / 100;
    expect(Math.abs(npv() - plan.payback.npv_cents / 100)).toBeLessThan(cents);
    engine.setCellContents(engine.simpleCellAddressFromString(edit!.address, engine.getSheetId(edit!.sheet)!)!, edit!.value);
    expect(plan.payback.npv_cents - change.plan.payback.npv_cents).toBeGreaterThan(100 * cents * 2);
    expect(Math.abs(npv() - change.plan.payback.npv_cents / 100)).toBeLessThan(cents);
  }, 60_000);

  it.each(LABELS)('%s: every money cell follows as the program works it out, and the checks stay zero', (label) => {
    const change = all.find((c) => c.label === label)!;
    expect(change.edits.length).toBeGreaterThan(0);
    const engine = engineOf(book);
    const value = (sheet: string, address: string): unknown => valueAt(engine, sheet, address);
    for (const edit of change.edits) {
      expect(value(edit.sheet, edit.address)).not.toBe(edit.value);
      engine.setCellContents(engine.simpleCellAddressFromString(edit.address, engine.getSheetId(edit.sheet)!)!, edit.value);
    }
    expect(disagreements(moneyCells(change.plan), (f) => value(f.sheet, f.address))).toEqual([]);
    const summary = book.getWorksheet('Summary')!;
    const row = summary.getColumn(1).values.findIndex((v) => v === 'All checks together');
    expect(value('Summary', `B${String(row)}`)).toBe(0);
  }, 60_000);
});
