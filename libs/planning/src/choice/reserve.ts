import type { PlanSettingsInForce } from '../job/plan-settings.js';
import { type Candidate, cash_cents } from './candidate.js';
import type { PricedWay } from './dwelling-reasons.js';
import type { ReserveLine } from './explanations.js';
import { optionWords } from './option-words.js';
import { inView } from './selection-problem.js';

/**
 * The next best lines in the order they come in if something drops out: each dwelling that is not in the plan by its best way, the one that
 * falls least behind first. Whole elevations come in as a whole and are not listed line by line.
 */
export function reserveLines(ways: ReadonlyMap<string, readonly PricedWay[]>, of: { readonly lines: readonly Candidate[]; readonly settings: Pick<PlanSettingsInForce, 'terms' | 'phases'> }): ReserveLine[] {
  const { settings } = of;
  const taken = new Set(of.lines.map((l) => l.option.dwelling));
  const visited = new Set(of.lines.map((l) => `${l.option.building} ${String(l.phase)}`));
  const best = [...ways].flatMap(([dwelling, own]) => (taken.has(dwelling) || own[0] === undefined || own[0].candidate.bundle !== undefined ? [] : [own[0]]));
  best.sort((a, b) => b.reason.reducedValue - a.reason.reducedValue || (a.reason.option < b.reason.option ? -1 : 1));
  return best.map(({ candidate, reason }, i): ReserveLine => ({
    place: i + 1,
    dwelling: candidate.option.dwelling,
    building: candidate.option.building,
    option: candidate.option.id,
    words: optionWords(candidate.option),
    phase: settings.phases[candidate.phase]!.id,
    cost_cents: Math.ceil(cash_cents(candidate.option, settings.terms)),
    minutes: Math.ceil(candidate.option.minutes.best),
    value_cents: Math.round(inView(candidate.value, settings.terms)),
    behind_cents: Math.round(-reason.reducedValue),
    newVisit: !visited.has(`${candidate.option.building} ${String(candidate.phase)}`),
  }));
}
