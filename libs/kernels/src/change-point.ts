import { changePointFit, datedPeriods, degreeDayFit, type MeteredPeriod, type MeteredSaving, meteredSaving, type Missing, searchedDegreeDayFit, type UseFit } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const day = z.iso.date();
const period = z.strictObject({
  use_kWh: z.number(),
  days: z.number().gt(0).optional().describe('of the period; with start and end it follows from them'),
  outdoor_degC: z.number().optional().describe('mean of the period; with start and end it follows from the daily temperatures'),
  start: day.optional(),
  end: day.optional().describe('first day not included'),
});
const temperatures = z
  .union([z.strictObject({ start: day, values: z.array(z.number()).min(1) }), z.record(day, z.number())])
  .describe('mean outdoor temperature by day: {"2026-01-01": 4.2, …}, or a first day and the values that follow it');

const input = z
  .strictObject({
    periods: z.array(period).min(1).describe('before the work, in order of time'),
    reporting: z.array(period).min(1).optional().describe('after the work'),
    dailyTemperatures_degC: temperatures.optional(),
    model: z.enum(['3PC', '5P', 'degree-day']),
    coolingBalance_degC: z.number().optional().describe('of degree-day; searched where neither balance is given'),
    heatingBalance_degC: z.number().optional(),
    confidence: z.number().gt(0).lt(1).default(0.9),
  })
  .superRefine((given, context) => {
    const isDated = given.dailyTemperatures_degC !== undefined;
    for (const list of ['periods', 'reporting'] as const) {
      (given[list] ?? []).forEach((each, i) => {
        for (const field of isDated ? (['start', 'end'] as const) : (['days', 'outdoor_degC'] as const)) {
          if (each[field] === undefined) context.addIssue({ code: 'custom', path: [list, i, field], message: `${field} is needed ${isDated ? 'with' : 'without'} dailyTemperatures_degC` });
        }
      });
    }
    for (const field of ['coolingBalance_degC', 'heatingBalance_degC'] as const) {
      if (given[field] !== undefined && given.model !== 'degree-day') context.addIssue({ code: 'custom', path: [field], message: 'a given balance point belongs to degree-day' });
    }
  });

type Given = z.infer<typeof input>;

const DAY_MS = 86_400_000;

function temperatureByDay(of: NonNullable<Given['dailyTemperatures_degC']>): Map<string, number> {
  const { start, values } = of as { start?: unknown; values?: unknown };
  if (typeof start !== 'string' || !Array.isArray(values)) return new Map(Object.entries(of as Record<string, number>));
  return new Map((values as number[]).map((value, i) => [new Date(Date.parse(`${start}T00:00:00Z`) + i * DAY_MS).toISOString().slice(0, 10), value]));
}

function periodsOf(list: Given['periods'], given: Given): MeteredPeriod[] {
  if (given.dailyTemperatures_degC === undefined) return list.map(({ use_kWh, days = 1, outdoor_degC = 0 }) => ({ use_kWh, days, outdoor_degC }));
  return datedPeriods(list.map(({ use_kWh, start = '', end = '' }) => ({ use_kWh, start, end })), temperatureByDay(given.dailyTemperatures_degC));
}

function fitOf(given: Given, periods: readonly MeteredPeriod[]): UseFit | Missing {
  if (given.model !== 'degree-day') return changePointFit(given.model, periods);
  const { coolingBalance_degC: cooling_degC = null, heatingBalance_degC: heating_degC = null } = given;
  return cooling_degC === null && heating_degC === null ? searchedDegreeDayFit(periods) : degreeDayFit(periods, { cooling_degC, heating_degC });
}

/** Uncertainties that do not exist become null with the reason beside. */
function savingAsJson(saving: MeteredSaving): object {
  const { fractionalUncertainty: share, fractionalUncertaintyConstant: constant, ...rest } = saving;
  const figure = (of: number | Missing): number | null => (typeof of === 'number' ? of : null);
  return { ...rest, fractionalUncertainty: figure(share), fractionalUncertaintyConstant: figure(constant), ...(typeof share === 'number' ? {} : { why: { fractionalUncertainty: share.why } }) };
}

/** A meter's use as a function of the weather, and what the bills after the work say against it. */
export const kernel = defineKernel({
  name: 'change-point',
  about: 'Base load, cooling and heating of a meter from its bills and the weather; with bills after the work the saving and its error.',
  input,
  run: (given) => {
    const baseline = periodsOf(given.periods, given);
    const fit = fitOf(given, baseline);
    if ('why' in fit) return { model: given.model, coefficients: null, why: fit.why };
    const { base_kWh_day, cooling_kWh_dayK, heating_kWh_dayK, ...rest } = fit;
    const saving = given.reporting === undefined ? {} : savingAsJson(meteredSaving(fit, { baseline, reporting: periodsOf(given.reporting, given) }, given.confidence));
    return { coefficients: { base_kWh_day, cooling_kWh_dayK, heating_kWh_dayK }, ...rest, ...saving };
  },
});
