import { sideWord } from '../dwelling/facade-sets.js';
import { bandsOf, bestOf, type RankedOption } from './rank.js';
import type { FilmOption } from '../options/option.js';
import type { PlanLine, RankedDwelling, RankedFacade } from '../plan/plan.js';
import { firstYear_cents, reasonOf } from './reasons.js';
import { simplePayback } from '../options/value.js';

export interface RankRequest {
  readonly options: readonly FilmOption[];
  readonly lines: readonly PlanLine[];
  readonly glassOf: (option: FilmOption) => string;
  /** Value of an option in the plan's view in the earliest phase open to it. */
  readonly valueOf: (option: FilmOption) => number;
}

/** Why a ranked option is not in the plan. */
function whyOut(option: FilmOption, of: RankRequest): string {
  if (option.waitsFor.length > 0) return `waits for ${option.waitsFor.join('; ')}`;
  if (of.valueOf(option) <= 0) return 'does not pay in this view';
  return 'in reserve: the caps end before it';
}

function inPlan(option: FilmOption, of: RankRequest, line: PlanLine | undefined): { readonly inPlan: string; readonly differs: string | null } {
  if (line === undefined) return { inPlan: whyOut(option, of), differs: null };
  if (line.option.id === option.id) return { inPlan: line.phase, differs: null };
  const taken = `${line.option.facades.map(sideWord).join(' and ')} with film ${line.option.film}`;
  const covers = option.facades.every((side) => line.option.facades.includes(side));
  if (!covers) return { inPlan: 'not in the plan', differs: `the plan takes ${taken} of this dwelling instead: worth more over the life of the film` };
  return { inPlan: line.phase, differs: `the plan takes ${taken}: worth more over the life of the film, though less per dollar` };
}

function rankedRow(ranked: RankedOption, at: { readonly rank: number; readonly band: string; readonly of: RankRequest; readonly line: PlanLine | undefined }): RankedDwelling {
  const { option } = ranked;
  const payback = simplePayback(option.cost.total_cents, firstYear_cents(option));
  return {
    rank: at.rank,
    band: at.band,
    dwelling: option.dwelling,
    building: option.building,
    option: option.id,
    perDollar: ranked.perDollar,
    perDollarLow: ranked.low,
    perDollarHigh: ranked.high,
    yearlyCooling_cents: option.yearlyCooling_cents,
    cost_cents: option.cost.total_cents,
    simplePayback_yr: payback.years,
    paybackWhy: payback.why,
    reason: reasonOf(option, at.of.glassOf(option)),
    ...inPlan(option, at.of, at.line),
  };
}

/** Dwellings by their best option and facades of dwellings by the option with that facade alone, best first, near-equal ones in one band. */
export function rankedLists(of: RankRequest): { readonly dwellings: RankedDwelling[]; readonly facades: RankedFacade[] } {
  const lineOf = new Map(of.lines.map((line) => [line.dwelling, line]));
  const dwellings = bestOf(of.options, (o) => o.dwelling);
  const facades = bestOf(of.options, (o) => (o.facades.length === 1 ? `${o.dwelling}|${String(o.facades[0])}` : null));
  const rows = (ranked: readonly RankedOption[]): RankedDwelling[] => {
    const bands = bandsOf(ranked);
    return ranked.map((r, i) => rankedRow(r, { rank: i + 1, band: bands[i]!, of, line: lineOf.get(r.option.dwelling) }));
  };
  return { dwellings: rows(dwellings), facades: rows(facades).map((row, i) => ({ ...row, azimuth_deg: facades[i]!.option.facades[0]! })) };
}
