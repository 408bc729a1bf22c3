import { boundsOf } from './bounds.js';
import { cut } from './cut.js';
import type { CutJob, CutPiece, CutResult, Unplaced } from './job.js';
import { continued, joined, type LaidRoll, laidRolls, stockEnds } from './joined-layout.js';
import { type LotChoice, lotChoices, TEST_ROUNDS } from './lot-choice.js';
import { fromStock, mixedIn } from './lot-look.js';
import { type Elevation, elevationsOf, fitsOne, type LayJob, type LotJob, lotsOf, onOffer } from './lot-shop.js';
import { readyJob } from './ready-job.js';
import { type Bounds, totalsOf } from './result.js';

/** The layout with one lot an elevation, and what the rule costs against cutting freely. */
export interface LotResult extends CutResult {
  readonly freeArea_mm2: number;
  /** More film bought than by free cutting; below 0 where the search was luckier with lots. */
  readonly extraArea_mm2: number;
  readonly extraCost_cents: number | null;
  /** Elevations that come from more than one lot after all: pieces that no roll on offer holds, and no one lot in stock with the rest. */
  readonly mixed: readonly string[];
}

/** Rounds by which choices are compared before the best two are cut in full. */
const TRIAL_ROUNDS = 100;
/** With more pieces than this only some choices are compared. */
const MANY_PIECES = 4000;
const FEW_CHOICES = 4;

/**
 * Cuts every elevation from one lot: whole elevations go to the lots in stock that hold them, the others to the rolls bought, so that
 * least is bought; several ways of sharing out are cut and the cheapest is kept. Rolls bought for the job are one lot.
 *
 *   extra = bought with one lot an elevation − bought by free cutting
 *
 * @param job pieces, rolls, the elevation of each piece and the lot of each row in stock
 * @param lay how pieces are laid, default `cut`
 * @returns a layout as of `cut` with the price of the rule; the free layout where no elevation is mixed in it, or where the rule would leave pieces out
 * @throws RangeError as `cut`
 */
export function cutOneLot(job: LotJob, lay: LayJob = cut): LotResult {
  const free = lay(job);
  const mixedFreely = mixedIn(job, free);
  const best = mixedFreely.length === 0 ? null : cheapest(job, free, lay);
  if (best === null || countOf(best.unplaced) > countOf(free.unplaced)) {
    return { ...free, freeArea_mm2: free.boughtArea_mm2, extraArea_mm2: 0, extraCost_cents: free.cost_cents === null ? null : 0, mixed: mixedFreely };
  }
  const made: CutResult = { ...best, ...totalsOf(job, readyJob(job), { ...best, bounds: boundsFor(job, best, free) }) };
  return {
    ...made,
    freeArea_mm2: free.boughtArea_mm2,
    extraArea_mm2: made.boughtArea_mm2 - free.boughtArea_mm2,
    extraCost_cents: made.cost_cents === null || free.cost_cents === null ? null : made.cost_cents - free.cost_cents,
    mixed: mixedIn(job, made),
  };
}

type Laid = Pick<CutResult, 'placements' | 'rolls' | 'unplaced'>;

/** The best of the choices: they are compared by what a short search buys, the best two by a full one; one that buys no more than free cutting is enough. */
function cheapest(job: LotJob, free: CutResult, lay: LayJob): Laid {
  const pieces = job.pieces.filter((p) => p.count > 0 && fitsOne(p, job.rolls));
  const shop = { job, lay, elevations: elevationsOf(job, pieces) };
  const most = pieces.reduce((sum, p) => sum + p.count, 0) <= MANY_PIECES ? Infinity : FEW_CHOICES;
  const goal = (free.cost_cents ?? free.boughtArea_mm2) * (1 + 1e-12);
  const isEnough = ([ends, cost]: Price): boolean => ends === 0 && cost <= goal;
  const tried: { readonly choice: LotChoice; readonly price: Price }[] = [];
  for (const choice of lotChoices({ ...shop, lots: lotsOf(job), freelyFromStock_mm2: fromStock(job, free) })) {
    const price = priceOf(parts(shop, choice), lay({ ...bought(shop, choice), rounds: Math.min(job.rounds ?? TRIAL_ROUNDS, TRIAL_ROUNDS) }));
    tried.push({ choice, price });
    if (isEnough(price) || tried.length >= most) break;
  }
  tried.sort((a, b) => dearer(a.price, b.price));
  const made = tried.slice(0, isEnough(tried[0]!.price) ? 1 : 2).map(({ choice }) => wholeLayout(shop, choice));
  made.sort((a, b) => dearer(a.price, b.price));
  const never = free.unplaced.filter((u) => !pieces.some((p) => p.id === u.piece));
  return { ...made[0]!.laid, unplaced: [...never, ...made[0]!.laid.unplaced] };
}

