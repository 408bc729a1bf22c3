import { influences, spreadOf } from '#calc';
import type { UncertainInput } from '#catalogue';
import type { Candidate } from '../choice/candidate.js';
import type { ChoiceTerms } from '../choice/choose-under-caps.js';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { FilmOption } from '../options/option.js';
import { phaseYear } from '../options/value.js';
import type { ValuedOptions } from '../options/valued-options.js';
import type { PricedChoice } from '../rolls/price-by-rolls.js';
import type { Progress, Workers } from '../workers.js';
import { breakEvens } from './break-evens.js';
import { type DrawOrder, drawOrder, drawnValues } from './draw-book.js';
import { drawnOptions, founded } from './drawn-options.js';
import { type DrawnValue, drawnValue_cents, type FoundShare, netValues_cents, paysBackShare, yearly_cents } from './drawn-value.js';
import { type ExpectedShare, FOUND_LABEL, foundDeviations, foundShares } from './found-share.js';
import type { LineChances, LineOutlook, Outlook, OutlookOrder } from './outlook.js';
import { chanceWords, spreadWords } from './outlook-words.js';
import { planFrequency } from './plan-frequency.js';

/** The plan whose doubt is asked for, and what it was made of. */
export interface OutlookRequest {
  readonly inputs: readonly UncertainInput[];
  readonly asked: OutlookOrder;
  readonly valued: ValuedOptions;
  readonly choices: FilmChoices;
  readonly settings: PlanSettingsInForce & ChoiceTerms;
  readonly priced: PricedChoice;
  readonly workedCaps_cents: readonly number[];
  /** How much of a dwelling's modelled saving is expected in bills. */
  readonly expectedOf: (dwelling: string) => ExpectedShare;
  /** Value of an option as soon as it may be done. */
  readonly valueOf: (option: FilmOption) => number;
  readonly work: Workers;
  readonly progress?: Progress | undefined;
}

interface DrawnLine {
  readonly line: Candidate;
  readonly drawn: DrawnValue;
  readonly found: Float64Array;
}

/** What belongs to the plan and to no line (visits, freight, film beyond the pieces, contingency), at the study start. */
function overheadNow_cents(of: OutlookRequest): number {
  const { terms } = of.settings;
  return of.priced.phases.reduce((total, p) => {
    const over = p.spending.total_cents - p.lines.reduce((sum, l) => sum + l.option.cost.total_cents, 0);
    return total + over / (1 + terms.realDiscountRate) ** phaseYear(p.phase, terms.studyStart);
  }, 0);
}

function added(lines: readonly DrawnLine[], part: (line: DrawnLine) => Float64Array, draws: number): Float64Array {
  const sum = new Float64Array(draws);
  for (const line of lines) part(line).forEach((value, d) => (sum[d] = sum[d]! + value));
  return sum;
}

/** Mean of an input over the lines it belongs to, draw by draw: what the plan as a whole felt. */
function feltByPlan(order: DrawOrder, lines: readonly Candidate[]): Map<string, Float64Array> {
  return new Map(
    order.inputs.map((input): [string, Float64Array] => {
      if (input.scope === 'portfolio') return [input.label, drawnValues(order, input.key, '*')];
      const scopes = lines.flatMap(({ option }) => (input.scope === 'building' ? [option.building] : input.scope === 'dwelling' ? [option.dwelling] : input.scope === 'film' ? option.films : [...input.spreads.keys()].filter((k) => k !== '*')));
      const counts = new Map<string, number>();
      for (const scope of scopes) counts.set(scope, (counts.get(scope) ?? 0) + 1);
      const mean = new Float64Array(order.draws);
      for (const [scope, count] of counts) drawnValues(order, input.key, scope).forEach((value, d) => (mean[d] = mean[d]! + (value * count) / Math.max(1, scopes.length)));
      return [input.label, mean];
    }),
  );
}

function chances(of: { readonly value_cents: ArrayLike<number>; readonly yearly_cents: ArrayLike<number>; readonly paysBackShare: number; readonly paidWords: string }): LineChances {
  const [yearly, value] = [spreadOf(of.yearly_cents), spreadOf(of.value_cents)];
  return { yearly_cents: yearly, value_cents: value, paysBackShare: of.paysBackShare, words: `${spreadWords(yearly, 'a year')}; ${of.paidWords} ${chanceWords(of.paysBackShare)}` };
}

