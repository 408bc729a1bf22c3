import type { SelectionProblem, SelectionResult } from '#calc';
import type { DwellingResult, DwellingTask, FacadeSet } from './dwelling/dwelling-task.js';
import type { OptionRoom } from './dwelling/option-room.js';

/** How far a stage has come, for the person who waits. */
export type Progress = (stage: string, done: number, of: number) => void;

/** Hourly use of a dwelling on its meter, as found and, where a set is chosen, with it. */
export interface MeterLoadTask {
  readonly task: DwellingTask;
  readonly set: FacadeSet | null;
}

/**
 * The heavy work of the plan, done in this thread (tests, compute) or on a pool (programs); both give the same result.
 * Tasks are distinct: equal dwellings are sorted out before.
 */
export interface Workers {
  readonly dwellingOptions: (tasks: readonly DwellingTask[], room: OptionRoom, progress?: Progress) => Promise<readonly DwellingResult[]>;
  readonly meterLoads: (tasks: readonly MeterLoadTask[], room: OptionRoom) => Promise<readonly Float64Array[]>;
  readonly choose: (problem: SelectionProblem) => Promise<SelectionResult>;
}
