import type { Building, Phase } from '#calc';
import { grouped } from '../grouped.js';
import type { PlanTerms } from '../plan/terms.js';
import { type Candidate, cash_cents } from './candidate.js';
import { type VisitOf, visitWorth_cents } from './visit-worth.js';

export interface SlackQuestion {
  readonly phases: readonly Phase[];
  readonly caps_cents: readonly number[];
  readonly buildings: ReadonlyMap<string, Building>;
  readonly terms: PlanTerms;
  readonly visit: VisitOf;
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

/** Candidates of one building that no best choice needs, because a slack phase takes them over. */
function idleIn(candidates: readonly Candidate[], of: SlackQuestion, slack: ReadonlySet<number>): ReadonlySet<Candidate> {
  const building = of.buildings.get(candidates[0]!.option.building)!;
  const price = (phase: number): number => Math.round(visitWorth_cents(building, of.phases[phase]!, of));
  const bestIn = new Map<string, number>();
  for (const c of candidates) {
    if (!slack.has(c.phase)) continue;
    const key = `${c.option.dwelling} ${String(c.phase)}`;
    bestIn.set(key, Math.max(bestIn.get(key) ?? -Infinity, of.worth(c)));
  }
  const gain = (c: Candidate, home: number): number => (bestIn.get(`${c.option.dwelling} ${String(home)}`) ?? -Infinity) - of.worth(c);
  const idle = new Set<Candidate>();
  for (const inPhase of grouped(candidates.filter((c) => !slack.has(c.phase)), (c) => String(c.phase)).values()) {
    for (const home of slack) {
      // The whole visit moves: its price changes hands once, so the least gain of any line must make up for it.
      const more = price(home) - price(inPhase[0]!.phase);
      if (inPhase.every((c) => gain(c, home) >= Math.max(0, more))) inPhase.forEach((c) => idle.add(c));
      // A line moves alone: at worst the slack phase gets a visit of its own for it.
      else inPhase.filter((c) => gain(c, home) >= price(home)).forEach((c) => idle.add(c));
    }
  }
  return idle;
}

/**
 * Leaves out candidates that no best choice needs: where a phase can bind nothing, what is worth enough more there to pay for any change of
 * visits is done there or not at all. Exact: moving such a candidate into the slack phase frees money and loses no value.
 */
export function withoutIdlePhases(candidates: readonly Candidate[], of: SlackQuestion): Candidate[] {
  const slack = slackPhases(candidates, of);
  if (slack.size === 0) return [...candidates];
  const idle = new Set<Candidate>();
  for (const [id, ofBuilding] of grouped(candidates, (c) => c.option.building)) {
    // With one film for the whole building another film elsewhere may be what the rest needs.
    if (of.buildings.get(id)?.oneFilm === true) continue;
    for (const c of idleIn(ofBuilding, of, slack)) idle.add(c);
  }
  return candidates.filter((c) => !idle.has(c));
}
