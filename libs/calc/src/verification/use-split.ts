import type { Missing } from '../lifecycle/index.js';
import { changePointFit } from './change-point-fit.js';
import { coefficientCovariance } from './coefficient-errors.js';
import { searchedDegreeDayFit } from './degree-day-fit.js';
import { leastSquares } from './least-squares.js';
import { checkPeriods, degreeDays_K, type MeteredPeriod } from './metered-period.js';
import { fitStatistics, type UseFit, type UseModel } from './use-model.js';

/** A part of a meter's use with its standard error, kWh in a year of the weather it was asked for. */
export interface UsePart {
  readonly kWh: number;
  readonly standardError_kWh: number;
}

/** A model that was tried, and why it was not taken. */
export interface TriedModel {
  readonly model: UseModel['model'];
  /** On use per day, every period alike, balance points counted as coefficients: the figure the models are compared by. */
  readonly r2Adjusted: number | null;
  readonly why: string | null;
}

/** Use of a meter in three parts: what it uses anyway, what it cools with, what it heats with. */
export interface UseSplit {
  readonly fit: UseFit;
  readonly base: UsePart;
  readonly cooling: UsePart;
  readonly heating: UsePart;
  readonly total_kWh: number;
  /** Whether the cooling stands out of its own error by 1.2816 standard errors: nine chances in ten that it is there. */
  readonly tellsCooling: boolean;
  /** Whether two bills or more hold next to no cooling. Where none does, base load is at most, and cooling at least, what is stated. */
  readonly seesBase: boolean;
  readonly tried: readonly TriedModel[];
  readonly periods: number;
  readonly days: number;
}

/** Fewer bills, or bills of less than this many days, do not show a summer and a time without cooling. */
const LEAST_PERIODS = 5;
const LEAST_DAYS = 270;
/** A model with more coefficients must describe the bills better by this much. */
const WORTH_A_COEFFICIENT = 0.005;
const STANDS_OUT = 1.2816;
/** A bill with less than this share of the largest cooling per day shows the base load. */
const NEXT_TO_NONE = 0.05;
const YEAR_DAYS = 365;

interface Weighed {
  readonly fit: UseFit;
  readonly r2Adjusted: number;
  readonly coefficients: number;
}

const counted = (of: UseModel): number => 1 + 2 * ((of.coolingBalance_degC === null ? 0 : 1) + (of.heatingBalance_degC === null ? 0 : 1));

function weighed(fit: UseFit | Missing, periods: readonly MeteredPeriod[]): Weighed | Missing {
  if ('why' in fit) return fit;
  const coefficients = counted(fit);
  if (!(periods.length > coefficients)) return { why: `${periods.length} bills are not more than its ${coefficients} coefficients` };
  if (!(fit.base_kWh_day > 0)) return { why: 'base load would be zero or below' };
  if (fit.coolingBalance_degC !== null && !(fit.cooling_kWh_dayK > 0)) return { why: 'use would fall as it gets warmer' };
  if (fit.heatingBalance_degC !== null && !(fit.heating_kWh_dayK > 0)) return { why: 'use would fall as it gets colder' };
  return { fit, coefficients, r2Adjusted: fitStatistics(fit, periods, coefficients).r2Adjusted };
}

function candidates(periods: readonly MeteredPeriod[]): { readonly model: UseModel['model']; readonly of: Weighed | Missing }[] {
  const fits: { readonly model: UseModel['model']; readonly fit: UseFit | Missing }[] = [
    { model: '3PC', fit: periods.length > 3 ? changePointFit('3PC', periods) : { why: 'too few bills' } },
    { model: '5P', fit: periods.length > 5 ? changePointFit('5P', periods) : { why: 'too few bills' } },
    { model: 'degree-day', fit: periods.every((p) => p.daily_degC !== undefined) ? searchedDegreeDayFit(periods) : { why: 'no daily temperatures' } },
  ];
  return fits.map(({ model, fit }) => ({ model, of: weighed(fit, periods) }));
}

