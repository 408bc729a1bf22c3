import { roundHalfAway } from '#calc';
import type { PaybackLine, PhaseResult, Plan, PlanLine, ProjectRebate } from '#planning';

/** What the formulas of the payback sheets start from, in dollars; typed results of the run. */
export interface LineMoney {
  readonly line: PaybackLine;
  /** Years from the study start to the work. */
  readonly workYear: number;
  /** Film by film of the model, at the prices of the run. */
  readonly film: readonly number[];
  readonly consumables: number;
  /** Paid by the hour: the own crew, and taking old film off. */
  readonly labour: number;
  /** What a contractor asks by the area of glass. */
  readonly contractor: number;
  readonly firstYear: number;
  readonly rebate: number;
  /** Film still on its glass at the end of its life, and the year of the study in which that is. */
  readonly filmAtEnd_m2: number;
  readonly endYear: number;
  /** By year of the study, before ageing and price rise. */
  readonly whole: readonly number[];
  readonly owner: readonly number[];
}

export interface PhaseMoney {
  readonly result: PhaseResult;
  readonly workYear: number;
  readonly film: number;
  readonly labour: number;
  readonly contractor: number;
}

export interface RebateMoney {
  readonly rebate: ProjectRebate;
  readonly workYear: number;
  readonly amount: number;
}

export interface MoneyInputs {
  readonly discount: number;
  readonly rise: number;
  readonly degradation: number;
  /** Taking film off at the end of its life, dollars a square metre. */
  readonly endRemoval: number;
  readonly contingency: number;
  readonly materialTax: number;
  readonly labourTax: number;
  /** Dollars an hour. */
  readonly labourRate: number;
}

/** The plan's money on one time axis, with the results the live formulas have at the plan's own inputs. */
export interface MoneyModel {
  readonly inputs: MoneyInputs;
  /** Every film of the plan, in order. */
  readonly films: readonly string[];
  /** 0 is the study start; flows fall at the ends of the years. */
  readonly years: readonly number[];
  readonly workYears: readonly number[];
  readonly lines: readonly LineMoney[];
  readonly phases: readonly PhaseMoney[];
  /** What funds give, project by project, in the year of the work. */
  readonly rebates: readonly RebateMoney[];
  readonly price: readonly number[];
  readonly discount: readonly number[];
  /** Share of a film's effect left, by work year and year of the study; 0 until the work is done. */
  readonly effect: ReadonlyMap<number, readonly number[]>;
}

const yearOf = (iso: string): number => Number(iso.slice(0, 4));
const monthOf = (iso: string): number => Number(iso.slice(5, 7));

/** As the planning counts: whole years from the study start to the first day of the phase. */
function workYear(firstDay: string, studyStart: string): number {
  return Math.max(0, Math.floor(((yearOf(firstDay) - yearOf(studyStart)) * 12 + monthOf(firstDay) - monthOf(studyStart)) / 12));
}

const onAxis = (yearly_cents: readonly number[], start: number, years: readonly number[]): number[] => years.map((year) => (year <= start ? 0 : (yearly_cents[year - start - 1] ?? 0) / 100));

const filmsOf = (plan: Plan): string[] => [...new Set([...plan.cuts.map((c) => c.film), ...plan.lines.flatMap((l) => l.option.films)])].sort();

/** Film of a line by film, by the area of its panes where the sides carry different ones; adds up to what the option costs. */
function filmShares(line: PlanLine, films: readonly string[]): number[] {
  const film = line.option.cost.film_cents / 100;
  const own = new Set(line.option.films);
  if (own.size === 1) return films.map((f) => (own.has(f) ? film : 0));
  const area = films.map((f) => line.windows.reduce((sum, w) => sum + (w.film === f ? w.paneCount * w.width_mm * w.height_mm : 0), 0));
  const all = area.reduce((sum, a) => sum + a, 0);
  return area.map((a) => (film * a) / all);
}

