import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkedPlan, type Plan } from '#planning';
import type { Workbook } from 'exceljs';
import type { Book } from './book.js';
import { whileHeapStaysSmall } from './heap-growth.js';
import { MemoryBook } from './memory-book.js';
import { paybackSheets } from './payback/payback-sheet.js';
import { SHEET } from './sheet-names.js';
import { assumptionsSheet } from './sheets/assumptions.js';
import { calendarSheet } from './sheets/calendar.js';
import { calibrationSheet } from './sheets/calibration.js';
import { capCurveSheet } from './sheets/cap-curve.js';
import { cutListSheet } from './sheets/cut-list.js';
import { energySheet, glassSheet } from './sheets/energy.js';
import { filmSheet } from './sheets/film-to-buy.js';
import { findingsSheet } from './sheets/findings.js';
import { ledgerSheet } from './sheets/ledger.js';
import { metersSheet } from './sheets/meters.js';
import { picturesSheet } from './sheets/pictures.js';
import { planDetailsSheet, planSheet } from './sheets/plan-lines.js';
import { rankedDwellingsSheet, rankedFacadesSheet } from './sheets/ranked.js';
import { receiptsSheet } from './sheets/receipts.js';
import { reserveSheet } from './sheets/reserve.js';
import { summarySheet } from './sheets/summary.js';
import { chancesSheet, drawnSheet, uncertaintyFiguresSheet, uncertaintySheet } from './sheets/uncertainty.js';
import { verificationSheet } from './sheets/verification.js';
import { waitingSheet } from './sheets/waiting.js';
import { workOrdersSheet } from './sheets/work-orders.js';
import { StreamedBook } from './streamed-book.js';

/** Above this a book is streamed out, without pictures: a workbook in memory takes some tens of kilobytes a dwelling. */
export const MOST_DWELLINGS_IN_MEMORY = 2000;

/** All sheets of a plan, in the order they are written. */
function writeSheets(book: Book, plan: Plan): void {
  rankedDwellingsSheet(book, plan);
  rankedFacadesSheet(book, plan);
  const planPlace = planSheet(book, plan);
  planDetailsSheet(book, plan);
  reserveSheet(book, plan);
  waitingSheet(book, plan);
  capCurveSheet(book, plan);
  uncertaintySheet(book, plan);
  uncertaintyFiguresSheet(book, plan);
  chancesSheet(book, plan);
  drawnSheet(book, plan);
  picturesSheet(book, plan);
  const workOrders = workOrdersSheet(book, plan);
  const cutList = cutListSheet(book, plan);
  const film = filmSheet(book, plan);
  calendarSheet(book, plan);
  const payback = paybackSheets(book, plan, film);
  metersSheet(book, plan);
  ledgerSheet(book, plan);
  energySheet(book, plan);
  glassSheet(book, plan);
  calibrationSheet(book, plan);
  verificationSheet(book, plan);
  assumptionsSheet(book, plan);
  receiptsSheet(book, plan);
  findingsSheet(book, plan);
  summarySheet(book, plan, { plan: planPlace, workOrders, cutList, film, payback });
}

/** What a book says of itself; the same plan gives the same book. */
function described(plan: Plan): { readonly created: Date; readonly modified: Date; readonly creator: string; readonly lastModifiedBy: string; readonly title: string } {
  const made = new Date(`${plan.madeOn.slice(0, 10)}T00:00:00Z`);
  return { created: made, modified: made, creator: 'film-rollout', lastModifiedBy: 'film-rollout', title: plan.name };
}

/** The plan as a workbook of text, numbers and live formulas with their results. */
export function rolloutWorkbook(kept: Plan): Workbook {
  const plan = checkedPlan(kept); // a proof that does not hold any more is an error finding
  const book = new MemoryBook(Object.values(SHEET));
  Object.assign(book.workbook, described(plan));
  writeSheets(book, plan);
  return book.workbook;
}

/** The same sheets, written out row by row, without pictures. */
export async function streamRolloutWorkbook(kept: Plan, path: string): Promise<void> {
  const plan = checkedPlan(kept);
  await whileHeapStaysSmall(async () => {
    const book = new StreamedBook(path, { names: Object.values(SHEET), ...described(plan) });
    try {
      writeSheets(book, plan);
      await book.finish();
    } finally {
      book.leave();
    }
  });
}

export async function writeRolloutWorkbook(plan: Plan, path: string): Promise<void> {
  if (plan.dwellings.length > MOST_DWELLINGS_IN_MEMORY) await streamRolloutWorkbook(plan, path);
  else await rolloutWorkbook(plan).xlsx.writeFile(path);
}

/** The file as bytes, for those who send it on. */
export async function workbookBytes(plan: Plan): Promise<Uint8Array> {
  if (plan.dwellings.length <= MOST_DWELLINGS_IN_MEMORY) return new Uint8Array(await rolloutWorkbook(plan).xlsx.writeBuffer());
  const folder = mkdtempSync(join(tmpdir(), 'film-rollout-'));
  try {
    await streamRolloutWorkbook(plan, join(folder, 'rollout.xlsx'));
    return new Uint8Array(readFileSync(join(folder, 'rollout.xlsx')));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
