import { cut, type CutJob, type CutPiece, type CutResult, type CutRoll, cutOneLot, cutTogether, inchesText, type LotJob, type OwnerEntity, pieceOfPane, type PieceSize, type Roll, ticksOf_mm, type TogetherJob } from '#calc';
import { buildingOf } from '../building-id.js';
import { sideWord } from '../dwelling/facade-sets.js';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionWindow } from '../options/option.js';
import type { BoughtRoll, FilmCut, PlacedPiece } from './cut-types.js';
import type { PlanTerms } from '../plan/terms.js';
import type { CutRule, LotPrice, LotRule } from './cut-types.js';

/** Film on hand: a whole or part roll with an owner. */
export interface StockRoll {
  readonly roll: string;
  readonly film: string;
  readonly width_mm: number;
  readonly length_mm: number;
  /** null = not known: the roll is a lot of its own. */
  readonly lot: string | null;
}

/** A window to be filmed, with the film; the unit of the cut list. */
export interface WindowToCut {
  readonly dwelling: string;
  readonly window: OptionWindow;
}

/** What is to be cut of one film in one phase, and from what. */
export interface CutRequest {
  readonly phase: string;
  readonly ownerEntity: OwnerEntity['id'];
  readonly film: string;
  readonly mayRotate: boolean;
  readonly windows: readonly WindowToCut[];
  /** Panes to cut; absent: all of the windows. */
  readonly only?: ReadonlySet<string>;
  readonly offers: readonly Roll[];
  readonly stock: readonly StockRoll[];
  readonly terms: Pick<PlanTerms, 'trimPerEdge_mm' | 'edgeGap_mm'>;
  /** Widest roll that gets into the building, by building; pieces keep to rolls their building can take. */
  readonly widest_mm: number | null;
  /** Whether all pieces share the rolls, or dwellings stay together; together costs film. */
  readonly rule?: CutRule;
  /** Whether lots may be mixed on an elevation; one lot each where it is absent. */
  readonly lots?: LotRule;
}

/** A layout with what it was asked for, for the checks and for the price of other rules. */
export interface CutMade {
  readonly request: CutRequest;
  readonly job: CutJob;
  readonly result: CutResult;
  readonly cut: FilmCut;
  /** Price of one lot an elevation; null where lots may be mixed. */
  readonly lotPrice: LotPrice | null;
}

/** A cut list with what is left for the next phase. */
export interface CutOutcome {
  readonly cut: FilmCut;
  readonly stockAfter: readonly StockRoll[];
  readonly made: CutMade;
}

/** Shorter ends are thrown away. Common practice, no source. */
const WORTH_KEEPING_mm = 300;

const sizeKey = (p: PieceSize): string => `${p.widthText}x${p.lengthText}`;

export function pieceOf(window: Pick<OptionWindow, 'width_mm' | 'height_mm'>, terms: Pick<PlanTerms, 'trimPerEdge_mm' | 'edgeGap_mm'>): PieceSize {
  return pieceOfPane({ width_mm: window.width_mm, height_mm: window.height_mm, trimPerEdge_mm: terms.trimPerEdge_mm, edgeGap_mm: terms.edgeGap_mm });
}

/** A pane to be cut, with its piece. */
export interface Pane {
  readonly id: string;
  readonly dwelling: string;
  readonly window: string;
  readonly paneNo: number;
  readonly piece: PieceSize;
  /** Building and side. */
  readonly elevation: string;
}

/** What is cut from one lot: a side of a building. */
export const elevationOf = ({ dwelling, window }: WindowToCut): string => `${buildingOf(dwelling)} ${sideWord(window.azimuth_deg)}`;

export function panesOf(request: CutRequest): Pane[] {
  return sortedBy(request.windows, (w) => w.window.window).flatMap((toCut) => {
    const { dwelling, window } = toCut;
    const piece = pieceOf(window, request.terms);
    const elevation = elevationOf(toCut);
    return Array.from({ length: window.paneCount }, (_, i): Pane => ({ id: `${window.window}/${String(i + 1)}`, dwelling, window: window.window, paneNo: i + 1, piece, elevation }));
  }).filter((pane) => request.only?.has(pane.id) !== false);
}

/** What the rolls bought for a phase are called as one lot until their label is read; told apart from film of an earlier order for it. */
function orderLot({ phase, stock }: CutRequest): string {
  const known = new Set(stock.map((s) => s.lot));
  let name = `order for ${phase}`;
  for (let n = 2; known.has(name); n++) name = `order for ${phase}, ${String(n)}`;
  return name;
}

