import { checkRate } from './present-value.js';

/** A project by its first-year figures at the prices of the base date. */
export interface Project {
  readonly cost_cents: number;
  readonly rebate_cents?: number;
  readonly firstYearSaving_cents: number;
  /** What the measure costs a year on the other side (added heating). */
  readonly yearlyPenalty_cents?: number;
  /** Rise of prices a year; real where the discount rate is real. */
  readonly escalation?: number;
  /** Share of the effect lost a year, 0…1. */
  readonly degradation?: number;
  readonly life_years: number;
  /** Paid in the last year, at base-date prices, not escalated. */
  readonly removal_cents?: number;
}

/**
 * The yearly flows of a project over its life.
 *
 *   year 0: rebate − cost;  year y: (saving − penalty) × (1 − degradation)^(y−1) × (1 + escalation)^y, removal off the last
 *
 * Prices are those of the base date, so the first year has already risen once.
 *
 * @param project cents at base-date prices; life in whole years, ≥ 1
 * @returns flows of year 0 … life_years, cents with fractions, at the end of each year
 * @throws RangeError when a figure is not finite or outside its range
 * @source NIST Handbook 135, end-of-year flows at base-date prices
 */
export function projectFlows(project: Project): number[] {
  const { cost_cents, firstYearSaving_cents, life_years } = project;
  const { rebate_cents = 0, yearlyPenalty_cents = 0, escalation = 0, degradation = 0, removal_cents = 0 } = project;
  if (!(Number.isInteger(life_years) && life_years >= 1)) throw new RangeError(`life_years must be a whole number of 1 or more, got ${life_years}`);
  if (!(degradation >= 0 && degradation <= 1)) throw new RangeError(`degradation must be 0…1, got ${degradation}`);
  checkRate('escalation', escalation);
  for (const [name, value] of Object.entries({ cost_cents, rebate_cents, removal_cents })) {
    if (!(value >= 0 && Number.isFinite(value))) throw new RangeError(`${name} must be 0 or more, got ${value}`);
  }
  const net_cents = firstYearSaving_cents - yearlyPenalty_cents;
  if (!Number.isFinite(net_cents)) throw new RangeError('firstYearSaving_cents and yearlyPenalty_cents must be finite');
  const flows = Array.from({ length: life_years + 1 }, (_, year) =>
    year === 0 ? rebate_cents - cost_cents : net_cents * (1 - degradation) ** (year - 1) * (1 + escalation) ** year,
  );
  flows[life_years] = flows[life_years]! - removal_cents;
  return flows;
}
