import type { Building, Lock, Phase, SelectionGroup, SelectionOption, SelectionProblem } from '#calc';
import { type Candidate, cash_cents } from './candidate.js';
import { grouped, sortedBy } from '../grouped.js';
import { elevationGroups } from './whole-elevations.js';
import type { FilmOption, PhaseValue } from '../options/option.js';
import type { PlanTerms } from '../plan/terms.js';
import { withoutIdlePhases } from './slack-phases.js';
import { type VisitOf, visitWorth_cents } from './visit-worth.js';

/** What the selection is asked and how to read its answer. */
export interface PosedSelection {
  readonly problem: SelectionProblem;
  /** By the id the option has in the problem: one line, or all lines of whole elevations. */
  readonly candidates: ReadonlyMap<string, readonly Candidate[]>;
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
  /** Poses whole elevations as if the rule were not there, to price it. */
  readonly partElevations?: boolean;
  readonly timeLimit_s?: number;
}

export const inView = (value: PhaseValue, terms: Pick<PlanTerms, 'view'>): number => (terms.view === 'owner' ? value.owner_cents : value.whole_cents);

/** Whether an option may be taken in a phase under the locks of its dwelling. */
export function locksAllow(option: FilmOption, phase: Phase, locks: readonly Lock[]): boolean {
  return locks.every((lock) => {
    const wholeDwelling = lock.azimuth_deg === null;
    const touches = wholeDwelling || option.facades.includes(lock.azimuth_deg);
    const bound = wholeDwelling ? option.films : option.films.filter((_, i) => option.facades[i] === lock.azimuth_deg);
    if (lock.direction === 'out') return !touches || (lock.film !== null && !bound.includes(lock.film));
    return touches && (lock.film === null || bound.every((film) => film === lock.film)) && (lock.phase === null || lock.phase === phase.id);
  });
}

function candidatesOf(options: readonly FilmOption[], request: SelectionRequest & { readonly worthless: boolean; readonly locks: readonly Lock[] }): Candidate[] {
  const found: Candidate[] = [];
  for (const option of options) {
    if (option.waitsFor.length > 0) continue;
    const owner = request.buildings.get(option.building)?.ownerEntity;
    request.phases.forEach((phase, i) => {
      if (phase.ownerEntity !== owner || option.from > phase.lastDay || !locksAllow(option, phase, request.locks)) return;
      const value = request.valueIn(option, phase);
      if (request.worthless || inView(value, request.terms) > 0) found.push({ option, phase: i, value });
    });
  }
  return found;
}

/** The problem while it is written. */
class Posing {
  readonly candidates = new Map<string, readonly Candidate[]>();
  readonly emptyLocks: { lock: Lock; why: string }[] = [];
  readonly groups: SelectionGroup[] = [];
  readonly must: string[] = [];
  private readonly locksOf: ReadonlyMap<string, readonly Lock[]>;

  constructor(private readonly request: SelectionRequest) {
    this.locksOf = grouped(request.locks, (l) => l.subject);
  }

  isWhole(building: string): boolean {
    return this.request.partElevations !== true && this.request.buildings.get(building)?.wholeElevations === true;
  }

  /** Candidates of a dwelling; a lock in that leaves none is told. */
  ofDwelling(dwelling: string, options: readonly FilmOption[]): { readonly found: Candidate[]; readonly isLocked: boolean } {
    const locks = this.locksOf.get(dwelling) ?? [];
    const lockedIn = locks.find((l) => l.direction === 'in');
    const found = candidatesOf(options, { ...this.request, locks, worthless: lockedIn !== undefined || this.isWhole(options[0]!.building) });
    if (lockedIn !== undefined && found.length === 0) this.emptyLocks.push({ lock: lockedIn, why: 'no option of this dwelling fits the lock: consent, film, phase or a lock out stands against it' });
    return { found, isLocked: lockedIn !== undefined && found.length > 0 };
  }

  option(id: string, lines: readonly Candidate[], family: string): SelectionOption {
    const { terms } = this.request;
    const sum = (of: (c: Candidate) => number): number => lines.reduce((total, line) => total + of(line), 0);
    this.candidates.set(id, lines);
    return {
      id,
      cost_cents: Math.ceil(sum((c) => cash_cents(c.option, terms))),
      value: Math.round(sum((c) => inView(c.value, terms))),
      crewMinutes: Math.ceil(sum((c) => (c.option.crew === 'own' ? c.option.minutes.best : 0))),
      family,
      phases: [lines[0]!.phase],
    };
  }

