import type { TimeModel } from '#calc';
import { z } from 'zod';
import { assumption, type Assumption } from './assumption.js';
import { readData } from './data-folder.js';

const minutes = assumption(z.number().nonnegative());
const factor = assumption(z.number().positive());

const timeModelFile = z.strictObject({
  about: z.string(),
  values: z.strictObject({
    perDwelling_min: minutes,
    perPane_min: minutes,
    perArea_min_m2: minutes,
    perLite_min: minutes,
    ladderFactor: factor,
    overFurnitureFactor: factor,
    woodOrPuttyFactor: factor,
    oldFilm_min: minutes,
    oldFilm_min_m2: minutes,
    seam_min: minutes,
    firstDayFactor: factor,
    lowFactor: factor,
    highFactor: factor,
  }) satisfies z.ZodType<Readonly<Record<keyof TimeModel, unknown>>>,
});

/** The time model with where each of its figures comes from. */
export interface SourcedTimeModel extends TimeModel {
  readonly sources: Readonly<Record<keyof TimeModel, Assumption<number>>>;
}

/**
 * Opens the built-in time model of film work.
 *
 * @param folder the data folder
 */
export function openTimeModel(folder: string): SourcedTimeModel {
  const sources = timeModelFile.parse(readData(folder, 'labour/time-model.json')).values;
  const model = Object.fromEntries(Object.entries(sources).map(([key, { value }]) => [key, value])) as unknown as TimeModel;
  return { ...model, sources };
}
