import { type Figure, type Plan, receiptFigures, WITHOUT_RECEIPT } from '#planning';
import type { Book } from '../book.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';

/** Figures a reader of the book asks about first; `rollout receipt --list` has all of them. */
const isHeadline = ({ id }: Figure): boolean => /^(plan|phase|rolls|film|meter|glass)\//.test(id) || /^line\/.*\/(cost|saving|npv|sir|payback)$/.test(id);

/** How to open a figure of the book to one page. */
export function receiptsSheet(book: Book, plan: Plan): void {
  oneTableSheet<Figure>(book, {
    name: SHEET.receipts,
    about: `${plan.name}: any figure opens to one page with its formula, numbers, rows and sources, and the input that gives the same digits outside this program`,
    notes: [
      `On the machine that holds plan ${plan.id}: rollout receipt ID --plan ${plan.id}. With --compute FILE it writes what \`rollout compute\` takes. Cut sizes, loads, sun and ranks have receipts too: rollout receipt --list.`,
      ...WITHOUT_RECEIPT.map((w) => `Without a receipt: ${w.what}; ${w.why}.`),
    ],
    columns: [
      { head: 'Figure', unit: '', width: 62, value: (f) => f.title },
      { head: 'ID', unit: '', width: 52, value: (f) => f.id },
    ],
    rows: receiptFigures(plan).filter(isHeadline),
    none: 'The plan has no figure to open.',
  });
}
