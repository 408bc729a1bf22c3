import type { Building, Lock, Phase } from '#calc';
import type { Candidate } from './candidate.js';
import { type Choice, choiceOf } from './choice.js';
import type { FilmOption, PhaseValue } from '../options/option.js';
import type { PlanFinding, PlanTerms, RoundLog } from '../plan/plan.js';
import type { PricedChoice } from '../rolls/price-by-rolls.js';
import { selectionProblem } from './selection-problem.js';
import type { VisitOf } from './visit-worth.js';
import type { Workers } from '../workers.js';

/** What the selection is asked, beside options and caps. */
export interface ChoiceTerms {
  readonly phases: readonly Phase[];
  readonly buildings: ReadonlyMap<string, Building>;
  readonly locks: readonly Lock[];
  readonly terms: PlanTerms;
  readonly valueIn: (option: FilmOption, phase: Phase) => PhaseValue;
  readonly visit: VisitOf;
  readonly timeLimit_s?: number | undefined;
}

export interface ChosenUnderCaps {
  readonly choice: Choice;
  /** Candidates worth something that were not taken, for what whole rolls leave over at the end. */
  readonly spare: readonly Candidate[];
  readonly findings: readonly PlanFinding[];
}

/** What may be spent on options and visits in each phase at first: the cap less its contingency. */
export function workedCaps(phases: readonly Phase[], terms: Pick<PlanTerms, 'contingencyShare'>): number[] {
  return phases.map((phase) => Math.floor(phase.cap_cents / (1 + terms.contingencyShare)));
}

/** Chooses under the worked caps. */
export async function chooseUnderCaps(options: readonly FilmOption[], caps_cents: readonly number[], of: ChoiceTerms & { readonly work: Workers }): Promise<ChosenUnderCaps> {
  const { timeLimit_s, ...terms } = of;
  const posed = selectionProblem({ ...terms, options, workedCaps_cents: caps_cents, ...(timeLimit_s === undefined ? {} : { timeLimit_s }) });
  const result = await of.work.choose(posed.problem);
  const findings = posed.emptyLocks.map(({ lock, why }): PlanFinding => ({ severity: 'error', subject: lock.subject, text: `a lock leaves no option: ${why}`, whatToDo: 'take the lock back, or what stands against it' }));
  const choice = choiceOf(posed, result);
  const taken = new Set(choice.lines);
  return { choice, spare: [...posed.candidates.values()].filter((c) => !taken.has(c)), findings };
}

/** Caps lowered by what whole rolls, freight and rounding took beyond the real cap, with a line for the log. */
export function loweredCaps(caps_cents: readonly number[], priced: PricedChoice, at: { readonly phases: readonly Phase[]; readonly terms: Pick<PlanTerms, 'contingencyShare'>; readonly round: number }): { readonly caps_cents: number[]; readonly log: RoundLog[] } {
  const log: RoundLog[] = [];
  const lowered = caps_cents.map((cap, i) => {
    const over = priced.phases.find((p) => p.phase.id === at.phases[i]?.id)?.over_cents ?? 0;
    if (over === 0) return cap;
    const next = Math.max(0, cap - Math.ceil(over / (1 + at.terms.contingencyShare)));
    log.push({ round: at.round, kind: 'rolls', subject: at.phases[i]!.id, text: `whole rolls, freight and tax pass the cap by ${(over / 100).toFixed(2)}; the selection works with ${(next / 100).toFixed(2)} instead of ${(cap / 100).toFixed(2)}` });
    return next;
  });
  return { caps_cents: lowered, log };
}
