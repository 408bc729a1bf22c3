import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type ExcelJS from 'exceljs';
import type { Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { changes, moneyCells, RICH } from './changed-inputs.js';
import { computedIn, hasOffice, recalculated } from './office.js';
import { plannedWith } from './planned.js';
import { disagreements, formulasOf } from './recalculation.js';

describe('the rollout workbook in a spreadsheet program', () => {
  let plan: Plan;
  let folder: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'rollout-office-'));
    plan = await plannedWith((p) => ({ ...p, tariffs: [RICH], settings: { ...p.settings, realEscalation: 0.012, labourTaxShare: 0.02 } }));
  }, 180_000);
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('has the results that LibreOffice computes anew, would show a wrong one, and follows changed inputs as the program does', async () => {
    if (!hasOffice) {
      console.warn('SKIPPED: soffice is not on this machine, so LibreOffice did not recalculate the workbook');
      return;
    }
    const made = rolloutWorkbook(plan);
    const formulas = formulasOf(made);
    const all = changes(plan, made);
    // One result is falsified: if the office kept stored results, it would come back and the check would be worthless.
    const [spoilt] = formulas.filter((f) => f.sheet === 'Payback' && typeof f.stored === 'number' && f.stored > 1);
    made.getWorksheet('Payback')!.getCell(spoilt!.address).value = { formula: spoilt!.formula, result: -77 };
    const edited = all.map((change, i): [string, ExcelJS.Workbook] => {
      const book = rolloutWorkbook(plan);
      for (const { sheet, address, value } of change.edits) book.getWorksheet(sheet)!.getCell(address).value = value;
      return [`change-${String(i)}`, book];
    });
    const office = await recalculated(new Map([['as-made', made], ...edited]), folder);
    expect(computedIn(office.get('as-made')!)(spoilt!)).not.toBe(-77);
    expect(disagreements(formulas, computedIn(office.get('as-made')!))).toEqual([]);
    const wrong = all.flatMap((change, i) => disagreements(moneyCells(change.plan), computedIn(office.get(`change-${String(i)}`)!)).map((d) => `${change.label}: ${d}`));
    expect(wrong).toEqual([]);
  }, 900_000);
});
