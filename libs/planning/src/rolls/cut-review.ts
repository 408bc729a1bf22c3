import { checkLayout, cutTogether, inchesText, nearMisses, offCuts, ticksOf_mm } from '#calc';
import { sideWord } from '../dwelling/facade-sets.js';
import { grouped, sortedBy } from '../grouped.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import { type CutMade, jobOf, panesOf, rollsOf } from './cut-list.js';
import type { CutReview, CutRule, NearMissPanes, OffCutKept, RulePrice } from './cut-types.js';
import type { PricedPhase } from './price-by-rolls.js';

const inches = (mm: number): string => inchesText(ticksOf_mm(mm));

/** Rounds of the search for the price of a rule: the price is an estimate, the plan's own layout is searched longer. */
const PRICE_ROUNDS = 40;

function nearMissesOf({ request, job }: CutMade): NearMissPanes[] {
  const bySize = grouped(panesOf(request), (p) => `${p.piece.widthText} × ${p.piece.lengthText}`);
  const pieces = [...bySize].map(([id, [first, ...more]]) => ({ id, width_mm: first!.piece.width_mm, length_mm: first!.piece.length_mm, count: 1 + more.length, mayRotate: request.mayRotate }));
  return nearMisses(pieces, job.rolls, 2 * request.terms.trimPerEdge_mm).map((n): NearMissPanes => ({ size: n.piece, panes: n.count, roll: inches(n.roll_mm), over: n.overText }));
}

/** What keeping dwellings together would cost, against the layout as it is where that is pooled. */
function priceOf(rule: Exclude<CutRule, 'pooled'>, made: CutMade): RulePrice {
  const request = { ...made.request, rule };
  const { job } = jobOf(panesOf(request), request, rollsOf(request).rolls);
  const together = cutTogether({ ...job, rounds: PRICE_ROUNDS });
  const group = together.unplaced.find((u) => u.why.startsWith('no roll holds its whole group'));
  if (group !== undefined) return { rule, extraArea_m2: 0, extraCost_cents: 0, why: `not to be had: ${group.why} (${group.piece})` };
  const isPooled = (made.request.rule ?? 'pooled') === 'pooled';
  const pooled = isPooled ? { area: made.result.boughtArea_mm2, cost: made.result.cost_cents ?? 0 } : { area: together.pooledArea_mm2, cost: (together.cost_cents ?? 0) - (together.extraCost_cents ?? 0) };
  return { rule, extraArea_m2: (together.boughtArea_mm2 - pooled.area) / 1e6, extraCost_cents: (together.cost_cents ?? 0) - pooled.cost, why: null };
}

function offCutsOf({ result, cut }: CutMade, later: readonly CutMade[]): OffCutKept[] {
  const worth = new Set(offCuts(result).map((o) => `${String(o.width_mm)}|${String(o.length_mm)}`));
  const kept = cut.rolls.filter((r) => worth.has(`${String(r.width_mm)}|${String(r.left_mm)}`));
  return kept.map(({ roll, width_mm, left_mm, lot }): OffCutKept => {
    const user = later.find((m) => m.cut.fromStock.some((s) => s.roll === roll));
    return { roll, width_mm, length_mm: left_mm, lot, usedIn: user?.cut.phase ?? null };
  });
}

/** Elevations cut from film of different lots: rolls bought together count as one lot. */
function mixedLotsOf({ request, cut }: CutMade): CutReview['mixedLots'] {
  const lotOf = new Map(cut.rolls.map((r) => [r.roll, r.source === 'bought' ? 'the new order' : (r.lot ?? `${r.roll}, lot not known`)]));
  const sideOf = new Map(request.windows.map((w) => [w.window.window, `${w.dwelling.split('/')[0] ?? ''} ${sideWord(w.window.azimuth_deg)}`]));
  const bySide = grouped(cut.pieces, (p) => sideOf.get(p.window) ?? '');
  return sortedBy([...bySide], ([side]) => side).flatMap(([elevation, pieces]) => {
    const lots = [...new Set(pieces.map((p) => lotOf.get(p.roll) ?? ''))].sort();
    return lots.length > 1 ? [{ elevation, lots }] : [];
  });
}

/** Checks every layout by code of its own, and says near misses, off-cuts, mixed lots and the price of keeping dwellings together. */
export function cutReviews(phases: readonly PricedPhase[]): { readonly reviews: CutReview[]; readonly findings: PlanFinding[] } {
  const all = phases.flatMap((p) => p.made);
  const reviews = all.map((made, i): CutReview => ({
    phase: made.cut.phase,
    ownerEntity: made.cut.ownerEntity,
    film: made.cut.film,
    rule: made.request.rule ?? 'pooled',
    check: checkLayout(made.job, made.result),
    nearMisses: nearMissesOf(made),
    offCuts: offCutsOf(made, all.slice(i + 1)),
    rules: (['dwelling together', 'crew order'] as const).map((rule) => priceOf(rule, made)),
    mixedLots: mixedLotsOf(made),
  }));
  const subject = (r: CutReview): string => `${r.phase}, film ${r.film}`;
  const faults = reviews.flatMap((r) => r.check.faults.map((text): PlanFinding => ({ severity: 'error', subject: subject(r), text: `the cut layout fails its check: ${text}`, whatToDo: 'do not cut from it; report it with the inventory' })));
  const lots = reviews.flatMap((r) => r.mixedLots.map((m): PlanFinding => ({ severity: 'warning', subject: subject(r), text: `${m.elevation} side is cut from more than one lot (${m.lots.join('; ')}): the colour may differ`, whatToDo: 'lay the lots side by side in daylight before cutting, or take the part roll out of stock and plan again' })));
  return { reviews, findings: [...faults, ...lots] };
}
