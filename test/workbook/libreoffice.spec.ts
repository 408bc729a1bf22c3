import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ExcelJS from 'exceljs';
import type { Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { plannedWith } from './planned.js';
import { disagreements, formulasOf, type StoredFormula } from './recalculation.js';

const found = spawnSync('soffice', ['--version'], { timeout: 60_000 }).status === 0;

/** Computes every formula when it opens a file; without this the office keeps the stored results and nothing would be checked. */
const ALWAYS_RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item></oor:items>`;

async function recalculated(book: ExcelJS.Workbook, folder: string): Promise<ExcelJS.Workbook> {
  const profile = join(folder, 'profile');
  mkdirSync(join(profile, 'user'), { recursive: true });
  writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), ALWAYS_RECALCULATE);
  await book.xlsx.writeFile(join(folder, 'rollout.xlsx'));
  execFileSync('soffice', [`-env:UserInstallation=${pathToFileURL(profile).href}`, '--headless', '--convert-to', 'xlsx', '--outdir', join(folder, 'out'), join(folder, 'rollout.xlsx')], { stdio: 'ignore', timeout: 150_000 });
  const read = new ExcelJS.Workbook();
  await read.xlsx.readFile(join(folder, 'out', 'rollout.xlsx'));
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
    plan = await plannedWith((p) => ({ ...p, settings: { ...p.settings, realEscalation: 0.012 } }));
  }, 90_000);
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('has the results that LibreOffice computes anew, and would show a wrong one', async () => {
    if (!found) {
      console.warn('SKIPPED: soffice is not on this machine, so LibreOffice did not recalculate the workbook');
      return;
    }
    const book = rolloutWorkbook(plan);
    // One result is falsified: if the office kept stored results, it would come back and the check would be worthless.
    const spoilt = book.getWorksheet('Payback')!;
    const [at] = formulasOf(book).filter((f) => f.sheet === 'Payback' && typeof f.stored === 'number' && f.stored > 1);
    const formulas = formulasOf(book);
    spoilt.getCell(at!.address).value = { formula: at!.formula, result: -77 };
    const office = await recalculated(book, folder);
    expect(computedIn(office)(at!)).not.toBe(-77);
    expect(disagreements(formulas, computedIn(office))).toEqual([]);
  }, 180_000);
});
