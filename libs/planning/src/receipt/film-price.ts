import { cut } from '#calc';
import { defaultsOf } from '../job/plan-job.js';
import { areaPriceOf } from '../rolls/by-length.js';
import { candidateCut } from '../options/film-prices.js';
import type { PricedFilm } from '../options/option.js';
import { termsUsed } from './assumptions-of.js';
import type { Figure, ReceiptAt } from './figure.js';
import { part } from './figure.js';
import { digits, dollars } from './receipt-numbers.js';
import { type Receipt, type ReceiptAssumption, type ReceiptCompute, type ReceiptStep, workedOut } from './receipt.js';
import { filmRow, rollRows } from './survey-rows.js';

interface FilmFigure extends Pick<Figure, 'id' | 'title'> {
  readonly film: string;
  readonly field: 'price' | 'waste';
}

const CHANGED = 'the survey, its consents or its rolls were changed since the plan was made';

async function filmReceipt(of: FilmFigure, at: ReceiptAt): Promise<Receipt> {
  const { plan, catalogue } = at;
  const { choices, known, job } = await at.survey();
  const stated = plan.films.find((f) => f.film.id === of.film)!;
  const defaultOf = defaultsOf(catalogue);
  const place = choices.films.findIndex((f) => f.film.id === of.film);
  const windows = known.dwellings.flatMap((d) => d.windows).filter((w) => choices.filmable.of(w)[place]?.state !== 'no');
  const { job: pieces, offers, every } = candidateCut(stated.film, windows, { rolls: job.portfolio.rolls, terms: plan.terms, mayRotate: choices.mayRotate, assumedWidth_mm: defaultOf<number>('widestRoll_mm').value });
  const result = cut(pieces);
  const isPrice = of.field === 'price';
  const isAssumed = isPrice && offers.length === 0;
  const bought_m2 = result.boughtArea_mm2 / 1e6;
  const [used_m2, laid_m2, cost] = [result.usedArea_mm2 / 1e6, result.pieceArea_mm2 / 1e6, result.cost_cents ?? 0];
  const worked = isAssumed ? areaPriceOf(stated.film, { price_cents_m2: defaultOf<number>('film_cents_m2').value }) : isPrice ? cost / bought_m2 : used_m2 / laid_m2 - 1;
  const steps: ReceiptStep[] = isAssumed ? [] : isPrice
    ? [{ label: 'all candidate panes cut once', substituted: `${dollars(cost)} of rolls ÷ ${digits(bought_m2)} m² bought = ${dollars(worked)} per m²`, value: worked, unit: 'cents/m2' }]
    : [{ label: 'all candidate panes cut once', substituted: `${digits(used_m2)} m² of roll used ÷ ${digits(laid_m2)} m² of pieces − 1 = ${digits(worked, 6)}`, value: worked, unit: 'share' }];
  const million = (pointer: string): { readonly pointer: string; readonly times: number } => ({ pointer, times: 1e-6 });
  const compute: ReceiptCompute = isPrice
    ? { kernel: 'cut', input: pieces, result: [{ pointer: '/cost_cents', times: 1 }], over: [million('/boughtArea_mm2')], words: 'cost_cents ÷ (boughtArea_mm2 ÷ 1,000,000)' }
    : { kernel: 'cut', input: pieces, result: [million('/usedArea_mm2')], over: [million('/pieceArea_mm2')], plus: -1, words: 'usedArea_mm2 ÷ pieceArea_mm2 − 1' };
  const empty = pieces.pieces.length === 0;
  return {
    figure: of.id,
    title: of.title,
    value: isPrice ? stated.price_cents_m2 : stated.waste,
    unit: isPrice ? 'cents/m2' : 'share',
    formula: isPrice ? 'price of film = cost of the rolls ÷ their area, when all candidate panes of this film are cut once' : 'waste = roll run off ÷ area of the pieces − 1, when all candidate panes of this film are cut once; the uncut end of a roll is stock, not waste',
    steps,
    rows: [...rollRows(plan, of.film), ...filmRow(plan, of.film, ['may_rotate', ...(isAssumed ? ['film_price'] : [])])],
    assumptions: [...termsUsed(plan.terms, ['trimPerEdge_mm']), ...assumedPrice(stated, isAssumed && (stated.film.price_cents_m2 ?? null) === null)],
    compute: isAssumed || empty ? null : compute,
    computeWhy: isAssumed ? 'no roll of this film has a price: its price by area is given or assumed' : empty ? 'no pane may carry this film' : every > 1 ? `one window in ${String(every)} is cut` : null,
    worked: workedOut(isPrice ? stated.price_cents_m2 : stated.waste, empty ? 'not worked' : worked, CHANGED),
    see: [],
  };
}

const assumedPrice = (film: PricedFilm, isAssumed: boolean): ReceiptAssumption[] => (isAssumed ? [{ name: 'price of film', value: String(film.price_cents_m2), unit: 'cents/m2', source: film.priceBasis, basis: 'assumed' }] : []);

/** Price and waste of a film before anything is chosen. */
export const filmFigures = ({ film }: PricedFilm): Figure[] =>
  (['price', 'waste'] as const).map((field) => {
    const about = { id: `film/${part(film.id)}/${field}`, title: `${field === 'price' ? 'Price per square metre' : 'Waste'} of film ${film.id}` };
    return { ...about, receipt: (at) => filmReceipt({ ...about, film: film.id, field }, at) };
  });
