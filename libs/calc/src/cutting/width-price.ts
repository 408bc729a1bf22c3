import { barBound, type BarCertificate } from './bar-bound.js';
import { stepOf } from './grid.js';
import type { ReadyJob } from './ready-job.js';
import { grouped } from './size-groups.js';

const MOST_GROUPS = 64;
const MOST_CELLS = 1200;
const PASSES = 6;

/**
 * The bar relaxation for a job of thousands of sizes: prices found for few groups of sizes are carried over to every width, then raised
 * width by width as far as no cross-section of any roll gets dearer than the roll.
 *
 *   price of a piece = least of (length along × price of its width) over the ways it may lie
 *
 * Any such prices prove a bound, however they were found; types here have no limit in a cross-section.
 *
 * @param ready the job in ticks
 * @param rates what a tick of each offer's length costs
 * @returns piece prices that fit every cross-section, and the bound they prove
 * @source dual feasible functions for cutting problems: Lueker 1983, Fekete & Schepers 2001, from memory
 */
export function widthPrices(ready: ReadyJob, rates: Float64Array): BarCertificate {
  const few = grouped(ready, MOST_GROUPS);
  const { price, scarcity } = barBound(few, rates);
  const least = Math.min(...ready.offers.map((offer, o) => (offer.stock ? Infinity : rates[o]! / offer.width)));
  const byPlan = few.lies.map((lie): Start => ({ width: lie.across, worth: price[lie.type]! / lie.along }));
  const byArea = ready.lies.map((lie): Start => ({ width: lie.across, worth: Number.isFinite(least) ? lie.across * least : 0 }));
  const [plan, area] = [byPlan, byArea].map((from) => {
    const prices = new WidthPrices(ready, rates, scarcity);
    prices.start(from);
    for (let pass = 1; pass <= PASSES; pass++) prices.raise(pass / PASSES);
    return prices.certificate();
  });
  return area!.bound > plan!.bound ? area! : plan!;
}

/** What a tick of length of a width is worth to begin with. */
interface Start {
  readonly width: number;
  readonly worth: number;
}

class WidthPrices {
  private readonly cells: Int32Array;
  private readonly widths: Int32Array;
  private readonly step: number;
  /** Worth of a tick of length by cells of width. */
  private readonly worth: Float64Array;
  private readonly best: Float64Array;
  private readonly allowed: Float64Array;

  constructor(
    private readonly ready: ReadyJob,
    private readonly rates: Float64Array,
    scarcity: Float64Array,
  ) {
    const widest = Math.max(...ready.offers.map((offer) => offer.width));
    this.step = stepOf(ready.lies.map((lie) => lie.across), widest, MOST_CELLS).step;
    this.cells = Int32Array.from(ready.lies, (lie) => this.cell(lie.across));
    this.widths = Int32Array.from(new Set(this.cells)).sort();
    const room = this.cell(widest);
    this.worth = new Float64Array(room + 1);
    this.best = new Float64Array(room + 1);
    this.allowed = rates.map((rate, o) => rate + scarcity[o]!);
  }

  /** Cells of a width, rounded down: what fits fits still. */
  private cell(width: number): number {
    return Math.floor(width / this.step + 1e-6);
  }

  /** A width is worth at least what any narrower one is. */
  start(from: readonly Start[]): void {
    for (const { width, worth } of from) {
      const at = Math.min(this.worth.length - 1, Math.ceil(width / this.step - 1e-6));
      this.worth[at] = Math.max(this.worth[at]!, worth);
    }
    for (let x = 1; x < this.worth.length; x++) this.worth[x] = Math.max(this.worth[x]!, this.worth[x - 1]!);
    for (const x of this.widths) this.enter(x);
    let over = 1;
    this.ready.offers.forEach((offer, o) => {
      const dearest = this.best[this.cell(offer.width)]!;
      // A part roll in stock is charged more instead, so that it does not press every price.
      if (offer.stock) this.allowed[o] = Math.max(this.allowed[o]!, dearest);
      else if (this.allowed[o]! > 0) over = Math.max(over, dearest / this.allowed[o]!);
    });
    const scale = 1 / (over * (1 + 1e-9));
    for (const all of [this.worth, this.best]) for (let x = 0; x < all.length; x++) all[x]! *= scale;
  }

  private enter(width: number): void {
    const { best, worth } = this;
    const one = worth[width]!;
    for (let x = Math.max(1, width); x < best.length; x++) best[x] = Math.max(best[x]!, best[x - 1]!, x >= width ? best[x - width]! + one : 0);
  }

  /** Raises each width by the given share of what the rolls still allow. */
  raise(share: number): void {
    for (const width of this.widths) {
      const room = this.roomFor(width) - this.worth[width]!;
      if (room <= 0) continue;
      this.worth[width]! += share * room;
      this.enter(width);
    }
  }

  /** What a width may be worth beside the best of the rest, however often it lies there. */
  private roomFor(width: number): number {
    let least = Infinity;
    this.ready.offers.forEach((offer, o) => {
      const wide = this.cell(offer.width);
      for (let n = 1; n * width <= wide; n++) least = Math.min(least, (this.allowed[o]! * (1 - 1e-12) - this.best[wide - n * width]!) / n);
    });
    return least;
  }

  certificate(): BarCertificate {
    const { ready } = this;
    const price = new Float64Array(ready.types.length).fill(Infinity);
    ready.lies.forEach((lie, k) => (price[lie.type] = Math.min(price[lie.type]!, lie.along * this.worth[this.cells[k]!]!)));
    const scarcity = this.allowed.map((allowed, o) => allowed - this.rates[o]!);
    let bound = 0;
    ready.types.forEach((type, t) => (bound += type.count * price[t]!));
    ready.offers.forEach((offer, o) => offer.stock && (bound -= offer.supply * offer.length * scarcity[o]!));
    return { price, scarcity, bound: Math.max(0, bound) };
  }
}
