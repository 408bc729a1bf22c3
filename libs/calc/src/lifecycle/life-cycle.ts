import { paybackYears } from './payback.js';
import { checkRate, isFigure, type Missing, presentValue } from './present-value.js';
import { type Project, projectFlows } from './project-flows.js';
import { modifiedRateOfReturn, rateOfReturn } from './rate-of-return.js';

/** Rates of a study. All are real or all are nominal, and so are the flows: nothing here turns one into the other. */
export interface LifeCycleTerms {
  readonly basis: 'real' | 'nominal';
  readonly discountRate: number;
  /** Of money paid, for MIRR; the discount rate where not given. */
  readonly financeRate?: number;
  /** Of money received, for MIRR; the discount rate where not given. */
  readonly reinvestRate?: number;
}

/** The measures of a row of flows; each that does not exist says why. */
export interface LifeCycleResult {
  readonly basis: 'real' | 'nominal';
  readonly npv_cents: number;
  readonly irr: number | Missing;
  readonly mirr: number | Missing;
  /** Present value of the flows after the outlay over the outlay. */
  readonly sir: number | Missing;
  readonly airr: number | Missing;
  readonly simplePayback_years: number | Missing;
  /** Whether the simple payback falls within the years of the study. */
  readonly withinLife: boolean;
  readonly discountedPayback_years: number | Missing;
  readonly flows_cents: readonly number[];
}

/**
 * Worth of a row of yearly flows.
 *
 *   NPV = Σ flow_y/(1+d)^y;  SIR = Σ_{y≥1} flow_y/(1+d)^y / −flow_0;  AIRR = (1+d) × SIR^(1/n) − 1
 *
 * Accept when NPV > 0, SIR > 1, AIRR > d. A removal in the last year stands against the savings.
 *
 * @param flows_cents flow of year 0 … year n, n ≥ 1, cents, at the end of each year, of the basis the terms name
 * @param terms rates, each above −1
 * @returns the measures
 * @throws RangeError when there is no year after year 0, a flow is not finite or a rate is −1 or less
 * @source NIST Handbook 135, net savings, savings-to-investment ratio, adjusted internal rate of return, paybacks
 */
export function lifeCycle(flows_cents: readonly number[], terms: LifeCycleTerms): LifeCycleResult {
  const { basis, discountRate, financeRate = discountRate, reinvestRate = discountRate } = terms;
  checkRate('discountRate', discountRate);
  if (flows_cents.length < 2) throw new RangeError(`flows_cents must hold year 0 and at least one year after it, got ${flows_cents.length}`);
  const years = flows_cents.length - 1;
  const npv_cents = presentValue(flows_cents, discountRate);
  const outlay_cents = -flows_cents[0]!;
  const sir = outlay_cents > 0 ? (npv_cents + outlay_cents) / outlay_cents : { why: 'nothing is paid at the start, so there is no ratio' };
  const simplePayback_years = paybackYears(flows_cents);
  return {
    basis,
    npv_cents,
    irr: rateOfReturn(flows_cents),
    mirr: modifiedRateOfReturn(flows_cents, { financeRate, reinvestRate }),
    sir,
    airr: adjustedRate(sir, discountRate, years),
    simplePayback_years,
    withinLife: isFigure(simplePayback_years),
    discountedPayback_years: paybackYears(flows_cents, discountRate),
    flows_cents,
  };
}

function adjustedRate(sir: number | Missing, discountRate: number, years: number): number | Missing {
  if (!isFigure(sir)) return sir;
  if (!(sir > 0)) return { why: 'the savings are worth nothing or less, so no rate describes them' };
  return (1 + discountRate) * sir ** (1 / years) - 1;
}

/**
 * Worth of a project given by its first-year figures.
 *
 *   as of its flows, but simple payback = net cost / flow of year 1, stated also where it lies beyond the life
 *
 * @param project cents at base-date prices
 * @param terms rates of the same basis as the project's escalation
 * @returns the measures
 * @throws RangeError when a figure or rate is outside its range
 * @source NIST Handbook 135; simple payback by the first year's net saving: common practice
 */
export function projectLifeCycle(project: Project, terms: LifeCycleTerms): LifeCycleResult {
  const flows_cents = projectFlows(project);
  const outlay_cents = -flows_cents[0]!;
  const first_cents = flows_cents[1]!;
  const simplePayback_years = firstYearPayback(outlay_cents, first_cents);
  return {
    ...lifeCycle(flows_cents, terms),
    simplePayback_years,
    withinLife: isFigure(simplePayback_years) && simplePayback_years <= project.life_years,
  };
}

function firstYearPayback(outlay_cents: number, first_cents: number): number | Missing {
  if (!(outlay_cents > 0)) return { why: 'nothing is paid at the start, so there is nothing to pay back' };
  if (!(first_cents > 0)) return { why: 'the first year saves nothing' };
  return outlay_cents / first_cents;
}
