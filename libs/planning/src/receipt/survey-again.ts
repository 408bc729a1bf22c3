import { withTrueBearings } from '../known/true-bearings.js';
import { calibrated } from '../bills/calibrated.js';
import type { DwellingTask } from '../dwelling/dwelling-task.js';
import { type OptionBench, optionBench } from '../dwelling/dwelling-run.js';
import { chosenFor } from '../job/building-weather.js';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import { settingsInForce } from '../job/plan-settings.js';
import { planTerms } from '../job/plan-terms.js';
import { handLocks } from '../known/hand-locks.js';
import { knownPortfolio, type KnownPortfolio } from '../known/known-portfolio.js';
import { type FilmChoices, filmChoices } from '../options/film-choices.js';
import { withNeighbours } from '../options/shared-meters.js';
import { foundTasks, setOfOption } from '../options/valued-options.js';
import type { Plan } from '../plan/plan.js';
import { studyYears } from '../plan/settled.js';
import { skyOnFacades, type SkiesOnFacades } from '../sky/sky-on-facades.js';
import type { Workers } from '../workers.js';

/** How the other dwellings of a meter stand: as they are today, or with their films of the plan. */
export type Neighbours = 'as found' | 'as planned';

/** The stages before the options once more, for figures that hang on hours: what the plan itself does not keep. */
export interface SurveyAgain {
  readonly job: PlanJob;
  readonly known: KnownPortfolio;
  readonly skies: SkiesOnFacades;
  readonly choices: FilmChoices;
  readonly bench: OptionBench;
  /** Tasks of all dwellings on one meter. */
  readonly tasksOn: (meter: string, neighbours: Neighbours) => Promise<readonly DwellingTask[]>;
  /** The weather of a building as kernels name it. */
  readonly weatherOf: (building: string) => { readonly epw: string } | { readonly climate: string };
}

/**
 * Runs the first stages of the spine on the survey as it is kept now. Whether it is still that of the plan shows at each figure, which is
 * held against the plan's.
 *
 * @param asked the plan's survey and the built-in data, as for a new plan
 */
export async function surveyAgain(asked: PlanJob, of: { readonly plan: Plan; readonly work: Workers; readonly resolve: (file: string) => string }): Promise<SurveyAgain> {
  const { plan, work } = of;
  const job = withTrueBearings(asked);
  const defaultOf = defaultsOf(job.catalogue);
  const surveyed = knownPortfolio(job.portfolio, defaultOf);
  const terms = planTerms(job.portfolio.settings, defaultOf);
  const skies = skyOnFacades(surveyed, job.weather, job.catalogue.assumptions.value('albedo').value);
  const locks = handLocks(job.portfolio.locks, surveyed);
  const choices = filmChoices(surveyed, skies, { job, terms, locks });
  const settings = settingsInForce(job, surveyed, { terms, locks });
  const { known } = await calibrated(surveyed, { job, skies, choices, work });
  const chosen = new Map(plan.lines.map((line) => [line.dwelling, setOfOption(line.option, choices)]));
  return {
    job,
    known,
    skies,
    choices,
    bench: optionBench(choices.room),
    tasksOn: async (meter, neighbours) => {
      const onMeter = { ...known, dwellings: known.dwellings.filter((d) => d.meter.id === meter) };
      const tasks = await foundTasks(onMeter, { skies, choices, work, mixed: job.portfolio.settings.mixedFilm, years: studyYears(settings, choices) });
      return neighbours === 'as found' ? tasks : withNeighbours(tasks, { chosen: (id) => chosen.get(id) ?? null, work, room: choices.room });
    },
    weatherOf: (id) => chosenFor(known.buildings.get(id)!, job.catalogue, of.resolve).of,
  };
}