function sidesOf(of: UseModel, periods: readonly MeteredPeriod[], coolingBalance_degC: number | null = of.coolingBalance_degC): number[][] {
  const seen = periods.map((p) => (of.model === 'degree-day' ? p : { use_kWh: p.use_kWh, days: p.days, outdoor_degC: p.outdoor_degC }));
  return [
    ...(coolingBalance_degC === null ? [] : [seen.map((p) => degreeDays_K(p, coolingBalance_degC, 'cooling'))]),
    ...(of.heatingBalance_degC === null ? [] : [seen.map((p) => degreeDays_K(p, of.heatingBalance_degC!, 'heating'))]),
  ];
}

/** Sums over the asked weather that turn coefficients into kWh a year. */
function yearSums(of: UseModel, weather: readonly MeteredPeriod[], coolingBalance_degC: number | null): number[] {
  const days = weather.reduce((sum, p) => sum + p.days, 0);
  const sides = sidesOf(of, weather, coolingBalance_degC);
  return [YEAR_DAYS, ...sides.map((side) => (side.reduce((sum, k, i) => sum + k * weather[i]!.days, 0) * YEAR_DAYS) / days)];
}

/** kWh a year of each coefficient with the cooling balance moved, for all balance points the bills cannot tell from the best one. */
function alongTheBalance(best: Weighed, periods: readonly MeteredPeriod[], weather: readonly MeteredPeriod[]): number[][] {
  const { fit, coefficients } = best;
  if (fit.coolingBalance_degC === null) return [];
  const perDay = periods.map((p) => p.use_kWh / p.days);
  const weights = fit.model === 'degree-day' ? periods.map((p) => p.days) : periods.map(() => 1);
  const at = (balance: number) => ({ balance, solved: leastSquares([perDay.map(() => 1), ...sidesOf(fit, periods, balance)], perDay, weights) });
  const tried = Array.from({ length: 37 }, (_, i) => at(fit.coolingBalance_degC! + ((i - 18) * 5) / 9));
  const least = tried[18]!.solved?.weightedSse ?? 0;
  const close = least * (1 + 1 / (periods.length - coefficients));
  return tried
    .filter(({ solved }) => solved !== null && solved.weightedSse <= close && solved.coefficients.every((c) => c > 0))
    .map(({ balance, solved }) => yearSums(fit, weather, balance).map((sum, i) => sum * solved!.coefficients[i]!));
}

function seesBase(of: UseModel, periods: readonly MeteredPeriod[]): boolean {
  if (of.coolingBalance_degC === null) return true;
  const above = sidesOf(of, periods)[0]!;
  return above.filter((k) => k < NEXT_TO_NONE * Math.max(...above)).length >= 2;
}

function partsOf(best: Weighed, periods: readonly MeteredPeriod[], of: { readonly weather: readonly MeteredPeriod[]; readonly weatherError: number }): Pick<UseSplit, 'base' | 'cooling' | 'heating'> {
  const { fit } = best;
  const weights = fit.model === 'degree-day' ? periods.map((p) => p.days) : periods.map(() => 1);
  const columns = [periods.map(() => 1), ...sidesOf(fit, periods)];
  const perDay = periods.map((p) => p.use_kWh / p.days);
  const weightedSse = leastSquares(columns, perDay, weights)?.weightedSse ?? 0;
  const covariance = coefficientCovariance(columns, weights, { weightedSse, coefficients: best.coefficients });
  const sums = yearSums(fit, of.weather, fit.coolingBalance_degC);
  const slopes = [fit.base_kWh_day, ...(fit.coolingBalance_degC === null ? [] : [fit.cooling_kWh_dayK]), ...(fit.heatingBalance_degC === null ? [] : [fit.heating_kWh_dayK])];
  const along = alongTheBalance(best, periods, of.weather);
  const weatherPart_kWh = slopes.slice(1).map((slope, i) => slope * sums[i + 1]! * of.weatherError);
  const part = (i: number): UsePart => {
    if (i < 0) return { kWh: 0, standardError_kWh: 0 };
    const own = 'why' in covariance ? 0 : Math.sqrt(covariance[i]![i]!) * sums[i]!;
    const ends = along.map((kWh) => kWh[i]!);
    const balance = ends.length === 0 ? 0 : (Math.max(...ends) - Math.min(...ends)) / 2;
    // Weather that is not that of the bills misplaces use between base load and its sides; the total stays what was billed.
    const weather = i === 0 ? Math.hypot(...weatherPart_kWh) : weatherPart_kWh[i - 1]!;
    return { kWh: slopes[i]! * sums[i]!, standardError_kWh: Math.hypot(own, balance, weather) };
  };
  const cools = fit.coolingBalance_degC !== null;
  return { base: part(0), cooling: part(cools ? 1 : -1), heating: part(fit.heatingBalance_degC === null ? -1 : cools ? 2 : 1) };
}

