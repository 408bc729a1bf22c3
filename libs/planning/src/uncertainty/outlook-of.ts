import { influences, spreadOf } from '#calc';
import type { UncertainInput } from '#catalogue';
import type { Candidate } from '../choice/candidate.js';
import type { ChoiceTerms } from '../choice/choose-under-caps.js';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { FilmOption } from '../options/option.js';
import { phaseYear } from '../options/value.js';
import { setOfOption, type ValuedOptions } from '../options/valued-options.js';
import type { PricedChoice } from '../rolls/price-by-rolls.js';
import type { Progress, Workers } from '../workers.js';
import { breakEvens } from './break-evens.js';
import { type DrawOrder, drawOrder, drawnValues } from './draw-book.js';
import { type DrawnSavings, drawnSavings } from './drawn-option.js';
import { type DrawnValue, drawnValue_cents } from './drawn-value.js';
import type { LineOutlook, Outlook, OutlookOrder } from './outlook.js';
import { chanceWords, spreadWords } from './outlook-words.js';
import { planFrequency } from './plan-frequency.js';
import { worthDrawing } from './worth-drawing.js';

/** The plan whose doubt is asked for, and what it was made of. */
export interface OutlookRequest {
  readonly inputs: readonly UncertainInput[];
  readonly asked: OutlookOrder;
  readonly valued: ValuedOptions;
  readonly choices: FilmChoices;
  readonly settings: PlanSettingsInForce & ChoiceTerms;
  readonly priced: PricedChoice;
  readonly workedCaps_cents: readonly number[];
  /** Value of an option as soon as it may be done. */
  readonly valueOf: (option: FilmOption) => number;
  readonly work: Workers;
  readonly progress?: Progress | undefined;
}

interface DrawnLine {
  readonly line: Candidate;
  readonly drawn: DrawnValue;
}

const founded = (choices: FilmChoices) => ({
  films: choices.films.map(({ film }) => ({ id: film.id, basis: film.basis })),
  glazings: [...choices.glazings].map(([id, glazing]) => ({ id, basis: glazing.unknown ? ('assumed' as const) : ('published' as const) })),
});

/** Savings of all options some draw may choose, in order of their ids. */
async function allDrawn(of: OutlookRequest, order: DrawOrder): Promise<DrawnSavings[]> {
  const taken = new Set(of.priced.choice.lines.map((l) => l.option.id));
  const byDwelling = worthDrawing(of.valued.options, { taken, valueOf: of.valueOf }).filter((options) => options.length > 0);
  const taskOf = new Map(of.valued.tasks.map((t) => [t.dwelling.id, t]));
  const tasks = byDwelling.map((options) => ({ task: taskOf.get(options[0]!.dwelling)!, sets: options.map((o) => setOfOption(o, of.choices)), order }));
  const results = await of.work.drawnDwellings(tasks, of.choices.room, of.progress);
  return results.flatMap((result, i) => drawnSavings(byDwelling[i]!, result, order.draws));
}

/** What belongs to the plan and to no line (visits, freight, film beyond the pieces, contingency), at the study start. */
function overheadNow_cents(of: OutlookRequest): number {
  const { terms } = of.settings;
  return of.priced.phases.reduce((total, p) => {
    const over = p.spending.total_cents - p.lines.reduce((sum, l) => sum + l.option.cost.total_cents, 0);
    return total + over / (1 + terms.realDiscountRate) ** phaseYear(p.phase, terms.studyStart);
  }, 0);
}

function added(lines: readonly DrawnLine[], part: (d: DrawnValue) => Float64Array, draws: number): Float64Array {
  const sum = new Float64Array(draws);
  for (const { drawn } of lines) part(drawn).forEach((value, d) => (sum[d] = sum[d]! + value));
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

function lineOutlook({ line, drawn }: DrawnLine, of: OutlookRequest, inPlan: ReadonlyMap<string, number>): LineOutlook {
  const phase = of.settings.phases[line.phase]!;
  const [yearly_cents, value_cents] = [spreadOf(drawn.yearly_cents), spreadOf(drawn.value_cents)];
  const paysBackShare = drawn.paysBack.reduce((sum, paid) => sum + paid, 0) / drawn.paysBack.length;
  return {
    dwelling: line.option.dwelling,
    option: line.option.id,
    phase: phase.id,
    yearly_cents,
    value_cents,
    paysBackShare,
    inPlanShare: of.asked.selections === 0 ? null : (inPlan.get(line.option.dwelling) ?? 0),
    breakEvens: breakEvens(line.option, phase, { terms: of.settings.terms, endYear: of.settings.endYearOf(line.option.building) }),
    words: `${spreadWords(yearly_cents, 'a year')}; pays back within the film's life ${chanceWords(paysBackShare)}`,
  };
}

/** How sure the plan is: every option that counts, computed again hour by hour under each draw, and the selection made again. */
export async function outlookOf(of: OutlookRequest): Promise<Outlook> {
  const { asked, settings } = of;
  const order = drawOrder(of.inputs, { founded: founded(of.choices), seed: asked.seed, draws: asked.draws });
  const all = await allDrawn(of, order);
  const savingsOf = new Map(all.map((d) => [d.option.id, d]));
  const lines = of.priced.phases.flatMap((p) => p.lines).map((line): DrawnLine => ({
    line,
    drawn: drawnValue_cents(savingsOf.get(line.option.id)!, settings.phases[line.phase]!, { order, terms: settings.terms, endYear: settings.endYearOf(line.option.building) }),
  }));
  const overhead = overheadNow_cents(of);
  const value = added(lines, (d) => d.value_cents, asked.draws).map((v) => v - overhead);
  const yearly = added(lines, (d) => d.yearly_cents, asked.draws);
  const selections = Math.min(asked.selections, asked.draws);
  const inPlan = await planFrequency({ ...settings, drawn: all, order, workedCaps_cents: of.workedCaps_cents, work: of.work }, selections);
  const worthIt = value.reduce((count, v) => count + (v >= 0 ? 1 : 0), 0) / asked.draws;
  const [value_cents, yearly_cents] = [spreadOf(value), spreadOf(yearly)];
  return {
    seed: asked.seed,
    draws: asked.draws,
    selections,
    value_cents,
    yearly_cents,
    paysBackShare: worthIt,
    lines: lines.map((line) => lineOutlook(line, of, inPlan)),
    influences: lines.length === 0 || asked.draws < 2 ? [] : influences(feltByPlan(order, lines.map((l) => l.line)), value),
    inputs: order.inputs.map(({ label, unit, scope, source }) => ({ label, unit, scope, source })),
    words: [`${spreadWords(yearly_cents, 'a year')}.`, `Net present value: ${spreadWords(value_cents, 'over the life of the film')}; not below zero ${chanceWords(worthIt)}.`],
  };
}
