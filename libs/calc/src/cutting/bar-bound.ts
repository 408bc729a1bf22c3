import { CoverLp, type Column } from './cover-lp.js';
import { CrossSections, type Section } from './cross-section.js';
import type { ReadyJob } from './ready-job.js';

/** Prices that prove the bound: no cross-section of any roll is worth more than that roll costs per tick. */
export interface BarCertificate {
  /** Value of a piece of each type. */
  readonly price: Float64Array;
  /** What a tick of each offer's length is charged beyond its rate; 0 where film is bought. */
  readonly scarcity: Float64Array;
  readonly bound: number;
}

/**
 * The least any cutting costs, by the bar relaxation: every cross-section of a roll holds pieces whose widths fit beside each other,
 * and the cross-sections that hold a piece are together as long as the piece.
 *
 *   max Σ count × price − Σ stock length × scarcity,   Σ (copies × price / length) ≤ rate + scarcity for every cross-section
 *
 * A type is in a cross-section at most `count` times; a piece that may turn counts either way. Roll ends are ignored.
 *
 * @param ready the job in ticks
 * @param rates what a tick of each offer's length costs
 * @returns piece prices that fit every cross-section, and their sum = the bound in the unit of the rates
 * @source Gilmore & Gomory, Operations Research 9 (1961), on cross-sections; scaling of the prices: Farley, Operations Research 38 (1990), from memory
 */
export function barBound(ready: ReadyJob, rates: Float64Array): BarCertificate {
  const { types, offers } = ready;
  const stock = offers.flatMap((offer, o) => (offer.stock ? [o] : []));
  const need = Float64Array.from(types, (type) => type.count);
  const supply = Float64Array.from(stock, (o) => offers[o]!.supply * offers[o]!.length);
  const lp = new CoverLp(need, supply, penalties(ready, rates));
  const sections = new CrossSections(ready);
  let best: BarCertificate = { price: new Float64Array(types.length), scarcity: new Float64Array(offers.length), bound: 0 };
  // Prices are taken part of the way from the best so far: the simplex's own prices swing, and a wild price finds poor cross-sections.
  let pull = 0.8;
  let middle = startPrices(ready, rates, stock.length);
  const most = types.length > MANY ? 30_000 / types.length : 60 + 12 * types.length;
  for (let round = 0; round < most; round++) {
    const exact = Float64Array.from(lp.duals, (dual, r) => Math.max(0, r < types.length ? dual : -dual));
    const hold = round === 0 ? 1 : pull;
    const duals = exact.map((dual, r) => hold * middle[r]! + (1 - hold) * dual);
    const found = sections.best(duals.subarray(0, types.length));
    let worst = 1e-300;
    let added = 0;
    for (let o = 0; o < offers.length; o++) {
      const section = found[o]!;
      const at = stock.indexOf(o);
      const allowed = rates[o]! + (at < 0 ? 0 : duals[types.length + at]!);
      if (section.value > 0) worst = Math.max(worst, allowed > 0 ? section.value / allowed : Infinity);
      const column = columnOf(section, rates[o]!, at < 0 ? -1 : types.length + at);
      if (lp.reducedCost(column) >= -1e-9 * (rates[o]! + (at < 0 ? 0 : exact[types.length + at]!)) - 1e-15) continue;
      lp.add(column);
      added++;
    }
    const next = better(best, { duals, worst, need, supply, stock });
    if (next !== best) middle = duals;
    best = next;
    if (best.bound >= lp.value() * (1 - (types.length > MANY ? 1e-4 : 1e-9)) && lp.size > 0) break;
    if (added > 0) lp.solve();
    else if (pull > 0) pull = pull < 0.1 ? 0 : pull / 2;
    else break;
  }
  return best;
}

/** From here on the search stops within 0.01 % of the best prices, or after a set number of rounds: any prices give a valid bound. */
const MANY = 60;

/** Prices to begin with: the area of each piece at the rate of the cheapest film. */
function startPrices(ready: ReadyJob, rates: Float64Array, stock: number): Float64Array {
  const least = Math.min(...ready.offers.map((offer, o) => (rates[o]! > 0 ? rates[o]! / offer.width : Infinity)));
  const prices = new Float64Array(ready.types.length + stock);
  if (Number.isFinite(least)) ready.types.forEach((type, t) => (prices[t] = type.across * type.along * least));
  return prices;
}

function columnOf(section: Section, cost: number, stockRow: number): Column {
  const rows = [...section.shares.keys()];
  const values = [...section.shares.values()];
  if (stockRow >= 0) {
    rows.push(stockRow);
    values.push(1);
  }
  return { cost, rows: Int32Array.from(rows), values: Float64Array.from(values) };
}

interface Trial {
  readonly duals: Float64Array;
  readonly worst: number;
  readonly need: Float64Array;
  readonly supply: Float64Array;
  readonly stock: readonly number[];
}

function better(best: BarCertificate, trial: Trial): BarCertificate {
  if (!Number.isFinite(trial.worst)) return best;
  const scale = 1 / (trial.worst * (1 + 1e-9));
  const types = trial.need.length;
  const price = trial.duals.slice(0, types).map((each) => each * scale);
  const scarcity = new Float64Array(best.scarcity.length);
  trial.stock.forEach((o, at) => (scarcity[o] = trial.duals[types + at]!));
  let bound = 0;
  for (let t = 0; t < types; t++) bound += trial.need[t]! * price[t]!;
  trial.stock.forEach((o, at) => (bound -= trial.supply[at]! * scarcity[o]!));
  return bound > best.bound ? { price, scarcity, bound } : best;
}

function penalties(ready: ReadyJob, rates: Float64Array): Float64Array {
  const dearest = Math.max(1e-9, ...rates);
  return Float64Array.from(ready.types, (type) => 10 * dearest * Math.max(type.across, type.along));
}
