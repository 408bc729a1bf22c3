import type { Plan, WorkOrder, WorkPane } from '#planning';
import type { Worksheet } from 'exceljs';
import type { Book } from '../book.js';
import { paragraph, put, titleRow } from '../cells.js';
import { printed } from '../print.js';
import { SHEET } from '../sheet-names.js';
import { bold, fitRow, FORMAT, sectioned } from '../style.js';
import { type Column, setWidths, writeTable } from '../table.js';

/** Where the panes of the work orders stand, for the checks of the first sheet. */
export interface WorkOrderPlace {
  readonly paneColumn: number;
  readonly firstRow: number;
  readonly lastRow: number;
}

const PANE_COUNT = 13;
/** Letters of running text across the page, on the careful side. */
const LONGEST = 190;
/** Place of the cut size, from 0. */
const CUT_SIZE = 6;
/** A sheet holds 1026 breaks of its own; from memory of the file format’s limits. */
const MOST_BREAKS = 1000;

const columns = (common: ReadonlySet<string>, phase: string): readonly Column<WorkPane>[] => [
  { head: 'Done', unit: '', width: 6, value: () => '☐' },
  { head: 'Pane', unit: '', width: 18, value: (p) => p.pane },
  { head: 'Room', unit: '', width: 11, value: (p) => p.room },
  { head: 'Side', unit: '', width: 9, value: (p) => p.side },
  { head: 'Sight size', unit: 'in, width × height', width: 17, value: (p) => p.sight },
  { head: 'Measured here', unit: 'in, write in', width: 14, value: () => null },
  { head: 'Cut size', unit: 'in, width × length', width: 23, value: (p) => p.cut },
  { head: 'Finished size', unit: 'in, width × length', width: 16, value: (p) => p.finished },
  { head: 'Roll', unit: '', width: 12, value: (p) => p.roll.replace(`${phase} `, '') },
  { head: 'Place on roll', unit: 'in', width: 15, value: (p) => p.rollPosition },
  { head: 'Reach', unit: '', width: 9, value: (p) => p.reach },
  { head: 'Consent and notes', unit: '', width: 22, value: (p) => [`${p.consent}; ${p.outcome.replaceAll('-', ' ')}`, ...p.notes.filter((n) => !common.has(n))].join('\n') },
  { head: 'Panes', unit: '', width: 6.5, format: FORMAT.whole, value: () => 1 },
];

const hours = (minutes: number): string => (minutes / 60).toFixed(1);

/** Notes that every pane of the order carries are said once above its panes. */
function commonNotes(order: WorkOrder): Set<string> {
  const [first, ...rest] = order.panes;
  return new Set((first?.notes ?? []).filter((note) => rest.every((p) => p.notes.includes(note))));
}

function orderHead(sheet: Worksheet, at: number, order: WorkOrder): number {
  const { low, best, high } = order.minutes;
  put(sheet.getCell(at, 1), `Work order ${order.id}`);
  sectioned(sheet.getCell(at, 1));
  const lines = [
    `Building ${order.building}, dwelling ${order.dwelling}. Film ${order.film}. ${String(order.panes.length)} panes. From ${order.earliest} to ${order.latest}. Person-hours ${hours(best)} (${hours(low)} to ${hours(high)}).`,
    `Access: ${order.access}. Notice ${String(order.notice_h)} h.`,
  ];
  let row = at + 1;
  for (const text of lines) row = paragraph(sheet, row, { text, longest: LONGEST, strong: true });
  for (const text of order.cautions) row = paragraph(sheet, row, { text: `Caution: ${text}`, longest: LONGEST });
  for (const text of commonNotes(order)) row = paragraph(sheet, row, { text: `Every pane: ${text}`, longest: LONGEST });
  return row;
}

/** One paper a dwelling and visit, by building: the head of the columns repeats, each order starts a page. */
export function workOrdersSheet(book: Book, plan: Plan): WorkOrderPlace {
  const all = columns(new Set(), '');
  const sheet = book.open({ name: SHEET.workOrders, frozen: { rows: 4, columns: 0 }, width: all.reduce((sum, c) => sum + c.width, 0), hasManyRows: true });
  setWidths(sheet, all);
  titleRow(sheet, SHEET.workOrders, `${plan.name}, plan ${plan.id} revision ${String(plan.revision)} of ${plan.madeOn}: one order for each dwelling and visit. Sizes are width before height; measure each pane before cutting.`);
  const head = writeTable(sheet, 3, { columns: all, rows: [] });
  let row = head.firstRow;
  plan.workOrders.forEach((order, i) => {
    if (i > 0 && i <= MOST_BREAKS) sheet.getRow(row - 1).addPageBreak();
    row = orderHead(sheet, row, order);
    row = paneRows(sheet, row, order);
    const cell = sheet.getCell(row, 1);
    put(cell, 'Done on ____________   by ____________   Left to do or broken: ______________________________________________');
    bold(cell);
    fitRow(sheet, row, []);
    sheet.getRow(row).height = 24;
    sheet.getRow(row).commit();
    row += 2;
  });
  if (plan.workOrders.length === 0) row = paragraph(sheet, row, { text: 'No work is planned.', longest: 100 });
  printed(sheet, { columns: PANE_COUNT, rows: row - 1, headRows: { first: 1, last: head.firstRow - 1 } });
  return { paneColumn: PANE_COUNT, firstRow: head.firstRow, lastRow: Math.max(row - 1, head.firstRow) };
}

function paneRows(sheet: Worksheet, at: number, order: WorkOrder): number {
  const own = columns(commonNotes(order), order.phase);
  order.panes.forEach((pane, i) => {
    const texts = own.map((column, c) => {
      const cell = sheet.getCell(at + i, c + 1);
      const content = column.value(pane, i, at + i);
      put(cell, content, column.format);
      cell.font = { name: 'Arial', size: 11 };
      cell.alignment = { vertical: 'middle', wrapText: column.format === undefined, ...(c === CUT_SIZE ? { indent: 1 } : {}) };
      cell.border = { top: { style: 'thin' }, bottom: { style: 'thin' }, ...(c === 5 ? { left: { style: 'thin' }, right: { style: 'thin' } } : {}) };
      return { text: typeof content === 'string' ? content : '', width: column.width };
    });
    fitRow(sheet, at + i, texts);
    for (const c of [1, CUT_SIZE + 1]) sheet.getCell(at + i, c).font = { name: 'Arial', size: 14, bold: true };
    sheet.getRow(at + i).height = Math.max(sheet.getRow(at + i).height, 24);
  });
  return at + order.panes.length;
}
