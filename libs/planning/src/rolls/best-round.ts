import type { ChosenUnderCaps } from '../choice/choose-under-caps.js';
import { planWorth } from '../choice/plan-worth.js';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { PricedChoice, RollPricing } from './price-by-rolls.js';
import { type Trim, trimmedToCaps } from './within-caps.js';

/** A round of the choice as it would really be paid. */
export interface Round {
  readonly chosen: ChosenUnderCaps;
  readonly pricing: RollPricing;
  /** As the selection chose; it may pass a cap. */
  readonly priced: PricedChoice;
  readonly trim: Trim;
  /** Worth of what the caps leave of it, visits taken off. */
  readonly worth_cents: number;
}

export function roundOf(of: Pick<Round, 'chosen' | 'pricing' | 'priced'>, settings: PlanSettingsInForce): Round {
  const trim: Trim = { of: of.pricing, lockedIn: settings.lockedIn, spare: of.chosen.spare };
  const worth = planWorth(trimmedToCaps(of.priced, trim).priced, { settings, fullCapBound_cents: 0 });
  return { ...of, trim, worth_cents: worth.lines_cents - (worth.visits_cents ?? 0) };
}

/** The round worth more once the real caps are held; of equal ones the earlier. */
export function betterRound(before: Round | undefined, now: Round): Round {
  return before === undefined || now.worth_cents > before.worth_cents ? now : before;
}
