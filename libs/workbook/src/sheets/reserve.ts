import type { Plan, ReserveLine } from '#planning';
import type { Book } from '../book.js';
import { dollars } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';

/** Next best dwellings in the order they come in if something drops out. */
export function reserveSheet(book: Book, plan: Plan): void {
  const money = plan.terms.currency;
  const { explanations } = plan;
  const whyOf = new Map(explanations?.dwellings.map((d) => [d.dwelling, d.why]));
  oneTableSheet<ReserveLine>(book, {
    name: SHEET.reserve,
    isAsRun: true,
    about: `${plan.name}: what comes next if a line drops out; first come, first in`,
    notes: [
      'Behind = how far the value stays behind what the money and hours bring elsewhere at the prices of this plan; below zero it would pay, but does not fit as a whole. A line comes in when what drops out frees its paid cost in the same year.',
      ...(explanations?.prices ?? []).filter((p) => p.nextDollar > 0).map((p) => `The next dollar of ${p.phase} brings ${p.nextDollar.toFixed(2)} of value${p.nextCrewHour_cents === null || p.nextCrewHour_cents === 0 ? '' : `, the next person-hour ${dollars(p.nextCrewHour_cents).toFixed(2)}`}.`),
    ],
    columns: [
      { head: 'Place', unit: '', width: 7, format: FORMAT.whole, value: (r) => r.place },
      { head: 'Building', unit: '', width: 9, value: (r) => r.building },
      { head: 'Dwelling', unit: '', width: 11, value: (r) => r.dwelling },
      { head: 'Option', unit: 'film and sides', width: 24, value: (r) => r.words ?? r.option },
      { head: 'Year', unit: '', width: 18, value: (r) => r.phase },
      { head: 'Paid cost', unit: money, width: 11, format: FORMAT.money, value: (r) => dollars(r.cost_cents) },
      { head: 'Crew time', unit: 'person-minutes', width: 13, format: FORMAT.whole, value: (r) => r.minutes },
      { head: 'Value', unit: money, width: 11, format: FORMAT.money, value: (r) => dollars(r.value_cents) },
      { head: 'Behind', unit: money, width: 11, format: FORMAT.money, value: (r) => dollars(r.behind_cents) },
      { head: 'New visit', unit: '', width: 9, value: (r) => (r.newVisit ? 'yes' : 'no') },
      { head: 'Why not in the plan', unit: '', width: 56, value: (r) => whyOf.get(r.dwelling) ?? '' },
    ],
    rows: explanations?.reserve ?? [],
    none: 'Nothing is left that could be done instead.',
    frozenColumns: 3,
  });
}