/**
 * Splits the bills of a meter into base load, cooling and heating.
 *
 *   tried: one change point, two change points, degree days; taken: the highest adjusted R² of those whose coefficients are all above zero,
 *   unless one with fewer coefficients is within 0.005 of it
 *
 * The error of a part is that of its coefficient, of the balance points that fit as well within one standard deviation, and of weather
 * that is not that of the bills. The parts are less sure than their sum: what one has too much the other has too little. Where every bill
 * holds cooling, no bill shows the base load, and no error stated here covers that: `seesBase` says so.
 *
 * @param periods bills joined to the weather of their days: at least 5 and at least 270 days
 * @param of `weather` of the year the parts are stated for (the weather of the bills by default), and `weatherError`, the standard error of
 *   the degree days as a share of them, 0 where the temperatures are those of the days billed
 * @returns the parts of a year of 365 days with their errors, or why the bills cannot be split
 * @throws RangeError when a value is not finite or weatherError is below zero
 * @source models: ASHRAE Guideline 14 (from memory) and the published degree-day method; rule of choice: own
 */
export function useSplit(periods: readonly MeteredPeriod[], of: { readonly weather?: readonly MeteredPeriod[]; readonly weatherError?: number } = {}): UseSplit | Missing {
  checkPeriods(periods);
  const { weather = periods, weatherError = 0 } = of;
  if (!(weatherError >= 0 && Number.isFinite(weatherError))) throw new RangeError(`weatherError must be 0 or more, got ${weatherError}`);
  const days = periods.reduce((sum, p) => sum + p.days, 0);
  if (periods.length < LEAST_PERIODS || days < LEAST_DAYS) return { why: `${periods.length} bills of ${days} days are fewer than ${LEAST_PERIODS} bills of ${LEAST_DAYS} days` };
  const temperatures = periods.map((p) => p.outdoor_degC);
  if (!(Math.max(...temperatures) - Math.min(...temperatures) > 0.5)) return { why: 'the bills are all of one temperature' };
  const tried = candidates(periods);
  const fits = tried.flatMap(({ of: each }) => ('why' in each ? [] : [each]));
  const highest = Math.max(...fits.map((f) => f.r2Adjusted));
  const best = fits.filter((f) => f.r2Adjusted >= highest - WORTH_A_COEFFICIENT).sort((a, b) => a.coefficients - b.coefficients || b.r2Adjusted - a.r2Adjusted)[0];
  if (best === undefined) return { why: `no model fits: ${tried.map((t) => `${t.model}: ${'why' in t.of ? t.of.why : ''}`).join('; ')}` };
  const parts = partsOf(best, periods, { weather, weatherError });
  return {
    fit: best.fit,
    ...parts,
    total_kWh: parts.base.kWh + parts.cooling.kWh + parts.heating.kWh,
    seesBase: seesBase(best.fit, periods),
    tellsCooling: parts.cooling.kWh > STANDS_OUT * parts.cooling.standardError_kWh,
    tried: tried.map(({ model, of: each }) => ('why' in each ? { model, r2Adjusted: null, why: each.why } : { model, r2Adjusted: each.r2Adjusted, why: each === best ? null : 'another describes the bills as well or better' })),
    periods: periods.length,
    days,
  };
}
