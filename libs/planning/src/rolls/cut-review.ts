import { checkLayout, cutOneLot, cutTogether, inchesText, nearMisses, offCuts, ticksOf_mm } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import { type CutMade, elevationOf, jobOf, panesOf, rollsOf } from './cut-list.js';
import type { CutReview, CutRule, LotPrice, NearMissPanes, OffCutKept, OpenedFilmRoll, RulePrice } from './cut-types.js';
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
  const { job } = jobOf(panesOf(request), request, rollsOf(request));
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

/** Lots of each elevation of a cut, by the name the rolls' lots are called. */
function lotsByElevation({ request, cut }: CutMade, nameOf: (roll: OpenedFilmRoll) => string): [elevation: string, lots: string[]][] {
  const lotOf = new Map(cut.rolls.map((r) => [r.roll, nameOf(r)]));
  const sideOf = new Map(request.windows.map((w) => [w.window.window, elevationOf(w)]));
  const bySide = grouped(cut.pieces, (p) => sideOf.get(p.window) ?? '');
  return sortedBy([...bySide], ([side]) => side).map(([side, pieces]) => [side, [...new Set(pieces.map((p) => lotOf.get(p.roll) ?? ''))].sort()]);
}

const lotText = (r: OpenedFilmRoll): string => r.lot ?? `${r.roll}, lot not known`;

/** Elevations cut from film of different lots: rolls bought together count as one lot. */
function mixedLotsOf(made: CutMade): CutReview['mixedLots'] {
  return lotsByElevation(made, (r) => (r.source === 'bought' ? 'the new order' : lotText(r))).flatMap(([elevation, lots]) => (lots.length > 1 ? [{ elevation, lots }] : []));
}

/** What one lot an elevation costs: as cut by it, or where lots are mixed by wish, what keeping them apart would. */
function lotPriceOf(made: CutMade): LotPrice {
  if (made.lotPrice !== null) return made.lotPrice;
  const off: LotPrice = { rule: 'any lot', extraArea_m2: 0, extraCost_cents: 0, why: 'lots may be mixed on a side, as asked' };
  if (mixedLotsOf(made).length === 0) return off;
  const request = { ...made.request, lots: 'one lot an elevation' as const };
  const kept = cutOneLot({ ...jobOf(panesOf(request), request, rollsOf(request)).job, rounds: PRICE_ROUNDS });
  return { ...off, extraArea_m2: kept.extraArea_mm2 / 1e6, extraCost_cents: kept.extraCost_cents ?? 0 };
}

/** Sides named in one finding. */
const MOST_NAMED = 5;

/** Sides of which an earlier phase cut a part from another lot: said, not hindered. */
function begunElsewhere(made: CutMade, earlier: readonly CutMade[]): PlanFinding[] {
  const before = new Map<string, Set<string>>();
  for (const one of earlier.filter((m) => m.cut.film === made.cut.film)) {
    for (const [side, lots] of lotsByElevation(one, lotText)) before.set(side, new Set([...(before.get(side) ?? []), ...lots]));
  }
  const sides = lotsByElevation(made, lotText).flatMap(([side, lots]) => {
    const old = before.get(side);
    return old === undefined || lots.every((lot) => old.has(lot)) ? [] : [`${side} (${[...old].sort().join('; ')})`];
  });
  if (sides.length === 0) return [];
  const named = `${sides.slice(0, MOST_NAMED).join(', ')}${sides.length > MOST_NAMED ? ` and ${String(sides.length - MOST_NAMED)} more` : ''}`;
  return [{ severity: 'note', subject: `${made.cut.phase}, film ${made.cut.film}`, text: `begun in an earlier phase from another lot: ${named}`, whatToDo: 'tell the owner that the shade may differ a little between years (common practice, no source); lay both side by side in daylight first' }];
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
    oneLot: lotPriceOf(made),
    mixedLots: mixedLotsOf(made),
  }));
  const subject = (r: CutReview): string => `${r.phase}, film ${r.film}`;
  const faults = reviews.flatMap((r) => r.check.faults.map((text): PlanFinding => ({ severity: 'error', subject: subject(r), text: `the cut layout fails its check: ${text}`, whatToDo: 'do not cut from it; report it with the inventory' })));
  const lots = reviews.flatMap((r) => r.mixedLots.map((m): PlanFinding => ({ severity: 'warning', subject: subject(r), text: `${m.elevation} side is cut from more than one lot (${m.lots.join('; ')}): the colour may differ`, whatToDo: r.oneLot?.rule === 'any lot' ? 'lay the lots side by side in daylight before cutting, or plan again with one lot a side' : 'no one lot holds all its panes, and some fit no roll on offer: lay the lots side by side in daylight before cutting, or add a wider roll to the film on offer' })));
  const begun = all.flatMap((made, i) => begunElsewhere(made, all.slice(0, i)));
  return { reviews, findings: [...faults, ...lots, ...begun] };
}
