import { AS_SURVEYED, asFound, type Departure, dressedWith, type Dressing, type DwellingBench, type OptionBench, runOf } from './dwelling-run.js';
import type { FacadeSet } from './dwelling-task.js';
import type { SideSun } from './side-sun.js';

/** What the dwelling's own runs have left: sums of its sides, and its cooling load as found and surveyed. */
export interface Surveyed {
  readonly sun: SideSun;
  readonly found_kWh: number;
}

/** Cooling load cut by a set under a departure from the survey, kWh a year; loads stand for money, since the range is relative. */
function cutUnder(at: DwellingBench, bench: OptionBench, of: { readonly set: FacadeSet; readonly departure: Departure; readonly as: Surveyed }): number {
  const { set, departure, as } = of;
  const coolingOf = (dressing: Dressing): number => runOf(at, bench, { dressing, departure, sun: as.sun }).cooling_kWh;
  // How much a film cuts says nothing of the dwelling without it.
  const isSurveyed = departure.setPoint_K === 0 && departure.sun === 1;
  return (isSurveyed ? as.found_kWh : coolingOf(asFound)) - coolingOf(dressedWith(set, at.task.spans[0]?.firstYear ?? 0));
}

/**
 * One standard deviation of a dwelling's saving over the saving, from what is its own: set point, sun that really arrives, the film's cut
 * and the machine's efficiency. Each is moved by one standard deviation either way by full runs of the dwelling's widest set; the effects
 * are added in quadrature. What all dwellings share (price, weather year, how much of a computed saving bills show) is not in it: it moves
 * no rank.
 *
 * @returns 0 for a dwelling without sets; 1 where the widest set saves nothing
 */
export function savingSpread(at: DwellingBench, bench: OptionBench, as: Surveyed): number {
  const set = at.task.sets.reduce<FacadeSet | undefined>((best, s) => (best === undefined || s.facades.length > best.facades.length ? s : best), undefined);
  if (set === undefined) return 0;
  const { doubt } = bench.room;
  const middle = cutUnder(at, bench, { set, departure: AS_SURVEYED, as });
  if (middle <= 0) return 1;
  const half = (low: Partial<Departure>, high: Partial<Departure>): number =>
    (cutUnder(at, bench, { set, departure: { ...AS_SURVEYED, ...high }, as }) - cutUnder(at, bench, { set, departure: { ...AS_SURVEYED, ...low }, as })) / 2 / middle;
  const setPoint = half({ setPoint_K: doubt.setPoint_K }, { setPoint_K: -doubt.setPoint_K });
  const sun = half({ sun: 1 - doubt.useFactor }, { sun: 1 + doubt.useFactor });
  const film = half({ filmCut: -doubt.filmCut }, { filmCut: doubt.filmCut });
  return Math.hypot(setPoint, sun, film, doubt.efficiency);
}
