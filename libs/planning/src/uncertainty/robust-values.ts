import { type Phase, quantileOf } from '#calc';
import type { Candidate } from '../choice/candidate.js';
import { type ChoiceTerms, chooseUnderCaps, workedCaps } from '../choice/choose-under-caps.js';
import { inView } from '../choice/selection-problem.js';
import { visitWorth_cents } from '../choice/visit-worth.js';
import type { FilmOption, PhaseValue } from '../options/option.js';
import { phaseValue } from '../options/value.js';
import type { Workers } from '../workers.js';
import { type DrawOrder, drawnValue } from './draw-book.js';
import { type DrawnSavings, optionInDraw } from './drawn-option.js';
import type { FoundShare } from './drawn-value.js';

/** Value of an option in a phase, both views. */
export type ValueIn = (option: FilmOption, phase: Phase) => PhaseValue;

/** A choice that aims at what nine draws in ten reach. */
export interface RobustRequest extends ChoiceTerms {
  /** The plan of the middle values under the first caps; its options are among the drawn. */
  readonly middle: { readonly valueIn: ValueIn; readonly lines: readonly Candidate[] };
  readonly drawn: readonly DrawnSavings[];
  readonly order: DrawOrder;
  readonly endYearOf: (building: string) => number | null;
  readonly shareOf: (option: FilmOption) => FoundShare;
  readonly work: Workers;
}

/** Values the choice is made with, and what nine draws in ten of the plan it makes reach. */
export interface RobustValues {
  readonly basis: 'middle' | 'nine in ten of each line' | 'draws near nine in ten of the plan';
  readonly valueIn: ValueIn;
  readonly lines: readonly Candidate[];
  readonly nineInTen_cents: number;
}

const SHARE = 0.1;
/** Draws this far either side of the tenth, as a share of all, stand for the case the plan is to hold in. */
const WINDOW = 0.05;
/** Choices made again at most; each costs a choice and as many valuations as draws in the window. */
const MOST_CHOICES = 8;

/** Value of a drawn option in one draw, with the share of the saving that counts. */
function valueInDraw(of: RobustRequest): (option: FilmOption, phase: Phase, draw: number) => PhaseValue {
  const byId = new Map(of.drawn.map((d) => [d.option.id, d]));
  const rise = Array.from({ length: of.order.draws }, (_, draw) => of.terms.realEscalation + drawnValue(of.order, 'escalation', { scope: '*', draw }));
  return (option, phase, draw) => {
    const drawn = byId.get(option.id);
    if (drawn === undefined) throw new RangeError(`option must be among the drawn, got ${option.id}`);
    const share = of.shareOf(option)?.[draw] ?? 1;
    const inDraw = optionInDraw(drawn, of.order, draw);
    const counted = { ...inDraw, segments: inDraw.segments.map((s) => ({ ...s, saving: { ...s.saving, cooling_cents: share * s.saving.cooling_cents } })) };
    return phaseValue(counted, phase, { terms: { ...of.terms, realEscalation: rise[draw]! }, endYear: of.endYearOf(option.building) });
  };
}

/** The same values, worked out once an option and phase. */
function kept(valueIn: ValueIn): ValueIn {
  const known = new Map<string, PhaseValue>();
  return (option, phase) => {
    const key = `${option.id}|${phase.id}`;
    let value = known.get(key);
    if (value === undefined) known.set(key, (value = valueIn(option, phase)));
    return value;
  };
}

/** Draws whose result lies next to the tenth from below, in order of their numbers. */
function nearTheTenth(results: Float64Array): number[] {
  const order = Array.from(results, (_, draw) => draw).sort((a, b) => results[a]! - results[b]! || a - b);
  const [at, reach] = [Math.round((results.length - 1) * SHARE), Math.max(1, Math.round(results.length * WINDOW))];
  return order.slice(Math.max(0, at - reach), at + reach + 1).sort((a, b) => a - b);
}

/**
 * Values under which the selection makes a plan with a high nine-in-ten value.
 *
 * What nine draws in ten of a plan reach is not the sum of what they reach of its lines, since dwellings do not all err the same way. So plans
 * are chosen and tried: with the middle values; with what nine in ten reach of each line; and with the mean over the draws next to the tenth
 * of the plan before, which is each line's part in it (how much that quantile moves with the line), until no new plan comes. The plan that
 * reaches most in nine draws of ten is kept, so it is never below the plan of the middle values on the same draws and caps.
 *
 * @returns values, and the plan they make under the first caps
 */
export async function robustValues(of: RobustRequest): Promise<RobustValues> {
  const { phases, terms, order } = of;
  const inDraw = valueInDraw(of);
  const drawnOptions = of.drawn.map((d) => d.option);
  const draws = Array.from({ length: order.draws }, (_, d) => d);
  const resultsOf = (lines: readonly Candidate[]): Float64Array => {
    const visits = new Map(lines.map((l) => [`${l.option.building}|${l.phase}`, visitWorth_cents(of.buildings.get(l.option.building)!, phases[l.phase]!, of)]));
    const paid = [...visits.values()].reduce((sum, each) => sum + each, 0);
    return Float64Array.from(draws, (d) => lines.reduce((sum, l) => sum + inView(inDraw(l.option, phases[l.phase]!, d), terms), -paid));
  };
  const tried: (RobustValues & { readonly results: Float64Array })[] = [];
  const tryOut = (basis: RobustValues['basis'], valueIn: ValueIn, lines: readonly Candidate[]): void => {
    const results = resultsOf(lines);
    tried.push({ basis, valueIn, lines, results, nineInTen_cents: quantileOf(results.slice().sort(), SHARE) });
  };
  const choose = async (basis: RobustValues['basis'], valueIn: ValueIn): Promise<void> => {
    tryOut(basis, valueIn, (await chooseUnderCaps(drawnOptions, workedCaps(phases, terms), { ...of, valueIn })).choice.lines);
  };
  const over = (some: readonly number[], put: (values: Float64Array) => number): ValueIn =>
    kept((option, phase) => {
      const values = some.map((d) => inDraw(option, phase, d));
      return { phase: phase.id, whole_cents: put(Float64Array.from(values, (v) => v.whole_cents)), owner_cents: put(Float64Array.from(values, (v) => v.owner_cents)) };
    });
  const mean = (values: Float64Array): number => values.reduce((sum, v) => sum + v, 0) / values.length;
  const best = () => tried.reduce((before, plan) => (plan.nineInTen_cents > before.nineInTen_cents ? plan : before));
  tryOut('middle', of.middle.valueIn, of.middle.lines);
  await choose('nine in ten of each line', over(draws, (values) => quantileOf(values.sort(), SHARE)));
  const keyOf = ({ lines }: RobustValues): string => lines.map((l) => `${l.option.id}@${String(l.phase)}`).join(';');
  let last = best();
  for (const seen = new Set<string>(); tried.length < MOST_CHOICES && !seen.has(keyOf(last)); last = tried.at(-1)!) {
    seen.add(keyOf(last));
    await choose('draws near nine in ten of the plan', over(nearTheTenth(last.results), mean));
  }
  const { basis, valueIn, lines, nineInTen_cents } = best();
  return { basis, valueIn, lines, nineInTen_cents };
}
