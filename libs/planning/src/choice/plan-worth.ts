import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { PlanWorth } from '../plan/plan.js';
import type { PricedChoice } from '../rolls/price-by-rolls.js';
import { visitWorth_cents } from './visit-worth.js';

/** What lines and visits of the priced plan are worth in its view, beside the bound at full caps. */
export function planWorth(priced: PricedChoice, of: { readonly settings: Pick<PlanSettingsInForce, 'terms' | 'buildings' | 'visit'>; readonly fullCapBound_cents: number }): PlanWorth {
  const { settings } = of;
  const lines_cents = priced.choice.lines.reduce((sum, l) => sum + (settings.terms.view === 'owner' ? l.value.owner_cents : l.value.whole_cents), 0);
  const visits_cents = priced.phases.reduce((sum, { phase, visits }) => sum + visits.reduce((each, id) => each + visitWorth_cents(settings.buildings.get(id)!, phase, settings), 0), 0);
  return { lines_cents, visits_cents, fullCapBound_cents: of.fullCapBound_cents };
}
