import type { Plan, PlanLine } from '../plan/plan.js';
import { spreadOf } from '#calc';
import { setOfOption } from '../options/valued-options.js';
import { phaseYear } from '../options/value.js';
import { type DrawOrder, drawOrder } from '../uncertainty/draw-book.js';
import { founded } from '../uncertainty/drawn-options.js';
import { drawnSavings } from '../uncertainty/drawn-option.js';
import { type DrawnValue, drawnValue_cents, yearly_cents } from '../uncertainty/drawn-value.js';
import { foundDeviations, foundShares } from '../uncertainty/found-share.js';
import type { SurveyAgain } from './survey-again.js';

/** A line under every draw, run again from the survey. */
export interface DrawnLine {
  readonly drawn: DrawnValue;
  /** Share of the modelled saving found in bills, by draw. */
  readonly found: Float64Array;
}

/** What is already run: all chances of a line share its draws. */
const kept = new WeakMap<SurveyAgain, Map<string, Promise<DrawnLine | null>>>();

/** The draws of a plan: the same seed gives the same ones. */
export function orderOf(plan: Plan, survey: SurveyAgain): DrawOrder {
  const { seed = 1, draws = 1 } = plan.outlook ?? {};
  return drawOrder(survey.job.catalogue.uncertainInputs, { founded: founded(survey.choices), seed, draws });
}

async function drawnOf(line: PlanLine, plan: Plan, survey: SurveyAgain): Promise<DrawnLine | null> {
  const { outlook } = plan;
  const phase = plan.phases.find((p) => p.phase.id === line.phase)?.phase;
  const meter = survey.known.dwellings.find((d) => d.id === line.dwelling)?.meter.id;
  const stated = outlook?.lines.find((l) => l.dwelling === line.dwelling)?.asModelled.yearly_cents.middle;
  if (outlook === null || phase === undefined || meter === undefined) return null;
  const order = orderOf(plan, survey);
  const expected = line.realisation ?? { low: 1, middle: 1, high: 1 };
  let last: DrawnLine | null = null;
  // A meter valued again after the choice counts its neighbours as planned; one that was not counts them as found.
  for (const neighbours of ['as found', 'as planned'] as const) {
    const task = (await survey.tasksOn(meter, neighbours)).find((t) => t.dwelling.id === line.dwelling);
    if (task === undefined) return null;
    const [result] = await survey.work.drawnDwellings([{ task, sets: [setOfOption(line.option, survey.choices)], order }], survey.choices.room);
    const drawn = drawnValue_cents(drawnSavings([line.option], result!, order.draws)[0]!, phase, { order, terms: plan.terms, endYear: plan.buildings.find((b) => b.id === line.building)?.endYear ?? null });
    last = { drawn, found: foundShares(expected, foundDeviations(order)) };
    if (stated !== undefined && Math.abs(spreadOf(yearly_cents(drawn, null)).middle - stated) <= 1e-6) return last;
  }
  return last;
}

/** Runs a line through all draws again; null where the survey does not hold it any more. */
export function drawnAgain(line: PlanLine, plan: Plan, survey: SurveyAgain): Promise<DrawnLine | null> {
  let lines = kept.get(survey);
  if (lines === undefined) kept.set(survey, (lines = new Map<string, Promise<DrawnLine | null>>()));
  const key = `${plan.id} ${line.dwelling}`;
  const run = lines.get(key) ?? drawnOf(line, plan, survey);
  lines.set(key, run);
  return run;
}

/** What belongs to the plan and to no line, at the study start: it is the same in every draw. */
export function beyondLinesNow_cents(plan: Plan): number {
  return plan.phases.reduce((total, { phase, spending }) => {
    const lines = plan.lines.filter((l) => l.phase === phase.id).reduce((sum, l) => sum + l.option.cost.total_cents, 0);
    return total + (spending.total_cents - lines) / (1 + plan.terms.realDiscountRate) ** phaseYear(phase, plan.terms.studyStart);
  }, 0);
}
