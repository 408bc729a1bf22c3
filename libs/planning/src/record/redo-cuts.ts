import type { Roll } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import type { Plan } from '../plan/plan.js';
import { cutFilm, type StockRoll } from '../rolls/cut-list.js';
import type { FilmCut } from '../rolls/cut-types.js';
import type { RedoPaneOf } from './redo-work.js';
import type { RedoMoney, RedoWork } from './settled-work.js';

/** Film for panes to be done again, and what is left of the store room after it. */
export interface RedoFilm {
  readonly cuts: readonly FilmCut[];
  readonly left: readonly StockRoll[];
}

export const redoPhase = (phase: string): string => `${phase} redo`;

/** Pieces the revision before cut for panes that are still to be done: they wait in the store room and are not cut again. */
function stillCut(plan: Plan, panes: readonly RedoPaneOf[]): FilmCut[] {
  const before = new Map((plan.settled?.redo ?? []).map((r) => [r.pane, r.day]));
  const waiting = new Set(panes.filter((p) => before.has(p.pane) && before.get(p.pane) === p.day).map((p) => p.pane));
  return (plan.settled?.redoCuts ?? []).map((cut) => ({ ...cut, pieces: cut.pieces.filter((p) => waiting.has(p.piece)) })).filter((cut) => cut.pieces.length > 0);
}

/** Cuts film for the panes of the visits that can be made, from what is left first; pieces keep the names of their panes. */
export function redoFilm(panes: readonly RedoPaneOf[], of: { readonly plan: Plan; readonly work: readonly RedoWork[]; readonly rolls: readonly Roll[]; readonly stock: readonly StockRoll[] }): RedoFilm {
  const { plan } = of;
  const kept = stillCut(plan, panes);
  const cutAlready = new Set(kept.flatMap((c) => c.pieces.map((p) => p.piece)));
  const phaseOf = new Map(of.work.filter((w) => w.phase !== null).flatMap((w) => w.panes.map((p): [string, string] => [p.pane, w.phase ?? ''])));
  const open = panes.filter((p) => phaseOf.has(p.pane) && !cutAlready.has(p.pane));
  const cuts: FilmCut[] = [];
  let left = of.stock;
  for (const [, same] of grouped(sortedBy(open, (p) => `${p.film}|${phaseOf.get(p.pane) ?? ''}`), (p) => `${p.film}|${phaseOf.get(p.pane) ?? ''}`)) {
    const { film, pane, ownerEntity } = same[0]!;
    const sheet = plan.films.find((f) => f.film.id === film)?.film;
    const widths = same.map((p) => plan.buildings.find((b) => b.id === p.building)?.widestRoll_mm ?? null).filter((w) => w !== null);
    const outcome = cutFilm({
      phase: redoPhase(phaseOf.get(pane) ?? ''), ownerEntity, film, mayRotate: sheet?.mayRotate ?? false,
      windows: [...new Map(same.map((p) => [p.window, { dwelling: p.dwelling, window: p.of }])).values()], only: new Set(same.map((p) => p.pane)),
      offers: of.rolls.filter((r) => r.film === film), stock: left.filter((s) => s.film === film), terms: plan.terms,
      widest_mm: widths.length === 0 ? null : Math.min(...widths),
      ...(plan.cutReviews[0]?.oneLot?.rule === 'any lot' ? { lots: 'any lot' as const } : {}),
    });
    cuts.push(outcome.cut);
    left = [...left.filter((s) => s.film !== film), ...outcome.stockAfter];
  }
  return { cuts: [...kept, ...cuts], left };
}

/** What of each year's cap is kept for panes to be done again. */
export function redoMoney(work: readonly RedoWork[], film: RedoFilm, of: { readonly materialTaxShare: number }): RedoMoney[] {
  const filmOf = (phase: string): number => film.cuts.filter((c) => c.phase === redoPhase(phase)).reduce((sum, c) => sum + c.cost_cents * (1 + of.materialTaxShare), 0);
  const own = grouped(sortedBy(work.filter((w) => w.phase !== null), (w) => w.phase ?? ''), (w) => w.phase ?? '');
  return [...own].map(([phase, all]) => ({ phase, film_cents: Math.round(filmOf(phase)), work_cents: all.reduce((sum, w) => sum + w.work_cents, 0), minutes: Math.round(all.reduce((sum, w) => sum + (w.crew === 'contractor' ? 0 : w.minutes.best), 0)) }));
}

/** Of what was kept for panes to be done again, the part whose panes are done since: it is spent. */
export function redoSpent_cents(plan: Plan, phase: string, stillOpen: ReadonlySet<string>): number {
  const panes = (plan.settled?.redoWork ?? []).filter((w) => w.phase === phase).flatMap((w) => w.panes);
  const kept = (plan.settled?.redoMoney ?? []).find((m) => m.phase === phase);
  if (kept === undefined || panes.length === 0) return 0;
  return Math.round(((kept.film_cents + kept.work_cents) * panes.filter((p) => !stillOpen.has(p.pane)).length) / panes.length);
}
