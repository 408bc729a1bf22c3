import type { CutJob, CutPiece, CutRoll, Unplaced } from './job.js';
import { seamOf } from './seam.js';

/** Sizes closer than this (1e-6 mm) count as equal. */
export const SAME_ticks = 3.2e-4;

/** Pieces of one size and one rule of rotation, whoever they belong to. Sizes in ticks, kerf included. */
export interface PieceType {
  readonly across: number;
  readonly along: number;
  readonly mayRotate: boolean;
  readonly count: number;
  readonly owners: readonly { readonly piece: CutPiece; readonly copies: number }[];
}

/** One way a type can lie: across the roll and along it. */
export interface Lie {
  readonly type: number;
  readonly rotated: boolean;
  readonly across: number;
  readonly along: number;
}

/** A kind of roll to cut from. Width and length in ticks, kerf included; length Infinity where film is sold by length. */
export interface Offer {
  /** Place in the job's rolls. */
  readonly row: number;
  readonly width: number;
  readonly length: number;
  /** Rolls to be had; Infinity where they are bought. */
  readonly supply: number;
  readonly stock: boolean;
  /** What one tick of length costs: cents, or ticks of area. */
  readonly rate: number;
}

/** A checked job in ticks, in an order that does not depend on the order of its rows. */
export interface ReadyJob {
  readonly types: readonly PieceType[];
  readonly lies: readonly Lie[];
  readonly offers: readonly Offer[];
  readonly kerf: number;
  readonly priced: boolean;
  readonly unplaced: readonly Unplaced[];
}

/** Ticks of a size, whole where it is one to 1e-6 mm (inches and their 64ths and tenths of mm are); others keep their fraction. */
export function fineTicks(size_mm: number): number {
  const ticks = size_mm * 320;
  const whole = Math.round(ticks);
  return Math.abs(ticks - whole) <= SAME_ticks ? whole : ticks;
}

/**
 * Checks a cutting job and puts it in ticks: equal sizes merged, offers apart from stock, pieces no roll can hold set aside.
 *
 * @param job pieces and rolls in mm
 * @returns the job in ticks, sorted by size
 * @throws RangeError for sizes or counts that are not positive, a kerf below 0, stock without length, or prices on some offers only
 */
export function readyJob(job: CutJob): ReadyJob {
  const kerf = fineTicks(notNegative(job.kerf_mm ?? 0, 'kerf_mm'));
  const price = (offer: { readonly row: number }): number => job.rolls[offer.row]?.price_cents ?? 0;
  const offersAll = job.rolls.flatMap((roll, row) => offersOf(roll, row, kerf));
  // Endless before whole rolls, so that Infinity is never subtracted from Infinity.
  offersAll.sort((a, b) => a.width - b.width || (a.length === b.length ? 0 : b.length - a.length) || price(a) - price(b) || Number(b.stock) - Number(a.stock));
  const priced = pricedBy(offersAll, job.rolls);
  const offers = offersAll.map((offer) => ({ ...offer, rate: rateOf(offer, priced ? job.rolls[offer.row] : undefined, kerf) }));
  const unplaced: Unplaced[] = [];
  const byKey = new Map<string, { type: Omit<PieceType, 'count' | 'owners'>; owners: { piece: CutPiece; copies: number }[] }>();
  const ids = new Set<string>();
  for (const piece of [...job.pieces].sort(byId)) {
    checkPiece(piece);
    if (ids.has(piece.id)) throw new RangeError(`id of a piece must be unique, got ${piece.id} twice`);
    ids.add(piece.id);
    if (piece.count === 0) continue;
    const type = typeOf(piece, kerf);
    const why = whyNot(type, offers);
    if (why !== null) {
      unplaced.push({ piece: piece.id, count: piece.count, ...why, ...seamOf(piece, job.rolls) });
      continue;
    }
    const key = `${type.across} ${type.along} ${type.mayRotate ? 1 : 0}`;
    const at = byKey.get(key) ?? { type, owners: [] };
    at.owners.push({ piece, copies: piece.count });
    byKey.set(key, at);
  }
  const types = [...byKey.values()]
    .map(({ type, owners }) => ({ ...type, owners, count: owners.reduce((sum, each) => sum + each.copies, 0) }))
    .sort((a, b) => b.along - a.along || b.across - a.across || Number(a.mayRotate) - Number(b.mayRotate));
  return { types, lies: types.flatMap((type, t) => liesOf(type, t, offers)), offers, kerf, priced, unplaced };
}

