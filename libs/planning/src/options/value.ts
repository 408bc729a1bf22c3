import { payerShares, type Phase, presentValue, type SavingState, type SavingStream, yearlyStream } from '#calc';
import type { FilmOption, PhaseValue } from './option.js';
import { rebateIn } from './rebates.js';
import type { PlanTerms } from '../plan/terms.js';

/** The money of an option installed in a phase, by year of the study; index 0 is the study start, flows fall at year's end. */
export interface OptionFlows {
  /** Years from the study start to the work. */
  readonly phaseYear: number;
  readonly cost_cents: readonly number[];
  /** What a fund gives towards it, in the year of the work. */
  readonly rebate_cents: readonly number[];
  /** Net of added heating, all payers, with film ageing and escalation. */
  readonly whole_cents: readonly number[];
  /** Taking film off at the end of its life, in its last year: a price of the study start, paid by the owner; no part of the cost or of a cap. */
  readonly removal_cents: readonly number[];
  /** Film that comes off then: 0 where its windows or the building went before. */
  readonly filmAtEnd_m2: number;
  /** By year of the study: which of the option's segments holds, null where nothing is saved. */
  readonly inForce: readonly (number | null)[];
  /** The part of it that stays with the owner. */
  readonly owner_cents: readonly number[];
}

type MoneyTerms = Pick<PlanTerms, 'studyStart' | 'realDiscountRate' | 'realEscalation' | 'filmDegradation_1_yr' | 'endRemoval_cents_m2'>;

const yearOf = (isoDate: string): number => Number(isoDate.slice(0, 4));
const monthOf = (isoDate: string): number => Number(isoDate.slice(5, 7));

/** Whole years from the study start to the first day of a phase; the cost falls there and savings come at the ends of the years after it. */
export function phaseYear(phase: Pick<Phase, 'firstDay'>, studyStart: string): number {
  const months = (yearOf(phase.firstDay) - yearOf(studyStart)) * 12 + monthOf(phase.firstDay) - monthOf(studyStart);
  return Math.max(0, Math.floor(months / 12));
}

function states(option: Pick<FilmOption, 'segments'>): SavingState[] {
  return option.segments.map((s) => ({ fromYear: s.firstYear, saving_cents: s.saving.cooling_cents, heating_cents: s.saving.addedHeating_cents }));
}

/** Film on the glass at the end of its last year. */
function filmAtEnd_m2(option: FilmOption, stream: SavingStream): number {
  const last = stream.years.at(-1)!;
  // What goes with its windows comes off with them; whoever takes the building over decides about the rest.
  return last.kept > 0 ? Math.max(0, option.glassArea_m2 - (option.segments[last.state]!.filmGone_m2 ?? 0)) : 0;
}

/** Savings that come in and what taking film off takes from them, by year. */
export const lessRemoval = (saved_cents: readonly number[], { removal_cents }: Pick<OptionFlows, 'removal_cents'>): number[] => saved_cents.map((flow, year) => flow - removal_cents[year]!);

/** Cost and saving of an option in a phase as flows of the study. */
export function optionFlows(option: FilmOption, phase: Pick<Phase, 'firstDay' | 'lastDay'>, at: { readonly terms: MoneyTerms; readonly endYear: number | null }): OptionFlows {
  const { terms, endYear } = at;
  const start = phaseYear(phase, terms.studyStart);
  const stream = yearlyStream(states(option), {
    studyStartYear: yearOf(terms.studyStart),
    startsAfter_years: start,
    life_years: option.filmLife_yr,
    endYear,
    escalation: terms.realEscalation,
    heatingEscalation: terms.realEscalation,
    degradation: terms.filmDegradation_1_yr,
  });
  const owner_cents = stream.flows_cents.map((flow, year) => (year <= start ? flow : flow * payerShares(option.payer, year - start).owner));
  const cost_cents = stream.flows_cents.map((_, year) => (year === start ? option.cost.total_cents : 0));
  const rebate = rebateIn(option.rebates, phase)?.cents ?? 0;
  const rebate_cents = cost_cents.map((_, year) => (year === start ? rebate : 0));
  const atEnd_m2 = filmAtEnd_m2(option, stream);
  const removal_cents = cost_cents.map((_, year) => (year === start + option.filmLife_yr ? atEnd_m2 * (terms.endRemoval_cents_m2 ?? 0) : 0));
  const inForce = [...Array<null>(start + 1).fill(null), ...stream.years.map((y) => (y.kept > 0 ? y.state : null))];
  return { phaseYear: start, inForce, cost_cents, rebate_cents, removal_cents, filmAtEnd_m2: atEnd_m2, whole_cents: stream.flows_cents, owner_cents };
}

/**
 * What the savings are bought with: cost less rebate, and the end of the film. None of it hangs on how much of a saving is found in bills.
 *
 * @param worth of a list of yearly flows: their present value, or their plain sum
 */
export const boughtWith = (flows: Pick<OptionFlows, 'cost_cents' | 'rebate_cents' | 'removal_cents'>, worth: (cents: readonly number[]) => number): number =>
  worth(flows.cost_cents) - worth(flows.rebate_cents) + worth(flows.removal_cents);

/** Net present value of an option in a phase, whole building and owner; the owner pays the film, is given the rebate and pays for taking it off in both. */
export function phaseValue(option: FilmOption, phase: Phase, at: { readonly terms: MoneyTerms; readonly endYear: number | null }): PhaseValue {
  const flows = optionFlows(option, phase, at);
  const rate = at.terms.realDiscountRate;
  const cost = boughtWith(flows, (cents) => presentValue(cents, rate));
  return { phase: phase.id, whole_cents: presentValue(flows.whole_cents, rate) - cost, owner_cents: presentValue(flows.owner_cents, rate) - cost };
}

/** Years of the first year's saving that pay the installed cost, or why there are none. */
export function simplePayback(cost_cents: number, firstYear_cents: number): { readonly years: number | null; readonly why: string | null } {
  if (firstYear_cents <= 0) return { years: null, why: 'the first year saves nothing net of added heating' };
  return { years: cost_cents / firstYear_cents, why: null };
}
