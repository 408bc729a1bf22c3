import { barBound } from './bar-bound.js';
import { isOfManySizes } from './many-sizes.js';
import type { ReadyJob } from './ready-job.js';
import { mm2OfTicks2, type Bounds } from './result.js';
import { widthPrices } from './width-price.js';

/**
 * The least area and the least cost any cutting must buy, by the bar relaxation (which never says less than the area of the pieces, nor
 * than the rolls' width over the length of pieces that lie alone); lifted to the next sum of whole rolls where film is sold in whole rolls only.
 *
 * @param ready the job in ticks
 * @returns bounds that no layout, guillotine or not, passes
 */
export function boundsOf(ready: ReadyJob): Bounds {
  if (ready.types.length === 0) return { area_mm2: 0, cost_cents: ready.priced ? 0 : null };
  const area = Float64Array.from(ready.offers, (offer) => {
    if (offer.stock) return 0;
    const width = offer.width - ready.kerf;
    return offer.length === Infinity ? width : (width * (offer.length - ready.kerf)) / offer.length;
  });
  const least = bound(ready, area);
  const areaBound = lifted(ready, area, least);
  if (!ready.priced) return { area_mm2: mm2OfTicks2(areaBound), cost_cents: null };
  const price = Float64Array.from(ready.offers, (offer) => offer.rate);
  const ratio = sameRatio(price, area);
  const cost_cents = lifted(ready, price, ratio === null ? bound(ready, price) : ratio * least);
  return { area_mm2: mm2OfTicks2(areaBound), cost_cents };
}

/** What one price is of the other where they have one ratio for every roll: film by area then has one bound for both. */
function sameRatio(of: Float64Array, to: Float64Array): number | null {
  const first = to.findIndex((each) => each > 0);
  if (first < 0) return null;
  const ratio = of[first]! / to[first]!;
  return of.every((each, o) => Math.abs(each - ratio * to[o]!) <= 1e-12 * each) ? ratio * (1 - 1e-12) : null;
}

/** What a tick of the dearest film costs while prices are sought. */
const SCALE = 1e-3;

function bound(ready: ReadyJob, rates: Float64Array): number {
  const ends = ready.offers.reduce((sum, offer, o) => sum + (offer.length === Infinity ? rates[o]! * ready.kerf : 0), 0);
  // In one measure whatever the unit of the rates: the simplex tells nothing from a little by fixed limits.
  const unit = Math.max(...rates) / SCALE;
  if (!(unit > 0)) return 0;
  const scaled = rates.map((rate) => rate / unit);
  const { bound: least } = isOfManySizes(ready) ? widthPrices(ready, scaled) : barBound(ready, scaled);
  return Math.max(0, unit * least - ends);
}

const MOST_SUMS = 200_000;

/** Smallest sum of whole rolls that is not below the bound; the bound itself where film is sold by length or there are too many sums. */
function lifted(ready: ReadyJob, rates: Float64Array, least: number): number {
  const whole: number[] = [];
  for (let o = 0; o < ready.offers.length; o++) {
    const offer = ready.offers[o]!;
    if (offer.stock) continue;
    if (offer.length === Infinity || !(rates[o]! > 0)) return least;
    whole.push(rates[o]! * offer.length);
  }
  const kinds = [...new Set(whole)].sort((a, b) => b - a);
  const goal = least * (1 - 1e-9);
  if (kinds.length === 0 || kinds.slice(0, -1).reduce((n, roll) => n * (goal / roll + 2), 1) > MOST_SUMS) return least;
  let best = Infinity;
  const visit = (kind: number, sum: number): void => {
    const roll = kinds[kind]!;
    if (kind === kinds.length - 1) {
      best = Math.min(best, sum + Math.max(0, Math.ceil((goal - sum) / roll)) * roll);
      return;
    }
    for (let n = 0; ; n++) {
      visit(kind + 1, sum + n * roll);
      if (sum + n * roll >= goal) return;
    }
  };
  visit(0, 0);
  return Math.max(least, best);
}