const byId = (a: CutPiece, b: CutPiece): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

function typeOf(piece: CutPiece, kerf: number): Omit<PieceType, 'count' | 'owners'> {
  const across = fineTicks(piece.width_mm) + kerf;
  const along = fineTicks(piece.length_mm) + kerf;
  const mayRotate = piece.mayRotate && across !== along;
  return mayRotate && across > along ? { across: along, along: across, mayRotate } : { across, along, mayRotate };
}

const holds = (offer: Offer, across: number, along: number): boolean =>
  across <= offer.width + SAME_ticks && along <= offer.length + SAME_ticks;

function liesOf(type: PieceType, t: number, offers: readonly Offer[]): Lie[] {
  const ways: Lie[] = [{ type: t, rotated: false, across: type.across, along: type.along }];
  if (type.mayRotate) ways.push({ type: t, rotated: true, across: type.along, along: type.across });
  return ways.filter((lie) => offers.some((offer) => holds(offer, lie.across, lie.along)));
}

function whyNot(type: Omit<PieceType, 'count' | 'owners'>, offers: readonly Offer[]): { why: string } | null {
  const ways = type.mayRotate ? [[type.across, type.along] as const, [type.along, type.across] as const] : [[type.across, type.along] as const];
  if (ways.some(([across, along]) => offers.some((offer) => holds(offer, across, along)))) return null;
  if (offers.length === 0) return { why: 'there is no roll to cut from' };
  const wide = ways.some(([across]) => offers.some((offer) => across <= offer.width + SAME_ticks));
  if (wide) return { why: 'longer than every roll that is wide enough' };
  return { why: type.mayRotate ? 'wider than every roll, either way round' : 'wider than every roll, and it may not be turned' };
}

function offersOf(roll: CutRoll, row: number, kerf: number): Omit<Offer, 'rate'>[] {
  const width = fineTicks(positive(roll.width_mm, `rolls/${row}/width_mm`)) + kerf;
  const length = roll.length_mm === undefined ? Infinity : fineTicks(positive(roll.length_mm, `rolls/${row}/length_mm`)) + kerf;
  const stock = typeof roll.stock === 'number' ? notNegative(roll.stock, `rolls/${row}/stock`) : roll.stock === true ? 1 : 0;
  if (!Number.isInteger(stock)) throw new RangeError(`rolls/${row}/stock must be a whole number, got ${stock}`);
  if (stock > 0 && length === Infinity) throw new RangeError(`rolls/${row}/length_mm must be given for a roll in stock, got none`);
  const offers: Omit<Offer, 'rate'>[] = [];
  if (stock > 0) offers.push({ row, width, length, supply: stock, stock: true });
  const onOffer = roll.stock === undefined || roll.stock === false || roll.price_cents !== undefined;
  if (onOffer) offers.push({ row, width, length, supply: Infinity, stock: false });
  return offers;
}

function pricedBy(offers: readonly Omit<Offer, 'rate'>[], rolls: readonly CutRoll[]): boolean {
  const bought = offers.filter((offer) => !offer.stock);
  const withPrice = bought.filter((offer) => rolls[offer.row]?.price_cents !== undefined);
  if (withPrice.length > 0 && withPrice.length < bought.length) {
    throw new RangeError('price_cents must be given for every roll on offer or for none, got some');
  }
  return withPrice.length > 0;
}

function rateOf(offer: Omit<Offer, 'rate'>, roll: CutRoll | undefined, kerf: number): number {
  if (offer.stock) return 0;
  const whole = offer.length - kerf;
  if (roll?.price_cents === undefined) return offer.length === Infinity ? offer.width - kerf : ((offer.width - kerf) * whole) / offer.length;
  const price = notNegative(roll.price_cents, `rolls/${offer.row}/price_cents`);
  return offer.length === Infinity ? price / 320_000 : price / offer.length;
}

function checkPiece(piece: CutPiece): void {
  positive(piece.width_mm, `width_mm of piece ${piece.id}`);
  positive(piece.length_mm, `length_mm of piece ${piece.id}`);
  if (!(Number.isInteger(piece.count) && piece.count >= 0)) throw new RangeError(`count of piece ${piece.id} must be a whole number ≥ 0, got ${piece.count}`);
}

function positive(value: number, name: string): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} must be > 0, got ${String(value)}`);
  return value;
}

function notNegative(value: number, name: string): number {
  if (!(value >= 0 && Number.isFinite(value))) throw new RangeError(`${name} must be ≥ 0, got ${String(value)}`);
  return value;
}
