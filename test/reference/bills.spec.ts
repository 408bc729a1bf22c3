import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { changePointFit, datedPeriods, degCOf_degF, degreeDayFit, meteredSaving, searchedDegreeDayFit, studentT, type MeteredPeriod, type Missing, type UseFit } from '#calc';
import { changePointFits, dailyFits, degreeDayFits, meteredSavings, type Meter, periodsOf, readingsOf } from './bills.js';

const perF = (slope_kWh_dayK: number): number => slope_kWh_dayK / 1.8;
const degF = (temperature_degC: number | null): number | null => (temperature_degC === null ? null : temperature_degC * 1.8 + 32);
const within = (value: number | Missing, expected: number, rel = 1e-5): void => expect(Math.abs(Number(value) - expected)).toBeLessThanOrEqual(rel * Math.max(Math.abs(expected), 1e-2));
/** A correlation is a figure of order one: the rounding of the temperatures moves its digits after the point, not its share. */
const correlationWithin = (value: number, expected: number): void => expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-5);
const found = (fit: UseFit | Missing): UseFit => {
  if ('why' in fit) throw new Error(fit.why);
  return fit;
};

describe('change points on the open meter samples', () => {
  it.each(changePointFits.rows)('$place', ({ given, expect: printed }) => {
    const fit = changePointFit(given.model, periodsOf(given.meter, 'baseline'));
    if (printed.cooling_degF !== undefined) within(degF(fit.coolingBalance_degC)!, printed.cooling_degF, 1e-9);
    within(fit.base_kWh_day, printed.base);
    within(perF(fit.cooling_kWh_dayK), printed.cooling_kWh_dayF);
    if (printed.heating_kWh_dayF !== undefined) within(perF(fit.heating_kWh_dayK), printed.heating_kWh_dayF);
    within(fit.r2, printed.r2);
    within(fit.cvRmse, printed.cvRmse);
    within(fit.residualSum, printed.rmse ** 2 * (printed.n - printed.p));
    expect(Math.abs(fit.nmbe)).toBeLessThan(1e-12);
    expect([fit.n, fit.p]).toEqual([printed.n, printed.p]);
  });
});

it('t of 90 % with 10 degrees of freedom is 1.8125, of 95 % with 30 2.0423 (printed tables)', () => {
  within(studentT(0.9, 10), 1.8124611228107335, 1e-12);
  expect(studentT(0.95, 30).toFixed(4)).toBe('2.0423');
  expect(studentT(0.9, 1e6).toFixed(3)).toBe('1.645');
});

// The daily temperatures and the daily meter are files that do not belong to the project.
const folder = join(process.cwd(), '..', 'shared', 'bills');
const isThere = existsSync(folder);
if (!isThere) console.warn('SKIPPED: degree-day fits on the open meter samples; their files are not beside the project');
const onSamples = isThere ? describe : describe.skip;

const tableOf = (name: string): string[][] => readFileSync(join(folder, name), 'utf8').trim().split('\n').slice(1).map((line) => line.split(','));
const temperatures = (): Map<string, number> => new Map(tableOf('daily-temperature.csv').map(([day, mean]) => [day!, degCOf_degF(Number(mean))]));

onSamples('degree days on the open meter samples', () => {
  const periods = (meter: Meter, part: 'baseline' | 'reporting'): MeteredPeriod[] => datedPeriods(readingsOf(meter, part), temperatures());
  const fitted = (meter: Meter, isSearched: boolean): UseFit => {
    const balance = { cooling_degC: degCOf_degF(65), heating_degC: meter === 'cooling' ? null : degCOf_degF(60) };
    return found(isSearched ? searchedDegreeDayFit(periods(meter, 'baseline')) : degreeDayFit(periods(meter, 'baseline'), balance));
  };

  it.each(degreeDayFits.rows)('$place', ({ given, expect: printed }) => {
    const fit = fitted(given.meter, given.isSearched);
    within(degF(fit.coolingBalance_degC)!, printed.cooling_degF, 1e-9);
    if (printed.heating_degF === null) expect(fit.heatingBalance_degC).toBeNull();
    else within(degF(fit.heatingBalance_degC)!, printed.heating_degF, 1e-9);
    within(fit.base_kWh_day, printed.base);
    within(perF(fit.cooling_kWh_dayK), printed.cooling_kWh_dayF);
    within(perF(fit.heating_kWh_dayK), printed.heating_kWh_dayF);
    within(fit.r2Adjusted, printed.r2Adjusted);
    if (printed.cvRmse !== undefined) within(fit.cvRmse, printed.cvRmse);
    if (printed.nmbe !== undefined) within(fit.nmbe, printed.nmbe);
  });

  it.each(meteredSavings.rows)('saving of the $place', ({ given, expect: printed }) => {
    const saving = meteredSaving(fitted(given.meter, false), { baseline: periods(given.meter, 'baseline'), reporting: periods(given.meter, 'reporting') });
    const { lag1, ...others } = printed;
    correlationWithin(saving.lag1, lag1);
    for (const name of Object.keys(others) as (keyof typeof others)[]) within(saving[name], others[name]);
    expect(saving.isTold).toBe(printed.fractionalUncertainty < 1);
  });

  it.each(dailyFits.rows)('by day, $place', ({ given, expect: printed }) => {
    const warmth = temperatures();
    const days = tableOf('electricity-cooling-daily.csv').flatMap(([start, value]) => {
      const day = start!.slice(0, 10);
      const outdoor_degC = warmth.get(day);
      return value === '' || value === undefined || outdoor_degC === undefined ? [] : [{ day, use_kWh: Number(value), days: 1, outdoor_degC }];
    });
    const baseline = days.filter(({ day }) => day >= '2015-12-27' && day <= '2016-12-25');
    const reporting = days.filter(({ day }) => day >= '2017-01-04' && day < '2018-01-04');
    const balance = { cooling_degC: degCOf_degF(65), heating_degC: null };
    const fit = found(given.isSearched ? searchedDegreeDayFit(baseline) : degreeDayFit(baseline, balance));
    within(degF(fit.coolingBalance_degC)!, printed.cooling_degF, 1e-9);
    within(fit.base_kWh_day, printed.base);
    within(perF(fit.cooling_kWh_dayK), printed.cooling_kWh_dayF);
    within(fit.cvRmse, printed.cvRmse);
    within(fit.r2Adjusted, printed.r2Adjusted);
    const saving = meteredSaving(fit, { baseline, reporting });
    correlationWithin(saving.lag1, printed.lag1);
    for (const name of ['effectivePeriods', 'adjustedBaseline_kWh', 'observed_kWh', 'savingShare', 'fractionalUncertainty'] as const) within(saving[name], printed[name]);
  });
});
