import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ExcelJS from 'exceljs';
import type { Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { changes, moneyCells, RICH } from './changed-inputs.js';
import { plannedWith } from './planned.js';
import { disagreements, formulasOf, type StoredFormula } from './recalculation.js';

const found = spawnSync('soffice', ['--version'], { timeout: 60_000 }).status === 0;

/** Computes every formula when it opens a file; without this the office keeps the stored results and nothing would be checked. */
const ALWAYS_RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item></oor:items>`;

/** Opens the books in the office, which computes every formula anew, and reads them back; one start for all. */
async function recalculated(books: ReadonlyMap<string, ExcelJS.Workbook>, folder: string): Promise<Map<string, ExcelJS.Workbook>> {
  const profile = join(folder, 'profile');
  mkdirSync(join(profile, 'user'), { recursive: true });
  writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), ALWAYS_RECALCULATE);
  const files = [...books.keys()].map((name) => join(folder, `${name}.xlsx`));
  for (const [name, book] of books) await book.xlsx.writeFile(join(folder, `${name}.xlsx`));
  execFileSync('soffice', [`-env:UserInstallation=${pathToFileURL(profile).href}`, '--headless', '--convert-to', 'xlsx', '--outdir', join(folder, 'out'), ...files], { stdio: 'ignore', timeout: 280_000 });
  const read = new Map<string, ExcelJS.Workbook>();
  for (const name of books.keys()) {
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(join(folder, 'out', `${name}.xlsx`));
    read.set(name, book);
  }
  return read;
}

const computedIn =
  (book: ExcelJS.Workbook) =>
  (f: StoredFormula): unknown => {
    const cell = book.getWorksheet(f.sheet)?.getCell(f.address);
    return cell?.formula ? (cell.result ?? 0) : cell?.value;
  };

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
    if (!found) {
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
  }, 400_000);
});
