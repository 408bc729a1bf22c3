import { checkRate } from './present-value.js';

/** Yearly figures while one state of the plant holds, at base-date prices. */
export interface SavingState {
  /** Calendar year from which it holds; the first state also holds before its year. */
  readonly fromYear: number;
  /** Bill as found less bill with the option, a year, cooling and all that hangs on the meter. */
  readonly saving_cents: number;
  /** Heating that the option adds, a year. */
  readonly heating_cents: number;
}

/** From a year on, windows of the option are gone and their share of saving and added heating with them. */
export interface WindowLoss {
  readonly fromYear: number;
  readonly share: number;
}

/** When the film goes on, how long it lasts and how prices move. */
export interface StreamTerms {
  /** Calendar year of the study's first year. */
  readonly studyStartYear: number;
  /** Years from the study's start to the work: 0 in the first phase. */
  readonly startsAfter_years: number;
  readonly life_years: number;
  /** Calendar year of sale or refurbishment; from it on nothing is saved. `null`: not within the film's life. */
  readonly endYear: number | null;
  readonly windowLosses?: readonly WindowLoss[];
  /** Rise of the electricity price a year, of the study's basis. */
  readonly escalation?: number;
  /** Rise of the price of heating a year. */
  readonly heatingEscalation?: number;
  /** Share of its effect the film loses a year. */
  readonly degradation?: number;
  /** Taking the film off in its last year, base-date price; not paid where the building's end comes first. */
  readonly removal_cents?: number;
}

/** One year of the film's life. */
export interface StreamYear {
  /** Age of the film at the end of the year: 1 … life. */
  readonly age_years: number;
  readonly calendarYear: number;
  /** Which of the states holds. */
  readonly state: number;
  /** Share of the option's windows still there and in the building's life, 0…1. */
  readonly kept: number;
  readonly saving_cents: number;
  readonly heating_cents: number;
  readonly net_cents: number;
}

/** The saving of an option over the film's life. */
export interface SavingStream {
  readonly years: readonly StreamYear[];
  /** Flow at the end of each year of the study; index 0 is the study's start. No cost in it. */
  readonly flows_cents: readonly number[];
}

function check(states: readonly SavingState[], terms: StreamTerms): void {
  if (states.length === 0) throw new RangeError('states must hold at least one state');
  if (states.some((state, i) => i > 0 && !(state.fromYear > states[i - 1]!.fromYear))) throw new RangeError('states must be in rising order of fromYear');
  if (!states.every((state) => Number.isFinite(state.saving_cents) && Number.isFinite(state.heating_cents))) throw new RangeError('states must hold finite values');
  const { life_years, startsAfter_years, degradation = 0, windowLosses = [] } = terms;
  if (!(Number.isInteger(life_years) && life_years >= 1)) throw new RangeError(`life_years must be a whole number of 1 or more, got ${life_years}`);
  if (!(Number.isInteger(startsAfter_years) && startsAfter_years >= 0)) throw new RangeError(`startsAfter_years must be a whole number of 0 or more, got ${startsAfter_years}`);
  if (!(degradation >= 0 && degradation <= 1)) throw new RangeError(`degradation must be 0…1, got ${degradation}`);
  if (windowLosses.some((loss) => !(loss.share >= 0 && loss.share <= 1))) throw new RangeError('share of a window loss must be 0…1');
  checkRate('escalation', terms.escalation ?? 0);
  checkRate('heatingEscalation', terms.heatingEscalation ?? 0);
}

function stateIn(states: readonly SavingState[], calendarYear: number): number {
  const after = states.findIndex((state) => state.fromYear > calendarYear);
  return after < 0 ? states.length - 1 : Math.max(after - 1, 0);
}

function keptIn(terms: StreamTerms, calendarYear: number): number {
  if (terms.endYear !== null && calendarYear >= terms.endYear) return 0;
  const lost = (terms.windowLosses ?? []).reduce((sum, loss) => (calendarYear >= loss.fromYear ? sum + loss.share : sum), 0);
  return Math.max(0, 1 - lost);
}

/**
 * The saving of an option as a stream over the film's life, not one number.
 *
 *   year y of the film, work done t years after the study's start:
 *   kept × (1 − degradation)^(y−1) × (saving × (1 + e)^(t+y) − heating × (1 + e_heating)^(t+y)), removal off the last year
 *
 * The state of the plant changes in its replacement year, windows leave in theirs, and nothing is saved from the year the
 * building is sold or refurbished. A change counts for the whole of its calendar year.
 *
 * @param states yearly figures by plant state at base-date prices, in rising order of year
 * @param terms start, life, ends and price rises; rates of one basis
 * @returns the years of the film, and the flows by year of the study (length startsAfter_years + life_years + 1)
 * @throws RangeError when a list is empty, out of order or a figure outside its range
 * @source NIST Handbook 135, end-of-year flows at base-date prices; replacement within the study period
 */
export function yearlyStream(states: readonly SavingState[], terms: StreamTerms): SavingStream {
  check(states, terms);
  const { studyStartYear, startsAfter_years, life_years, escalation = 0, heatingEscalation = 0, degradation = 0, removal_cents = 0 } = terms;
  const years = Array.from({ length: life_years }, (_, i): StreamYear => {
    const age_years = i + 1;
    const calendarYear = studyStartYear + startsAfter_years + i;
    const state = stateIn(states, calendarYear);
    const kept = keptIn(terms, calendarYear);
    const effect = kept * (1 - degradation) ** i;
    const sinceStart = startsAfter_years + age_years;
    const saving_cents = states[state]!.saving_cents * effect * (1 + escalation) ** sinceStart;
    const heating_cents = states[state]!.heating_cents * effect * (1 + heatingEscalation) ** sinceStart;
    const isRemoved = age_years === life_years && (terms.endYear === null || calendarYear < terms.endYear);
    return { age_years, calendarYear, state, kept, saving_cents, heating_cents, net_cents: saving_cents - heating_cents - (isRemoved ? removal_cents : 0) };
  });
  const flows_cents = [...Array<number>(startsAfter_years + 1).fill(0), ...years.map((year) => year.net_cents)];
  return { years, flows_cents };
}
