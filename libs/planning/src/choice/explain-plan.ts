import { wholeDollarsText } from '#calc';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { FilmOption } from '../options/option.js';
import type { Workers } from '../workers.js';
import type { Candidate } from './candidate.js';
import { capCurves } from './cap-curves.js';
import type { ChosenUnderCaps } from './choose-under-caps.js';
import { dwellingReasons, pricedWays } from './dwelling-reasons.js';
import type { Explanations, PhasePrice } from './explanations.js';
import { reserveLines } from './reserve.js';
import { selectionProblem } from './selection-problem.js';

export interface ExplainQuestion {
  readonly chosen: ChosenUnderCaps;
  readonly lines: readonly Candidate[];
  readonly options: readonly FilmOption[];
  readonly settings: PlanSettingsInForce;
  readonly work: Pick<Workers, 'choose'>;
}

/** Counted seconds for the choice without the rule of whole elevations. */
const WITHOUT_RULE_S = 2;

function phasePrices({ chosen, settings }: ExplainQuestion): PhasePrice[] {
  const multipliers = chosen.choice.proof.record?.result.certificate?.multipliers;
  return settings.phases.map((phase, t) => ({
    phase: phase.id,
    nextDollar: (multipliers?.cap[t] ?? 0) / (1 + settings.terms.contingencyShare),
    nextCrewHour_cents: phase.crewMinutes === null ? null : (multipliers?.crewMinutes[t] ?? 0) * 60,
  }));
}

/** The best plan found without the rule, less that with it, under the same caps. */
async function wholeElevations(of: ExplainQuestion): Promise<Explanations['wholeElevations']> {
  const { chosen, settings } = of;
  const kept = chosen.posed.problem.groups.filter((g) => chosen.posed.candidates.get(g.options[0]?.id ?? '')?.[0]?.bundle !== undefined);
  const result = chosen.choice.proof.record?.result;
  if (kept.length === 0 || result?.value === undefined || result.value === null) return null;
  const { problem } = selectionProblem({ ...settings, options: of.options, workedCaps_cents: chosen.caps_cents, partElevations: true, timeLimit_s: 10 * WITHOUT_RULE_S });
  const free = await of.work.choose(problem, { work_s: WITHOUT_RULE_S });
  const price_cents = Math.max(0, (free.value ?? result.value) - result.value);
  const buildings = [...new Set(kept.map((g) => g.building ?? ''))].sort().join(', ');
  return { price_cents, text: `keeping elevations of ${buildings} whole costs ${wholeDollarsText(price_cents)} of value: that much more is found under the same caps when single dwellings may be filmed` };
}

/** Prices of the limits, reasons of all dwellings, the reserve and value against cap. */
export async function explainPlan(of: ExplainQuestion): Promise<Explanations> {
  const { chosen, lines, options, settings, work } = of;
  const curves = await capCurves({ posed: chosen.posed, phases: settings.phases, terms: settings.terms, choose: work.choose });
  return {
    prices: phasePrices(of),
    dwellings: dwellingReasons({ chosen, lines, options, settings, curves }),
    reserve: reserveLines(pricedWays(chosen), { lines, settings }),
    curves,
    wholeElevations: await wholeElevations(of),
  };
}
