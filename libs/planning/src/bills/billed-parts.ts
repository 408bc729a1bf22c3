import { type MeteredPeriod, useSplit } from '#calc';
import { daysBetween, daysWeather } from './day-weather.js';
import { before } from './meter-bills.js';
import { dayOfYear } from './bill-months.js';
import type { BilledPart, ComparedMeter } from './compared-meters.js';

/** What the bills of a meter are held against. */
export interface ModelledMeter {
  /** Use of the meter by day of a typical year as modelled. */
  readonly days: Float64Array;
  /** Cooling of it in the year. */
  readonly cooling_kWh: number;
  /** Base load the survey gives for the whole meter; null where it was assumed. */
  readonly givenBase_kWh: number | null;
  readonly typical: ReadonlyMap<string, number>;
  /** The typical year the parts are stated for. */
  readonly months: readonly MeteredPeriod[];
}

/** A base load somebody gave is taken this uncertain: own judgement. */
const GIVEN_SPREAD = 0.1;

/** Cooling that the split finds in the modelled months of the same bills. */
function splitOfModel_kWh(meter: ComparedMeter, of: ModelledMeter): number | null {
  const periods = before(meter.bills).map((p): MeteredPeriod => {
    const spanned = daysBetween(p.firstDay, p.lastDay);
    const daily_degC = daysWeather(spanned, { typical: of.typical }) ?? [];
    const use_kWh = spanned.reduce((sum, day) => sum + of.days[dayOfYear(day)]!, 0);
    return { use_kWh, days: p.days, daily_degC, outdoor_degC: daily_degC.reduce((a, b) => a + b, 0) / daily_degC.length };
  });
  const found = useSplit(periods, { weather: of.months });
  return 'why' in found || !(found.cooling.kWh > 0) ? null : found.cooling.kWh;
}

/**
 * Cooling and base load of a meter by its bills. A split takes what is cooled in every month for base load, in a warm place much of it; so the
 * modelled months of the same bills go through the same split, and the ratio of the two coolings is what counts. A base load that was given
 * leaves the rest for cooling.
 */
export function billedParts(meter: ComparedMeter, of: ModelledMeter): { readonly cooling: BilledPart; readonly base: BilledPart } {
  const { split, bills } = meter;
  if (bills.use === 'cooling') return { cooling: { kWh: split.total_kWh, standardError_kWh: split.total_kWh * split.fit.cvRmse }, base: { kWh: 0, standardError_kWh: 0 } };
  const noise = (split.fit.cvRmse * split.total_kWh) / Math.sqrt(split.periods);
  const above = split.total_kWh - split.heating.kWh;
  if (of.givenBase_kWh !== null) {
    const error = Math.hypot(GIVEN_SPREAD * of.givenBase_kWh, split.heating.standardError_kWh, noise);
    return { cooling: { kWh: above - of.givenBase_kWh, standardError_kWh: error }, base: { kWh: of.givenBase_kWh, standardError_kWh: error } };
  }
  const ofModel = splitOfModel_kWh(meter, of);
  const cooling_kWh = ofModel === null ? split.cooling.kWh : (split.cooling.kWh / ofModel) * of.cooling_kWh;
  const error = split.cooling.kWh > 0 ? (split.cooling.standardError_kWh / split.cooling.kWh) * cooling_kWh : Infinity;
  return { cooling: { kWh: cooling_kWh, standardError_kWh: error }, base: { kWh: above - cooling_kWh, standardError_kWh: Math.hypot(error, noise, split.heating.standardError_kWh) } };
}
