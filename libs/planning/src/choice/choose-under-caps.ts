import { type Building, dollarsText, type Lock, type Phase } from '#calc';
import { type Candidate, cash_cents } from './candidate.js';
import { type Choice, choiceOf } from './choice.js';
import type { FilmOption, PhaseValue } from '../options/option.js';
import type { RoundLog } from '../plan/plan.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { PlanTerms } from '../plan/terms.js';
import type { PricedChoice } from '../rolls/price-by-rolls.js';
import { type PosedSelection, selectionProblem } from './selection-problem.js';
import type { VisitOf } from './visit-worth.js';
import type { ChooseHow, Workers } from '../workers.js';

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
  readonly posed: PosedSelection;
  readonly caps_cents: readonly number[];
}

/** The clock stands guard at this many times the seconds asked for, which are counted in steps: only a much slower machine meets it. */
const GUARD = 10;

/** What may be spent on options and visits in each phase at first: the cap less its contingency. */
export function workedCaps(phases: readonly Phase[], terms: Pick<PlanTerms, 'contingencyShare'>): number[] {
  return phases.map((phase) => Math.floor(phase.cap_cents / (1 + terms.contingencyShare)));
}

/** Chooses under the worked caps. */
export async function chooseUnderCaps(options: readonly FilmOption[], caps_cents: readonly number[], of: ChoiceTerms & { readonly work: Workers; readonly how?: ChooseHow }): Promise<ChosenUnderCaps> {
  const { timeLimit_s, how, ...terms } = of;
  const posed = selectionProblem({ ...terms, options, workedCaps_cents: caps_cents, ...(timeLimit_s === undefined ? {} : { timeLimit_s: GUARD * timeLimit_s }) });
  const result = await of.work.choose(posed.problem, { ...(timeLimit_s === undefined ? {} : { work_s: timeLimit_s }), ...how });
  const findings = posed.emptyLocks.map(({ lock, why }): PlanFinding => ({ severity: 'error', subject: lock.subject, text: `a lock leaves no option: ${why}`, whatToDo: 'take the lock back, or what stands against it' }));
  const choice = choiceOf(posed, result);
  const taken = new Set(choice.lines);
  return { choice, spare: [...posed.candidates.values()].flat().filter((c) => !taken.has(c)), findings, posed, caps_cents };
}

interface CapQuestion {
  readonly phases: readonly Phase[];
  readonly terms: Pick<PlanTerms, 'contingencyShare' | 'labourIsCash'>;
  readonly visit: VisitOf;
  readonly buildings: ReadonlyMap<string, Building>;
  readonly round: number;
}


/**
 * Caps for the next round, with a line for the log of each that moves: lower by what whole rolls, freight and rounding took beyond the real
 * cap; higher by what film left from an earlier phase saved in this one, for what lies on the shelf is not paid again.
 */
export function nextCaps(caps_cents: readonly number[], priced: PricedChoice, at: CapQuestion): { readonly caps_cents: number[]; readonly log: RoundLog[] } {
  const log: RoundLog[] = [];
  const next = caps_cents.map((cap, i) => {
    const now = priced.phases.find((p) => p.phase.id === at.phases[i]?.id);
    if (now === undefined) return cap;
    const share = 1 + at.terms.contingencyShare;
    if (now.over_cents > 0) {
      const lower = Math.max(0, cap - Math.ceil(now.over_cents / share));
      log.push({ round: at.round, kind: 'rolls', subject: now.phase.id, text: `whole rolls, freight and tax pass the cap by ${dollarsText(now.over_cents)}; the selection works with ${dollarsText(lower)} instead of ${dollarsText(cap)}` });
      return lower;
    }
    const price = priced.choice.proof.record?.result.certificate?.multipliers.cap[i] ?? 0;
    if (price <= 0 || !now.cuts.some((cut) => cut.fromStock.length > 0)) return cap;
    const thought = now.lines.reduce((sum, l) => sum + Math.ceil(cash_cents(l.option, at.terms)), 0) + now.visits.reduce((sum, id) => sum + Math.ceil(at.visit(at.buildings.get(id)!).cents), 0);
    const higher = Math.floor((now.phase.cap_cents - now.spending.total_cents) / share + thought);
    if (higher <= cap) return cap;
    log.push({ round: at.round, kind: 'rolls', subject: now.phase.id, text: `film on the shelf makes the phase cheaper than by the piece; the selection works with ${dollarsText(higher)} instead of ${dollarsText(cap)}` });
    return higher;
  });
  return { caps_cents: next, log };
}
