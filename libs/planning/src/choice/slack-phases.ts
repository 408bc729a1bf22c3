import type { Building, Phase } from '#calc';
import { grouped } from '../grouped.js';
import type { PlanTerms } from '../plan/plan.js';
import { type Candidate, cash_cents } from './candidate.js';

export interface SlackQuestion {
  readonly phases: readonly Phase[];
  readonly caps_cents: readonly number[];
  readonly buildings: ReadonlyMap<string, Building>;
  readonly terms: PlanTerms;
  readonly visit: (building: Building) => { readonly cents: number; readonly minutes: number };
  readonly worth: (candidate: Candidate) => number;
}

/** Phases whose cap and minutes hold even the dearest candidate of every dwelling and a visit to every building: they can bind nothing. */
function slackPhases(candidates: readonly Candidate[], of: SlackQuestion): Set<number> {
  const slack = new Set<number>();
  for (const [key, inPhase] of grouped(candidates, (c) => String(c.phase))) {
    const phase = of.phases[Number(key)]!;
    const dwellings = [...grouped(inPhase, (c) => c.option.dwelling).values()];
    const visits = [...new Set(inPhase.map((c) => c.option.building))].map((id) => of.visit(of.buildings.get(id)!));
    const cost = dwellings.reduce((sum, d) => sum + Math.max(...d.map((c) => Math.ceil(cash_cents(c.option, of.terms)))), 0) + visits.reduce((sum, v) => sum + Math.ceil(v.cents), 0);
    const minutes = dwellings.reduce((sum, d) => sum + Math.max(...d.map((c) => Math.ceil(c.option.minutes.best))), 0) + visits.reduce((sum, v) => sum + Math.ceil(v.minutes), 0);
    if (cost <= (of.caps_cents[Number(key)] ?? 0) && (phase.crewMinutes === null || minutes <= phase.crewMinutes)) slack.add(Number(key));
  }
  return slack;
}

/**
 * Leaves out candidates that no best choice needs: where a phase can bind nothing, an option of a dwelling that is worth as much there as in
 * any other phase is done there or not at all. Exact: putting such a candidate into the slack phase frees money and loses no value.
 */
export function withoutIdlePhases(candidates: readonly Candidate[], of: SlackQuestion): Candidate[] {
  const slack = slackPhases(candidates, of);
  if (slack.size === 0) return [...candidates];
  return [...grouped(candidates, (c) => c.option.dwelling).values()].flatMap((ofDwelling) => {
    // With one film for the whole building another film elsewhere may be what the rest needs.
    if (of.buildings.get(ofDwelling[0]!.option.building)?.oneFilm === true) return ofDwelling;
    const home = Math.max(-Infinity, ...ofDwelling.filter((c) => slack.has(c.phase)).map((c) => of.worth(c)));
    // A candidate elsewhere is idle when some candidate in a slack phase is worth at least as much.
    return ofDwelling.filter((c) => slack.has(c.phase) || of.worth(c) > home);
  });
}
