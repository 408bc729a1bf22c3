import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { changePointFit, datedPeriods, degCOf_degF, degreeDayFit, meteredSaving, searchedDegreeDayFit, studentT, type MeteredPeriod, type Missing, type UseFit } from '#calc';
import { localDays } from '../../../libs/intake/src/bills/local-days.js';
import { changePointFits, dailyFits, degreeDayFits, meteredSavings, periodsOf, printedT, readingsOf, type Meter } from '../bills.js';
import { espiReadings } from '../espi-readings.js';
import { byName, check, type Check, type Figure } from './check.js';

const perF = (slope_kWh_dayK: number): number => slope_kWh_dayK / 1.8;
const degF = (temperature_degC: number | null): number | null => (temperature_degC === null ? null : temperature_degC * 1.8 + 32);
const found = (fit: UseFit | Missing): UseFit => {
  if ('why' in fit) throw new Error(fit.why);
  return fit;
};
const REL = 1e-5;
/** Relative, but a figure near nothing is held to its place; a correlation is of order one, so its digits after the point count. */
const limited = (figures: readonly Figure[]): Figure[] =>
  figures.map((figure) => ({ ...figure, limit: figure.what.endsWith('_degF') ? 1e-7 : figure.what === 'lag1' ? REL : typeof figure.expected === 'number' ? REL * Math.max(Math.abs(figure.expected), 1e-2) : 0 }));
const told = (fit: UseFit): Record<string, unknown> => ({
  ...fit,
  cooling_degF: degF(fit.coolingBalance_degC), heating_degF: degF(fit.heatingBalance_degC),
  base: fit.base_kWh_day, cooling_kWh_dayF: perF(fit.cooling_kWh_dayK), heating_kWh_dayF: perF(fit.heating_kWh_dayK),
});

// The daily temperatures and the daily meter are files that do not belong to the project.
const folder = join(process.cwd(), '..', 'shared', 'bills');
const isHere = (): boolean => existsSync(folder);
const tableOf = (name: string): string[][] => readFileSync(join(folder, name), 'utf8').trim().split('\n').slice(1).map((line) => line.split(','));
const temperatures = (): Map<string, number> => new Map(tableOf('daily-temperature.csv').map(([day, mean]) => [day!, degCOf_degF(Number(mean))]));
const periods = (meter: Meter, part: 'baseline' | 'reporting'): MeteredPeriod[] => datedPeriods(readingsOf(meter, part), temperatures());

function degreeDays(baseline: readonly MeteredPeriod[], meter: Meter, isSearched: boolean): UseFit {
  const balance = { cooling_degC: degCOf_degF(65), heating_degC: meter === 'cooling' ? null : degCOf_degF(60) };
  return found(isSearched ? searchedDegreeDayFit(baseline) : degreeDayFit(baseline, balance));
}

function dailyPeriods(): { baseline: MeteredPeriod[]; reporting: MeteredPeriod[] } {
  const warmth = temperatures();
  const days = tableOf('electricity-cooling-daily.csv').flatMap(([start, value]) => {
    const day = start!.slice(0, 10);
    const outdoor_degC = warmth.get(day);
    return value === '' || value === undefined || outdoor_degC === undefined ? [] : [{ day, use_kWh: Number(value), days: 1, outdoor_degC }];
  });
  return { baseline: days.filter(({ day }) => day >= '2015-12-27' && day <= '2016-12-25'), reporting: days.filter(({ day }) => day >= '2017-01-04' && day < '2018-01-04') };
}

export const bills: readonly Check[] = [
  check({
    title: 'Change points on monthly bills',
    table: changePointFits,
    compare: ({ given, expect: { rmse, n, p, ...printed } }) => {
      const fit = found(changePointFit(given.model, periodsOf(given.meter, 'baseline')));
      return [
        ...limited(byName(printed, told(fit))),
        ...limited([{ what: 'residualSum', expected: rmse ** 2 * (n - p), ours: fit.residualSum }]),
        { what: 'nmbe', expected: 0, ours: fit.nmbe, limit: 1e-12 },
        ...byName({ n, p }, fit, 0),
      ];
    },
  }),
  check({ title: 'Student’s t as printed', table: printedT, compare: ({ given, expect: t }) => [{ what: 't', expected: t.value, ours: studentT(given.confidence, given.freedom), limit: t.within }] }),
  check({
    title: 'Degree days on monthly bills',
    table: degreeDayFits,
    isHere,
    compare: ({ given, expect: printed }) => limited(byName(printed, told(degreeDays(periods(given.meter, 'baseline'), given.meter, given.isSearched)))),
  }),
  check({
    title: 'Metered saving after the work, monthly',
    table: meteredSavings,
    isHere,
    compare: ({ given, expect: printed }) => {
      const baseline = periods(given.meter, 'baseline');
      return limited(byName(printed, meteredSaving(degreeDays(baseline, given.meter, false), { baseline, reporting: periods(given.meter, 'reporting') })));
    },
  }),
  check({
    title: 'The cooling meter by day',
    table: dailyFits,
    isHere,
    compare: ({ given, expect: printed }) => {
      const days = dailyPeriods();
      const fit = degreeDays(days.baseline, 'cooling', given.isSearched);
      return limited(byName(printed, { ...told(fit), ...meteredSaving(fit, days), r2Adjusted: fit.r2Adjusted, cvRmse: fit.cvRmse }));
    },
  }),
  check({
    title: 'Interval readings on their day',
    table: espiReadings,
    // The sum of the readings as read from a file is held in the spec of that reader.
    compare: ({ given, expect: { firstDay } }) => {
      const days = localDays({ tzOffset_s: given.tzOffset_s, dstOffset_s: 0, dstStartRule: null, dstEndRule: null });
      return [
        { what: 'day of the first reading', expected: firstDay, ours: days.dayOf(given.firstStart_s) },
        { what: 'its length, s', expected: given.blockDuration_s, ours: days.length_s(firstDay) },
      ];
    },
  }),
];
export const billFilesAreHere = isHere;
