import type { Building, Film, Phase, Roll } from '#calc';
import type { Choice } from '../choice/choice.js';
import { type CutMade, cutFilm, type CutOutcome, type CutRequest, type StockRoll, type WindowToCut } from './cut-list.js';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionWindow } from '../options/option.js';
import type { CutRule, LotRule } from './cut-types.js';
import type { PhaseSpending } from '../plan/plan.js';
import type { FilmCut } from './cut-types.js';
import type { PlanTerms } from '../plan/terms.js';
import type { Candidate } from '../choice/candidate.js';

/** What pricing needs beside the choice. */
export interface RollPricing {
  readonly phases: readonly Phase[];
  readonly buildings: ReadonlyMap<string, Building>;
  readonly films: ReadonlyMap<string, Film>;
  readonly rolls: readonly Roll[];
  readonly terms: PlanTerms;
  readonly visit: (building: Building) => { readonly cents: number; readonly minutes: number };
  readonly mayRotate: (film: Film) => boolean;
  /** How pieces share the rolls; pooled where it is absent. */
  readonly cutRule?: CutRule;
  /** Whether lots may be mixed on an elevation; one lot each where it is absent. */
  readonly lotRule?: LotRule;
  readonly windowsOf: (candidate: Candidate) => readonly OptionWindow[];
}

/** A phase as it is really paid. */
export interface PricedPhase {
  readonly phase: Phase;
  readonly lines: readonly Candidate[];
  readonly visits: readonly string[];
  readonly cuts: readonly FilmCut[];
  /** The same cuts with what they were asked for. */
  readonly made: readonly CutMade[];
  readonly spending: PhaseSpending;
  /** Cents above the cap; 0 when within it. */
  readonly over_cents: number;
}

export interface PricedChoice {
  readonly choice: Choice;
  readonly phases: readonly PricedPhase[];
  /** Film left when the last phase is done. */
  readonly stockAfter: readonly StockRoll[];
}

/** Film in the store room at the start, roll by roll. */
export function startingStock(rolls: readonly Roll[]): StockRoll[] {
  return sortedBy(rolls.filter((r) => r.inStock > 0), (r) => r.id).flatMap((r) =>
    Array.from({ length: r.inStock }, (_, i): StockRoll => ({ roll: `${r.id} stock ${String(i + 1)}`, film: r.film, width_mm: r.width.mm, length_mm: r.length_mm, lot: r.lot })),
  );
}

/** Order in which phases work: by first day, then owner, so film left over is there for the next. */
export function workOrderOf(phases: readonly Phase[]): Phase[] {
  return sortedBy(phases, (p) => `${p.firstDay}|${p.ownerEntity}|${p.id}`);
}

/** What an order of film costs beside its rolls: freight, and what is paid to reach the seller's smallest order; nothing where none is bought. */
export function orderExtra_cents(cut: Pick<FilmCut, 'bought' | 'cost_cents'>, film: Pick<Film, 'freight_cents' | 'minimumOrder_cents'> | undefined): number {
  if (cut.bought.length === 0 || film === undefined) return 0;
  return (film.freight_cents ?? 0) + Math.max(0, (film.minimumOrder_cents ?? 0) - cut.cost_cents);
}

/** Every part rounded on its own, the total their sum: printed totals equal the sum of printed rows. */
export function spendingOf(lines: readonly Candidate[], cuts: readonly FilmCut[], of: RollPricing & { readonly visits: readonly string[] }): PhaseSpending {
  const { terms } = of;
  const sum = (part: (c: Candidate) => number): number => Math.round(lines.reduce((total, line) => total + part(line), 0));
  const film_cents = cuts.reduce((total, c) => total + c.cost_cents, 0);
  const consumables_cents = sum((l) => l.option.cost.consumables_cents);
  const isPaid = (l: Candidate): boolean => terms.labourIsCash || l.option.crew === 'contractor';
  const labour_cents = sum((l) => (isPaid(l) ? l.option.cost.labour_cents : 0));
  const removal_cents = sum((l) => (isPaid(l) ? l.option.cost.removal_cents : 0));
  const visits_cents = Math.round(of.visits.reduce((total, id) => total + (of.buildings.get(id) === undefined ? 0 : of.visit(of.buildings.get(id)!).cents), 0));
  const freight_cents = cuts.reduce((total, c) => total + orderExtra_cents(c, of.films.get(c.film)), 0);
  const tax_cents = Math.round((film_cents + consumables_cents + freight_cents) * terms.materialTaxShare) + Math.round((labour_cents + removal_cents) * terms.labourTaxShare);
  const before = film_cents + labour_cents + consumables_cents + removal_cents + visits_cents + freight_cents + tax_cents;
  const contingency_cents = Math.round(before * terms.contingencyShare);
  return { film_cents, labour_cents, consumables_cents, removal_cents, visits_cents, freight_cents, tax_cents, contingency_cents, total_cents: before + contingency_cents };
}

