import type { PayerRule } from '#calc';

/** What one fund gives towards the work of one building in one phase: its project. */
export interface ProjectRebate {
  readonly rebate: string;
  readonly building: string;
  readonly phase: string;
  /** Glass that meets the fund's terms. */
  readonly area_m2: number;
  readonly cost_cents: number;
  /** What its lines would be given one by one. */
  readonly byLine_cents: number;
  /** What the project is given: the least of area × rate, cap and share of the cost, and nothing below the least area. */
  readonly cents: number;
  readonly why: string | null;
}

/** One row of the payback review: a line of the plan, its money by year of the study. */
export interface PaybackLine {
  readonly dwelling: string;
  readonly building: string;
  readonly ownerEntity: string;
  readonly phase: string;
  readonly phaseYear: number;
  readonly cost_cents: number;
  /** What a fund gives towards it, in the year of the work. */
  readonly rebate_cents: number;
  /** Film still on its glass at the end of its life, and what taking it off then costs at prices of the study start; plans kept before have neither. */
  readonly filmAtEnd_m2?: number;
  readonly endRemoval_cents?: number;
  readonly life_yr: number;
  readonly payer: PayerRule;
  /** By year of the film's life: which span of the line's use holds, null where nothing is saved. */
  readonly inForce: readonly (number | null)[];
  /** Saving net of added heating in base-date prices by year of the film's life, all payers, before degradation and escalation. */
  readonly yearly_cents: readonly number[];
  readonly owner_cents: readonly number[];
  readonly npv_cents: number;
  readonly npvOwner_cents: number;
  readonly sir: number;
  readonly simplePayback_yr: number | null;
  readonly discountedPayback_yr: number | null;
  readonly why: string | null;
}

export interface PaybackReview {
  readonly lines: readonly PaybackLine[];
  /** What funds give, project by project. */
  readonly rebates: readonly ProjectRebate[];
  readonly cost_cents: number;
  readonly overhead_cents: number;
  /** What funds give in all. */
  readonly rebate_cents: number;
  /** Taking film off at the ends of its lives, not discounted: against the savings, in no cap. */
  readonly endRemoval_cents?: number;
  readonly npv_cents: number;
  readonly npvOwner_cents: number;
  readonly sir: number;
  readonly simplePayback_yr: number | null;
  readonly firstYear_cents: number;
  readonly firstYearOwner_cents: number;
  readonly firstYearCooling_cents: number;
  readonly firstYearHeating_cents: number;
  readonly firstYear_kWh: number;
}
