/**
 * Seeded numbers for the search: the same seed gives the same row of numbers on every machine.
 *
 * @param seed any whole number
 * @returns a function that gives the next number, 0 ≤ r < 1
 * @source Marsaglia, Xorshift RNGs, J. Stat. Software 8(14), 2003, from memory (shifts 13, 17, 5)
 */
export function seeded(seed: number): () => number {
  let state = (Math.imul(seed | 0, 0x9e3779b1) ^ 0x6d2b79f5) | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}