/** Film sold by length, as wide as its building takes it; the price of a metre goes with the width. */
function cutByLength({ width, price_cents }: Roll, widest_mm: number | null): CutRoll {
  const width_mm = Math.min(width.mm, widest_mm ?? Infinity);
  return { width_mm, price_cents: ((price_cents ?? 0) * width_mm) / width.mm };
}

/** Rolls of one kind as they are paid: whole ones by number, film sold by length as one stretch, rounded up to the cent. */
function boughtOf(kind: CutRoll, name: { readonly roll: string; readonly width: string }, same: readonly { readonly boughtLength_mm: number }[]): BoughtRoll {
  const { width_mm, price_cents = 0 } = kind;
  const run_mm = same.reduce((sum, r) => sum + r.boughtLength_mm, 0);
  const [length_mm, count, price] = kind.length_mm === undefined ? [run_mm, 1, Math.ceil((price_cents * run_mm) / 1000 - 1e-6)] : [kind.length_mm, same.length, price_cents];
  return { ...name, width_mm, length_mm, count, price_cents: price, cost_cents: count * price };
}

/** Offers and stock as the cutting takes them, in one stated order: stock first, shortest first. */
export function rollsOf(request: CutRequest): { readonly rolls: CutRoll[]; readonly names: { readonly roll: string; readonly lot: string | null; readonly stock: boolean; readonly width: string }[] } {
  const fits = (width_mm: number): boolean => request.widest_mm === null || width_mm <= request.widest_mm + 1e-6;
  const stock = [...request.stock].filter((s) => fits(s.width_mm)).sort((a, b) => a.length_mm - b.length_mm || (a.roll < b.roll ? -1 : 1));
  const offers = sortedBy(request.offers.filter((o) => o.price_cents !== null && (o.isByLength === true || fits(o.width.mm))), (o) => o.id);
  const lot = orderLot(request);
  return {
    rolls: [
      ...stock.map((s): CutRoll => ({ width_mm: s.width_mm, length_mm: s.length_mm, stock: 1 })),
      ...offers.map((o): CutRoll => (o.isByLength === true ? cutByLength(o, request.widest_mm) : { width_mm: o.width.mm, length_mm: o.length_mm, price_cents: o.price_cents ?? 0 })),
    ],
    names: [
      ...stock.map((s) => ({ roll: s.roll, lot: s.lot, stock: true, width: inchesText(ticksOf_mm(s.width_mm)) })),
      ...offers.map((o) => ({ roll: o.id, lot, stock: false, width: o.width.entered })),
    ],
  };
}

function placed(result: CutResult, panes: readonly Pane[], of: { readonly rollName: (roll: number) => string; readonly idOf: (pane: Pane) => string }): PlacedPiece[] {
  const waiting = grouped(panes, of.idOf);
  return result.placements.map((at) => {
    const pane = waiting.get(at.piece)?.shift();
    if (pane === undefined) throw new RangeError(`placements must name the pieces given, got ${at.piece} once too often`);
    return {
      piece: pane.id,
      window: pane.window,
      dwelling: pane.dwelling,
      paneNo: pane.paneNo,
      roll: of.rollName(at.roll),
      x_mm: at.x_mm,
      y_mm: at.y_mm,
      width_mm: at.width_mm,
      length_mm: at.length_mm,
      cutWidth: pane.piece.widthText,
      cutLength: pane.piece.lengthText,
      finishedWidth: pane.piece.finishedWidthText,
      finishedLength: pane.piece.finishedLengthText,
    };
  });
}

/** Whether elevations are kept to one lot: film in stock is there to be mixed, and the request does not allow it. */
export const keepsLots = ({ lots }: Pick<CutRequest, 'lots'>, rolls: readonly CutRoll[]): boolean => lots !== 'any lot' && rolls.some((r) => r.stock !== undefined);

/** Dwelling by dwelling in the order of the request, or all panes of one size as one piece where no rule parts dwellings or elevations. */
export function jobOf(panes: readonly Pane[], request: Pick<CutRequest, 'mayRotate' | 'rule' | 'lots'>, of: Pick<ReturnType<typeof rollsOf>, 'rolls' | 'names'>): { readonly job: TogetherJob & LotJob; readonly idOf: (pane: Pane) => string } {
  const isPooled = (request.rule ?? 'pooled') === 'pooled';
  const isParted = keepsLots(request, of.rolls);
  const idOf = (p: Pane): string => [...(isPooled ? [] : [p.dwelling]), ...(isParted ? [p.elevation] : []), sizeKey(p.piece)].join(' ');
  const same = [...grouped(panes, idOf)];
  const pieces = same.map(([id, [first, ...more]]): CutPiece => ({ id, width_mm: first!.piece.width_mm, length_mm: first!.piece.length_mm, count: 1 + more.length, mayRotate: request.mayRotate }));
  const groupOf = Object.fromEntries(same.map(([id, [first]]) => [id, first!.dwelling]));
  const sides = Object.fromEntries(same.map(([id, [first]]) => [id, first!.elevation]));
  const crewOrder = [...new Set(panes.map((p) => p.dwelling))];
  return { idOf, job: { pieces: sortedBy(pieces, (p) => p.id), rolls: of.rolls, groupOf, elevationOf: sides, lotOf: of.names.map((n) => (n.stock ? n.lot : null)), ...(request.rule === 'crew order' ? { crewOrder } : {}) } };
}