/** Film left from one phase and who may use it: what an owner bought stays with the owner, what lay in store at the start is for all. */
interface Shelf {
  shared: StockRoll[];
  readonly ofOwner: Map<string, StockRoll[]>;
}

/** Cuts kept while lines are tried in and out: the phases a try does not touch are not cut again. */
const kept = new WeakMap<RollPricing, Map<string, CutOutcome>>();
const MOST_KEPT = 16;

function cutOnce(of: RollPricing, request: CutRequest): CutOutcome {
  const own = kept.get(of) ?? new Map<string, CutOutcome>();
  kept.set(of, own);
  const key = JSON.stringify([request.phase, request.film, request.widest_mm, request.windows.map((w) => w.window.window), request.stock]);
  const found = own.get(key);
  if (found !== undefined) return found;
  const made = cutFilm(request);
  own.set(key, made);
  const [oldest] = own.keys();
  if (own.size > MOST_KEPT && oldest !== undefined) own.delete(oldest);
  return made;
}

function cutPhase(phase: Phase, lines: readonly Candidate[], at: { readonly of: RollPricing; readonly shelf: Shelf }): CutMade[] {
  const { of, shelf } = at;
  const panes = lines.flatMap((line) => of.windowsOf(line).map((window) => ({ dwelling: line.option.dwelling, building: line.option.building, window })));
  const byFilm = grouped(sortedBy(panes, (p) => p.window.film), (p) => p.window.film);
  const cuts: CutMade[] = [];
  for (const [film, ofFilm] of byFilm) {
    const sheet = of.films.get(film);
    if (sheet === undefined) throw new RangeError(`film must be known, got ${film}`);
    const own = shelf.ofOwner.get(phase.ownerEntity) ?? [];
    const mine = (r: StockRoll): boolean => r.film === film;
    const sharedNames = new Set(shelf.shared.map((r) => r.roll));
    const windows = ofFilm.map(({ dwelling, window }): WindowToCut => ({ dwelling, window }));
    const widths = ofFilm.map((p) => of.buildings.get(p.building)?.widestRoll_mm ?? null).filter((w) => w !== null);
    const outcome = cutOnce(of, {
      phase: phase.id,
      ownerEntity: phase.ownerEntity,
      film,
      mayRotate: of.mayRotate(sheet),
      windows,
      offers: of.rolls.filter((r) => r.film === film),
      stock: [...shelf.shared, ...own].filter(mine),
      terms: of.terms,
      widest_mm: widths.length === 0 ? null : Math.min(...widths),
      ...(of.cutRule === undefined ? {} : { rule: of.cutRule }),
      ...(of.lotRule === undefined ? {} : { lots: of.lotRule }),
    });
    cuts.push(outcome.made);
    shelf.shared = [...shelf.shared.filter((r) => !mine(r)), ...outcome.stockAfter.filter((r) => sharedNames.has(r.roll))];
    shelf.ofOwner.set(phase.ownerEntity, [...own.filter((r) => !mine(r)), ...outcome.stockAfter.filter((r) => !sharedNames.has(r.roll))]);
  }
  return cuts;
}

/** Buildings visited in a phase, in order. */
export const visitsOf = (lines: readonly Candidate[]): string[] => [...new Set(lines.map((l) => l.option.building))].sort();

/** Cuts every phase in order of work and prices it by what is really bought; the choice itself is not changed. */
export function priceByRolls(choice: Choice, of: RollPricing): PricedChoice {
  const shelf: Shelf = { shared: startingStock(of.rolls), ofOwner: new Map() };
  const priced = workOrderOf(of.phases).map((phase): PricedPhase => {
    const lines = choice.lines.filter((l) => of.phases[l.phase]?.id === phase.id);
    const made = cutPhase(phase, lines, { of, shelf });
    const cuts = made.map((m) => m.cut);
    const visits = visitsOf(lines);
    const spending = spendingOf(lines, cuts, { ...of, visits });
    return { phase, lines, visits, cuts, made, spending, over_cents: Math.max(0, spending.total_cents - phase.cap_cents) };
  });
  return { choice, phases: priced, stockAfter: sortedBy([...shelf.shared, ...[...shelf.ofOwner.values()].flat()], (r) => r.roll) };
}
