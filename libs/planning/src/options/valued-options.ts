import { dwellingTasks } from '../dwelling/dwelling-tasks.js';
import type { DwellingResult, DwellingTask, FacadeSet } from '../dwelling/dwelling-task.js';
import type { FilmChoices } from './film-choices.js';
import { filmOptions } from './film-options.js';
import { grouped } from '../grouped.js';
import type { KnownPortfolio } from '../known/known-portfolio.js';
import type { FilmOption } from './option.js';
import { withNeighbours } from './shared-meters.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';
import type { Progress, Workers } from '../workers.js';

/** The options of all dwellings, with the tasks they were computed from. */
export interface ValuedOptions {
  readonly tasks: readonly DwellingTask[];
  readonly options: readonly FilmOption[];
  readonly distinct: number;
}

/** Set a plan line stands for. */
export function setOfOption(option: FilmOption, choices: FilmChoices): FacadeSet {
  return { facades: option.facades, films: option.films.map((id) => choices.films.findIndex((f) => f.film.id === id)), readyOnly: option.id.endsWith('|ready panes') };
}

/** Tasks as found: neighbours on shared meters as they are today. */
export async function foundTasks(known: KnownPortfolio, at: { readonly skies: SkiesOnFacades; readonly choices: FilmChoices; readonly mixed: boolean; readonly years: readonly [number, number]; readonly work: Workers }): Promise<DwellingTask[]> {
  const tasks = dwellingTasks(known, { skies: at.skies, filmable: at.choices.filmable, measuredAt: at.choices.measured.keyOf, filmDone: at.choices.filmDone, films: at.choices.films.length, mixed: at.mixed, years: at.years });
  return withNeighbours(tasks, { chosen: () => null, work: at.work, room: at.choices.room });
}

/** Computes every distinct dwelling once and joins ids, cost and consent on. */
export async function valuedOptions(tasks: readonly DwellingTask[], at: { readonly choices: FilmChoices; readonly work: Workers; readonly progress?: Progress | undefined }): Promise<ValuedOptions> {
  const { choices, work } = at;
  const distinct = [...grouped(tasks, (t) => t.key).values()].map((same) => same[0]!);
  const results = await work.dwellingOptions(distinct, choices.room, at.progress);
  const byKey = new Map<string, DwellingResult>(results.map((r) => [r.key, r]));
  const options = filmOptions(tasks, byKey, { films: choices.films, filmable: choices.filmable, timeModel: choices.timeModel, terms: choices.terms, lifeOf: choices.lifeOf, rebatesOf: choices.rebatesOf, contractorOf: choices.contractorOf });
  return { tasks, options, distinct: distinct.length };
}

/** Values the options of some meters again with what the plan has chosen for the neighbours. */
export async function revaluedOptions(valued: ValuedOptions, at: { readonly meters: ReadonlySet<string>; readonly chosen: (dwelling: string) => FacadeSet | null; readonly choices: FilmChoices; readonly work: Workers }): Promise<ValuedOptions> {
  const again = valued.tasks.filter((t) => at.meters.has(t.dwelling.meter.id));
  const tasks = await withNeighbours(again, { chosen: at.chosen, work: at.work, room: at.choices.room });
  const redone = await valuedOptions(tasks, at);
  const fresh = new Map(redone.options.map((o) => [o.id, o]));
  const anew = new Map(tasks.map((t) => [t.dwelling.id, t]));
  return { ...valued, tasks: valued.tasks.map((t) => anew.get(t.dwelling.id) ?? t), options: valued.options.map((o) => fresh.get(o.id) ?? o) };
}
