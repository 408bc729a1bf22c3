import { calibrated } from './bills/calibrated.js';
import { counted } from './bills/counted.js';
import { learnedReview } from './bills/learned.js';
import { realisationOfDwelling, withBills } from './bills/with-bills.js';
import { chooseUnderCaps, nextCaps, workedCaps } from './choice/choose-under-caps.js';
import { drawnPhases } from './choice/drawn-phases.js';
import { filmChoices } from './options/film-choices.js';
import { handLocks } from './known/hand-locks.js';
import { knownPortfolio } from './known/known-portfolio.js';
import { withLedger } from './ledger/with-ledger.js';
import { meterResults, unsettledMeters } from './review/meter-results.js';
import { defaultsOf, howHard, type PlanJob } from './job/plan-job.js';
import { withTrueBearings } from './known/true-bearings.js';
import { planOf } from './plan/plan-of.js';
import { rollPricing, settingsInForce } from './job/plan-settings.js';
import { planTerms } from './job/plan-terms.js';
import type { Plan, RoundLog } from './plan/plan.js';
import { priceByRolls } from './rolls/price-by-rolls.js';
import { chosenSets, planSaving_cents, studyYears } from './plan/settled.js';
import { sharedMeterLog } from './review/shared-meter-log.js';
import { skyOnFacades } from './sky/sky-on-facades.js';
import { foundTasks, revaluedOptions, valuedOptions } from './options/valued-options.js';
import { heldWithinCaps } from './rolls/within-caps.js';
import { betterRound, type Round, roundOf } from './rolls/best-round.js';
import type { Workers } from './workers.js';

/** Rounds of the two loops: whole rolls against the cap, neighbours on a shared meter against first-in values. */
const MOST_ROUNDS = 3;

/**
 * THE SPINE: inventory → sky on facades → gain, dwelling year, bills → options → plan under the caps → cut list → work orders and payback.
 *
 * Each stage takes the result of the one before and gives a new value; nothing here is worked out in place.
 */
export async function planPortfolio(asked: PlanJob, work: Workers): Promise<Plan> {
  const job = withTrueBearings(asked); // bearings read off a compass turned to true north
  const surveyed = knownPortfolio(job.portfolio, defaultsOf(job.catalogue)); // plan types laid out, gaps filled and noted
  const terms = planTerms(job.portfolio.settings, defaultsOf(job.catalogue));
  const skies = skyOnFacades(surveyed, job.weather, job.catalogue.assumptions.value('albedo').value); // (site, azimuth, tilt) → hourly beam, sky, ground
  const locks = handLocks(job.portfolio.locks, surveyed); // of dwellings, sides and windows, each where it takes effect
  const choices = filmChoices(surveyed, skies, { job, terms, locks }); // who may carry which film; film priced by cutting all candidates once
  const settings = settingsInForce(job, surveyed, { terms, locks });
  const { known, review } = await calibrated(surveyed, { job, skies, choices, work }); // base load and cooling brought towards the bills, where there are some
  const tasks = await foundTasks(known, { skies, choices, work, mixed: job.portfolio.settings.mixedFilm, years: studyYears(settings, choices) });

  const modelled = await valuedOptions(tasks, { choices, work, progress: job.progress }); // gain → dwelling year → bills, as found and filmed
  const bills = learnedReview(review, { job, options: modelled.options }); // how much of a saving to expect, bills after the work weighed in
  let valued = counted(modelled, bills); // as modelled, or as found where the settings ask for it
  let caps = workedCaps(settings.phases, terms);
  const rounds: RoundLog[] = [];
  let best: Round | undefined;
  let fullCapBound_cents: number | undefined;
  for (let round = 1; ; round++) {
    const chosen = drawnPhases(await chooseUnderCaps(valued.options, caps, { ...settings, work, how: howHard(job, MOST_ROUNDS + 2 - round) }), { ...settings, options: valued.options, seed: job.portfolio.settings.drawSeed ?? null }); // plan lines, bound, certificate
    fullCapBound_cents ??= chosen.choice.proof.bound_cents;
    const pricing = rollPricing(job, settings, { valued, choices });
    const priced = priceByRolls(chosen.choice, pricing); // cut list; the cap held on what is bought
    best = betterRound(best, roundOf({ chosen, pricing, priced }, settings));
    const setOf = chosenSets(chosen.choice, choices);
    const shared = await meterResults({ tasks: valued.tasks, choice: chosen.choice, setOf, work, room: choices.room, sharedOnly: true });
    const unsettled = unsettledMeters(shared, planSaving_cents(chosen.choice));
    const next = nextCaps(caps, priced, { ...settings, round });
    if (round > MOST_ROUNDS || (next.log.length === 0 && unsettled.length === 0)) {
      const held = heldWithinCaps(best.priced, best.trim);
      return withLedger(withBills(await planOf({ job, known, skies, choices, settings, valued, chosen: best.chosen, pricing: best.pricing, priced: held.priced, rounds: [...rounds, ...held.log], workedCaps: best.chosen.caps_cents, fullCapBound_cents, expectedOf: (dwelling) => realisationOfDwelling(bills, dwelling), work }), bills), job);
    }
    rounds.push(...next.log, ...unsettled.map((m) => sharedMeterLog(round, m)));
    caps = next.caps_cents;
    if (unsettled.length > 0) {
      valued = counted(await revaluedOptions(valued, { meters: new Set(unsettled.map((m) => m.meter)), chosen: setOf, choices, work }), bills);
      best = undefined; // what was chosen at other values is not compared
    }
  }
}
