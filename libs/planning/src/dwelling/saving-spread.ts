import { AS_SURVEYED, asFound, type Departure, dressedWith, type DwellingBench, type OptionBench, runOf } from './dwelling-run.js';
import type { FacadeSet } from './dwelling-task.js';

/** Cooling load cut by a set under a departure from the survey, kWh a year; loads stand for money, since the range is relative. */
function cutUnder(at: DwellingBench, bench: OptionBench, of: { readonly set: FacadeSet; readonly departure: Departure }): number {
  const year = at.task.spans[0]?.firstYear ?? 0;
  const found = runOf(at, bench, { dressing: asFound, departure: of.departure }).cooling_kWh;
  return found - runOf(at, bench, { dressing: dressedWith(of.set, year), departure: of.departure }).cooling_kWh;
}

/**
 * One standard deviation of a dwelling's saving over the saving, from what is its own: set point, sun that really arrives, the film's cut
 * and the machine's efficiency. Each is moved by one standard deviation either way by full runs of the dwelling's widest set; the effects
 * are added in quadrature. What all dwellings share (price, weather year, how much of a computed saving bills show) is not in it: it moves
 * no rank.
 *
 * @returns 0 for a dwelling without sets; 1 where the widest set saves nothing
 */
export function savingSpread(at: DwellingBench, bench: OptionBench): number {
  const set = at.task.sets.reduce<FacadeSet | undefined>((best, s) => (best === undefined || s.facades.length > best.facades.length ? s : best), undefined);
  if (set === undefined) return 0;
  const { doubt } = bench.room;
  const middle = cutUnder(at, bench, { set, departure: AS_SURVEYED });
  if (middle <= 0) return 1;
  const half = (low: Partial<Departure>, high: Partial<Departure>): number =>
    (cutUnder(at, bench, { set, departure: { ...AS_SURVEYED, ...high } }) - cutUnder(at, bench, { set, departure: { ...AS_SURVEYED, ...low } })) / 2 / middle;
  const setPoint = half({ setPoint_K: doubt.setPoint_K }, { setPoint_K: -doubt.setPoint_K });
  const sun = half({ sun: 1 - doubt.useFactor }, { sun: 1 + doubt.useFactor });
  const film = half({ filmCut: -doubt.filmCut }, { filmCut: doubt.filmCut });
  return Math.hypot(setPoint, sun, film, doubt.efficiency);
}