  /** One group a dwelling. */
  dwellings(found: readonly Candidate[]): void {
    const { request } = this;
    const needed = withoutIdlePhases(found, { ...request, caps_cents: request.workedCaps_cents, worth: (c) => Math.round(inView(c.value, request.terms)) });
    for (const [dwelling, own] of grouped(needed, (c) => c.option.dwelling)) {
      const options = own.map((c) => this.option(`${c.option.id}@${request.phases[c.phase]?.id ?? ''}`, [c], c.option.film));
      this.groups.push({ id: dwelling, building: own[0]?.option.building ?? '', options });
    }
  }

  /** One group for each set of linked elevations of a building that keeps them whole. */
  elevations(building: string, of: { readonly options: readonly FilmOption[]; readonly candidates: readonly Candidate[] }): void {
    const out = [...this.locksOf.values()].flat().filter((l) => l.direction === 'out' && l.azimuth_deg === null && l.film === null).map((l) => l.subject);
    const lockedIn = new Set([...this.locksOf.values()].flat().filter((l) => l.direction === 'in').map((l) => l.subject));
    for (const group of elevationGroups({ building, ...of, phases: this.request.phases, lockedIn, lockedOut: new Set(out) })) {
      const options = group.ways.map((way) => this.option(way.id, way.lines, way.film)).filter((o) => group.must || o.value > 0);
      if (group.must && options.length > 0) this.must.push(group.id);
      else if (group.must) this.emptyLocks.push({ lock: this.request.locks.find((l) => l.direction === 'in' && l.subject.startsWith(`${building}/`))!, why: 'the elevation it belongs to cannot be done as a whole: another dwelling behind it waits or is locked out' });
      if (options.length > 0) this.groups.push({ id: group.id, building, options });
    }
  }
}

/**
 * Poses the choice: one group a dwelling, one option for each film option and phase it may be done in, with its value there; whole elevations
 * of a building that keeps them are one group with all their dwellings. Visits take cost, minutes and value.
 */
export function selectionProblem(request: SelectionRequest): PosedSelection {
  const posing = new Posing(request);
  const byDwelling = grouped(sortedBy(request.options, (o) => o.id), (o) => o.dwelling);
  const single: Candidate[] = [];
  const whole = new Map<string, Candidate[]>();
  for (const [dwelling, options] of byDwelling) {
    const { found, isLocked } = posing.ofDwelling(dwelling, options);
    const { building } = options[0]!;
    if (posing.isWhole(building)) whole.set(building, [...(whole.get(building) ?? []), ...found]);
    else {
      single.push(...found);
      if (isLocked) posing.must.push(dwelling);
    }
  }
  posing.dwellings(single);
  for (const [building, candidates] of whole) posing.elevations(building, { options: request.options.filter((o) => o.building === building), candidates });
  for (const lock of request.locks) {
    if (lock.direction === 'in' && !byDwelling.has(lock.subject)) posing.emptyLocks.push({ lock, why: 'the dwelling has no option at all' });
  }
  return { problem: problemOf(request, posing), candidates: posing.candidates, emptyLocks: posing.emptyLocks };
}

/** Minutes the phases would take with the longest option of every group and a visit to every building: a limit at or above them binds nothing. */
function mostMinutes({ groups }: Posing, request: SelectionRequest): number[] {
  const most = request.phases.map(() => 0);
  const seen = request.phases.map(() => new Set<string>());
  for (const { building, options } of groups) {
    const longest = new Map<number, number>();
    for (const { phases = [], crewMinutes = 0 } of options) for (const t of phases) longest.set(t, Math.max(longest.get(t) ?? 0, crewMinutes));
    for (const [t, minutes] of longest) {
      most[t]! += minutes;
      if (building !== undefined) seen[t]!.add(building);
    }
  }
  return most.map((minutes, t) => minutes + [...seen[t]!].reduce((sum, id) => sum + Math.ceil(request.visit(request.buildings.get(id)!).minutes), 0));
}

function problemOf(request: SelectionRequest, posing: Posing): SelectionProblem {
  const { groups, must } = posing;
  const most = mostMinutes(posing, request);
  return {
    groups,
    phases: request.phases.map((phase, t) => ({ cap_cents: Math.max(0, Math.floor(request.workedCaps_cents[t] ?? 0)), ...(phase.crewMinutes === null || most[t]! <= phase.crewMinutes ? {} : { crewMinutes: phase.crewMinutes }) })),
    buildings: sortedBy(request.buildings.values(), (b) => b.id).map((b) => {
      const visit = request.visit(b);
      const visitPrice = request.phases.map((phase) => (phase.ownerEntity === b.ownerEntity ? Math.round(visitWorth_cents(b, phase, request)) : 0));
      return { id: b.id, visit_cents: Math.ceil(visit.cents), visitMinutes: Math.ceil(visit.minutes), visitPrice, oneFamily: b.oneFilm ?? false };
    }),
    must,
    ...(request.timeLimit_s === undefined ? {} : { timeLimit_s: request.timeLimit_s }),
  };
}
