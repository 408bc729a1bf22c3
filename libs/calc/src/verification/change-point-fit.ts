import { leastSquares } from './least-squares.js';
import { checkPeriods, type MeteredPeriod } from './metered-period.js';
import { fitStatistics, type UseFit, type UseModel } from './use-model.js';

/** Steps of the search: a tenth of a degree Fahrenheit for one change point, half a degree for two. */
const FINE_K = 1 / 18;
const COARSE_K = 5 / 18;

interface Best {
  readonly sse: number;
  readonly cooling_degC: number;
  readonly heating_degC: number | null;
  readonly coefficients: readonly number[];
}

interface Points {
  readonly temperatures: readonly number[];
  readonly perDay: readonly number[];
  readonly weights: readonly number[];
}

function pointsOf(periods: readonly MeteredPeriod[]): Points {
  return { temperatures: periods.map((period) => period.outdoor_degC), perDay: periods.map((period) => period.use_kWh / period.days), weights: periods.map(() => 1) };
}

/** Least squares at one place of the change points. */
function tried(points: Points, cooling_degC: number, heating_degC: number | null): Best | null {
  const columns = [points.temperatures.map(() => 1), points.temperatures.map((t) => Math.max(t - cooling_degC, 0))];
  if (heating_degC !== null) columns.push(points.temperatures.map((t) => Math.max(heating_degC - t, 0)));
  const fit = leastSquares(columns, points.perDay, points.weights);
  return fit === null ? null : { sse: fit.weightedSse, cooling_degC, heating_degC, coefficients: fit.coefficients };
}

const better = (a: Best | null, b: Best | null): Best | null => (b !== null && (a === null || b.sse < a.sse) ? b : a);

function oneChangePoint(points: Points): Best | null {
  const first = Math.ceil(Math.min(...points.temperatures) / FINE_K);
  const last = Math.floor(Math.max(...points.temperatures) / FINE_K);
  let best: Best | null = null;
  for (let step = first; step <= last; step++) best = better(best, tried(points, step * FINE_K, null));
  return best;
}

function twoChangePoints(points: Points): Best | null {
  const lowest = Math.floor(Math.min(...points.temperatures) / FINE_K) * FINE_K;
  const steps = Math.floor((Math.max(...points.temperatures) - lowest) / COARSE_K);
  let best: Best | null = null;
  for (let low = 0; low <= steps; low++) {
    for (let high = low; high <= steps; high++) best = better(best, tried(points, lowest + high * COARSE_K, lowest + low * COARSE_K));
  }
  return best;
}

/**
 * Change-point model of a meter: base load, and use that rises with the weather beyond a change point.
 *
 *   3PC: base + slope × max(T − T_c, 0);  5P: + slope × max(T_h − T, 0);  least squares over periods, T on a grid
 *
 * The sum of squares is flat around two change points: read the fit and its error, not the points themselves.
 *
 * @param model one change point (cooling) or two
 * @param periods use, days and mean temperature; more periods than coefficients (3 or 5)
 * @returns the model of least squares with its statistics; grid of 0.1 °F on whole tenths for 3PC, of 0.5 °F from the lowest mean for 5P
 * @throws RangeError when there are too few periods, a value is not finite, or all temperatures are one
 * @source ASHRAE Guideline 14, three- and five-parameter models (from memory)
 */
export function changePointFit(model: '3PC' | '5P', periods: readonly MeteredPeriod[]): UseFit {
  checkPeriods(periods);
  const p = model === '3PC' ? 3 : 5;
  if (!(periods.length > p)) throw new RangeError(`periods must be more than the ${p} coefficients of ${model}, got ${periods.length}`);
  const points = pointsOf(periods);
  const best = model === '3PC' ? oneChangePoint(points) : twoChangePoints(points);
  if (best === null) throw new RangeError('periods must differ in temperature');
  const of: UseModel = {
    model,
    base_kWh_day: best.coefficients[0]!,
    cooling_kWh_dayK: best.coefficients[1]!,
    heating_kWh_dayK: best.coefficients[2] ?? 0,
    coolingBalance_degC: best.cooling_degC,
    heatingBalance_degC: best.heating_degC,
  };
  return { ...of, ...fitStatistics(of, periods, p) };
}
