import { counted } from './said.js';
import { type Bill, dollarsText, type UsableBills } from '#calc';

const pad = (text: string, width: number): string => text.padStart(width);
const money = (cents: number | null): string => (cents === null ? '' : dollarsText(cents));

/** Bills of each meter, one a line, with what is left out of fits and why. */
export function billsText(bills: readonly Bill[], usable: UsableBills): string {
  if (bills.length === 0) return 'No bills are kept.';
  const why = new Map(usable.leftOut.map(({ bill, why: reasons }) => [bill, reasons]));
  const meters = [...new Set(bills.map(({ meter }) => meter))].sort();
  const lines = meters.flatMap((meter) => [
    `${meter}`,
    ...bills.filter((bill) => bill.meter === meter).map((bill) => `  ${bill.firstDay} to ${bill.lastDay}${pad(bill.use_kWh.toFixed(1), 12)} kWh${pad(money(bill.amount_cents), 13)}${why.has(bill) ? `  left out: ${why.get(bill)}` : ''}`),
    ...usable.gaps.filter((gap) => gap.meter === meter).map((gap) => `  no bill from ${gap.firstDay} to ${gap.lastDay}, ${counted(gap.days, 'day')}; nothing is filled in`),
  ]);
  return [...lines, `${counted(bills.length, 'bill')} of ${counted(meters.length, 'meter')}; ${usable.used.length} may be compared with the weather, ${usable.leftOut.length} left out`].join('\n');
}
