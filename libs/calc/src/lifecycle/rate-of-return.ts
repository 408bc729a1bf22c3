import { checkRate, type Missing, presentValue } from './present-value.js';

/** Rates at or below −99 % are not looked for: x = 1/(1 + rate) stays at or under 100. */
const LARGEST_X = 100;

function valueAt(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + coefficients[i]!;
  return value;
}

/** Size of the terms: what a value may be off by through rounding alone. */
function noiseAt(coefficients: readonly number[], x: number): number {
  let size = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) size = size * x + Math.abs(coefficients[i]!);
  return size * coefficients.length * Number.EPSILON * 4;
}

/** The crossing between two points of opposite sign, to the last bit that halving can reach. */
function crossing(coefficients: readonly number[], from: number, to: number): number {
  let [low, high] = [from, to];
  const isUp = valueAt(coefficients, low) < 0;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (valueAt(coefficients, middle) < 0 === isUp) low = middle;
    else high = middle;
  }
}

function signChanges(coefficients: readonly number[]): number {
  const signs = coefficients.filter((each) => each !== 0).map(Math.sign);
  return signs.filter((sign, i) => i > 0 && sign !== signs[i - 1]).length;
}

/**
 * Real roots of a polynomial between 0 and LARGEST_X: between two neighbouring turning points there is at most one, and the
 * turning points are the roots of the derivative.
 */
function rootsOf(coefficients: readonly number[]): number[] {
  if (coefficients.length < 2 || signChanges(coefficients) === 0) return [];
  const turns = signChanges(coefficients) === 1 ? [] : rootsOf(coefficients.slice(1).map((each, i) => each * (i + 1)));
  const touching = turns.filter((x) => Math.abs(valueAt(coefficients, x)) <= noiseAt(coefficients, x));
  const points = [0, ...turns, LARGEST_X];
  const crossed = points.slice(1).flatMap((to, i) => {
    const from = points[i]!;
    const isTouched = touching.includes(from) || touching.includes(to);
    return !isTouched && valueAt(coefficients, from) * valueAt(coefficients, to) < 0 ? [crossing(coefficients, from, to)] : [];
  });
  return [...crossed, ...touching].sort((a, b) => a - b);
}

/**
 * Every rate above −99 % at which a row of flows is worth nothing today.
 *
 *   Σ flow_y × x^y = 0 with x = 1/(1 + rate); all roots are found, none is a bound of a search
 *
 * @param flows_cents flow of year 0, year 1, …
 * @returns rates in rising order; empty where there is none
 * @throws RangeError when a flow is not finite
 * @source definition of the internal rate of return; roots between the turning points (Rolle), number of them by Descartes
 */
export function ratesOfReturn(flows_cents: readonly number[]): number[] {
  if (!flows_cents.every(Number.isFinite)) throw new RangeError('flows_cents must hold finite values');
  const first = flows_cents.findIndex((flow) => flow !== 0);
  if (first < 0) return [];
  const largest = Math.max(...flows_cents.map(Math.abs));
  return rootsOf(flows_cents.slice(first).map((flow) => flow / largest))
    .map((x) => 1 / x - 1)
    .sort((a, b) => a - b);
}

const percent = (rate: number): string => `${(rate * 100).toFixed(2)} %`;

/**
 * Internal rate of return: the one rate at which the flows are worth nothing today.
 *
 * @param flows_cents flow of year 0, year 1, …
 * @returns the rate a year, or why there is none to state: no such rate, or several
 * @throws RangeError when a flow is not finite
 * @source definition; several rates are reported as such, after NIST Handbook 135, which warns of them
 */
export function rateOfReturn(flows_cents: readonly number[]): number | Missing {
  if (flows_cents.every((flow) => flow === 0)) return { why: 'all flows are zero: any rate fits' };
  if (!flows_cents.some((flow) => flow < 0)) return { why: 'nothing is paid out, so there is no rate of return' };
  if (!flows_cents.some((flow) => flow > 0)) return { why: 'nothing comes back, so there is no rate of return' };
  const rates = ratesOfReturn(flows_cents);
  if (rates.length === 1) return rates[0]!;
  if (rates.length === 0) return { why: 'no rate above -99 % makes the flows worth zero' };
  return { why: `several rates make the flows worth zero: ${rates.map(percent).join(', ')}` };
}

/**
 * Modified rate of return: what comes back is reinvested at one rate, what is paid out is financed at another.
 *
 *   (future value of the flows above zero / −present value of the flows below zero)^(1/n) − 1
 *
 * @param flows_cents flow of year 0 … year n, n ≥ 1
 * @param rates `financeRate` for money paid, `reinvestRate` for money received, each above −1
 * @returns the rate a year, or why there is none
 * @throws RangeError when a rate is −1 or less or a flow is not finite
 * @source definition as in spreadsheet programs (MIRR)
 */
export function modifiedRateOfReturn(
  flows_cents: readonly number[],
  rates: { readonly financeRate: number; readonly reinvestRate: number },
): number | Missing {
  checkRate('reinvestRate', rates.reinvestRate);
  const years = flows_cents.length - 1;
  const paid = -presentValue(flows_cents.map((flow) => Math.min(flow, 0)), rates.financeRate);
  const received = presentValue(flows_cents.map((flow) => Math.max(flow, 0)), rates.reinvestRate) * (1 + rates.reinvestRate) ** years;
  if (!(paid > 0)) return { why: 'nothing is paid out, so there is no rate of return' };
  if (!(received > 0)) return { why: 'nothing comes back, so there is no rate of return' };
  if (years < 1) return { why: 'there is no year after the outlay' };
  return (received / paid) ** (1 / years) - 1;
}
