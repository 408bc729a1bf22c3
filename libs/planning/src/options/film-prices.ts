import { cut, type CutJob, type CutPiece, type Film, type Roll } from '#calc';
import { areaPriceOf } from '../rolls/by-length.js';
import { pieceOf } from '../rolls/cut-list.js';
import type { Default } from '../job/assumption-book.js';
import { grouped, sortedBy } from '../grouped.js';
import type { PricedFilm } from './option.js';
import { paneCount, type PlacedWindow } from '../known/placed-windows.js';
import type { PlanTerms } from '../plan/terms.js';

export interface FilmPricing {
  readonly rolls: readonly Roll[];
  readonly terms: Pick<PlanTerms, 'trimPerEdge_mm' | 'edgeGap_mm'>;
  readonly mayRotate: (film: Film) => boolean;
  /** Price of a square metre where neither roll nor price is known. */
  readonly areaPrice: Default<number>;
  readonly assumedWidth_mm: number;
}

function piecesOf(windows: readonly PlacedWindow[], terms: FilmPricing['terms'], mayRotate: boolean): CutPiece[] {
  const sizes = grouped(windows, (w) => {
    const piece = pieceOf({ width_mm: w.width.mm, height_mm: w.height.mm }, terms);
    return `${piece.widthText}x${piece.lengthText}`;
  });
  const pieces = [...sizes].map(([id, same]): CutPiece => {
    const piece = pieceOf({ width_mm: same[0]!.width.mm, height_mm: same[0]!.height.mm }, terms);
    return { id, width_mm: piece.width_mm, length_mm: piece.length_mm, count: same.reduce((n, w) => n + paneCount(w), 0), mayRotate };
  });
  return sortedBy(pieces, (p) => p.id);
}

/** Time of a cut list grows with the number of its sizes: 1,200 take 0.7 s, 3,000 take 1 s, 18,000 take 2 s for each film. */
const MOST_SIZES = 6000;
const SAMPLE = 3000;

/** What is cut to learn price and waste: all, or of a very large portfolio every so many-th window, which moves the waste by a quarter of a point. */
function sampleOf(windows: readonly PlacedWindow[], piecesIn: (windows: readonly PlacedWindow[]) => CutPiece[]): { readonly pieces: CutPiece[]; readonly all_mm2: number; readonly every: number } {
  const all = piecesIn(windows);
  const all_mm2 = all.reduce((sum, p) => sum + p.count * p.width_mm * p.length_mm, 0);
  if (all.length <= MOST_SIZES) return { pieces: all, all_mm2, every: 1 };
  const every = Math.ceil(windows.length / SAMPLE);
  return { pieces: piecesIn(windows.filter((_, i) => i % every === 0)), all_mm2, every };
}

/** What is cut to learn what a film costs, and how it was sampled. */
interface CandidateCut {
  readonly job: CutJob;
  readonly offers: readonly Roll[];
  readonly all_mm2: number;
  /** Every so many-th window; 1 where all are cut. */
  readonly every: number;
}

/** All candidate panes of a film (or of a very large portfolio a sample) and the rolls they are cut from once: those on offer, or one assumed width sold by length. */
export function candidateCut(film: Film, windows: readonly PlacedWindow[], of: Pick<FilmPricing, 'rolls' | 'terms' | 'mayRotate' | 'assumedWidth_mm'>): CandidateCut {
  const offers = sortedBy(of.rolls.filter((r) => r.film === film.id && r.price_cents !== null), (r) => r.id);
  const { pieces, all_mm2, every } = sampleOf(windows, (some) => piecesOf(some, of.terms, of.mayRotate(film)));
  const rolls = offers.length === 0 ? [{ width_mm: of.assumedWidth_mm }] : offers.map((r) => ({ width_mm: r.width.mm, length_mm: r.length_mm, price_cents: r.price_cents ?? 0 }));
  return { job: { pieces, rolls }, offers, all_mm2, every };
}

/**
 * Price and waste of a film before anything is chosen: all candidate panes cut once from the rolls on offer. Waste is film used up beside the
 * pieces; the uncut end of a roll is stock, not waste.
 *
 * @param windows every window that may carry the film, now or once a letter is there
 */
export function priceFilm(film: Film, windows: readonly PlacedWindow[], of: FilmPricing): PricedFilm {
  const { job, offers, all_mm2, every } = candidateCut(film, windows, of);
  const result = cut(job);
  const scale = (part: { readonly pieceArea_mm2: number }): number => (every === 1 || part.pieceArea_mm2 === 0 ? 1 : all_mm2 / part.pieceArea_mm2);
  const sampled = every === 1 ? '' : `; waste by cutting one window in ${String(every)}`;
  if (offers.length === 0) {
    const waste = result.pieceArea_mm2 === 0 ? 0 : result.usedArea_mm2 / result.pieceArea_mm2 - 1;
    return { film, price_cents_m2: areaPriceOf(film, { price_cents_m2: of.areaPrice.value }), waste, boughtArea_m2: (scale(result) * result.boughtArea_mm2) / 1e6, pieceArea_m2: (scale(result) * result.pieceArea_mm2) / 1e6, priceBasis: `${(film.price_cents_m2 ?? null) === null ? `assumed: ${of.areaPrice.source}` : 'price by area, sold by length'}${sampled}` };
  }
  const boughtArea_m2 = result.boughtArea_mm2 / 1e6;
  const pieceArea_m2 = result.pieceArea_mm2 / 1e6;
  const cost_cents = result.cost_cents ?? 0;
  const first = offers[0]!;
  const listPrice = (first.price_cents ?? 0) / ((first.width.mm * first.length_mm) / 1e6);
  return {
    film,
    price_cents_m2: boughtArea_m2 === 0 ? listPrice : cost_cents / boughtArea_m2,
    waste: pieceArea_m2 === 0 ? 0 : result.usedArea_mm2 / 1e6 / pieceArea_m2 - 1,
    boughtArea_m2: scale(result) * boughtArea_m2,
    pieceArea_m2: scale(result) * pieceArea_m2,
    priceBasis: `rolls on offer: ${offers.map((r) => r.id).join(', ')}${sampled}`,
  };
}
