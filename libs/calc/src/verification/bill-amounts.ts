import type { Bill } from '../portfolio/index.js';
import { median } from './usable-bills.js';

/** A bill whose money does not go with its use. */
export interface OddAmount {
  readonly bill: Bill;
  readonly why: string;
}

/** Fixed charges move the price of a kWh between a small and a large bill; three times as much they seldom do. Common practice, no source. */
const TIMES = 3;
const OTHERS = 3;

const price_cents_kWh = ({ amount_cents, use_kWh }: Bill): number | null => (amount_cents === null || !(use_kWh > 0) ? null : amount_cents / use_kWh);

/**
 * Bills whose price of a kWh stands far off the meter's other bills.
 *
 *   amount / use more than three times, or less than a third of, the median of the others; an amount below zero for use above zero
 *
 * The use of such a bill is not doubted; the amount is.
 *
 * @param bills of ONE meter
 * @returns the bills in question with both prices, in cents per kWh
 * @source common practice, no source
 */
export function oddAmounts(bills: readonly Bill[]): OddAmount[] {
  return bills.flatMap((bill): OddAmount[] => {
    const price = price_cents_kWh(bill);
    const others = bills.filter((other) => other !== bill).map(price_cents_kWh).filter((each) => each !== null && each > 0) as number[];
    if (price === null || others.length < OTHERS) return [];
    const usual = median(others);
    if (price >= usual / TIMES && price <= usual * TIMES) return [];
    return [{ bill, why: `${price.toFixed(1)} cents a kWh from ${bill.firstDay} to ${bill.lastDay}; the other bills of this meter ask ${usual.toFixed(1)}` }];
  });
}
