import { sideWord } from '../dwelling/facade-sets.js';
import { grouped } from '../grouped.js';
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

/** A row of a list: its option, the others it stands for, and the line of its dwelling. */
interface Row {
  readonly option: FilmOption;
  /** All options of the dwelling, or of the facade alone. */
  readonly kin: readonly FilmOption[];
  readonly line: PlanLine | undefined;
  /** Whether the row is a dwelling, which is in the plan with whatever sides, or one side of it. */
  readonly isDwelling: boolean;
}

/** Why nothing of a row is in the plan. What pays in no way does not wait: a letter would not bring it in. */
function whyOut({ option, kin }: Row, of: RankRequest): string {
  const paying = kin.filter((o) => of.valueOf(o) > 0);
  if (paying.length === 0) return `does not pay in this view${option.waitsFor.length > 0 ? ', and a letter would be needed' : ''}`;
  const ready = paying.find((o) => o.waitsFor.length === 0);
  if (ready !== undefined && option.waitsFor.length === 0) return 'in reserve: the caps end before it';
  const waits = option.waitsFor.length > 0 ? option : paying[0]!;
  return `waits for ${waits.waitsFor.join('; ')}`;
}

function inPlan(row: Row, of: RankRequest): { readonly inPlan: string; readonly differs: string | null } {
  const { option, line, isDwelling } = row;
  if (line === undefined) return { inPlan: whyOut(row, of), differs: null };
  if (line.option.id === option.id) return { inPlan: line.phase, differs: null };
  const taken = `${line.option.facades.map(sideWord).join(' and ')} with film ${line.option.film}`;
  const covers = option.facades.every((side) => line.option.facades.includes(side));
  if (covers) return { inPlan: line.phase, differs: `the plan takes ${taken}: worth more over the life of the film, though less per dollar` };
  const differs = `the plan takes ${taken} of this dwelling instead: worth more over the life of the film or for the money left`;
  return { inPlan: isDwelling ? line.phase : 'this side is not in the plan', differs };
}

function rankedRow(ranked: RankedOption, at: { readonly rank: number; readonly band: string; readonly of: RankRequest } & Omit<Row, 'option'>): RankedDwelling {
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
    ...inPlan({ option, kin: at.kin, line: at.line, isDwelling: at.isDwelling }, at.of),
  };
}

/** What a row stands for: the dwelling, or the facade of an option that films it alone. */
type KeyOf = (option: FilmOption) => string | null;
const dwellingOf: KeyOf = (o) => o.dwelling;
const facadeOf: KeyOf = (o) => (o.facades.length === 1 ? `${o.dwelling}|${String(o.facades[0])}` : null);

/** Dwellings by their best option and facades of dwellings by the option with that facade alone, best first, near-equal ones in one band. */
export function rankedLists(of: RankRequest): { readonly dwellings: RankedDwelling[]; readonly facades: RankedFacade[] } {
  const lineOf = new Map(of.lines.map((line) => [line.dwelling, line]));
  const facades = bestOf(of.options, facadeOf);
  const rows = (ranked: readonly RankedOption[], keyOf: KeyOf): RankedDwelling[] => {
    const bands = bandsOf(ranked);
    const kin = grouped(of.options, (o) => keyOf(o) ?? '');
    return ranked.map((r, i) => rankedRow(r, { rank: i + 1, band: bands[i]!, of, kin: kin.get(keyOf(r.option) ?? '') ?? [], line: lineOf.get(r.option.dwelling), isDwelling: keyOf === dwellingOf }));
  };
  return { dwellings: rows(bestOf(of.options, dwellingOf), dwellingOf), facades: rows(facades, facadeOf).map((row, i) => ({ ...row, azimuth_deg: facades[i]!.option.facades[0]! })) };
}
