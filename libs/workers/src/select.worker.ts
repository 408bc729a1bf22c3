import { performance } from 'node:perf_hooks';
import { select, type SelectionProblem, type SelectionResult } from '#calc';

/** Chooses in a thread of its own, under the clock the problem sets. */
export default function choose(problem: SelectionProblem): SelectionResult {
  return select(problem, problem.timeLimit_s === undefined ? {} : { now_s: () => performance.now() / 1000 });
}
