/**
 * Even numbers 0 … 1 from a fixed seed (mulberry32): the same problem is always searched in the same way.
 *
 * @param seed whole number
 * @returns function giving the next number
 */
export function evenNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
