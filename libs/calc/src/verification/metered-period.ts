/** Use of a meter from one reading to the next, with the weather of the same days. */
export interface MeteredPeriod {
  readonly use_kWh: number;
  readonly days: number;
  /** Mean outdoor temperature of the period. */
  readonly outdoor_degC: number;
  /** Mean of each day, for degree days; without it the mean of the period stands for all its days. */
  readonly daily_degC?: readonly number[];
}

const isFiniteNumber = Number.isFinite;

/** Checks periods before a fit. */
export function checkPeriods(periods: readonly MeteredPeriod[], name = 'periods'): void {
  periods.forEach(({ use_kWh, days, outdoor_degC, daily_degC = [] }, i) => {
    if (!(days > 0 && Number.isFinite(days))) throw new RangeError(`days of ${name} ${i} must be above 0, got ${days}`);
    if (!(isFiniteNumber(use_kWh) && isFiniteNumber(outdoor_degC) && daily_degC.every(isFiniteNumber))) throw new RangeError(`${name} ${i} must hold finite values`);
  });
}

/**
 * Degree days of a period, per day.
 *
 *   cooling: mean over days of max(T − balance, 0); heating: mean over days of max(balance − T, 0)
 *
 * @param period with the mean of each day, or one mean for all
 * @param balance_degC temperature from which the plant works
 * @param side above the balance (cooling) or below it (heating)
 * @returns K, ≥ 0
 * @source definition of degree days from daily means
 */
export function degreeDays_K(period: MeteredPeriod, balance_degC: number, side: 'cooling' | 'heating'): number {
  const temperatures = period.daily_degC ?? [period.outdoor_degC];
  let sum = 0;
  for (const temperature of temperatures) {
    const over = side === 'cooling' ? temperature - balance_degC : balance_degC - temperature;
    if (over > 0) sum += over;
  }
  return sum / temperatures.length;
}
