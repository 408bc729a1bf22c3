/** Whole cents: money that is paid, planned or printed. Fractions of a cent stay plain numbers inside tariff, life cycle and value. */
export type Cents = number & { readonly __money: 'cents' };

/**
 * Marks a whole number as cents.
 *
 * @param amount_cents a whole number, either sign
 * @returns the same number as `Cents`
 * @throws RangeError when it has a fraction or is beyond exact whole numbers
 * @source definition
 */
export function cents(amount_cents: number): Cents {
  if (!Number.isSafeInteger(amount_cents)) throw new RangeError(`amount_cents must be whole cents, got ${amount_cents}`);
  return (amount_cents === 0 ? 0 : amount_cents) as Cents;
}

/**
 * Rounds to a whole number, half away from zero, reading the figure as a spreadsheet does.
 *
 *   28.5 → 29, −28.5 → −29; 28.499999999999996 (that is 0.285 × 100) → 29
 *
 * The last bits of a product are noise: a figure within 4 units in the last place of a half counts as the half, so a bill here
 * and the same formula in a workbook print the same cent.
 *
 * @param amount any finite number
 * @returns a whole number, never −0
 * @throws RangeError when amount is not finite
 * @source common practice in accounts, no source
 */
export function roundHalfAway(amount: number): number {
  if (!Number.isFinite(amount)) throw new RangeError(`amount must be finite, got ${amount}`);
  const whole = Math.round(Math.abs(amount) * (1 + 4 * Number.EPSILON));
  return amount < 0 && whole !== 0 ? -whole : whole;
}

/**
 * Splits whole cents by shares so that the parts add up, by largest remainder.
 *
 *   part = floor(total × share / Σ share), the left-over cents one each to the largest remainders (earlier first when equal)
 *
 * @param total_cents whole cents, either sign
 * @param shares weights ≥ 0, at least one above 0; they need not sum to 1
 * @returns whole cents, one part per share, summing to total_cents
 * @throws RangeError when the total is not whole, or the shares are negative or all zero
 * @source largest-remainder apportionment, common practice
 */
export function splitCents(total_cents: number, shares: readonly number[]): number[] {
  cents(total_cents);
  const sum = shares.reduce((a, b) => a + b, 0);
  if (!(sum > 0) || !Number.isFinite(sum) || shares.some((share) => !(share >= 0))) {
    throw new RangeError(`shares must be 0 or more with one above 0, got ${shares.join(', ')}`);
  }
  const size = Math.abs(total_cents);
  const exact = shares.map((share) => (size * share) / sum);
  // An exact part a hair under a whole number is that number: 0.57 × 100 must not lose its cent to the noise.
  const parts = exact.map((part) => Math.floor(part * (1 + 4 * Number.EPSILON)));
  const byRemainder = exact.map((part, i) => ({ i, left: part - (parts[i] ?? 0) })).sort((a, b) => b.left - a.left || a.i - b.i);
  let over = size - parts.reduce((a, b) => a + b, 0);
  for (const { i } of byRemainder) {
    if (over <= 0) break;
    if ((shares[i] ?? 0) === 0) continue;
    parts[i] = (parts[i] ?? 0) + 1;
    over -= 1;
  }
  return parts.map((part) => (total_cents < 0 && part !== 0 ? -part : part));
}

/**
 * Cents as dollars for reading: $1,234.56 or -$0.05.
 *
 * @param amount_cents cents; a fraction is rounded half away from zero
 * @returns text with thousands commas and two decimals
 * @throws RangeError when amount_cents is not finite
 * @source common practice
 */
export function dollarsText(amount_cents: number): string {
  const whole = roundHalfAway(amount_cents);
  const digits = String(Math.abs(whole)).padStart(3, '0');
  const dollars = digits.slice(0, -2).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${whole < 0 ? '-' : ''}$${dollars}.${digits.slice(-2)}`;
}

/**
 * An amount in whole dollars, for lists where cents would only be noise.
 *
 *   rounded half away from zero
 *
 * @param amount_cents cents, fractions allowed, finite
 * @returns for example `-$1,235`
 * @source common practice, no source
 */
export function wholeDollarsText(amount_cents: number): string {
  return dollarsText(roundHalfAway(amount_cents / 100) * 100).replace(/\.00$/, '');
}
