import { type Phase, quantileOf } from '#calc';
import { choiceOf } from '../choice/choice.js';
import type { ChoiceTerms } from '../choice/choose-under-caps.js';
import { selectionProblem } from '../choice/selection-problem.js';
import type { FilmOption, PhaseValue } from '../options/option.js';
import { phaseValue } from '../options/value.js';
import type { Workers } from '../workers.js';
import { type DrawOrder, drawnValue } from './draw-book.js';
import { type DrawnSavings, optionInDraw } from './drawn-option.js';

/** Counted seconds of work of one selection under a draw, the same on every machine; the clock only stands guard. A plan near the best is enough to count who is in it. */
const WORK_S = 0.15;
const GUARD_S = 30;

/** What the selections are made of. */
export interface FrequencyRequest extends ChoiceTerms {
  readonly drawn: readonly DrawnSavings[];
  readonly order: DrawOrder;
  readonly workedCaps_cents: readonly number[];
  readonly endYearOf: (building: string) => number | null;
  readonly work: Pick<Workers, 'choose'>;
}

/** The share of a modelled saving that counts, where the plan counts savings as found in bills. */
function countedAgain(option: FilmOption): FilmOption {
  const { counted = 1 } = option;
  if (counted === 1) return option;
  return { ...option, segments: option.segments.map((s) => ({ ...s, saving: { ...s.saving, cooling_cents: counted * s.saving.cooling_cents } })) };
}

/** How often dwellings are in the plan when the selection is made again. */
export interface PlanFrequency {
  /** Share of the selections by dwelling; a dwelling in none is left out. */
  readonly inPlan: ReadonlyMap<string, number>;
  /** How far the selections end below the bound no plan of theirs can pass, as a share of it; null where none was made. */
  readonly gap: { readonly middle: number; readonly worst: number } | null;
}

/** Makes the selection again under single draws and counts who is in the plan. */
export async function planFrequency(request: FrequencyRequest, selections: number): Promise<PlanFrequency> {
  const savings = new Map(request.drawn.map((d) => [d.option.id, d]));
  const options = request.drawn.map((d) => d.option);
  const counts = new Map<string, number>();
  const gaps: number[] = [];
  const once = async (draw: number): Promise<readonly string[]> => {
    const terms = { ...request.terms, realEscalation: request.terms.realEscalation + drawnValue(request.order, 'escalation', { scope: '*', draw }) };
    const kept = new Map<string, FilmOption>();
    const valueIn = (option: FilmOption, phase: Phase): PhaseValue => {
      let inDraw = kept.get(option.id);
      if (inDraw === undefined) kept.set(option.id, (inDraw = countedAgain(optionInDraw(savings.get(option.id)!, request.order, draw))));
      return phaseValue(inDraw, phase, { terms, endYear: request.endYearOf(option.building) });
    };
    const posed = selectionProblem({ ...request, options, valueIn, timeLimit_s: GUARD_S });
    const result = await request.work.choose(posed.problem, { work_s: WORK_S });
    if (result.gap !== null) gaps.push(result.gap);
    return result.status === 'infeasible' ? [] : choiceOf(posed, result).lines.map((l) => l.option.dwelling);
  };
  const plans = await Promise.all(Array.from({ length: selections }, (_, draw) => once(draw)));
  for (const plan of plans) for (const dwelling of plan) counts.set(dwelling, (counts.get(dwelling) ?? 0) + 1);
  const inPlan = new Map([...counts].map(([dwelling, count]) => [dwelling, count / Math.max(1, selections)]));
  return { inPlan, gap: gaps.length === 0 ? null : { middle: quantileOf(gaps.sort((a, b) => a - b), 0.5), worst: Math.max(...gaps) } };
}
