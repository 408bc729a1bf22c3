import type { TimeModel } from './time-model.js';

/** Minutes of one finished visit beside what the model gave for it. */
export interface VisitActual {
  readonly model_min: number;
  readonly real_min: number;
}

/** A time model drawn towards what the crew really took. */
export interface RecalibratedTime {
  /** Every minute of the model times this. */
  readonly factor: number;
  /** Mean ratio of real to model as it was recorded; 1 without records. */
  readonly recorded: number;
  readonly visits: number;
  readonly model: TimeModel;
}

/** Recorded visits that weigh as much as the model itself: own judgement, no source. */
const MODEL_VISITS = 4;
/** Half width of the middle 8 in 10 of a normal spread, in standard deviations. */
const EIGHT_IN_TEN = 1.2816;

/**
 * The time model after real minutes: a ratio, shrunk towards the model while there are few visits.
 *
 *   factor = exp(n / (n + k) × mean ln(real / model))
 *   half width of the range² = (k × own² + n × recorded²) / (k + n),  recorded = 1.2816 × spread of ln(real / model) about ln(factor)
 *
 * All minutes of the model are scaled alike: a visit's total says nothing of how it divides into panes and set-up.
 *
 * @param model the time model that gave the visits' minutes, low and high factor below and above 1
 * @param actuals finished visits, minutes above 0; their order plays no part
 * @param modelVisits visits the model counts for, above 0; default 4
 * @returns factor, recorded mean ratio, number of visits, and the model with minutes and range moved
 * @throws RangeError when minutes or `modelVisits` are not above 0
 * @source shrinkage of a log-normal mean towards a prior (normal–normal, textbook, from memory); the weight of four visits is own judgement, no source
 */
export function recalibrated(model: TimeModel, actuals: readonly VisitActual[], modelVisits = MODEL_VISITS): RecalibratedTime {
  if (!(modelVisits > 0 && Number.isFinite(modelVisits))) throw new RangeError(`modelVisits must be above 0, got ${modelVisits}`);
  const logs = actuals.map(({ model_min, real_min }) => {
    if (!(model_min > 0 && Number.isFinite(model_min))) throw new RangeError(`model_min must be above 0, got ${model_min}`);
    if (!(real_min > 0 && Number.isFinite(real_min))) throw new RangeError(`real_min must be above 0, got ${real_min}`);
    return Math.log(real_min / model_min);
  });
  logs.sort((a, b) => a - b);
  const n = logs.length;
  const mean = n === 0 ? 0 : logs.reduce((sum, log) => sum + log, 0) / n;
  const moved = (n / (n + modelVisits)) * mean;
  const factor = Math.exp(moved);
  const own = Math.log(model.highFactor / model.lowFactor) / 2;
  const spread2 = n === 0 ? 0 : (EIGHT_IN_TEN ** 2 * logs.reduce((sum, log) => sum + (log - moved) ** 2, 0)) / n;
  const stretch = own > 0 ? Math.sqrt((modelVisits * own ** 2 + n * spread2) / (modelVisits + n)) / own : 1;
  return { factor, recorded: Math.exp(mean), visits: n, model: scaled(model, factor, stretch) };
}

function scaled(model: TimeModel, factor: number, stretch: number): TimeModel {
  return {
    ...model,
    perDwelling_min: model.perDwelling_min * factor,
    perPane_min: model.perPane_min * factor,
    perArea_min_m2: model.perArea_min_m2 * factor,
    perLite_min: model.perLite_min * factor,
    oldFilm_min: model.oldFilm_min * factor,
    oldFilm_min_m2: model.oldFilm_min_m2 * factor,
    seam_min: model.seam_min * factor,
    lowFactor: model.lowFactor ** stretch,
    highFactor: model.highFactor ** stretch,
  };
}
