import type { SelectionProblem, SelectionResult } from '#calc';

/** The question as it was put to the selection and the answer it gave, kept with the plan so that anyone can check the proof again. */
export interface ProofRecord {
  readonly problem: SelectionProblem;
  readonly result: SelectionResult;
}
