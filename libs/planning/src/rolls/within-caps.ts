import { dollarsText } from '#calc';
import type { Choice } from '../choice/choice.js';
import type { RoundLog } from '../plan/plan.js';
import type { PlanTerms } from '../plan/terms.js';
import { type PricedChoice, type PricedPhase, priceByRolls, type RollPricing } from './price-by-rolls.js';
import { type Candidate, cash_cents } from '../choice/candidate.js';
import { visitWorth_cents } from '../choice/visit-worth.js';

const valueOf = (line: Candidate, terms: Pick<PlanTerms, 'view'>): number => (terms.view === 'owner' ? line.value.owner_cents : line.value.whole_cents);

export interface Trim {
  readonly of: RollPricing;
  /** Dwellings locked in by hand are the last to go. */
  readonly lockedIn: ReadonlySet<string>;
  /** Candidates the selection left, for room that dropping a line opens. */
  readonly spare: readonly Candidate[];
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
      return worth < visitWorth_cents(building, phase.phase, trim.of) ? lines : [];
    }),
  );
}

function cheapestLoss(phase: PricedPhase, trim: Trim): Candidate | undefined {
  const ratio = (l: Candidate): number => valueOf(l, trim.of.terms) / Math.max(1, cash_cents(l.option, trim.of.terms));
  const lockedBundles = new Set(phase.lines.filter((l) => trim.lockedIn.has(l.option.dwelling)).map((l) => l.bundle));
  const free = phase.lines.filter((l) => !trim.lockedIn.has(l.option.dwelling) && (l.bundle === undefined || !lockedBundles.has(l.bundle)));
  const from = free.length > 0 ? free : phase.lines;
  return [...from].sort((a, b) => ratio(a) - ratio(b) || (a.option.id < b.option.id ? -1 : 1))[0];
}

/** Candidates tried for room that is left; each try cuts all phases again. */
const MOST_TRIES = 25;

const plus = (choice: Choice, line: Candidate): Choice => ({ ...choice, lines: [...choice.lines, line].sort((a, b) => (a.option.dwelling < b.option.dwelling ? -1 : 1)) });

/** Whether a line goes into a phase as far as can be told without cutting; only buildings visited anyway, so that no visit has to be weighed. */
function fits(line: Candidate, at: PricedPhase, trim: Trim): boolean {
  const { phase, lines, visits, spending } = at;
  const minutes = [...lines, line].reduce((sum, l) => sum + Math.ceil(l.option.minutes.best), 0) + visits.reduce((sum, id) => sum + Math.ceil(trim.of.visit(trim.of.buildings.get(id)!).minutes), 0);
  const neighbours = trim.of.buildings.get(line.option.building)?.oneFilm === true ? lines.filter((l) => l.option.building === line.option.building) : [];
  return (
    visits.includes(line.option.building) &&
    cash_cents(line.option, trim.of.terms) <= phase.cap_cents - spending.total_cents &&
    (phase.crewMinutes === null || minutes <= phase.crewMinutes) &&
    neighbours.every((l) => l.option.film === line.option.film)
  );
}

/** Puts spare candidates, the most valuable first, into room that a dropped line has opened, as long as no cap is passed by what is really bought. */
function filled(priced: PricedChoice, trim: Trim, dropped: ReadonlySet<string>): { readonly priced: PricedChoice; readonly log: RoundLog[] } {
  const log: RoundLog[] = [];
  let now = priced;
  const worth = [...trim.spare].filter((c) => valueOf(c, trim.of.terms) > 0).sort((a, b) => valueOf(b, trim.of.terms) - valueOf(a, trim.of.terms) || (a.option.id < b.option.id ? -1 : 1));
  let tries = 0;
  for (const line of worth) {
    const phase = trim.of.phases[line.phase];
    const at = now.phases.find((p) => p.phase.id === phase?.id);
    const isFree = !dropped.has(line.option.id) && !now.choice.lines.some((l) => l.option.dwelling === line.option.dwelling);
    if (at === undefined || !isFree || line.bundle !== undefined || !fits(line, at, trim)) continue;
    if (++tries > MOST_TRIES) break;
    const next = priceByRolls(plus(now.choice, line), trim.of);
    if (next.phases.some((p) => p.over_cents > 0)) continue;
    log.push({ round: 4, kind: 'rolls', subject: line.option.dwelling, text: `added to ${at.phase.id}: it fits the room the whole rolls leave` });
    now = next;
  }
  return { priced: now, log };
}

/** A line with all lines that can only go with it. */
const together = (line: Candidate, among: readonly Candidate[]): Candidate[] => (line.bundle === undefined ? [line] : among.filter((l) => l.bundle === line.bundle));

function withoutUnpaid(priced: PricedChoice, trim: Trim): { readonly priced: PricedChoice; readonly log: RoundLog[] } {
  const idle = unpaidVisits(priced, trim).flatMap((line) => together(line, priced.choice.lines));
  if (idle.length === 0) return { priced, log: [] };
  const log = [...new Set(idle)].map((line): RoundLog => ({ round: 0, kind: 'rolls', subject: line.option.dwelling, text: 'dropped: the visit would cost more than its lines are worth' }));
  return { priced: priceByRolls(without(priced.choice, new Set(idle)), trim.of), log };
}

/**
 * Holds the figure under the cap when the rounds were not enough: drops the line with the least value per dollar of a phase that is over (whole
 * elevations as one), cuts again, and so on; drops visits that cost more than their lines are worth. Every step is logged.
 *
 * @returns also the ids of the options that were dropped, which are not put back
 */
export function trimmedToCaps(priced: PricedChoice, trim: Trim): { readonly priced: PricedChoice; readonly log: RoundLog[]; readonly dropped: ReadonlySet<string> } {
  const dropped = new Set<string>();
  let { priced: now, log } = withoutUnpaid(priced, trim);
  for (;;) {
    const over = now.phases.find((p) => p.over_cents > 0);
    const line = over === undefined ? undefined : cheapestLoss(over, trim);
    if (over === undefined || line === undefined) break;
    const gone = together(line, now.choice.lines);
    log = [...log, ...gone.map((l): RoundLog => ({ round: 4, kind: 'rolls', subject: l.option.dwelling, text: `dropped from ${over.phase.id}: whole rolls still pass the cap by ${dollarsText(over.over_cents)}` }))];
    for (const l of gone) dropped.add(l.option.id);
    now = priceByRolls(without(now.choice, new Set(gone)), trim.of);
  }
  if (dropped.size === 0) return { priced: now, log, dropped };
  const paid = withoutUnpaid(now, trim);
  return { priced: paid.priced, log: [...log, ...paid.log], dropped };
}

/** The figure held under the cap, and the room that dropping or whole rolls leave filled with what still fits. */
export function heldWithinCaps(priced: PricedChoice, trim: Trim): { readonly priced: PricedChoice; readonly log: RoundLog[] } {
  const held = trimmedToCaps(priced, trim);
  const full = filled(held.priced, trim, held.dropped);
  return { priced: full.priced, log: [...held.log, ...full.log] };
}
