import { calibrated } from './bills/calibrated.js';
import type { BillsReview } from './bills/review.js';
import type { DwellingTask } from './dwelling/dwelling-task.js';
import { defaultsOf, type PlanJob } from './job/plan-job.js';
import { type PlanSettingsInForce, settingsInForce } from './job/plan-settings.js';
import { planTerms } from './job/plan-terms.js';
import { handLocks } from './known/hand-locks.js';
import { type KnownPortfolio, knownPortfolio } from './known/known-portfolio.js';
import { withTrueBearings } from './known/true-bearings.js';
import { type FilmChoices, filmChoices } from './options/film-choices.js';
import { foundTasks } from './options/valued-options.js';
import { studyYears } from './plan/settled.js';
import { type SkiesOnFacades, skyOnFacades } from './sky/sky-on-facades.js';
import type { Workers } from './workers.js';

/** The survey made ready to be computed: what is known, lit, allowed and asked. */
export interface PreparedPlan {
  readonly job: PlanJob;
  readonly known: KnownPortfolio;
  readonly skies: SkiesOnFacades;
  readonly choices: FilmChoices;
  readonly settings: PlanSettingsInForce;
  readonly tasks: readonly DwellingTask[];
  /** What bills before the work say. */
  readonly review: BillsReview;
}

/** First half of the line: survey → known dwellings → sky on facades → films and letters → base load and cooling brought towards the bills. */
export async function preparedPlan(asked: PlanJob, work: Workers): Promise<PreparedPlan> {
  const job = withTrueBearings(asked); // bearings read off a compass turned to true north
  const surveyed = knownPortfolio(job.portfolio, defaultsOf(job.catalogue)); // plan types laid out, gaps filled and noted
  const terms = planTerms(job.portfolio.settings, defaultsOf(job.catalogue));
  const skies = skyOnFacades(surveyed, job.weather, job.catalogue.assumptions.value('albedo').value); // (site, azimuth, tilt) → hourly beam, sky, ground
  const locks = handLocks(job.portfolio.locks, surveyed); // of dwellings, sides and windows, each where it takes effect
  const choices = filmChoices(surveyed, skies, { job, terms, locks }); // who may carry which film; film priced by cutting all candidates once
  const settings = settingsInForce(job, surveyed, { terms, locks });
  const { known, review } = await calibrated(surveyed, { job, skies, choices, work }); // towards the bills, where there are some
  const tasks = await foundTasks(known, { skies, choices, work, mixed: job.portfolio.settings.mixedFilm, years: studyYears(settings, choices) });
  return { job, known, skies, choices, settings, tasks, review };
}
