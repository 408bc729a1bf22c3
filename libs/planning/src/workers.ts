import type { SelectionProblem, SelectionResult } from '#calc';
import type { DwellingResult, DwellingTask, FacadeSet } from './dwelling/dwelling-task.js';
import type { OptionUseTask, SpanUse } from './dwelling/option-use.js';
import type { DrawnDwelling, DrawnTask } from './uncertainty/drawn-dwelling.js';
import type { DwellingEnergy, EnergyTask } from './energy/dwelling-energy.js';
import type { OptionRoom } from './dwelling/option-room.js';

/** How far a stage has come, for the person who waits. */
export type Progress = (stage: string, done: number, of: number) => void;

/** Hourly use of a dwelling on its meter, as found and, where a set is chosen, with it. */
export interface MeterLoadTask {
  readonly task: DwellingTask;
  readonly set: FacadeSet | null;
}

/** A better choice on the way, with the bound of that moment. */
export interface BetterPlan {
  readonly value: number;
  readonly bound: number | null;
  readonly by: 'own search' | 'mixed-integer solver';
}

/** How hard to choose. */
export interface ChooseHow {
  /** Seconds of a reference machine counted in steps: the same answer on every machine. */
  readonly work_s?: number;
  /** Go on until proved, or until these seconds are used over all rounds; a pool runs the mixed-integer solver beside the own search. */
  readonly prove?: { readonly seconds: number; readonly roundsLeft: number };
  readonly better?: (found: BetterPlan) => void;
}

/**
 * The heavy work of the plan, done in this thread (tests, compute) or on a pool (programs); both give the same result.
 * Tasks are distinct: equal dwellings are sorted out before.
 */
export interface Workers {
  readonly dwellingOptions: (tasks: readonly DwellingTask[], room: OptionRoom, progress?: Progress) => Promise<readonly DwellingResult[]>;
  readonly meterLoads: (tasks: readonly MeterLoadTask[], room: OptionRoom) => Promise<readonly Float64Array[]>;
  readonly drawnDwellings: (tasks: readonly DrawnTask[], room: OptionRoom, progress?: Progress) => Promise<readonly DrawnDwelling[]>;
  /** Sets looked at closely: months, design day, moisture. */
  readonly dwellingEnergies: (tasks: readonly EnergyTask[], room: OptionRoom) => Promise<readonly DwellingEnergy[]>;
  readonly optionUses: (tasks: readonly OptionUseTask[], room: OptionRoom) => Promise<readonly (readonly SpanUse[])[]>;
  readonly choose: (problem: SelectionProblem, how?: ChooseHow) => Promise<SelectionResult>;
}