function phaseMoney(plan: Plan, result: PhaseResult): PhaseMoney {
  const { spending } = result;
  const hired = plan.lines.filter((l) => l.phase === result.phase.id && l.option.crew === 'contractor');
  const paid_cents = spending.labour_cents + spending.removal_cents;
  const contractor_cents = Math.min(paid_cents, Math.round(hired.reduce((sum, l) => sum + l.option.cost.labour_cents, 0)));
  return { result, workYear: workYear(result.phase.firstDay, plan.terms.studyStart), film: spending.film_cents / 100, labour: (paid_cents - contractor_cents) / 100, contractor: contractor_cents / 100 };
}

function lineMoney(plan: Plan, years: readonly number[]): LineMoney[] {
  const films = filmsOf(plan);
  const lines = new Map(plan.lines.map((l) => [l.dwelling, l]));
  return plan.payback.lines.map((line): LineMoney => {
    const planned = lines.get(line.dwelling);
    if (planned === undefined) throw new RangeError(`payback lines must be lines of the plan, got ${line.dwelling}`);
    const { option } = planned;
    const { cost } = option;
    const isHired = option.crew === 'contractor';
    const first = option.segments[0]?.saving;
    return {
      line,
      workYear: line.phaseYear,
      film: filmShares(planned, films),
      consumables: cost.consumables_cents / 100,
      labour: ((isHired ? 0 : cost.labour_cents) + cost.removal_cents) / 100,
      contractor: isHired ? cost.labour_cents / 100 : 0,
      firstYear: first === undefined ? 0 : (first.cooling_cents - first.addedHeating_cents) / 100,
      rebate: line.rebate_cents / 100,
      filmAtEnd_m2: line.filmAtEnd_m2 ?? 0,
      endYear: line.phaseYear + line.life_yr,
      whole: onAxis(line.yearly_cents, line.phaseYear, years),
      owner: onAxis(line.owner_cents, line.phaseYear, years),
    };
  });
}

export function moneyModel(plan: Plan): MoneyModel {
  const { terms } = plan;
  const last = Math.max(1, ...plan.payback.lines.map((l) => l.phaseYear + l.yearly_cents.length));
  const phases = plan.phases.map((result) => phaseMoney(plan, result));
  const end = Math.max(last, ...phases.map((p) => p.workYear));
  const years = Array.from({ length: end + 1 }, (_, y) => y);
  const lines = lineMoney(plan, years);
  const workYears = [...new Set([...lines.map((l) => l.workYear), ...phases.map((p) => p.workYear)])].sort((a, b) => a - b);
  const { realDiscountRate: rate, realEscalation: rise, filmDegradation_1_yr: loss } = terms;
  return {
    inputs: { discount: rate, rise, degradation: loss, endRemoval: (terms.endRemoval_cents_m2 ?? 0) / 100, contingency: terms.contingencyShare, materialTax: terms.materialTaxShare, labourTax: terms.labourTaxShare, labourRate: terms.labour_cents_h / 100 },
    films: filmsOf(plan),
    years,
    workYears: workYears.length > 0 ? workYears : [0],
    lines,
    phases,
    rebates: plan.payback.rebates.map((rebate) => ({ rebate, workYear: phases.find((p) => p.result.phase.id === rebate.phase)?.workYear ?? 0, amount: rebate.cents / 100 })),
    price: years.map((y) => (1 + rise) ** y),
    discount: years.map((y) => 1 / (1 + rate) ** y),
    effect: new Map(workYears.map((k) => [k, years.map((y) => (y > k ? (1 - loss) ** (y - k - 1) : 0))])),
  };
}

/** What taking film off costs in a year, at the price of a square metre. */
export const takenOff = (lines: readonly LineMoney[], year: number, price: number): number => toCent(lines.reduce((sum, l) => sum + (l.endYear === year ? l.filmAtEnd_m2 : 0), 0) * price);

/** Rounds dollars to the cent as ROUND(x,2) does. */
export const toCent = (amount: number): number => roundHalfAway(amount * 100) / 100;
export const sumProduct = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);
