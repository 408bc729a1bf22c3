import type { Catalogue } from '#catalogue';
import type { HourlyYear, Portfolio } from '#calc';
import type { Default, DefaultOf } from './assumption-book.js';
import type { OutlookOrder } from '../uncertainty/outlook.js';
import type { TemperaturesByPlace } from '../bills/day-weather.js';
import type { CutRule, LotRule } from '../rolls/cut-types.js';
import type { SettledWork } from '../record/settled-work.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { ChooseHow, Progress } from '../workers.js';

/** Everything a plan is made of; dates, ids and hashes come in as arguments. */
export interface PlanJob {
  readonly portfolio: Portfolio;
  readonly catalogue: Catalogue;
  /** A year for every building. */
  readonly weather: ReadonlyMap<string, HourlyYear>;
  readonly id: string;
  readonly revision: number;
  readonly parent: string | null;
  readonly madeOn: string;
  readonly program: string;
  readonly inputHash: string;
  /** How the pieces of a phase share its rolls; pooled where it is absent. */
  readonly cutRule?: CutRule;
  /** Whether lots of film may be mixed on an elevation; one lot each where it is absent. */
  readonly lotRule?: LotRule;
  /** Work done on the parent, for a revision that starts from it. */
  readonly settled?: SettledWork;
  /** Findings of the stages before, carried to the last sheet. */
  readonly findings: readonly PlanFinding[];
  readonly timeLimit_s?: number;
  /** Daily mean temperatures of the years billed; null or absent where none are known. */
  readonly temperatures?: TemperaturesByPlace | null;
  /** How many draws of what is not known; none where it is absent. */
  readonly outlook?: OutlookOrder;
  /** What the choice aims at: the middle by default, or what nine draws in ten reach. */
  readonly aim?: 'middle' | 'nine-in-ten';
  readonly progress?: Progress;
  /** Goes on with the choice until it is proved or these seconds are used over all rounds. */
  readonly prove_s?: number;
  readonly better?: ChooseHow['better'];
}

/** How hard a round of the choice is worked, with the rounds that may still come counted in. */
export function howHard(job: Pick<PlanJob, 'prove_s' | 'better'>, roundsLeft: number): ChooseHow {
  return { ...(job.prove_s === undefined ? {} : { prove: { seconds: job.prove_s, roundsLeft } }), ...(job.better === undefined ? {} : { better: job.better }) };
}

/** Looks defaults up in the catalogue. @throws RangeError for a key it does not hold: a mistake of the program */
export function defaultsOf(catalogue: Catalogue): DefaultOf {
  return <T extends string | number | boolean>(key: string): Default<T> => {
    const found = catalogue.assumptions.find(key);
    if (found === null) throw new RangeError(`assumption must be known, got ${key}`);
    return { value: found.value as unknown as T, unit: found.unit, source: found.source, basis: found.basis };
  };
}
