import type { Building, Lock, Phase, SelectionGroup, SelectionOption, SelectionProblem } from '#calc';
import { type Candidate, cash_cents } from './candidate.js';
import { grouped, sortedBy } from '../grouped.js';
import type { FilmOption, PhaseValue } from '../options/option.js';
import type { PlanTerms } from '../plan/plan.js';
import { withoutIdlePhases } from './slack-phases.js';
import { type VisitOf, visitWorth_cents } from './visit-worth.js';

/** What the selection is asked and how to read its answer. */
export interface PosedSelection {
  readonly problem: SelectionProblem;
  /** By the id the candidate has in the problem. */
  readonly candidates: ReadonlyMap<string, Candidate>;
  /** Locks that leave no option, with the reason. */
  readonly emptyLocks: readonly { readonly lock: Lock; readonly why: string }[];
}

export interface SelectionRequest {
  readonly options: readonly FilmOption[];
  readonly buildings: ReadonlyMap<string, Building>;
  /** Sorted as they will be numbered. */
  readonly phases: readonly Phase[];
  /** What the selection may spend in each phase, contingency and freight taken off. */
  readonly workedCaps_cents: readonly number[];
  /** Of dwellings and their facades. */
  readonly locks: readonly Lock[];
  readonly terms: PlanTerms;
  readonly valueIn: (option: FilmOption, phase: Phase) => PhaseValue;
  readonly visit: VisitOf;
  readonly timeLimit_s?: number;
}

const inView = (value: PhaseValue, terms: PlanTerms): number => (terms.view === 'owner' ? value.owner_cents : value.whole_cents);

function locksAllow(option: FilmOption, phase: Phase, locks: readonly Lock[]): boolean {
  return locks.every((lock) => {
    const wholeDwelling = lock.azimuth_deg === null;
    const touches = wholeDwelling || option.facades.includes(lock.azimuth_deg);
    const bound = wholeDwelling ? option.films : option.films.filter((_, i) => option.facades[i] === lock.azimuth_deg);
    if (lock.direction === 'out') return !touches || (lock.film !== null && !bound.includes(lock.film));
    return touches && (lock.film === null || bound.every((film) => film === lock.film)) && (lock.phase === null || lock.phase === phase.id);
  });
}

function candidatesOf(options: readonly FilmOption[], request: SelectionRequest & { readonly must: boolean; readonly locks: readonly Lock[] }): Candidate[] {
  const found: Candidate[] = [];
  for (const option of options) {
    if (option.waitsFor.length > 0) continue;
    const owner = request.buildings.get(option.building)?.ownerEntity;
    request.phases.forEach((phase, i) => {
      if (phase.ownerEntity !== owner || option.from > phase.lastDay || !locksAllow(option, phase, request.locks)) return;
      const value = request.valueIn(option, phase);
      if (request.must || inView(value, request.terms) > 0) found.push({ option, phase: i, value });
    });
  }
  return found;
}

/** Poses the choice: one group a dwelling, one option for each film option and phase it may be done in, with its value there. */
export function selectionProblem(request: SelectionRequest): PosedSelection {
  const candidates = new Map<string, Candidate>();
  const emptyLocks: { lock: Lock; why: string }[] = [];
  const groups: SelectionGroup[] = [];
  const must: string[] = [];
  const locksOf = grouped(request.locks, (l) => l.subject);
  const byDwelling = grouped(sortedBy(request.options, (o) => o.id), (o) => o.dwelling);
  const all: Candidate[] = [];
  for (const [dwelling, options] of byDwelling) {
    const locks = locksOf.get(dwelling) ?? [];
    const lockedIn = locks.find((l) => l.direction === 'in');
    const found = candidatesOf(options, { ...request, locks, must: lockedIn !== undefined });
    if (lockedIn !== undefined && found.length === 0) emptyLocks.push({ lock: lockedIn, why: 'no option of this dwelling fits the lock: consent, film, phase or a lock out stands against it' });
    if (lockedIn !== undefined && found.length > 0) must.push(dwelling);
    all.push(...found);
  }
  const needed = withoutIdlePhases(all, { ...request, caps_cents: request.workedCaps_cents, worth: (c) => Math.round(inView(c.value, request.terms)) });
  for (const [dwelling, found] of grouped(needed, (c) => c.option.dwelling)) {
    const posed = found.map((candidate): SelectionOption => {
      const id = `${candidate.option.id}@${request.phases[candidate.phase]?.id ?? ''}`;
      candidates.set(id, candidate);
      return {
        id,
        cost_cents: Math.ceil(cash_cents(candidate.option, request.terms)),
        value: Math.round(inView(candidate.value, request.terms)),
        crewMinutes: Math.ceil(candidate.option.minutes.best),
        family: candidate.option.film,
        phases: [candidate.phase],
      };
    });
    groups.push({ id: dwelling, building: found[0]?.option.building ?? '', options: posed });
  }
  for (const lock of request.locks) {
    if (lock.direction === 'in' && !byDwelling.has(lock.subject)) emptyLocks.push({ lock, why: 'the dwelling has no option at all' });
  }
  const problem: SelectionProblem = {
    groups,
    phases: request.phases.map((phase, i) => ({ cap_cents: Math.max(0, Math.floor(request.workedCaps_cents[i] ?? 0)), ...(phase.crewMinutes === null ? {} : { crewMinutes: phase.crewMinutes }) })),
    buildings: sortedBy(request.buildings.values(), (b) => b.id).map((b) => {
      const visit = request.visit(b);
      const visitPrice = request.phases.map((phase) => (phase.ownerEntity === b.ownerEntity ? Math.round(visitWorth_cents(b, phase, request)) : 0));
      return { id: b.id, visit_cents: Math.ceil(visit.cents), visitMinutes: Math.ceil(visit.minutes), visitPrice, oneFamily: b.oneFilm ?? false };
    }),
    must,
    ...(request.timeLimit_s === undefined ? {} : { timeLimit_s: request.timeLimit_s }),
  };
  return { problem, candidates, emptyLocks };
}
