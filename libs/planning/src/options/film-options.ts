import type { TimeModel } from '#calc';
import { type DwellingResult, type DwellingTask, filmOnSide, type SetResult } from '../dwelling/dwelling-task.js';
import type { FilmableWindows } from './filmable-windows.js';
import { installedCost, type WindowWork, windowWork } from './installed-cost.js';
import type { FilmOption, LifeSegment, PricedFilm } from './option.js';
import { glazingKeyOf } from '../known/glazing-book.js';
import type { OptionRebate, RebateCase } from './rebates.js';
import type { PlacedWindow } from '../known/placed-windows.js';
import type { PlanTerms } from '../plan/terms.js';

/** What turns a result into options that can be ranked and chosen. */
export interface OptionPricing {
  readonly films: readonly PricedFilm[];
  readonly filmable: FilmableWindows;
  readonly timeModel: TimeModel;
  readonly terms: PlanTerms;
  readonly lifeOf: (film: PricedFilm) => number;
  readonly rebatesOf: (option: RebateCase) => readonly OptionRebate[];
  /** What a building's contractor asks for putting film on, by its area; null where the own crew does it. */
  readonly contractorOf: (building: string) => number | null;
}

/** Windows an option films, and the letters and dates they hang on. */
export function windowsOfSet(task: DwellingTask, set: SetResult['set'], filmable: FilmableWindows): PlacedWindow[] {
  return task.dwelling.windows.filter((window) => {
    const state = filmable.of(window)[filmOnSide(set, window.azimuth_deg) ?? -1]?.state;
    return (state === 'ready' || (state === 'waiting' && !set.readyOnly));
  });
}

function segmentsOf(task: DwellingTask, result: SetResult, of: { readonly windows: readonly PlacedWindow[]; readonly glass_m2: (window: PlacedWindow) => number }): LifeSegment[] {
  return task.spans.map((span, i): LifeSegment => {
    const saving = result.spans[i];
    if (saving === undefined) throw new RangeError('spans of the result must be those of the task');
    const gone = of.windows.filter((w) => w.replacementYear !== null && w.replacementYear <= span.firstYear);
    return {
      firstYear: span.firstYear,
      plant: span.plant,
      windowsGone: gone.length,
      ...(gone.length > 0 ? { filmGone_m2: gone.reduce((sum, w) => sum + of.glass_m2(w), 0) } : {}),
      saving: { coolingElectricity_kWh: saving.coolingElectricity_kWh, cooling_cents: saving.cooling_cents, addedHeating_cents: saving.addedHeating_cents, addedHeating_kWh: saving.addedHeating_kWh },
    };
  });
}

/** Mean yearly cooling-cost reduction over the film's life from the study start, all payers, before added heating. */
export function meanCooling_cents(segments: readonly LifeSegment[], life_yr: number): number {
  const first = segments[0]?.firstYear ?? 0;
  let sum = 0;
  for (let y = 0; y < life_yr; y++) sum += segments.findLast((s) => s.firstYear <= first + y)?.saving.cooling_cents ?? 0;
  return sum / life_yr;
}

function optionOf(task: DwellingTask, result: SetResult, of: OptionPricing & { readonly found: DwellingResult['asFound']; readonly workOf: (window: PlacedWindow) => WindowWork }): FilmOption | null {
  const filmOf = (side: number): PricedFilm => {
    const film = of.films[filmOnSide(result.set, side) ?? -1];
    if (film === undefined) throw new RangeError(`films must be among the priced films, got ${result.set.films.join(', ')}`);
    return film;
  };
  const films = result.set.facades.map(filmOf);
  const windows = windowsOfSet(task, result.set, of.filmable);
  if (windows.length === 0) return null;
  const states = windows.map((w) => of.filmable.of(w)[filmOnSide(result.set, w.azimuth_deg)!]!);
  const segments = segmentsOf(task, result, { windows, glass_m2: (w) => of.workOf(w).glass_m2 });
  const filmLife_yr = Math.min(...films.map((f) => of.lifeOf(f)));
  const ids = films.map((f) => f.film.id);
  const isMixed = new Set(ids).size > 1;
  const yearlyCooling_cents = meanCooling_cents(segments, filmLife_yr);
  const contractor_cents_m2 = of.contractorOf(task.dwelling.building);
  const costed = installedCost(windows.map((w) => ({ ...of.workOf(w), film: filmOf(w.azimuth_deg) })), { terms: of.terms, timeModel: of.timeModel, contractor_cents_m2 });
  const from = states.reduce((latest, s) => (s.from !== null && s.from > latest ? s.from : latest), of.terms.studyStart);
  return {
    id: `${task.dwelling.id}|${result.set.facades.join('+')}|${isMixed ? ids.join('+') : ids[0]!}${result.set.readyOnly ? '|ready panes' : ''}`,
    dwelling: task.dwelling.id,
    building: task.dwelling.building,
    facades: result.set.facades,
    films: ids,
    film: [...new Set(ids)].join('+'),
    ...costed,
    segments,
    filmLife_yr,
    payer: task.dwelling.meter.payerRule,
    crew: contractor_cents_m2 === null ? 'own' : 'contractor',
    rebates: of.rebatesOf({ building: task.dwelling.building, cost_cents: costed.cost.total_cents, windows: windows.map((w) => ({ azimuth_deg: w.azimuth_deg, glass_m2: of.workOf(w).glass_m2, glazing: glazingKeyOf(w), film: filmOf(w.azimuth_deg).film.id })) }),
    from,
    waitsFor: [...new Set(states.flatMap((s) => s.waitsFor))].sort(),
    yearlyCooling_cents,
    yearlyCoolingSpread_cents: Math.abs(yearlyCooling_cents) * result.spreadShare,
    asFoundCooling_kWh: of.found.coolingElectricity_kWh,
    peak_kW: { asFound: of.found.peak_kW, filmed: result.peak_kW },
    runHours_h: { asFound: of.found.runHours_h, filmed: result.runHours_h },
    notes: of.found.hoursOverSetPoint > 0 ? [`the plant cannot hold the set point in ${String(of.found.hoursOverSetPoint)} hours a year as found: film gives comfort first there`] : [],
  };
}

/** Options of every dwelling from the results of the distinct ones: ids, cost, consent dates and notes joined on. */
export function filmOptions(tasks: readonly DwellingTask[], results: ReadonlyMap<string, DwellingResult>, of: OptionPricing): FilmOption[] {
  return tasks.flatMap((task) => {
    const result = results.get(task.key);
    if (result === undefined) throw new RangeError(`results must hold every task, got none for ${task.dwelling.id}`);
    const works = new Map(task.dwelling.windows.map((window) => [window, windowWork(window, of.terms)]));
    const at = { ...of, found: result.asFound, workOf: (window: PlacedWindow) => works.get(window) ?? windowWork(window, of.terms) };
    return result.sets.map((set) => optionOf(task, set, at)).filter((option) => option !== null);
  });
}
