import type { MeterMonth, MeterResult, Plan } from '#planning';
import type { Book } from '../book.js';
import { address, dollars, live } from '../cells.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';

interface MonthRow {
  readonly meter: MeterResult;
  readonly month: MeterMonth;
}

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

const price = (cents_kWh: number | null | undefined): number | null => (cents_kWh === null || cents_kWh === undefined ? null : Math.round(cents_kWh * 100) / 10_000);

/** Bills of each meter as found and with the plan, by month. */
export function metersSheet(book: Book, plan: Plan): void {
  const money = plan.terms.currency;
  oneTableSheet<MonthRow>(book, {
    name: SHEET.meters,
    about: `${plan.name}: computed bills of the first year, all payers, prices of ${plan.terms.studyStart}; results of the run, not readings`,
    notes: [
      `With the plan = all chosen films together, whatever their phase, with the present plant. A tariff, a base load or a choice that changes needs a new run; prices changed on ${SHEET.tariffs} move ${SHEET.bills}, not this sheet.`,
      'Price of a saved kWh = money saved over kWh saved, of the year: weighted by when the film saves. Average price = the bill as found over its kWh, fixed charges in it.',
    ],
    columns: [
      { head: 'Meter', unit: '', width: 14, value: (r) => r.meter.meter },
      { head: 'Building', unit: '', width: 9, value: (r) => r.meter.building },
      { head: 'Tariff', unit: '', width: 14, value: (r) => r.meter.tariff },
      { head: 'Payer rule', unit: '', width: 18, value: (r) => r.meter.payerRule },
      { head: 'Owner share', unit: 'share', width: 8, format: FORMAT.percent, value: (r) => r.meter.ownerShare },
      { head: 'Dwellings', unit: '', width: 10, format: FORMAT.whole, value: (r) => r.meter.dwellings },
      { head: 'Month', unit: '', width: 12, value: (r) => MONTHS[r.month.month - 1] ?? String(r.month.month) },
      { head: 'As found', unit: 'kWh', width: 12, format: FORMAT.whole, value: (r) => r.month.asFound_kWh },
      { head: 'With the plan', unit: 'kWh', width: 12, format: FORMAT.whole, value: (r) => r.month.planned_kWh },
      { head: 'Less use', unit: 'kWh', width: 11, format: FORMAT.whole, value: (r, _, row) => live(`${address(8, row)}-${address(9, row)}`, r.month.asFound_kWh - r.month.planned_kWh) },
      { head: 'Bill as found', unit: money, width: 13, format: FORMAT.money, isSummed: true, value: (r) => dollars(r.month.asFound_cents) },
      { head: 'Bill with the plan', unit: money, width: 13, format: FORMAT.money, isSummed: true, value: (r) => dollars(r.month.planned_cents) },
      { head: 'Saving', unit: money, width: 12, format: FORMAT.money, isSummed: true, value: (r, _, row) => live(`${address(11, row)}-${address(12, row)}`, dollars(r.month.asFound_cents - r.month.planned_cents)) },
      { head: 'Price of a saved kWh', unit: `${money}/kWh`, width: 11, format: '0.000', value: (r) => price(r.meter.prices?.saved_cents_kWh) },
      { head: 'Average price', unit: `${money}/kWh`, width: 11, format: '0.000', value: (r) => price(r.meter.prices?.average_cents_kWh) },
    ],
    rows: plan.meters.flatMap((meter) => meter.months.map((month): MonthRow => ({ meter, month }))),
    total: 'Total',
    none: 'No meter is touched by the plan.',
    frozenColumns: 1,
  });
}
