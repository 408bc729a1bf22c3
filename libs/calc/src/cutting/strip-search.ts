import type { Block } from './block.js';
import type { ReadyJob } from './ready-job.js';
import { StripFill, type Strip } from './strip-fill.js';

/** With more pieces than this one stretch is not searched as a whole. */
const MOST_PIECES = 260;

/** So few pieces of film sold by length or from stock may also stand in columns side by side at the open end: with more, shelves lose little. */
const FEW_PIECES = 40;

/** How long and from where the search goes. */
export interface StripSearch {
  readonly offer: number;
  readonly rounds: number;
  readonly next: () => number;
}

/**
 * One stretch of one roll for all pieces, by straight cuts: the best of four orders of the pieces, then orders changed a little at a
 * time and kept when not longer, with less and less leave to be longer.
 *
 * @returns the stretch, or null where there are too many pieces or they do not fit on it
 */
export function searchedStrip(ready: ReadyJob, pieces: Int32Array, search: StripSearch): Block | null {
  const total = pieces.reduce((sum, n) => sum + n, 0);
  if (total === 0 || total > MOST_PIECES) return null;
  const fill = new StripFill(ready);
  let now: { strip: Strip; order: Int32Array } | null = null;
  for (const rank of RANKS) {
    const order = ordered(ready, pieces, rank);
    const strip = fill.fill({ order, offer: search.offer });
    if (strip !== null && (now === null || worthOf(strip) < worthOf(now.strip))) now = { strip, order };
  }
  if (now === null) return null;
  let best = now.strip;
  const { next, rounds } = search;
  for (let round = 0; round < rounds; round++) {
    const order = changed(now.order, next);
    const strip = fill.fill({ order, offer: search.offer });
    if (strip === null) continue;
    const leave = 1 + 0.02 * (1 - round / rounds) * next();
    if (worthOf(strip) <= worthOf(now.strip) * leave) now = { strip, order };
    if (strip.block.length < best.block.length) best = strip;
  }
  // On whole rolls that are bought one long stretch is worth less than its length says: ends of rolls take shelves.
  const { length, stock } = ready.offers[search.offer]!;
  return total > FEW_PIECES || (length !== Infinity && !stock) ? best.block : withColumns(fill, { order: now.order, best }, search).block;
}

/** The search goes on with columns: pieces change places, and at the open end start a column or no longer do. */
function withColumns(fill: StripFill, start: { readonly order: Int32Array; readonly best: Strip }, search: StripSearch): Strip {
  const { next, rounds, offer } = search;
  let now = { order: start.order, columns: new Uint8Array(start.order.length), worth: worthOf(start.best) };
  let { best } = start;
  for (let round = 0; round < rounds; round++) {
    const order = next() < 0.3 ? now.order : changed(now.order, next);
    const columns = now.columns.slice();
    if (next() < 0.5) columns[Math.floor(next() * columns.length)]! ^= 1;
    const strip = fill.fill({ order, offer, columns });
    if (strip === null) continue;
    const leave = 1 + 0.05 * (1 - round / rounds) * next();
    if (worthOf(strip) <= now.worth * leave) now = { order, columns, worth: worthOf(strip) };
    if (strip.block.length < best.block.length) best = strip;
  }
  return best;
}

const worthOf = (strip: Strip): number => strip.block.length + 0.1 * strip.sunk;

type Rank = (type: { readonly across: number; readonly along: number }) => number;
const RANKS: readonly Rank[] = [(t) => t.along, (t) => t.across, (t) => t.across * t.along, (t) => Math.max(t.across, t.along)];

function ordered(ready: ReadyJob, pieces: Int32Array, rank: Rank): Int32Array {
  const types = ready.types.map((_, t) => t).sort((a, b) => rank(ready.types[b]!) - rank(ready.types[a]!) || ready.types[b]!.across - ready.types[a]!.across || a - b);
  return Int32Array.from(types.flatMap((t) => Array.from({ length: pieces[t]! }, () => t)));
}

/** One piece moved elsewhere, or two changed for each other. */
function changed(order: Int32Array, next: () => number): Int32Array {
  const more = order.slice();
  const times = 1 + Math.floor(3 * next() * next());
  for (let n = 0; n < times; n++) {
    const a = Math.floor(next() * order.length);
    const b = Math.floor(next() * order.length);
    const piece = more[a]!;
    if (next() < 0.5) {
      more[a] = more[b]!;
      more[b] = piece;
    } else {
      if (a < b) more.copyWithin(a, a + 1, b + 1);
      else more.copyWithin(b + 1, b, a);
      more[b] = piece;
    }
  }
  return more;
}
