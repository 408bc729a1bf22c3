import type { Plan, WaitingItem } from '#planning';
import type { Book } from '../book.js';
import { dollars } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';

/** Letters and tests without a date, with the value that waits behind each. */
export function waitingSheet(book: Book, plan: Plan): void {
  const money = plan.terms.currency;
  oneTableSheet<WaitingItem>(book, {
    name: SHEET.waiting,
    isAsRun: true,
    about: `${plan.name}: letters and tests without a date; largest value first`,
    notes: [
      'Value = net present value above what the dwelling can do without the letter. An option that waits for two letters shows its value behind both: the rows are not to be added up, so there is no total.',
    ],
    columns: [
      { head: 'Building', unit: '', width: 9, value: (w) => w.building },
      { head: 'Letter or test', unit: '', width: 48, value: (w) => w.kind },
      { head: 'State', unit: '', width: 11, value: (w) => w.state },
      { head: 'Dwellings', unit: '', width: 10, format: FORMAT.whole, value: (w) => w.dwellings },
      { head: 'Panes', unit: '', width: 8, format: FORMAT.whole, value: (w) => w.panes },
      { head: 'Value behind it', unit: money, width: 13, format: FORMAT.money, value: (w) => dollars(w.value_cents) },
      { head: 'Cooling cost reduced', unit: `${money}/yr`, width: 12, format: FORMAT.money, value: (w) => dollars(w.yearlyCooling_cents) },
      { head: 'Installed cost', unit: money, width: 13, format: FORMAT.money, value: (w) => dollars(w.cost_cents) },
      { head: 'Waits for', unit: 'all of these', width: 52, value: (w) => w.reasons.join('\n') },
    ],
    rows: plan.waiting,
    none: 'Nothing waits for a letter or test.',
  });
}
