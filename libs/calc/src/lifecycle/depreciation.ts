import { splitCents } from '../money/index.js';

/** How the cost of film is written off; which one a tax office takes is for an accountant to say. */
export type DepreciationMethod =
  | { readonly method: 'mid-month-27.5'; readonly monthInService: number }
  | { readonly method: 'expense' }
  | { readonly method: 'straight-line'; readonly years: number };

/** One tax or book year. */
export interface DepreciationYear {
  /** Share of the basis, 0…1. */
  readonly share: number;
  /** Whole cents; all years sum to the basis. */
  readonly cents: number;
}

// The printed table works in thousandths of a percent: 100 000 is the whole basis.
const WHOLE = 100_000;
const RECOVERY_YEARS = 27.5;

/** Thousandths of a percent in each of 29 years, as the table prints them. */
function midMonthShares(monthInService: number): number[] {
  const first = Math.round((((12 - monthInService + 0.5) / 12 / RECOVERY_YEARS) * WHOLE));
  const isFirstHalf = monthInService <= 6;
  let left = WHOLE - first;
  const later = Array.from({ length: 28 }, (_, i) => {
    const year = i + 2;
    const isUpper = year >= 10 && year % 2 === (isFirstHalf ? 0 : 1);
    const share = Math.min(left, isUpper ? 3637 : 3636);
    // Years 2 to 27 are full; what is left falls into year 28, and into year 29 for months 7 to 12.
    const inYear = year === 28 && isFirstHalf ? left : share;
    left -= inYear;
    return inYear;
  });
  return [first, ...later];
}

function sharesOf(by: DepreciationMethod): number[] {
  if (by.method === 'expense') return [1];
  if (by.method === 'straight-line') {
    if (!(Number.isInteger(by.years) && by.years >= 1)) throw new RangeError(`years must be a whole number of 1 or more, got ${by.years}`);
    return Array.from({ length: by.years }, () => 1 / by.years);
  }
  if (!(Number.isInteger(by.monthInService) && by.monthInService >= 1 && by.monthInService <= 12)) {
    throw new RangeError(`monthInService must be 1…12, got ${by.monthInService}`);
  }
  return midMonthShares(by.monthInService).map((share) => share / WHOLE);
}

/**
 * The yearly write-off of a cost.
 *
 *   mid-month-27.5: year 1 = (12 − month + 0.5)/12/27.5, then 3.636 % and, from year 10, 3.637 % every other year, rest in
 *   years 28 and 29; expense: all in year 1; straight-line: 1/years each year, whole years
 *
 * @param basis_cents whole cents to be written off, ≥ 0
 * @param by the method; month in service 1…12 for mid-month
 * @returns share and whole cents of each year; 29 years for mid-month; cents sum to basis_cents
 * @throws RangeError when the basis is not whole cents of 0 or more, or month or years are outside their range
 * @source IRS Publication 946, Table A-6 (mid-month, residential rental property, 27.5 years)
 */
export function depreciation(basis_cents: number, by: DepreciationMethod): DepreciationYear[] {
  if (!(basis_cents >= 0)) throw new RangeError(`basis_cents must be 0 or more, got ${basis_cents}`);
  const shares = sharesOf(by);
  const parts = splitCents(basis_cents, shares);
  return shares.map((share, year) => ({ share, cents: parts[year]! }));
}
