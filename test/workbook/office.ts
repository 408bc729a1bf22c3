import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ExcelJS from 'exceljs';
import type { StoredFormula } from './recalculation.js';

/** Whether LibreOffice is on this machine. */
export const hasOffice = spawnSync('soffice', ['--version'], { timeout: 60_000 }).status === 0;

/** Computes every formula when it opens a file; without this the office keeps the stored results and nothing would be checked. */
const ALWAYS_RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item></oor:items>`;

/** Opens the books in the office, which computes every formula anew, and reads them back; one start for all. */
export async function recalculated(books: ReadonlyMap<string, ExcelJS.Workbook>, folder: string): Promise<Map<string, ExcelJS.Workbook>> {
  const profile = join(folder, 'profile');
  mkdirSync(join(profile, 'user'), { recursive: true });
  writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), ALWAYS_RECALCULATE);
  const files = [...books.keys()].map((name) => join(folder, `${name}.xlsx`));
  for (const [name, book] of books) await book.xlsx.writeFile(join(folder, `${name}.xlsx`));
  execFileSync('soffice', [`-env:UserInstallation=${pathToFileURL(profile).href}`, '--headless', '--convert-to', 'xlsx', '--outdir', join(folder, 'out'), ...files], { stdio: 'ignore', timeout: 600_000 });
  const read = new Map<string, ExcelJS.Workbook>();
  for (const name of books.keys()) {
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(join(folder, 'out', `${name}.xlsx`));
    read.set(name, book);
  }
  return read;
}

/** What a book read back from the office shows for a formula. */
export const computedIn =
  (book: ExcelJS.Workbook) =>
  (f: StoredFormula): unknown => {
    const cell = book.getWorksheet(f.sheet)?.getCell(f.address);
    return cell?.formula ? (cell.result ?? 0) : cell?.value;
  };
