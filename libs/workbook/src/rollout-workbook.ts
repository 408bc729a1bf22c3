import { checkedPlan, type Plan } from '#planning';
import ExcelJS from 'exceljs';
import { paybackSheets } from './payback/payback-sheet.js';
import { SHEET } from './sheet-names.js';
import { assumptionsSheet } from './sheets/assumptions.js';
import { calibrationSheet } from './sheets/calibration.js';
import { capCurveSheet } from './sheets/cap-curve.js';
import { cutListSheet } from './sheets/cut-list.js';
import { energySheet } from './sheets/energy.js';
import { filmSheet } from './sheets/film-to-buy.js';
import { findingsSheet } from './sheets/findings.js';
import { ledgerSheet } from './sheets/ledger.js';
import { metersSheet } from './sheets/meters.js';
import { planSheet } from './sheets/plan-lines.js';
import { rankedDwellingsSheet, rankedFacadesSheet } from './sheets/ranked.js';
import { reserveSheet } from './sheets/reserve.js';
import { summarySheet } from './sheets/summary.js';
import { verificationSheet } from './sheets/verification.js';
import { waitingSheet } from './sheets/waiting.js';
import { workOrdersSheet } from './sheets/work-orders.js';

/** The plan as a workbook of text, numbers and live formulas with their results. The same plan gives the same book. */
export function rolloutWorkbook(kept: Plan): ExcelJS.Workbook {
  const plan = checkedPlan(kept); // a proof that does not hold any more is an error finding
  const book = new ExcelJS.Workbook();
  const made = new Date(`${plan.madeOn.slice(0, 10)}T00:00:00Z`);
  book.created = made;
  book.modified = made;
  book.creator = 'film-rollout';
  book.lastModifiedBy = 'film-rollout';
  book.title = plan.name;
  for (const name of Object.values(SHEET)) book.addWorksheet(name);
  rankedDwellingsSheet(book, plan);
  rankedFacadesSheet(book, plan);
  const planPlace = planSheet(book, plan);
  waitingSheet(book, plan);
  reserveSheet(book, plan);
  capCurveSheet(book, plan);
  const workOrders = workOrdersSheet(book, plan);
  const cutList = cutListSheet(book, plan);
  const film = filmSheet(book, plan);
  const payback = paybackSheets(book, plan);
  metersSheet(book, plan);
  calibrationSheet(book, plan);
  verificationSheet(book, plan);
  ledgerSheet(book, plan);
  energySheet(book, plan);
  assumptionsSheet(book, plan);
  findingsSheet(book, plan);
  summarySheet(book, plan, { plan: planPlace, workOrders, cutList, film, payback });
  return book;
}

export async function writeRolloutWorkbook(plan: Plan, path: string): Promise<void> {
  await rolloutWorkbook(plan).xlsx.writeFile(path);
}

export async function workbookBytes(plan: Plan): Promise<Uint8Array> {
  return new Uint8Array(await rolloutWorkbook(plan).xlsx.writeBuffer());
}
