import { paneHeat, paneStress, type PaneWeather, survivingCut } from '#calc';
import { filmOnSide } from '../dwelling/dwelling-task.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { FilmOption } from '../options/option.js';
import { setOfOption, type ValuedOptions } from '../options/valued-options.js';
import type { OptionGlass } from './energy-types.js';

/** Below this share of the single-clear cut a sheet's figure promises too much. */
const MISLEADS_BELOW = 0.9;

type OnGlass = Omit<OptionGlass, 'option' | 'glass_m2'>;

/** A film on a glass as it is used: with what was measured there. */
function onGlass(at: { readonly glazing: string; readonly measuredAt: string | null; readonly film: number; readonly weathers: readonly PaneWeather[] }, choices: FilmChoices): OnGlass {
  const booked = choices.glazings.get(at.glazing);
  const { film } = choices.films[at.film] ?? {};
  const seen = at.measuredAt === null ? undefined : choices.measured.glass.get(at.measuredAt);
  const sheet = seen?.films.get(at.film)?.sheet ?? choices.room.films[at.film]?.sheet;
  if (booked === undefined || film === undefined || sheet === undefined) throw new RangeError(`glass and film must be known, got ${at.glazing}`);
  const makeUp = seen?.makeUp ?? booked.makeUp;
  const { cut, cutOnSingleClear, survives } = survivingCut(makeUp, sheet);
  const heat = paneHeat(makeUp, sheet);
  const stress = at.weathers.map((weather) => paneStress(heat, weather)).reduce((a, b) => (b.stress_MPa > a.stress_MPa ? b : a));
  return { glazing: booked.name, film: film.id, cut, cutOnSingleClear, survives, misleads: survives < MISLEADS_BELOW, assumed: booked.note, isMeasured: seen !== undefined, edgeStress_MPa: stress.stress_MPa, edgeStressWeather: stress.weather };
}

/** For every option shown: what its film does on each of its glasses, worked out once per glass, film and site. */
export function glassReview(options: readonly FilmOption[], of: { readonly valued: ValuedOptions; readonly choices: FilmChoices; readonly weathersOf: (building: string) => readonly PaneWeather[] }): OptionGlass[] {
  const tasks = new Map(of.valued.tasks.map((t) => [t.dwelling.id, t]));
  const known = new Map<string, OnGlass>();
  return options.flatMap((option): OptionGlass[] => {
    const task = tasks.get(option.dwelling);
    if (task === undefined) throw new RangeError(`dwelling must have a task, got ${option.dwelling}`);
    const set = setOfOption(option, of.choices);
    const areas = new Map<string, number>();
    for (const panel of task.panels) {
      const film = filmOnSide(set, panel.azimuth_deg);
      const may = film === undefined ? 'no' : panel.filmable[film];
      if (film === undefined || may === 'no' || (may === 'waiting' && set.readyOnly)) continue;
      const key = [task.dwelling.building, panel.glazing, panel.measuredAt ?? '', String(film)].join('|');
      if (!known.has(key)) known.set(key, onGlass({ glazing: panel.glazing, measuredAt: panel.measuredAt, film, weathers: of.weathersOf(task.dwelling.building) }, of.choices));
      areas.set(key, (areas.get(key) ?? 0) + panel.glass_m2);
    }
    return [...areas].map(([key, glass_m2]) => ({ option: option.id, glass_m2, ...known.get(key)! }));
  });
}
