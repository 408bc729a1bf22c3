import { MessageChannel } from 'node:worker_threads';
import { Piscina } from 'piscina';
import { choiceFindings, type SelectionProblem, type SelectionResult } from '#calc';
import type { BetterPlan } from '#planning';
import { type MilpAnswer, selectByMilp } from './milp.js';
import type { SelectAsk } from './select.worker.js';
import { threadFile } from './thread-file.js';

type Found = Extract<SelectionResult, { value: number }>;

const gapOf = (bound: number, value: number): number => (bound === 0 ? 0 : (bound - value) / bound);

/**
 * The better of two answers to one question, with the lower of both bounds. Prices and their bound are those of the own search; a bound of the
 * solver is taken at its word, as what rests on search always is.
 */
export function joined(problem: SelectionProblem, own: SelectionResult, solver: MilpAnswer): SelectionResult {
  if (own.value === null) return own;
  const better = solver.chosen !== null && solver.value !== null && solver.value > own.value ? solver.chosen : null;
  const { value, cost_cents, crewMinutes } = better === null ? own : choiceFindings(problem, better);
  // The solver's bound is rounded: half a unit above it is still a whole number nobody can pass.
  const theirs = solver.status === 'optimal' && solver.value !== null ? solver.value : Math.floor((solver.bound ?? Infinity) + 0.5);
  const bound = Math.max(value, Math.min(own.bound, theirs));
  const { certificate } = own;
  const provedBy: Found['certificate']['provedBy'] = certificate.bound === value ? 'bound' : bound === value ? 'search' : 'none';
  return {
    ...own,
    status: bound === value ? 'optimal' : 'bounded',
    chosen: better ?? own.chosen,
    value,
    cost_cents,
    crewMinutes,
    bound,
    gap: gapOf(bound, value),
    certificate: { ...certificate, found: value, gap: gapOf(certificate.bound, value), provedBy },
    effort: { ...own.effort, endedBy: bound === value ? 'proof' : own.effort.endedBy },
  };
}

/** Own search in a thread: its answer, with each better plan posted on the way, until it is proved, out of time or told to stop. */
async function ownSearch(problem: SelectionProblem, of: { readonly stop: SharedArrayBuffer; readonly better: (found: { value: number; bound: number }) => void }): Promise<SelectionResult> {
  const { port1, port2 } = new MessageChannel();
  port1.on('message', of.better);
  const thread = new Piscina({ ...threadFile('select'), minThreads: 1, maxThreads: 1 });
  try {
    const ask: SelectAsk = { problem, port: port2, stop: of.stop };
    return (await thread.run(ask, { transferList: [port2] })) as SelectionResult;
  } finally {
    port1.close();
    await thread.destroy();
  }
}

/**
 * Goes on until the choice is proved or the time is up: the own search and the mixed-integer solver beside each other, each in a thread that
 * can be ended; the first proof ends the other, the signal ends both with what they have. Every better plan is told with the lowest bound of the moment.
 */
export async function proveChoice(problem: SelectionProblem, of: { readonly seconds: number; readonly signal?: AbortSignal; readonly better?: (found: BetterPlan) => void }): Promise<SelectionResult> {
  const stop = new SharedArrayBuffer(4);
  const ending = new AbortController();
  const endBoth = (): void => {
    Atomics.store(new Int32Array(stop), 0, 1);
    ending.abort();
  };
  of.signal?.addEventListener('abort', endBoth, { once: true });
  let value = -Infinity;
  let bound = Infinity;
  const hear = (found: { readonly value: number | null; readonly bound: number | null }, by: BetterPlan['by']): void => {
    bound = Math.min(bound, found.bound ?? Infinity);
    if (found.value === null || found.value <= value) return;
    value = found.value;
    of.better?.({ value, bound: Number.isFinite(bound) ? bound : null, by });
  };
  const timed: SelectionProblem = { ...problem, timeLimit_s: of.seconds };
  const [own, solver] = await Promise.all([
    ownSearch(timed, { stop, better: (found) => { hear(found, 'own search'); } }).then((answer) => {
      if (answer.status !== 'bounded') ending.abort();
      return answer;
    }),
    selectByMilp(problem, { timeLimit_s: of.seconds, signal: ending.signal, better: (found) => { hear(found, 'mixed-integer solver'); } }).then((answer) => {
      if (answer.status !== 'bounded') Atomics.store(new Int32Array(stop), 0, 1);
      return answer;
    }),
  ]);
  return joined(problem, own, solver);
}
