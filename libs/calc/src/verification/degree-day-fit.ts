import type { Missing } from '../lifecycle/index.js';
import { leastSquares, type LinearFit } from './least-squares.js';
import { checkPeriods, degreeDays_K, type MeteredPeriod } from './metered-period.js';
import { fitStatistics, type UseFit, type UseModel } from './use-model.js';

/** Balance points of a degree-day model; `null` leaves that side out. */
export interface BalancePoints {
  readonly cooling_degC: number | null;
  readonly heating_degC: number | null;
}

/** Whole degrees Fahrenheit from 30 to 90, in °C. */
const GRID_degC: readonly number[] = Array.from({ length: 61 }, (_, i) => ((30 + i - 32) * 5) / 9);
/** 20 °F·days a year: with fewer a slope rests on next to nothing. */
const LEAST_DEGREE_DAYS_K = 20 / 1.8;

interface Columns {
  readonly perDay: readonly number[];
  readonly days: readonly number[];
  readonly totalDays: number;
  readonly weightedSst: number;
}

interface Candidate {
  readonly balance: BalancePoints;
  readonly fit: LinearFit;
  readonly r2Adjusted: number;
}

function columnsOf(periods: readonly MeteredPeriod[]): Columns {
  const perDay = periods.map((period) => period.use_kWh / period.days);
  const days = periods.map((period) => period.days);
  const totalDays = days.reduce((a, b) => a + b, 0);
  const mean = periods.reduce((sum, period) => sum + period.use_kWh, 0) / totalDays;
  return { perDay, days, totalDays, weightedSst: perDay.reduce((sum, use, i) => sum + days[i]! * (use - mean) ** 2, 0) };
}

/** Adjusted R² weighted by days: what the search goes by. */
function candidateOf(of: Columns, balance: BalancePoints, sides: readonly (readonly number[])[]): Candidate | null {
  const fit = leastSquares([of.perDay.map(() => 1), ...sides], of.perDay, of.days);
  if (fit === null) return null;
  const n = of.perDay.length;
  const r2 = 1 - fit.weightedSse / of.weightedSst;
  return { balance, fit, r2Adjusted: 1 - ((1 - r2) * (n - 1)) / (n - 1 - sides.length) };
}

function fitOf(candidate: Candidate, periods: readonly MeteredPeriod[]): UseFit {
  const { balance, fit } = candidate;
  const slopes = fit.coefficients.slice(1);
  const of: UseModel = {
    model: 'degree-day',
    base_kWh_day: fit.coefficients[0]!,
    cooling_kWh_dayK: balance.cooling_degC === null ? 0 : slopes[0]!,
    heating_kWh_dayK: balance.heating_degC === null ? 0 : slopes.at(-1)!,
    coolingBalance_degC: balance.cooling_degC,
    heatingBalance_degC: balance.heating_degC,
  };
  // The weighted figure is the one the published method ranks by; the others are on use per day, unweighted.
  return { ...of, ...fitStatistics(of, periods, fit.coefficients.length), r2Adjusted: candidate.r2Adjusted };
}

function enough(periods: readonly MeteredPeriod[], coefficients: number): void {
  checkPeriods(periods);
  if (!(periods.length > coefficients)) throw new RangeError(`periods must be more than the ${coefficients} coefficients, got ${periods.length}`);
}

/**
 * Degree-day model at given balance points.
 *
 *   use per day = base + slope_c × CDD/day + slope_h × HDD/day, least squares weighted by days
 *
 * @param periods use and days, with daily means for the degree days
 * @param balance balance points; `null` leaves a side out
 * @returns the model; `r2Adjusted` is weighted by days, the other figures are not; or why there is none
 * @throws RangeError when there are too few periods or a value is not finite
 * @source published degree-day method for monthly bills (variable-base degree days), weights = days
 */
export function degreeDayFit(periods: readonly MeteredPeriod[], balance: BalancePoints): UseFit | Missing {
  const sides = [
    ...(balance.cooling_degC === null ? [] : [periods.map((period) => degreeDays_K(period, balance.cooling_degC!, 'cooling'))]),
    ...(balance.heating_degC === null ? [] : [periods.map((period) => degreeDays_K(period, balance.heating_degC!, 'heating'))]),
  ];
  enough(periods, 1 + sides.length);
  const candidate = candidateOf(columnsOf(periods), balance, sides);
  return candidate === null ? { why: 'the degree days of the periods do not tell base load and slope apart' } : fitOf(candidate, periods);
}

/**
 * Degree-day model with the balance points that describe the use best.
 *
 *   whole °F from 30 to 90, cooling ≥ heating, cooling, heating or both; all coefficients above zero; highest adjusted R²
 *
 * @param periods use and days, with daily means for the degree days; more than three
 * @returns the model, or why there is none
 * @throws RangeError when there are too few periods or a value is not finite
 * @source published degree-day method: balance points 30 to 90 °F, at most 3 °F apart, positive coefficients, weights = days
 */
export function searchedDegreeDayFit(periods: readonly MeteredPeriod[]): UseFit | Missing {
  enough(periods, 3);
  const of = columnsOf(periods);
  const least = (LEAST_DEGREE_DAYS_K * of.totalDays) / 365;
  const sideOf = (side: 'cooling' | 'heating'): (readonly number[] | null)[] =>
    GRID_degC.map((balance) => {
      const column = periods.map((period) => degreeDays_K(period, balance, side));
      return column.reduce((sum, each, i) => sum + each * of.days[i]!, 0) >= least ? column : null;
    });
  const [cooling, heating] = [sideOf('cooling'), sideOf('heating')];
  let best: Candidate | null = null;
  const offer = (balance: BalancePoints, sides: readonly (readonly number[])[]): void => {
    const candidate = candidateOf(of, balance, sides);
    if (candidate === null || !candidate.fit.coefficients.every((each) => each > 0)) return;
    if (best === null || candidate.r2Adjusted > best.r2Adjusted) best = candidate;
  };
  GRID_degC.forEach((cooling_degC, c) => {
    const [above, below] = [cooling[c], heating[c]];
    if (above) offer({ cooling_degC, heating_degC: null }, [above]);
    if (below) offer({ cooling_degC: null, heating_degC: cooling_degC }, [below]);
    if (!above) return;
    for (let h = 0; h <= c; h++) if (heating[h]) offer({ cooling_degC, heating_degC: GRID_degC[h]! }, [above, heating[h]!]);
  });
  return best === null ? { why: 'no balance point gives a base load and a slope above zero' } : fitOf(best, periods);
}