const lineChances = (drawn: DrawnValue, found: FoundShare): LineChances =>
  chances({ value_cents: netValues_cents(drawn, found), yearly_cents: yearly_cents(drawn, found), paysBackShare: paysBackShare(drawn, found), paidWords: "pays back within the film's life" });

function lineOutlook({ line, drawn, found }: DrawnLine, of: OutlookRequest, inPlan: ReadonlyMap<string, number>): LineOutlook {
  const phase = of.settings.phases[line.phase]!;
  return {
    dwelling: line.option.dwelling,
    option: line.option.id,
    phase: phase.id,
    asModelled: lineChances(drawn, null),
    inBills: lineChances(drawn, found),
    inPlanShare: of.asked.selections === 0 ? null : (inPlan.get(line.option.dwelling) ?? 0),
    breakEvens: breakEvens(line.option, phase, { terms: of.settings.terms, endYear: of.settings.endYearOf(line.option.building), paneReplacement_cents: of.settings.buildings.get(line.option.building)?.paneReplacement_cents ?? null }),
  };
}

/** The plan's value and yearly saving in each draw, and what they say. */
function planChances(lines: readonly DrawnLine[], of: OutlookRequest, shareOf: (line: DrawnLine) => FoundShare): { readonly value: Float64Array; readonly chances: LineChances } {
  const { draws } = of.asked;
  const overhead = overheadNow_cents(of);
  const value = added(lines, (l) => netValues_cents(l.drawn, shareOf(l)), draws).map((v) => v - overhead);
  const yearly = added(lines, (l) => yearly_cents(l.drawn, shareOf(l)), draws);
  const worthIt = value.reduce((count, v) => count + (v >= 0 ? 1 : 0), 0) / draws;
  return { value, chances: chances({ value_cents: value, yearly_cents: yearly, paysBackShare: worthIt, paidWords: 'value over the life of the film not below zero' }) };
}

/** How sure the plan is: every option that counts, computed again hour by hour under each draw, and the selection made again. */
export async function outlookOf(of: OutlookRequest): Promise<Outlook> {
  const { asked, settings } = of;
  const order = drawOrder(of.inputs, { founded: founded(of.choices), seed: asked.seed, draws: asked.draws });
  const taken = new Set(of.priced.choice.lines.map((l) => l.option.id));
  const all = await drawnOptions(of.valued, { ...of, order, taken });
  const savingsOf = new Map(all.map((d) => [d.option.id, d]));
  const deviations = foundDeviations(order);
  const lines = of.priced.phases.flatMap((p) => p.lines).map((line): DrawnLine => ({
    line,
    drawn: drawnValue_cents(savingsOf.get(line.option.id)!, settings.phases[line.phase]!, { order, terms: settings.terms, endYear: settings.endYearOf(line.option.building) }),
    found: foundShares(of.expectedOf(line.option.dwelling), deviations),
  }));
  const selections = Math.min(asked.selections, asked.draws);
  const { inPlan, gap } = await planFrequency({ ...settings, drawn: all, order, workedCaps_cents: of.workedCaps_cents, work: of.work }, selections);
  const modelled = planChances(lines, of, () => null);
  const inBills = planChances(lines, of, (l) => l.found);
  const felt = feltByPlan(order, lines.map((l) => l.line)).set(FOUND_LABEL, deviations);
  return {
    seed: asked.seed,
    draws: asked.draws,
    selections,
    selectionGap: gap,
    asModelled: modelled.chances,
    inBills: inBills.chances,
    lines: lines.map((line) => lineOutlook(line, of, inPlan)),
    influences: lines.length === 0 || asked.draws < 2 ? [] : influences(felt, inBills.value),
    inputs: [...order.inputs.map(({ label, unit, scope, source }) => ({ label, unit, scope, source })), { label: FOUND_LABEL, unit: 'factor on the saving', scope: 'portfolio', source: 'studies and bills: see the realisation of the plan' }],
    words: [`As modelled: ${modelled.chances.words}.`, `As studies and bills expect it: ${inBills.chances.words}.`],
  };
}
