import { lifeCycle, type Phase, presentValue, type Rebate } from '#calc';
import { projectRebates } from './project-rebates.js';
import type { PricedChoice } from '../rolls/price-by-rolls.js';
import type { PaybackLine, PaybackReview } from './payback.js';
import type { PlanTerms } from '../plan/terms.js';
import { firstYear_cents } from './reasons.js';
import type { Candidate } from '../choice/candidate.js';
import { lessRemoval, optionFlows, phaseYear, simplePayback } from '../options/value.js';

export interface PaybackRequest {
  readonly terms: PlanTerms;
  readonly ownerOf: (building: string) => string;
  readonly endYearOf: (building: string) => number | null;
  readonly rebates: readonly Rebate[];
}

const sumOf = (flows: readonly number[]): number => flows.reduce((total, flow) => total + flow, 0);

function paybackLine(line: Candidate, phase: Phase, of: PaybackRequest): PaybackLine {
  const { option } = line;
  const flows = optionFlows(option, phase, { terms: of.terms, endYear: of.endYearOf(option.building) });
  const plain = optionFlows(option, phase, { terms: { ...of.terms, realEscalation: 0, filmDegradation_1_yr: 0 }, endYear: of.endYearOf(option.building) });
  const rate = of.terms.realDiscountRate;
  const rebate_cents = Math.round(sumOf(flows.rebate_cents));
  const cost = presentValue(flows.cost_cents, rate);
  const net = cost - presentValue(flows.rebate_cents, rate);
  const saved = presentValue(lessRemoval(flows.whole_cents, flows), rate);
  const simple = simplePayback(option.cost.total_cents - rebate_cents, firstYear_cents(option));
  const whole = lessRemoval(flows.whole_cents, flows).map((flow, year) => flow - flows.cost_cents[year]! + flows.rebate_cents[year]!).slice(flows.phaseYear);
  const discounted = lifeCycle(whole, { discountRate: rate, basis: 'real' }).discountedPayback_years;
  return {
    dwelling: option.dwelling,
    building: option.building,
    ownerEntity: of.ownerOf(option.building),
    phase: phase.id,
    phaseYear: phaseYear(phase, of.terms.studyStart),
    cost_cents: Math.round(option.cost.total_cents),
    rebate_cents,
    filmAtEnd_m2: flows.filmAtEnd_m2,
    endRemoval_cents: sumOf(flows.removal_cents),
    life_yr: option.filmLife_yr,
    inForce: plain.inForce.slice(plain.phaseYear + 1),
    payer: option.payer,
    yearly_cents: plain.whole_cents.slice(plain.phaseYear + 1),
    owner_cents: plain.owner_cents.slice(plain.phaseYear + 1),
    npv_cents: saved - net,
    npvOwner_cents: presentValue(lessRemoval(flows.owner_cents, flows), rate) - net,
    sir: net > 0 ? saved / net : 0,
    simplePayback_yr: simple.years,
    discountedPayback_yr: typeof discounted === 'number' ? discounted : null,
    why: simple.why ?? (typeof discounted === 'number' ? null : 'the discounted saving never reaches the cost within the life of the film'),
  };
}

/**
 * The payback of the plan: each line with its money by year, and the whole with what belongs to the plan and not to its lines (visits,
 * freight, film bought beyond the pieces, contingency).
 */
export function paybackReview(priced: PricedChoice, of: PaybackRequest): PaybackReview {
  const lines = priced.phases.flatMap((p) => p.lines.map((line) => paybackLine(line, p.phase, of)));
  const rate = of.terms.realDiscountRate;
  const sum = (part: (l: PaybackLine) => number): number => lines.reduce((total, line) => total + part(line), 0);
  const cost_cents = sum((l) => l.cost_cents);
  const overhead_cents = priced.phases.reduce((total, p) => total + p.spending.total_cents - p.lines.reduce((s, l) => s + Math.round(l.option.cost.total_cents), 0), 0);
  const overheadNow = priced.phases.reduce((total, p) => {
    const over = p.spending.total_cents - p.lines.reduce((s, l) => s + Math.round(l.option.cost.total_cents), 0);
    return total + over / (1 + rate) ** phaseYear(p.phase, of.terms.studyStart);
  }, 0);
  const spentNow = priced.phases.reduce((total, p) => total + p.spending.total_cents / (1 + rate) ** phaseYear(p.phase, of.terms.studyStart), 0);
  // What the lines count on one by one and the fund does not give the project as a whole.
  const rebates = projectRebates(priced.phases, of.rebates);
  const yearOf = new Map(lines.map((l) => [l.phase, l.phaseYear]));
  const notGiven = rebates.reduce((total, r) => total + (r.byLine_cents - r.cents) / (1 + rate) ** (yearOf.get(r.phase) ?? 0), 0);
  const rebatesNow = rebates.reduce((total, r) => total + r.cents / (1 + rate) ** (yearOf.get(r.phase) ?? 0), 0);
  const netNow = spentNow - rebatesNow;
  const npv = sum((l) => l.npv_cents) - overheadNow - notGiven;
  const first = priced.choice.lines.map((l) => l.option.segments[0]?.saving);
  const firstYear = priced.choice.lines.reduce((total, l) => total + firstYear_cents(l.option), 0);
  const allIn = cost_cents + overhead_cents;
  return {
    lines,
    cost_cents,
    overhead_cents,
    rebate_cents: rebates.reduce((total, r) => total + r.cents, 0),
    endRemoval_cents: sum((l) => l.endRemoval_cents ?? 0),
    npv_cents: npv,
    npvOwner_cents: sum((l) => l.npvOwner_cents) - overheadNow - notGiven,
    rebates,
    sir: netNow > 0 ? (npv + netNow) / netNow : 0,
    simplePayback_yr: simplePayback(allIn - rebates.reduce((total, r) => total + r.cents, 0), firstYear).years,
    firstYear_cents: firstYear,
    firstYearOwner_cents: sum((l) => l.owner_cents[0] ?? 0),
    firstYearCooling_cents: first.reduce((total, s) => total + (s?.cooling_cents ?? 0), 0),
    firstYearHeating_cents: first.reduce((total, s) => total + (s?.addedHeating_cents ?? 0), 0),
    firstYear_kWh: first.reduce((total, s) => total + (s?.coolingElectricity_kWh ?? 0), 0),
  };
}
