import { counted } from './bills/counted.js';
import { learnedReview } from './bills/learned.js';
import { realisationOfDwelling, withBills } from './bills/with-bills.js';
import { chooseUnderCaps, nextCaps, workedCaps } from './choice/choose-under-caps.js';
import { drawnPhases } from './choice/drawn-phases.js';
import { howHard, type PlanJob } from './job/plan-job.js';
import { rollPricing } from './job/plan-settings.js';
import { withLedger } from './ledger/with-ledger.js';
import { revaluedOptions, valuedOptions } from './options/valued-options.js';
import { planOf } from './plan/plan-of.js';
import type { Plan, RoundLog } from './plan/plan.js';
import { chosenSets, planSaving_cents } from './plan/settled.js';
import { preparedPlan } from './prepared-plan.js';
import { meterResults, unsettledMeters } from './review/meter-results.js';
import { sharedMeterLog } from './review/shared-meter-log.js';
import { betterRound, type Round, roundOf } from './rolls/best-round.js';
import { priceByRolls } from './rolls/price-by-rolls.js';
import { heldWithinCaps } from './rolls/within-caps.js';
import { asAimed } from './uncertainty/as-aimed.js';
import type { Workers } from './workers.js';

/** Rounds of the two loops: whole rolls against the cap, neighbours on a shared meter against first-in values. */
const MOST_ROUNDS = 3;

/**
 * THE SPINE: inventory → sky on facades → gain, dwelling year, bills → options → plan under the caps → cut list → work orders and payback.
 *
 * Each stage takes the result of the one before and gives a new value; nothing here is worked out in place.
 */
export async function planPortfolio(asked: PlanJob, work: Workers): Promise<Plan> {
  const ready = await preparedPlan(asked, work); // survey → known dwellings → sky → films and letters → towards the bills
  const { job, choices } = ready;
  const modelled = await valuedOptions(ready.tasks, { choices, work, progress: job.progress }); // gain → dwelling year → bills, as found and filmed
  const bills = learnedReview(ready.review, { job, options: modelled.options }); // how much of a saving to expect, bills after the work weighed in
  const aim = { ...ready, bills, work };
  let { valued, settings } = await asAimed(counted(modelled, bills), aim); // the middle, or what nine draws in ten reach
  let caps = workedCaps(settings.phases, settings.terms);
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
      return withLedger(withBills(await planOf({ ...ready, settings, valued, chosen: best.chosen, pricing: best.pricing, priced: held.priced, rounds: [...rounds, ...held.log], workedCaps: best.chosen.caps_cents, fullCapBound_cents, expectedOf: (dwelling) => realisationOfDwelling(bills, dwelling), work }), bills), job);
    }
    rounds.push(...next.log, ...unsettled.map((m) => sharedMeterLog(round, m)));
    caps = next.caps_cents;
    if (unsettled.length > 0) {
      ({ valued, settings } = await asAimed(counted(await revaluedOptions(valued, { meters: new Set(unsettled.map((m) => m.meter)), chosen: setOf, choices, work }), bills), aim));
      best = undefined; // what was chosen at other values is not compared
    }
  }
}
