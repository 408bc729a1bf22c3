import { billDays, oddAmounts, usableBills, type Bill, type BillTroubleKind } from '#calc';
import type { Finding, FindingList } from '../finding.js';

type Told = Pick<Finding, 'column' | 'code' | 'expected' | 'whatToDo'>;

const KEPT = 'kept as sent, left out of fits';
const TROUBLES: Readonly<Record<BillTroubleKind, Told>> = {
  negative: { column: 'use', code: 'bill-negative', expected: 'use of 0 or more', whatToDo: `${KEPT}: read the meter again, or ask whether energy was sent out` },
  estimated: { column: 'estimated', code: 'bill-estimated', expected: 'a reading', whatToDo: `${KEPT}: send the corrected bill when it comes` },
  'settles-estimate': { column: 'use', code: 'bill-settles-estimate', expected: 'use of its own days only', whatToDo: `${KEPT}: it holds what the estimate before it missed` },
  overlap: { column: 'first_day', code: 'bill-overlap', expected: 'days that stand on one bill only', whatToDo: `both ${KEPT}: take the wrong one out and send the other` },
  'unit-slip': { column: 'use', code: 'bill-unit', expected: 'use in kWh, near the other periods of the meter', whatToDo: `${KEPT}: correct the unit and send the bill again` },
  short: { column: 'last_day', code: 'bill-period', expected: 'a period about as long as the others', whatToDo: `${KEPT}: check both dates` },
  long: { column: 'last_day', code: 'bill-period', expected: 'a period about as long as the others', whatToDo: `${KEPT}: check both dates, or send the bills it joins` },
};

const DAYS_OF_A_YEAR = 365;

function about(bill: Bill, told: Told, why: string): Omit<Finding, 'times'> {
  return { ...bill.inventoryRow, severity: 'warning', ...told, value: `${bill.meter}: ${why}` };
}

/**
 * Says with dates what is odd about the bills that just came in, beside those kept from earlier. Nothing is changed and
 * nothing is filled in.
 */
export function sayBillTroubles(came: readonly Bill[], kept: readonly Bill[], findings: FindingList): void {
  const meters = new Set(came.map(({ meter }) => meter));
  const isNew = new Set(came);
  const here = [...came, ...kept.filter(({ meter }) => meters.has(meter))].sort((a, b) => (a.firstDay < b.firstDay ? -1 : 1));
  const { used, leftOut, gaps } = usableBills(here);
  for (const { bill, troubles } of leftOut) if (isNew.has(bill)) findings.addAll(troubles.map(({ kind, why }) => about(bill, TROUBLES[kind], why)));
  // A slip of the unit has been said; that the price of its kWh is odd is the same thing again.
  const slipped = new Set(leftOut.filter(({ troubles }) => troubles.some(({ kind }) => kind === 'unit-slip')).map(({ bill }) => bill));
  for (const { meter, firstDay, lastDay, days } of gaps) {
    const ofMeter = here.filter((bill) => bill.meter === meter);
    const beside = [ofMeter.find((bill) => bill.firstDay > lastDay), ofMeter.findLast((bill) => bill.firstDay < firstDay)];
    const next = beside.find((bill) => bill !== undefined && isNew.has(bill));
    if (next === undefined) continue;
    findings.add(about(next, { column: 'first_day', code: 'bills-gap', expected: 'bills that follow each other day by day', whatToDo: 'send the missing bill; nothing is filled in for these days' }, `no bill from ${firstDay} to ${lastDay}, ${days} days`));
  }
  for (const meter of [...meters].sort()) {
    const ofMeter = here.filter((bill) => bill.meter === meter);
    for (const { bill, why } of oddAmounts(ofMeter)) {
      if (isNew.has(bill) && !slipped.has(bill)) findings.add(about(bill, { column: 'amount', code: 'bill-amount', expected: 'an amount that goes with the use', whatToDo: 'the use is taken; check the amount' }, why));
    }
    sayShort(meter, { ofMeter, used }, findings);
  }
}

function sayShort(meter: string, of: { readonly ofMeter: readonly Bill[]; readonly used: readonly Bill[] }, findings: FindingList): void {
  const first = of.ofMeter[0];
  const days = of.used.filter((bill) => bill.meter === meter).reduce((sum, bill) => sum + billDays(bill), 0);
  if (first === undefined || days >= DAYS_OF_A_YEAR) return;
  findings.add({ file: first.inventoryRow.file, row: null, column: null, value: `${meter}: ${days} days`, severity: 'note', code: 'bills-short', expected: 'bills of twelve months that can be compared', whatToDo: 'base load and cooling are told apart less well with fewer; send earlier bills' });
}
