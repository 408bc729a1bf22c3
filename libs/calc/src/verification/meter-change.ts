import type { Missing } from '../lifecycle/index.js';
import { degreeDayFit } from './degree-day-fit.js';
import { checkPeriods, degreeDays_K, type MeteredPeriod } from './metered-period.js';
import { modelledUse_kWh, type UseFit } from './use-model.js';

/** How the use of one meter changed from before to after, in the weather after. */
export interface MeterChange {
  readonly fit: UseFit;
  readonly adjustedBaseline_kWh: number;
  readonly observed_kWh: number;
  /** Share of the adjusted baseline that is no longer used; below zero where use rose. */
  readonly share: number;
  /** One standard deviation of `share` from what the model of the bills leaves open. */
  readonly standardError: number;
  /** Cooling in the adjusted baseline. */
  readonly cooling_kWh: number;
  readonly baselinePeriods: number;
  readonly reportingPeriods: number;
}

const LEAST_BASELINE = 6;
const LEAST_REPORTING = 3;
const WIDENS = 1.26;
/** Every 3 °F, the widest step of the published method: 50 to 80 °F for cooling, 45 to 65 °F for heating. */
const COOLING_degC = Array.from({ length: 11 }, (_, i) => ((50 + 3 * i - 32) * 5) / 9);
const HEATING_degC = Array.from({ length: 7 }, (_, i) => ((45 + 3 * i - 32) * 5) / 9);

const NO_FIT: Missing = { why: 'no balance point gives a base load and a cooling slope above zero' };

/** Weighted squares left over by one slope at a balance point; Infinity where base load or slope would not be above zero. */
function squaresLeft(periods: readonly MeteredPeriod[], balance_degC: number): number {
  let [w, x, y, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
  for (const period of periods) {
    const above = degreeDays_K(period, balance_degC, 'cooling');
    const perDay = period.use_kWh / period.days;
    w += period.days;
    x += period.days * above;
    y += period.days * perDay;
    xx += period.days * above * above;
    xy += period.days * above * perDay;
    yy += period.days * perDay * perDay;
  }
  const spread = xx - (x * x) / w;
  const slope = spread > 1e-9 ? (xy - (x * y) / w) / spread : 0;
  return slope > 0 && y - slope * x > 0 ? yy - (y * y) / w - slope * (xy - (x * y) / w) : Infinity;
}

/** Without heating every balance point has as many coefficients, so the least squares are the highest adjusted R². */
function coolingOnly(periods: readonly MeteredPeriod[]): UseFit | Missing {
  const left = COOLING_degC.map((balance) => squaresLeft(periods, balance));
  const least = Math.min(...left);
  return least === Infinity ? NO_FIT : degreeDayFit(periods, { cooling_degC: COOLING_degC[left.indexOf(least)]!, heating_degC: null });
}

function withHeating(periods: readonly MeteredPeriod[]): UseFit | Missing {
  let best: UseFit | Missing = coolingOnly(periods);
  for (const cooling_degC of COOLING_degC) {
    for (const heating_degC of HEATING_degC.filter((t) => t <= cooling_degC)) {
      const fit = degreeDayFit(periods, { cooling_degC, heating_degC });
      if ('why' in fit || !(fit.base_kWh_day > 0 && fit.cooling_kWh_dayK > 0 && fit.heating_kWh_dayK > 0)) continue;
      if ('why' in best || fit.r2Adjusted > best.r2Adjusted) best = fit;
    }
  }
  return best;
}

/**
 * How the use of one meter changed, with the weather taken out.
 *
 *   share = 1 − Σ use after / Σ model of the bills before in the weather after
 *   error = 1.26 × CV(RMSE) of the totals × √((1 + 2/n) / m)
 *
 * The error is that of the published fractional savings uncertainty at one standard deviation. It leaves out what people change.
 *
 * @param bills `baseline` before, 6 or more, and `reporting` after, 3 or more, joined to the weather of their days; `heats` lets the model heat
 * @returns the change with its error, or why the bills do not tell
 * @throws RangeError when a value is not finite
 * @source ASHRAE Guideline 14, fractional savings uncertainty (from memory); degree-day method with balance points 3 °F apart
 */
export function meterChange(bills: { readonly baseline: readonly MeteredPeriod[]; readonly reporting: readonly MeteredPeriod[]; readonly heats?: boolean }): MeterChange | Missing {
  const { baseline, reporting, heats = false } = bills;
  checkPeriods(baseline, 'baseline');
  checkPeriods(reporting, 'reporting');
  if (baseline.length < LEAST_BASELINE) return { why: `${baseline.length} usable bills before the work are fewer than ${LEAST_BASELINE}` };
  if (reporting.length < LEAST_REPORTING) return { why: `${reporting.length} usable bills after the work are fewer than ${LEAST_REPORTING}` };
  const fit = heats ? withHeating(baseline) : coolingOnly(baseline);
  if ('why' in fit) return fit;
  const adjustedBaseline_kWh = reporting.reduce((sum, p) => sum + modelledUse_kWh(fit, p), 0);
  const observed_kWh = reporting.reduce((sum, p) => sum + p.use_kWh, 0);
  const days = reporting.reduce((sum, p) => sum + p.days, 0);
  const n = baseline.length;
  const residuals = baseline.map((p) => p.use_kWh - modelledUse_kWh(fit, p));
  const mean = baseline.reduce((sum, p) => sum + p.use_kWh, 0) / n;
  const cv = Math.sqrt(residuals.reduce((sum, e) => sum + e * e, 0) / (n - fit.p)) / mean;
  const heating_kWh = fit.heatingBalance_degC === null ? 0 : adjustedBaseline_kWh - reporting.reduce((sum, p) => sum + modelledUse_kWh({ ...fit, heating_kWh_dayK: 0 }, p), 0);
  return {
    fit,
    adjustedBaseline_kWh,
    observed_kWh,
    share: 1 - observed_kWh / adjustedBaseline_kWh,
    standardError: WIDENS * cv * Math.sqrt((1 + 2 / n) / reporting.length),
    cooling_kWh: adjustedBaseline_kWh - heating_kWh - fit.base_kWh_day * days,
    baselinePeriods: n,
    reportingPeriods: reporting.length,
  };
}
