import { MessageChannel } from 'node:worker_threads';
import { Piscina } from 'piscina';
import { choiceFindings, type ChosenOption, type SelectionProblem } from '#calc';
import { milpModel, type MilpModel } from './milp-model.js';
import type { MilpEnd, MilpNews, MilpTask } from './milp.worker.js';
import { threadFile } from './thread-file.js';

export { openSolveLp } from './highs-lp.js';

/** What the solver reached before its thread was ended. */
export interface MilpAnswer {
  readonly status: 'optimal' | 'bounded' | 'infeasible';
  readonly chosen: readonly ChosenOption[] | null;
  /** Worked out again from the choice, not taken from the solver. */
  readonly value: number | null;
  /** No choice is worth more, by the solver's word; null before it has a bound. */
  readonly bound: number | null;
}

/** How long it may take, and who wants to know of better choices. */
export interface MilpLimits {
  readonly timeLimit_s: number;
  /** Ends the work from outside; what was reached is kept. */
  readonly signal?: AbortSignal;
  readonly better?: (found: MilpAnswer) => void;
}

/** Time beyond the limit before the thread is ended by force: the solver does not always keep its own limit. */
const GRACE_S = 1;

/** Choice a solution stands for, with its value worked out by calc; null when it breaks a rule by the solver's rounding. */
function choiceOf(problem: SelectionProblem, model: MilpModel, x: Float64Array): { chosen: ChosenOption[]; value: number } | null {
  const chosen = model.choices.filter((_, column) => x[column]! > 0.5);
  const { findings, value } = choiceFindings(problem, chosen);
  return findings.length === 0 ? { chosen, value } : null;
}

/**
 * Solves the selection by the mixed-integer solver in a thread of its own, which is ended when the time is up.
 *
 * @param problem as select takes it
 * @param limits time, and a listener for each better choice
 * @returns the best choice posted and the last bound
 */
export async function selectByMilp(problem: SelectionProblem, limits: MilpLimits): Promise<MilpAnswer> {
  const model = milpModel(problem);
  let best: { chosen: ChosenOption[]; value: number } | null = null;
  let bound: number | null = null;
  const answer = (status: MilpAnswer['status']): MilpAnswer => ({ status, chosen: best?.chosen ?? null, value: best?.value ?? null, bound });
  const hear = (news: MilpNews): void => {
    if (news.bound !== null) bound = Math.min(bound ?? Infinity, news.bound);
    const found = news.x === null ? null : choiceOf(problem, model, news.x);
    if (found === null || (best !== null && found.value <= best.value)) return;
    best = found;
    limits.better?.(answer('bounded'));
  };
  const { port1, port2 } = new MessageChannel();
  port1.on('message', hear);
  const thread = new Piscina({ ...threadFile('milp'), minThreads: 1, maxThreads: 1 });
  const ending = new AbortController();
  const endFromOutside = (): void => { ending.abort(); };
  limits.signal?.addEventListener('abort', endFromOutside);
  if (limits.signal?.aborted === true) ending.abort();
  const timer = setTimeout(() => { ending.abort(); }, (limits.timeLimit_s + GRACE_S) * 1000);
  try {
    const task: MilpTask = { port: port2, model, timeLimit_s: limits.timeLimit_s };
    const end = (await thread.run(task, { transferList: [port2], signal: ending.signal })) as MilpEnd;
    hear(end);
    return answer(end.outcome === 'stopped' ? 'bounded' : end.outcome);
  } catch (fault) {
    if (!ending.signal.aborted) throw fault;
    return answer('bounded');
  } finally {
    clearTimeout(timer);
    limits.signal?.removeEventListener('abort', endFromOutside);
    port1.close();
    await thread.destroy();
  }
}
