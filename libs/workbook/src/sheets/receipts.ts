import { type Figure, headlineFigures, type Plan, WITHOUT_RECEIPT } from '#planning';
import type { Book } from '../book.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';

/** IDs that every line, window, meter or side has, by example. */
function patterns(plan: Plan): string[] {
  const [line] = plan.lines;
  if (line === undefined) return [];
  const of = (names: readonly string[]): string => names.map((name) => `line/${line.dwelling}/${name}`).join(', ');
  return [
    `Each line: ${of(['cost', 'minutes', 'saving', 'saving-owner', 'rebate', 'cooling-cut', 'npv', 'npv-owner', 'sir', 'payback', 'discounted-payback', 'rank'])}.`,
    `How sure it is: ${of(['realisation/middle', ...(plan.outlook === null ? [] : ['chance/in-bills/yearly/nine-in-ten', 'chance/in-bills/value/middle', 'chance/in-bills/pays-back', 'break-even-price'])])}.`,
    `Its physics: cooling/${line.dwelling}/load-as-found, load-filmed, electricity, electricity-filmed, peak. Its panes: window/${line.windows[0]?.window ?? ''}/cut-size.`,
    `Each meter: meter/${plan.uses[0]?.meter ?? ''}/bill-as-found, bill-planned, saving, price-saved. Each dwelling ranked: rank/${line.dwelling}; each side: rank/${line.dwelling}/${String(line.option.facades[0] ?? '')}. Sun: sun/${line.building}/${String(line.option.facades[0] ?? '')}.`,
  ];
}

/** How to open a figure of the book to one page. */
export function receiptsSheet(book: Book, plan: Plan): void {
  oneTableSheet<Figure>(book, {
    name: SHEET.receipts,
    about: `${plan.name}: any figure opens to one page with its formula, numbers, rows and sources, and the input that gives the same digits outside this program`,
    notes: [
      `On the machine that holds plan ${plan.id}: rollout receipt ID --plan ${plan.id}. With --compute FILE it writes what \`rollout compute\` takes. rollout receipt --list has every ID.`,
      ...patterns(plan),
      ...WITHOUT_RECEIPT.map((w) => `Without a receipt: ${w.what}; ${w.why}.`),
    ],
    columns: [
      { head: 'Figure', unit: '', width: 62, value: (f) => f.title },
      { head: 'ID', unit: '', width: 52, value: (f) => f.id },
    ],
    rows: headlineFigures(plan),
    none: 'The plan has no figure to open.',
  });
}
