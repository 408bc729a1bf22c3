import type { Catalogue } from '#catalogue';
import type { HourlyYear, Portfolio } from '#calc';
import type { Default, DefaultOf } from './assumption-book.js';
import type { OutlookOrder } from '../uncertainty/outlook.js';
import type { PlanFinding } from '../plan/plan.js';
import type { Progress } from '../workers.js';

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
  /** Findings of the stages before, carried to the last sheet. */
  readonly findings: readonly PlanFinding[];
  readonly timeLimit_s?: number;
  /** How many draws of what is not known; none where it is absent. */
  readonly outlook?: OutlookOrder;
  readonly progress?: Progress;
}

/** Looks defaults up in the catalogue. @throws RangeError for a key it does not hold: a mistake of the program */
export function defaultsOf(catalogue: Catalogue): DefaultOf {
  return <T extends string | number | boolean>(key: string): Default<T> => {
    const found = catalogue.assumptions.find(key);
    if (found === null) throw new RangeError(`assumption must be known, got ${key}`);
    return { value: found.value as unknown as T, unit: found.unit, source: found.source, basis: found.basis };
  };
}