interface Shop {
  readonly job: LotJob;
  readonly lay: LayJob;
  readonly elevations: readonly Elevation[];
}

/** Pieces of elevations no lot was chosen for: those to be bought, and those that no roll on offer holds. */
function parts({ job, elevations }: Shop, choice: LotChoice): { readonly bought: CutPiece[]; readonly ends: CutPiece[] } {
  const offers = onOffer(job).rolls;
  const rest = elevations.filter((e) => !choice.has(e)).flatMap((e) => e.pieces);
  return { bought: rest.filter((p) => fitsOne(p, offers)), ends: rest.filter((p) => !fitsOne(p, offers)) };
}

const bought = (shop: Shop, choice: LotChoice): CutJob => ({ ...shop.job, bounds: false, pieces: parts(shop, choice).bought, rolls: onOffer(shop.job).rolls });

/** How choices are compared: pieces left to ends of any lot, cost, area bought, and film run off what is bought. */
type Price = readonly [pieces: number, cost: number, area_mm2: number, use_mm2: number];

const priceOf = ({ ends }: { readonly ends: readonly CutPiece[] }, made: CutResult): Price => [ends.reduce((sum, p) => sum + p.count, 0), made.cost_cents ?? made.boughtArea_mm2, made.boughtArea_mm2, made.usedArea_mm2];
const dearer = (a: Price, b: Price): number => a.map((each, n) => each - b[n]!).find((difference) => difference !== 0) ?? 0;
const countOf = (unplaced: readonly Unplaced[]): number => unplaced.reduce((sum, u) => sum + u.count, 0);

/** Every lot cut on its own, then what is bought; pieces that no roll on offer holds come from ends of any lot. */
function wholeLayout(shop: Shop, choice: LotChoice): { readonly laid: Laid; readonly price: Price } {
  const { job, lay } = shop;
  const lots = [...new Set(choice.values())];
  const fromLots = lots.flatMap((lot) => {
    const own = { ...job, bounds: false, pieces: [...choice].filter(([, each]) => each === lot).flatMap(([e]) => e.pieces), rolls: lot.rolls };
    const result = lay(own);
    // The longer search lays otherwise, and now and then not all; the short one is known to hold them.
    return laidRolls({ result: result.unplaced.length === 0 ? result : lay({ ...own, rounds: TEST_ROUNDS }), rowOf: lot.rowOf });
  });
  const rest = parts(shop, choice);
  const order = lay(bought(shop, choice));
  const { rolls, unplaced } = onEnds(shop, rest.ends, fromLots);
  return { laid: { ...joined([...rolls, ...laidRolls({ result: order, rowOf: onOffer(job).rowOf })]), unplaced: [...unplaced, ...order.unplaced] }, price: priceOf(rest, order) };
}

/** Lays pieces on what the lots leave of the stock. */
function onEnds({ job, lay }: Shop, pieces: readonly CutPiece[], used: readonly LaidRoll[]): { readonly rolls: LaidRoll[]; readonly unplaced: readonly Unplaced[] } {
  if (pieces.length === 0) return { rolls: [...used], unplaced: [] };
  const ends = stockEnds(job, used);
  const made = lay({ ...job, bounds: false, pieces, rolls: ends.map(({ width_mm, length_mm }) => ({ width_mm, length_mm, stock: 1 })) });
  const rolls = [...used];
  for (const laid of laidRolls({ result: made, rowOf: ends.map((_, n) => n) })) {
    const end = ends[laid.roll.offer]!;
    if (end.begun !== null) rolls[end.begun] = continued(rolls[end.begun]!, laid, job.kerf_mm ?? 0);
    else rolls.push({ ...laid, roll: { ...laid.roll, offer: end.row } });
  }
  return { rolls, unplaced: made.unplaced };
}

/** The bound of the free layout holds for any cutting of the same pieces; of other pieces it is worked out again. */
function boundsFor(job: LotJob, made: Laid, free: CutResult): Bounds {
  const key = (unplaced: readonly Unplaced[]): string => unplaced.map((u) => `${u.piece} ${String(u.count)}`).sort().join('|');
  if (key(made.unplaced) === key(free.unplaced)) return { area_mm2: free.lowerBoundArea_mm2, cost_cents: free.lowerBoundCost_cents };
  const out = new Map(made.unplaced.map((u) => [u.piece, u.count]));
  return boundsOf(readyJob({ ...job, pieces: job.pieces.map((p) => ({ ...p, count: p.count - (out.get(p.id) ?? 0) })) }));
}
