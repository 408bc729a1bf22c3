import { dwellingTasks } from '../dwelling/dwelling-tasks.js';
import type { DwellingTask } from '../dwelling/dwelling-task.js';
import { grouped } from '../grouped.js';
import type { KnownDwelling } from '../known/known-dwelling.js';
import type { KnownPortfolio } from '../known/known-portfolio.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';
import type { Workers } from '../workers.js';

/** What runs of dwellings as found need. */
export interface RunsAt {
  readonly known: KnownPortfolio;
  readonly skies: SkiesOnFacades;
  readonly choices: FilmChoices;
  readonly work: Workers;
}

/** Tasks of some dwellings as found: no sets, the first year of the study alone. */
function bareTasks(dwellings: readonly KnownDwelling[], at: RunsAt): DwellingTask[] {
  const year = Number(at.known.portfolio.settings.studyStart.slice(0, 4));
  return dwellingTasks({ ...at.known, dwellings }, { skies: at.skies, filmable: at.choices.filmable, measuredAt: at.choices.measured.keyOf, films: 0, mixed: false, years: [year, year] });
}

/** Modelled cooling electricity of dwellings as found in a typical year, kWh; equal ones are computed once. */
export async function modelledCooling_kWh(dwellings: readonly KnownDwelling[], at: RunsAt): Promise<ReadonlyMap<string, number>> {
  const tasks = bareTasks(dwellings, at);
  const distinct = [...grouped(tasks, (t) => t.key).values()].map((same) => same[0]!);
  const results = await at.work.dwellingOptions(distinct, at.choices.room);
  const byKey = new Map(results.map((r) => [r.key, r.asFound.coolingElectricity_kWh]));
  return new Map(tasks.map((t) => [t.dwelling.id, byKey.get(t.key)!]));
}

/** Modelled use of dwellings as found by day of a typical year, kWh: base load, cooling and electric heating. @returns 365 values a dwelling */
export async function modelledDays_kWh(dwellings: readonly KnownDwelling[], at: RunsAt): Promise<ReadonlyMap<string, Float64Array>> {
  const tasks = bareTasks(dwellings, at);
  const distinct = [...grouped(tasks, (t) => t.key).values()].map((same) => same[0]!);
  const loads = await at.work.meterLoads(distinct.map((task) => ({ task, set: null })), at.choices.room);
  const byKey = new Map(distinct.map((task, i) => [task.key, loads[i]!]));
  const ofKey = new Map([...byKey].map(([key, hours]) => [key, daySums(hours)]));
  return new Map(tasks.map((t) => [t.dwelling.id, ofKey.get(t.key)!]));
}

function daySums(hours: Float64Array): Float64Array {
  const days = new Float64Array(365);
  for (let h = 0; h < 8760; h++) {
    const day = Math.floor(h / 24);
    days[day] = days[day]! + hours[h]!;
  }
  return days;
}
