import type { Missing } from '../lifecycle/index.js';
import { checkPeriods, type MeteredPeriod } from './metered-period.js';
import { studentT } from './student-t.js';
import { modelledUse_kWh, type UseFit } from './use-model.js';

/** What the bills after the work say against the model of the bills before. */
export interface MeteredSaving {
  /** What would have been used in the weather after the work without it. */
  readonly adjustedBaseline_kWh: number;
  readonly observed_kWh: number;
  readonly saving_kWh: number;
  /** Saving over adjusted baseline. */
  readonly savingShare: number;
  readonly days: number;
  /** Half the width of the interval over the saving; above 1 the bills cannot tell the saving from nothing. */
  readonly fractionalUncertainty: number | Missing;
  /** The same with the constant 1.26 in place of the polynomial in months. */
  readonly fractionalUncertaintyConstant: number | Missing;
  /** Whether the interval leaves zero out. */
  readonly isTold: boolean;
  readonly confidence: number;
  readonly t: number;
  /** CV(RMSE) of the totals of the periods before the work. */
  readonly cvRmseTotals: number;
  /** Correlation of each residual with the next. */
  readonly lag1: number;
  /** Periods worth counting once that correlation is taken off. */
  readonly effectivePeriods: number;
  readonly reportingPeriods: number;
  readonly reportingMonths: number;
}

function correlation(x: readonly number[], y: readonly number[]): number {
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const sum = (of: (i: number) => number): number => x.reduce((total, _, i) => total + of(i), 0);
  const spread = Math.sqrt(sum((i) => (x[i]! - mx) ** 2) * sum((i) => (y[i]! - my) ** 2));
  return spread > 0 ? sum((i) => (x[i]! - mx) * (y[i]! - my)) / spread : 0;
}

/** Factor for the error of the model in other weather, by months of reporting. */
function weatherFactor(isDaily: boolean, months: number): number {
  return isDaily ? -0.00024 * months ** 2 + 0.03535 * months + 1.00286 : -0.00022 * months ** 2 + 0.03306 * months + 0.94054;
}

/**
 * The saving that the bills after the work show, and how far it is to be trusted.
 *
 *   saving = Σ (model in the weather after the work) − Σ use after the work
 *   fractional uncertainty = K × t × CV(RMSE) × √((n/n') × (1 + 2/n') / m) / saving share
 *
 * K is a polynomial in the months of reporting, or 1.26. n' = n(1 − ρ)/(1 + ρ) with the correlation ρ of neighbouring residuals
 * for daily use; for bills n' = n, since ρ of a dozen bills is itself noise.
 *
 * @param fit the model of the periods before the work
 * @param periods `baseline` that the fit was made on, in order of time, and `reporting` after the work
 * @param confidence share of cases the interval is to hold, 0.9 by default
 * @returns adjusted baseline, saving and uncertainty; `why` where there is no saving to put an error on
 * @throws RangeError when a list is empty, a value is not finite or confidence is not between 0 and 1
 * @source ASHRAE Guideline 14, fractional savings uncertainty; polynomials: Sun & Baltazar as used in open meter-analysis libraries
 */
export function meteredSaving(
  fit: UseFit,
  periods: { readonly baseline: readonly MeteredPeriod[]; readonly reporting: readonly MeteredPeriod[] },
  confidence = 0.9,
): MeteredSaving {
  const { baseline, reporting } = periods;
  if (reporting.length === 0) throw new RangeError('reporting must hold at least one period');
  checkPeriods(baseline, 'baseline');
  checkPeriods(reporting, 'reporting');
  const { n, p } = fit;
  if (baseline.length !== n) throw new RangeError(`baseline must be the ${n} periods of the fit, got ${baseline.length}`);
  const adjustedBaseline_kWh = reporting.reduce((sum, period) => sum + modelledUse_kWh(fit, period), 0);
  const observed_kWh = reporting.reduce((sum, period) => sum + period.use_kWh, 0);
  const days = reporting.reduce((sum, period) => sum + period.days, 0);
  const residuals = baseline.map((period) => period.use_kWh - modelledUse_kWh(fit, period));
  const meanTotal = baseline.reduce((sum, period) => sum + period.use_kWh, 0) / n;
  const cvRmseTotals = Math.sqrt(residuals.reduce((sum, each) => sum + each * each, 0) / (n - p)) / meanTotal;
  const lag1 = correlation(residuals.slice(0, -1), residuals.slice(1));
  const isDaily = baseline.every((period) => period.days <= 1);
  const effectivePeriods = (n * (1 - lag1)) / (1 + lag1);
  const counted = isDaily ? effectivePeriods : n;
  const t = studentT(confidence, n - p);
  const reportingMonths = Math.round((days * 12) / 365.25);
  const saving_kWh = adjustedBaseline_kWh - observed_kWh;
  const savingShare = saving_kWh / adjustedBaseline_kWh;
  const error = t * cvRmseTotals * Math.sqrt(((n / counted) * (1 + 2 / counted)) / reporting.length);
  const over = (factor: number): number | Missing => (saving_kWh > 0 ? (factor * error) / savingShare : { why: 'use did not fall, so there is no saving to put an error on' });
  const fractionalUncertainty = over(weatherFactor(isDaily, reportingMonths));
  return {
    adjustedBaseline_kWh,
    observed_kWh,
    saving_kWh,
    savingShare,
    days,
    fractionalUncertainty,
    fractionalUncertaintyConstant: over(1.26),
    isTold: typeof fractionalUncertainty === 'number' && fractionalUncertainty < 1,
    confidence,
    t,
    cvRmseTotals,
    lag1,
    effectivePeriods,
    reportingPeriods: reporting.length,
    reportingMonths,
  };
}
