import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import type { Plan } from '#planning';
import { rolloutWorkbook, streamRolloutWorkbook } from '#workbook';
import { plannedWith } from './planned.js';
import { formulasOf } from './recalculation.js';

const shownIn = (cell: ExcelJS.Cell): unknown => (cell.formula ? { formula: cell.formula, result: cell.result ?? 0 } : cell.value);

describe('a streamed workbook', () => {
  let folder: string;
  let plan: Plan;
  let streamed: ExcelJS.Workbook;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'rollout-stream-'));
    plan = await plannedWith((p) => p);
    await streamRolloutWorkbook(plan, join(folder, 'rollout.xlsx'));
    streamed = new ExcelJS.Workbook();
    await streamed.xlsx.readFile(join(folder, 'rollout.xlsx'));
  }, 120_000);
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('has the sheets of the book in memory, in the same order, with the same content in every cell but the pictures', () => {
    const inMemory = rolloutWorkbook(plan);
    expect(streamed.worksheets.map((s) => s.name)).toEqual(inMemory.worksheets.map((s) => s.name));
    for (const sheet of inMemory.worksheets) {
      if (sheet.name === 'Pictures') continue;
      const other = streamed.getWorksheet(sheet.name)!;
      sheet.eachRow((row) => {
        row.eachCell((cell) => {
          const at = `${sheet.name}!${cell.address}`;
          expect({ at, shown: shownIn(other.getCell(cell.address)) }).toEqual({ at, shown: shownIn(cell) });
        });
      });
    }
    expect(formulasOf(streamed).length).toBe(formulasOf(inMemory).length);
  });

  it('keeps names, locks, frozen heads, print set-up and limits of inputs', () => {
    const inMemory = rolloutWorkbook(plan);
    const names = (book: ExcelJS.Workbook): string[] => book.definedNames.model.map((n) => n.name).filter((n) => !n.startsWith('_')).sort();
    expect(names(streamed)).toEqual(names(inMemory));
    for (const sheet of inMemory.worksheets) {
      const other = streamed.getWorksheet(sheet.name)!;
      expect((other as unknown as { readonly sheetProtection: unknown }).sheetProtection).toMatchObject({ sheet: true });
      expect(other.views[0]).toMatchObject({ state: 'frozen', ySplit: (sheet.views[0] as ExcelJS.WorksheetViewFrozen).ySplit ?? 0 });
      expect(other.pageSetup.orientation).toBe(sheet.pageSetup.orientation);
      expect(other.pageSetup.printTitlesRow).toBe(sheet.pageSetup.printTitlesRow);
      expect(other.getColumn(1).width ?? 9).toBeCloseTo(sheet.getColumn(1).width ?? 9, 6);
    }
    const payback = streamed.getWorksheet('Payback')!;
    const discount = streamed.definedNames.getRanges('discount_rate').ranges[0]!.split('!')[1]!.replaceAll('$', '');
    expect(payback.getCell(discount).dataValidation).toMatchObject({ type: 'decimal', showErrorMessage: true });
    expect(payback.getCell(discount).protection).toMatchObject({ locked: false });
  });
});
