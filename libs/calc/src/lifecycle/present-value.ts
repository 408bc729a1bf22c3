/** A figure that does not exist, with the reason in words. */
export interface Missing {
  readonly why: string;
}

/** True for a figure that exists. */
export const isFigure = (figure: number | Missing): figure is number => typeof figure === 'number';

/** Checks a rate: above −100 %. */
export function checkRate(name: string, rate: number): void {
  if (!(rate > -1) || !Number.isFinite(rate)) throw new RangeError(`${name} must be above -1, got ${rate}`);
}

function checkYears(years: number): void {
  if (!(Number.isInteger(years) && years >= 0)) throw new RangeError(`years must be a whole number of 0 or more, got ${years}`);
}

/**
 * Value today of flows at the end of each year.
 *
 *   Σ flow_y / (1 + rate)^y        the first flow is today's
 *
 * @param flows_cents flow of year 0, year 1, …; money paid is below zero
 * @param rate discount rate a year, of the same basis (real or nominal) as the flows; above −1
 * @returns cents, with fractions
 * @throws RangeError when the rate is −1 or less, or a flow is not finite
 * @source NIST Handbook 135, present-value formula
 */
export function presentValue(flows_cents: readonly number[], rate: number): number {
  checkRate('rate', rate);
  let sum = 0;
  for (let year = flows_cents.length - 1; year >= 0; year--) sum = sum / (1 + rate) + flows_cents[year]!;
  if (!Number.isFinite(sum)) throw new RangeError('flows_cents must hold finite values');
  return sum;
}

/**
 * Factor that turns one amount n years ahead into its value today (SPV).
 *
 *   (1 + rate)^−n
 *
 * @param rate discount rate a year, above −1
 * @param years whole years, ≥ 0
 * @returns factor, 1 for year 0
 * @throws RangeError outside those ranges
 * @source NIST Handbook 135, single present value factor
 */
export function singlePresentValue(rate: number, years: number): number {
  checkRate('rate', rate);
  checkYears(years);
  return (1 + rate) ** -years;
}

/**
 * Factor that turns a yearly amount that rises evenly into its value today (UPV*; UPV with no rise).
 *
 *   (1 + e)/(d − e) × (1 − ((1 + e)/(1 + d))^n), n where d = e; the first amount comes a year from now and has risen once
 *
 * @param rate discount rate d a year, above −1
 * @param years whole years n, ≥ 0
 * @param escalation rise e a year of the amount, same basis as the rate, above −1
 * @returns factor on the amount at today's price
 * @throws RangeError outside those ranges
 * @source NIST Handbook 135, modified uniform present value factor
 */
export function uniformPresentValue(rate: number, years: number, escalation = 0): number {
  checkRate('rate', rate);
  checkRate('escalation', escalation);
  checkYears(years);
  // The sum and the closed form are one; the closed form loses its digits where both rates nearly agree.
  const growth = (1 + escalation) / (1 + rate);
  let factor = 0;
  for (let year = 0; year < years; year++) factor = (factor + 1) * growth;
  return factor;
}

/**
 * Rate in money of the day from a rate in constant money.
 *
 *   (1 + real) × (1 + inflation) − 1
 *
 * @param real rate above inflation, above −1
 * @param inflation rise of prices a year, above −1
 * @returns nominal rate
 * @throws RangeError outside those ranges
 * @source NIST Handbook 135, relation of real and nominal rates
 */
export function nominalRate(real: number, inflation: number): number {
  checkRate('real', real);
  checkRate('inflation', inflation);
  return (1 + real) * (1 + inflation) - 1;
}

/**
 * Rate in constant money from a rate in money of the day.
 *
 *   (1 + nominal) / (1 + inflation) − 1
 *
 * @param nominal rate, above −1
 * @param inflation rise of prices a year, above −1
 * @returns real rate
 * @throws RangeError outside those ranges
 * @source NIST Handbook 135, relation of real and nominal rates
 */
export function realRate(nominal: number, inflation: number): number {
  checkRate('nominal', nominal);
  checkRate('inflation', inflation);
  return (1 + nominal) / (1 + inflation) - 1;
}
