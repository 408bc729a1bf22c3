import { performance } from 'node:perf_hooks';
import type { MessagePort } from 'node:worker_threads';
import { select, type SelectionProblem, type SelectionResult } from '#calc';

/** What the thread is asked. */
export interface SelectAsk {
  readonly problem: SelectionProblem;
  /** Seconds of work counted in steps; without it the clock of the problem alone ends the search. */
  readonly work_s?: number;
  /** Better plans are posted here as they are found. */
  readonly port?: MessagePort;
  /** Set to 1 from outside to end the search at once with what it has. */
  readonly stop?: SharedArrayBuffer;
}

/** Chooses in a thread of its own: counted steps end the search, the clock of the problem stands guard. */
export default function choose({ problem, work_s, port, stop }: SelectAsk): SelectionResult {
  const flag = stop === undefined ? null : new Int32Array(stop);
  const now_s = (): number => (flag !== null && Atomics.load(flag, 0) === 1 ? Infinity : performance.now() / 1000);
  return select(problem, {
    ...(problem.timeLimit_s === undefined ? {} : { now_s }),
    ...(work_s === undefined ? {} : { work_s }),
    ...(port === undefined ? {} : { better: (found) => { port.postMessage(found); } }),
  });
}
