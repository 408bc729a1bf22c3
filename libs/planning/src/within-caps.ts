import type { Choice } from './choice.js';
import type { PlanTerms, RoundLog } from './plan.js';
import { type PricedChoice, type PricedPhase, priceByRolls, type RollPricing } from './price-by-rolls.js';
import { type Candidate, cash_cents } from './candidate.js';

const valueOf = (line: Candidate, terms: Pick<PlanTerms, 'view'>): number => (terms.view === 'owner' ? line.value.owner_cents : line.value.whole_cents);

export interface Trim {
  readonly of: RollPricing;
  /** Dwellings locked in by hand are the last to go. */
  readonly lockedIn: ReadonlySet<string>;
}

const without = (choice: Choice, gone: ReadonlySet<Candidate>): Choice => ({ ...choice, lines: choice.lines.filter((l) => !gone.has(l)) });

/** Lines of visits whose options together are worth less than the visit costs: the visit belongs to the plan, so the plan drops it. */
function unpaidVisits(priced: PricedChoice, trim: Trim): Candidate[] {
  return priced.phases.flatMap((phase) =>
    phase.visits.flatMap((id) => {
      const building = trim.of.buildings.get(id);
      const lines = phase.lines.filter((l) => l.option.building === id);
      if (building === undefined || lines.some((l) => trim.lockedIn.has(l.option.dwelling))) return [];
      const worth = lines.reduce((sum, l) => sum + valueOf(l, trim.of.terms), 0);
      return worth < trim.of.visit(building).cents ? lines : [];
    }),
  );
}

function cheapestLoss(phase: PricedPhase, trim: Trim): Candidate | undefined {
  const ratio = (l: Candidate): number => valueOf(l, trim.of.terms) / Math.max(1, cash_cents(l.option, trim.of.terms));
  const free = phase.lines.filter((l) => !trim.lockedIn.has(l.option.dwelling));
  const from = free.length > 0 ? free : phase.lines;
  return [...from].sort((a, b) => ratio(a) - ratio(b) || (a.option.id < b.option.id ? -1 : 1))[0];
}

/**
 * Holds the final figure under the cap when three rounds were not enough: drops the line with the least value per dollar of a phase that is
 * over, cuts again, and so on; and drops visits that cost more than their lines are worth. Every step is logged.
 */
export function heldWithinCaps(priced: PricedChoice, trim: Trim): { readonly priced: PricedChoice; readonly log: RoundLog[] } {
  const log: RoundLog[] = [];
  let now = priced;
  const idle = unpaidVisits(now, trim);
  if (idle.length > 0) {
    for (const line of idle) log.push({ round: 0, kind: 'rolls', subject: line.option.dwelling, text: 'dropped: the visit would cost more than its lines are worth' });
    now = priceByRolls(without(now.choice, new Set(idle)), trim.of);
  }
  for (;;) {
    const over = now.phases.find((p) => p.over_cents > 0);
    const line = over === undefined ? undefined : cheapestLoss(over, trim);
    if (over === undefined || line === undefined) return { priced: now, log };
    log.push({ round: 4, kind: 'rolls', subject: line.option.dwelling, text: `dropped from ${over.phase.id}: whole rolls still pass the cap by ${(over.over_cents / 100).toFixed(2)}` });
    now = priceByRolls(without(now.choice, new Set([line])), trim.of);
  }
}
