import { withTrueBearings } from '../known/true-bearings.js';
import { calibrated } from '../bills/calibrated.js';
import type { DwellingTask } from '../dwelling/dwelling-task.js';
import { type OptionBench, optionBench } from '../dwelling/dwelling-run.js';
import { chosenFor } from '../job/building-weather.js';
import { counted } from '../bills/counted.js';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import { type PlanSettingsInForce, settingsInForce } from '../job/plan-settings.js';
import { planTerms } from '../job/plan-terms.js';
import { handLocks } from '../known/hand-locks.js';
import { knownPortfolio, type KnownPortfolio } from '../known/known-portfolio.js';
import { type FilmChoices, filmChoices } from '../options/film-choices.js';
import { withNeighbours } from '../options/shared-meters.js';
import type { FilmOption } from '../options/option.js';
import { foundTasks, setOfOption, valuedOptions } from '../options/valued-options.js';
import { grouped } from '../grouped.js';
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
  /** Every option of some dwellings, valued as the plan counts it. */
  readonly optionsOf: (dwellings: ReadonlySet<string>, neighbours: Neighbours) => Promise<readonly FilmOption[]>;
  readonly settings: PlanSettingsInForce;
  readonly work: Workers;
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
  const tasksOn: SurveyAgain['tasksOn'] = async (meter, neighbours) => {
    const onMeter = { ...known, dwellings: known.dwellings.filter((d) => d.meter.id === meter) };
    const tasks = await foundTasks(onMeter, { skies, choices, work, mixed: job.portfolio.settings.mixedFilm, years: studyYears(settings, choices) });
    return neighbours === 'as found' ? tasks : withNeighbours(tasks, { chosen: (id) => chosen.get(id) ?? null, work, room: choices.room });
  };
  const optionsOf: SurveyAgain['optionsOf'] = async (dwellings, neighbours) => {
    const meters = grouped(known.dwellings.filter((d) => dwellings.has(d.id)), (d) => d.meter.id);
    const tasks = (await Promise.all([...meters.keys()].map((meter) => tasksOn(meter, neighbours)))).flat().filter((t) => dwellings.has(t.dwelling.id));
    const valued = await valuedOptions(tasks, { choices, work });
    return (plan.bills === undefined ? valued : counted(valued, plan.bills)).options;
  };
  return {
    job,
    known,
    skies,
    choices,
    settings,
    work,
    bench: optionBench(choices.room),
    tasksOn,
    optionsOf,
    weatherOf: (id) => chosenFor(known.buildings.get(id)!, job.catalogue, of.resolve).of,
  };
}