/** Cut by the rules; where a dwelling is too long for any roll, pooled after all, so that no pane is left out. */
function laidOut(job: TogetherJob & LotJob, request: Pick<CutRequest, 'rule' | 'lots'>): { readonly result: CutResult; readonly lotPrice: LotPrice | null } {
  const isPooled = (request.rule ?? 'pooled') === 'pooled';
  const lay = isPooled ? cut : (part: CutJob): CutResult => cutTogether({ ...part, groupOf: job.groupOf, crewOrder: job.crewOrder });
  const byLots = keepsLots(request, job.rolls) ? cutOneLot(job, lay) : null;
  const result = byLots ?? lay(job);
  if (!isPooled && result.unplaced.some((u) => u.why.startsWith('no roll holds its whole group'))) return laidOut(job, { ...request, rule: 'pooled' });
  if (request.lots === 'any lot') return { result, lotPrice: null };
  return { result, lotPrice: { rule: 'one lot an elevation', extraArea_m2: (byLots?.extraArea_mm2 ?? 0) / 1e6, extraCost_cents: byLots?.extraCost_cents ?? 0, why: null } };
}

/**
 * Cuts one film for one phase: every pane one piece (never area over width), stock first, whole rolls bought, what is left handed on.
 */
export function cutFilm(request: CutRequest): CutOutcome {
  const panes = panesOf(request);
  const { rolls, names } = rollsOf(request);
  const { job, idOf } = jobOf(panes, request, { rolls, names });
  const { result, lotPrice } = laidOut(job, request);
  const rollName = (i: number): string => {
    const offer = result.rolls[i]?.offer ?? 0;
    const before = result.rolls.slice(0, i).filter((r) => r.offer === offer).length;
    const name = names[offer]!;
    return name.stock ? name.roll : `${request.phase} ${name.roll} #${String(before + 1)}`;
  };
  const bought = grouped(result.rolls.map((r, i) => ({ ...r, i })).filter((r) => r.source === 'bought'), (r) => String(r.offer));
  const boughtRolls = [...bought.values()].map((same): BoughtRoll => {
    const { offer } = same[0]!;
    const { roll, width } = names[offer]!;
    return boughtOf(rolls[offer]!, { roll, width }, same);
  });
  const left = result.rolls.map((r, i): StockRoll => ({ roll: rollName(i), film: request.film, width_mm: r.width_mm, length_mm: r.leftLength_mm, lot: names[r.offer]!.lot })).filter((r) => r.length_mm >= WORTH_KEEPING_mm);
  const usedStock = new Set(result.rolls.filter((r) => r.source === 'stock').map((r) => names[r.offer]!.roll));
  const untouched = request.stock.filter((s) => !usedStock.has(s.roll));
  const stockAfter = sortedBy([...untouched, ...left], (r) => r.roll);
  const filmCut: FilmCut = {
    phase: request.phase,
    ownerEntity: request.ownerEntity,
    film: request.film,
    pieces: placed(result, panes, { rollName, idOf }),
    unplaced: result.unplaced.map((u) => ({ piece: u.piece, why: u.why })),
    bought: sortedBy(boughtRolls, (b) => b.roll),
    fromStock: result.rolls.flatMap((r, i) => (r.source === 'stock' ? [{ roll: rollName(i), width_mm: r.width_mm, length_mm: r.runningLength_mm }] : [])),
    pieceArea_m2: result.pieceArea_mm2 / 1e6,
    boughtArea_m2: result.boughtArea_mm2 / 1e6,
    lowerBoundArea_m2: result.lowerBoundArea_mm2 / 1e6,
    cost_cents: boughtRolls.reduce((sum, b) => sum + b.cost_cents, 0),
    leftover: left.map(({ roll, width_mm, length_mm }) => ({ roll, width_mm, length_mm })),
    rolls: result.rolls.map((r, i) => ({ roll: rollName(i), source: r.source, lot: names[r.offer]!.lot, width_mm: r.width_mm, length_mm: r.length_mm ?? r.runningLength_mm, running_mm: r.runningLength_mm, left_mm: r.leftLength_mm })),
  };
  return { stockAfter, cut: filmCut, made: { request, job, result, cut: filmCut, lotPrice } };
}
