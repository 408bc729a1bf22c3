import { degreeDays_K, type MeteredPeriod } from './metered-period.js';

/** A meter's use as a function of the weather: base load, and a slope on each side of its balance points. */
export interface UseModel {
  readonly model: '3PC' | '5P' | 'degree-day';
  readonly base_kWh_day: number;
  /** Rise of the daily use for each K above the cooling balance; 0 where the model has no cooling. */
  readonly cooling_kWh_dayK: number;
  readonly heating_kWh_dayK: number;
  readonly coolingBalance_degC: number | null;
  readonly heatingBalance_degC: number | null;
}

/** How well a model describes the periods it was fitted on, all on use per day. */
export interface FitStatistics {
  readonly n: number;
  /** Coefficients, searched change points counted. */
  readonly p: number;
  readonly r2: number;
  readonly r2Adjusted: number;
  readonly cvRmse: number;
  readonly nmbe: number;
  /** Sum of squares left over, (kWh/day)². */
  readonly residualSum: number;
}

/** A model with how well it fits. */
export interface UseFit extends UseModel, FitStatistics {}

const isDegreeDay = (of: UseModel): boolean => of.model === 'degree-day';

/** Change-point models work on the mean of a period, degree-day models on its days. */
function asModelled(of: UseModel, period: MeteredPeriod): MeteredPeriod {
  if (isDegreeDay(of) || period.daily_degC === undefined) return period;
  const { use_kWh, days, outdoor_degC } = period;
  return { use_kWh, days, outdoor_degC };
}

/**
 * Use of a meter in the weather of a period, by a fitted model.
 *
 *   days × (base + cooling slope × K above its balance + heating slope × K below its balance)
 *
 * @param of the model
 * @param period weather and days; its own use is not read
 * @returns kWh of the period
 * @source ASHRAE Guideline 14, change-point models (from memory); degree-day form: definition
 */
export function modelledUse_kWh(of: UseModel, period: MeteredPeriod): number {
  const seen = asModelled(of, period);
  const above = of.coolingBalance_degC === null ? 0 : degreeDays_K(seen, of.coolingBalance_degC, 'cooling');
  const below = of.heatingBalance_degC === null ? 0 : degreeDays_K(seen, of.heatingBalance_degC, 'heating');
  return period.days * (of.base_kWh_day + of.cooling_kWh_dayK * above + of.heating_kWh_dayK * below);
}

/**
 * How well a model describes the use per day of its periods.
 *
 *   R² = 1 − SSE/SST;  adjusted: 1 − (1 − R²)(n − 1)/(n − p);  CV(RMSE) = √(SSE/(n − p))/mean;  NMBE = Σe/((n − p) × mean)
 *
 * @param of the model
 * @param periods what it was fitted on
 * @param p number of coefficients, searched change points counted
 * @returns the figures; e = use − model
 * @throws RangeError when there are no more periods than coefficients
 * @source ASHRAE Guideline 14 (from memory), definitions as in open meter-analysis libraries
 */
export function fitStatistics(of: UseModel, periods: readonly MeteredPeriod[], p: number): FitStatistics {
  const n = periods.length;
  if (!(n > p)) throw new RangeError(`periods must be more than the ${p} coefficients of ${of.model}, got ${n}`);
  const perDay = periods.map((period) => period.use_kWh / period.days);
  const mean = perDay.reduce((a, b) => a + b, 0) / n;
  const errors = periods.map((period, i) => perDay[i]! - modelledUse_kWh(of, period) / period.days);
  const residualSum = errors.reduce((sum, error) => sum + error * error, 0);
  const r2 = 1 - residualSum / perDay.reduce((sum, use) => sum + (use - mean) ** 2, 0);
  return {
    n,
    p,
    r2,
    r2Adjusted: 1 - ((1 - r2) * (n - 1)) / (n - p),
    cvRmse: Math.sqrt(residualSum / (n - p)) / mean,
    nmbe: errors.reduce((a, b) => a + b, 0) / ((n - p) * mean),
    residualSum,
  };
}
