import type { Reach } from '../portfolio/index.js';
import type { TimeModel } from './time-model.js';

/** Equal panes of one window. */
export interface PaneWork {
  readonly count: number;
  /** Glass of one pane. */
  readonly area_m2: number;
  readonly reach: Reach;
  /** The window is divided into lites: each is quicker than a full pane. */
  readonly isDividedLite?: boolean;
  readonly hasWoodOrPutty?: boolean;
  readonly hasOldFilm?: boolean;
  /** Seams in one pane, where it is larger than the roll both ways. */
  readonly seams?: number;
}

/** Person-minutes with their range: `low` and `high` are what a good and a bad day take. */
export interface PersonMinutes {
  readonly low: number;
  readonly best: number;
  readonly high: number;
}

/** Person-minutes of a dwelling, and the part of the best figure that takes old film off. */
export interface InstallMinutes extends PersonMinutes {
  readonly removal: number;
}

function reachFactor(reach: Reach, model: TimeModel): number {
  if (reach === 'ladder') return model.ladderFactor;
  return reach === 'over-furniture' ? model.overFurnitureFactor : 1;
}

function workOf(pane: PaneWork, model: TimeModel): { readonly film: number; readonly removal: number } {
  const { count, area_m2, seams = 0 } = pane;
  if (!(Number.isInteger(count) && count >= 0)) throw new RangeError(`count must be a whole number of 0 or more, got ${count}`);
  if (!(area_m2 > 0 && Number.isFinite(area_m2))) throw new RangeError(`area_m2 must be above 0, got ${area_m2}`);
  if (!(Number.isInteger(seams) && seams >= 0)) throw new RangeError(`seams must be a whole number of 0 or more, got ${seams}`);
  const factor = count * reachFactor(pane.reach, model) * (pane.hasWoodOrPutty === true ? model.woodOrPuttyFactor : 1);
  const each = pane.isDividedLite === true ? model.perLite_min : model.perPane_min;
  return {
    film: factor * (each + model.perArea_min_m2 * area_m2 + model.seam_min * seams),
    removal: pane.hasOldFilm === true ? factor * (model.oldFilm_min + model.oldFilm_min_m2 * area_m2) : 0,
  };
}

/**
 * Person-minutes to film panes of one dwelling on one visit.
 *
 *   first-day factor × (per dwelling + Σ panes × reach × wood or putty × (per pane + per area × area + seams + old film))
 *
 * @param job panes by window, area in m² of one pane, and whether a new crew has its first day
 * @param model the time model; minutes are of one person, so a crew of two is half as long at the glass
 * @returns low, best and high person-minutes, ≥ 0; none at all where there is no pane
 * @throws RangeError when a count, an area or a number of seams is outside its range
 * @source own time model, see data/labour; no public table was found
 */
export function installMinutes(job: { readonly panes: readonly PaneWork[]; readonly isFirstDay?: boolean }, model: TimeModel): InstallMinutes {
  const work = job.panes.map((pane) => workOf(pane, model));
  const paneCount = job.panes.reduce((sum, pane) => sum + pane.count, 0);
  if (paneCount === 0) return { low: 0, best: 0, high: 0, removal: 0 };
  const day = job.isFirstDay === true ? model.firstDayFactor : 1;
  const removal = day * work.reduce((sum, each) => sum + each.removal, 0);
  const best = day * (model.perDwelling_min + work.reduce((sum, each) => sum + each.film, 0)) + removal;
  return { low: best * model.lowFactor, best, high: best * model.highFactor, removal };
}

/**
 * Cost of person-minutes.
 *
 *   minutes / 60 × rate
 *
 * @param minutes person-minutes, ≥ 0
 * @param rate_cents_h loaded cost of a person-hour, ≥ 0
 * @returns cents, with fractions
 * @throws RangeError when either is below zero or not finite
 * @source definition
 */
export function labour_cents(minutes: number, rate_cents_h: number): number {
  if (!(minutes >= 0 && Number.isFinite(minutes))) throw new RangeError(`minutes must be 0 or more, got ${minutes}`);
  if (!(rate_cents_h >= 0 && Number.isFinite(rate_cents_h))) throw new RangeError(`rate_cents_h must be 0 or more, got ${rate_cents_h}`);
  return (minutes / 60) * rate_cents_h;
}
