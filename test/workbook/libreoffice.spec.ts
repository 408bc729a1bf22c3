import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { allChanges, moneyCells, RICH } from './changed-inputs.js';
import { checkResults, firstPanes } from './checks.js';
import { oddlyNamed } from './odd-names.js';
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
    const change = allChanges(plan, made);
    // One result is falsified: if the office kept stored results, it would come back and the check would be worthless.
    const [spoilt] = formulas.filter((f) => f.sheet === 'Payback' && typeof f.stored === 'number' && f.stored > 1);
    made.getWorksheet('Payback')!.getCell(spoilt!.address).value = { formula: spoilt!.formula, result: -77 };
    const edited = rolloutWorkbook(plan);
    for (const { sheet, address, value } of change.edits) edited.getWorksheet(sheet)!.getCell(address).value = value;
    // IDs that are patterns to a spreadsheet, and a figure spoilt that a check has to see.
    const odd = rolloutWorkbook(oddlyNamed(plan));
    const oddFormulas = formulasOf(odd);
    odd.getWorksheet('Plan')!.getCell(firstPanes(odd)).value = 1000;
    const office = await recalculated(new Map([['as-made', made], ['changed', edited], ['odd', odd]]), folder);
    expect(computedIn(office.get('as-made')!)(spoilt!)).not.toBe(-77);
    expect(disagreements(formulas, computedIn(office.get('as-made')!))).toEqual([]);
    expect(disagreements(moneyCells(change.plan), computedIn(office.get('changed')!))).toEqual([]);
    const money = oddFormulas.filter((f) => !['Summary', 'Plan'].includes(f.sheet));
    expect(disagreements(money, computedIn(office.get('odd')!))).toEqual([]);
    const checks = checkResults(odd, computedIn(office.get('odd')!));
    expect([checks.get('Panes: phases less plan lines'), checks.get('Panes: plan less cut list')].every((c) => typeof c === 'number' && c !== 0)).toBe(true);
    expect(checks.get('Cash flow less time axis')).toBe(0);
  }, 900_000);
});
