import { inchesText, ticksOf_mm } from '../units/index.js';
import { cut } from './cut.js';
import type { CutJob, CutResult, Unplaced } from './job.js';

/** Rolls of one kind to order. */
export interface PurchaseLine {
  /** Place of the kind in the job's rolls. */
  readonly offer: number;
  readonly width_mm: number;
  readonly widthText: string;
  /** null where film is sold by length. */
  readonly length_mm: number | null;
  /** Whole rolls; 1 running length where film is sold by length. */
  readonly count: number;
  readonly boughtLength_mm: number;
  readonly cost_cents: number | null;
}

/** An end of a roll long enough to keep for the next phase. */
export interface OffCut {
  readonly offer: number;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly source: 'bought' | 'stock';
}

/** What to order for a job and what is left of it. */
export interface FilmPurchase {
  readonly lines: readonly PurchaseLine[];
  readonly cost_cents: number;
  /** No purchase of these rolls that holds the pieces costs less. */
  readonly lowerBoundCost_cents: number;
  readonly stockUsed: readonly { readonly offer: number; readonly width_mm: number; readonly length_mm: number }[];
  readonly leftovers: readonly OffCut[];
  readonly unplaced: readonly Unplaced[];
  readonly layout: CutResult;
}

/** Ends shorter than this are thrown away, 2 ft: common practice, no source. */
const WORTH_KEEPING_mm = 609.6;

/**
 * The rolls to order, one line for each kind.
 *
 * @param job the job that was cut
 * @param result its layout
 * @returns lines with counts, narrowest first; what comes from stock is not in it
 */
export function purchaseList(job: CutJob, result: CutResult): PurchaseLine[] {
  return job.rolls
    .flatMap((kind, offer): PurchaseLine[] => {
      const rolls = result.rolls.filter((roll) => roll.offer === offer && roll.source === 'bought' && roll.boughtLength_mm > 0);
      if (rolls.length === 0) return [];
      const boughtLength_mm = rolls.reduce((sum, roll) => sum + roll.boughtLength_mm, 0);
      const price = kind.price_cents;
      const cost_cents = price === undefined ? null : kind.length_mm === undefined ? (price * boughtLength_mm) / 1000 : price * rolls.length;
      const widthText = inchesText(ticksOf_mm(kind.width_mm));
      return [{ offer, width_mm: kind.width_mm, widthText, length_mm: kind.length_mm ?? null, count: rolls.length, boughtLength_mm, cost_cents }];
    })
    .sort((a, b) => a.width_mm - b.width_mm || a.offer - b.offer);
}

/**
 * Ends of rolls that go back to the store room.
 *
 * @param result a layout
 * @param keep_mm shortest end worth keeping, ≥ 0; default 2 ft
 * @returns ends of bought and stock rolls that were cut from, longest first
 * @throws RangeError when keep_mm is below 0
 */
export function offCuts(result: CutResult, keep_mm = WORTH_KEEPING_mm): OffCut[] {
  if (!(keep_mm >= 0)) throw new RangeError(`keep_mm must be ≥ 0, got ${String(keep_mm)}`);
  return result.rolls
    .filter((roll) => roll.length_mm !== null && roll.leftLength_mm >= keep_mm && roll.leftLength_mm > 0)
    .map(({ offer, width_mm, leftLength_mm, source }) => ({ offer, width_mm, length_mm: leftLength_mm, source }))
    .sort((a, b) => b.length_mm - a.length_mm || a.width_mm - b.width_mm);
}

/**
 * Buys film in whole rolls for a job: stock first, then the cheapest rolls found.
 *
 * @param job pieces and rolls as of `cut`; every roll has a length, and every roll on offer a price
 * @returns what to order, what stock it uses, what is left, and the layout
 * @throws RangeError when a roll has no length, a roll on offer no price, and as `cut`
 */
export function buyFilm(job: CutJob): FilmPurchase {
  job.rolls.forEach((roll, row) => {
    const stock = roll.stock !== undefined && roll.stock !== false;
    if (roll.length_mm === undefined) throw new RangeError(`rolls/${row}/length_mm must be given to buy whole rolls, got none`);
    if (roll.price_cents === undefined && !stock) throw new RangeError(`rolls/${row}/price_cents must be given for a roll on offer, got none`);
  });
  const layout = cut(job);
  return {
    lines: purchaseList(job, layout),
    cost_cents: layout.cost_cents ?? 0,
    lowerBoundCost_cents: layout.lowerBoundCost_cents ?? 0,
    stockUsed: layout.rolls.filter((roll) => roll.source === 'stock').map((roll) => ({ offer: roll.offer, width_mm: roll.width_mm, length_mm: roll.runningLength_mm })),
    leftovers: offCuts(layout),
    unplaced: layout.unplaced,
    layout,
  };
}
