/** Which uncertain quantity is drawn, and for whom; equal keys draw equal values. */
export interface DrawKey {
  readonly seed: number;
  /** What is drawn, for example `film cut`. */
  readonly parameter: string;
  /** Who shares the cause: the portfolio, a glazing KEY, a film and lot, a building, a dwelling. */
  readonly scope: string;
}

/** FNV-1a over a text, then a finisher that lets every bit reach every bit. */
function hashOf(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return mixed(h);
}

function mixed(value: number): number {
  let h = value >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

function reversedBits(value: number): number {
  let v = value;
  v = ((v >>> 1) & 0x55555555) | ((v & 0x55555555) << 1);
  v = ((v >>> 2) & 0x33333333) | ((v & 0x33333333) << 2);
  v = ((v >>> 4) & 0x0f0f0f0f) | ((v & 0x0f0f0f0f) << 4);
  v = ((v >>> 8) & 0x00ff00ff) | ((v & 0x00ff00ff) << 8);
  return ((v >>> 16) | (v << 16)) >>> 0;
}

/** Flips each bit by a rule of the bits below it only: on reversed bits, a nested random rearrangement of halves, quarters, … */
function bitsMixedUpwards(value: number, key: number): number {
  let v = value;
  v ^= Math.imul(v, 0x3d20adea);
  v = (v + key) >>> 0;
  v = Math.imul(v, (key >>> 16) | 1);
  v ^= Math.imul(v, 0x05526c56);
  v ^= Math.imul(v, 0x53a22864);
  return v >>> 0;
}

const rearranged = (value: number, key: number): number => reversedBits(bitsMixedUpwards(reversedBits(value), key));

/**
 * Draw number d of an uncertain quantity, as a share of its distribution.
 *
 *   van der Corput point of the rearranged number d, its digits rearranged again
 *
 * A function of the key and d alone: another dwelling, option or draw changes none of it. The first 2^k draws of a key fall one into each
 * 2^k-th part of 0…1; draws of different keys pair up as by chance, their sample correlation spreading about √2 as wide as that of free draws.
 *
 * @param key what is drawn and for whom
 * @param draw which draw, whole number ≥ 0 and below 2^32
 * @returns above 0 and below 1
 * @throws RangeError when draw is not a whole number ≥ 0 or seed is not finite
 * @source Burley, Practical hash-based Owen scrambling, Journal of Computer Graphics Techniques 9(4) (2020): shuffled scrambled sequence, first dimension; the mixing of bits after Vegdahl, Building a better LK hash (2021), constants from memory
 */
export function drawnShare(key: DrawKey, draw: number): number {
  if (!Number.isInteger(draw) || draw < 0) throw new RangeError(`draw must be a whole number from 0, got ${draw}`);
  if (!Number.isFinite(key.seed)) throw new RangeError(`seed must be a number, got ${key.seed}`);
  const order = hashOf(`${key.seed}|${key.parameter}|${key.scope}`);
  const at = rearranged(draw >>> 0, order);
  const digits = rearranged(reversedBits(at), mixed(order ^ 0x9e3779b9));
  return (digits + 0.5) / 4294967296;
}

/** The first draws of a key. @returns shape: [count], each above 0 and below 1 */
export function drawnShares(key: DrawKey, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, d) => drawnShare(key, d));
}
