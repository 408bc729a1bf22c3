import type { SelectionResult } from '#calc';
import type { Proof } from '../plan/plan.js';
import type { Candidate } from './candidate.js';
import type { PosedSelection } from './selection-problem.js';

/** What was chosen: the lines in order of dwelling, and how good the choice is. */
export interface Choice {
  readonly lines: readonly Candidate[];
  readonly proof: Proof;
}

/** Reads the answer of the selection back into options and phases. */
export function choiceOf(posed: PosedSelection, result: SelectionResult): Choice {
  const lines = result.chosen.flatMap((line) => {
    const candidates = posed.candidates.get(line.option);
    if (candidates === undefined) throw new RangeError(`chosen must name options of the problem, got ${line.option}`);
    return candidates;
  });
  const proof: Proof = {
    status: result.status,
    value_cents: result.value ?? 0,
    bound_cents: result.bound ?? 0,
    gap: result.gap ?? (result.status === 'infeasible' ? 1 : 0),
    certificate: result.certificate,
    why: 'why' in result ? result.why : result.effort.endedBy === 'clock' ? 'the clock ended the search: on a faster machine it may reach more' : null,
    record: { problem: posed.problem, result },
  };
  return { lines: lines.sort((a, b) => (a.option.dwelling < b.option.dwelling ? -1 : 1)), proof };
}
