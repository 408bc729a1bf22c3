import { seeded } from '../cutting/index.js';

/**
 * Draws who goes first among cases that cannot be told apart, so that those who come later are a fair comparison for those who came first.
 *
 *   each band is sorted by id and shuffled by one row of seeded numbers (Fisher and Yates)
 *
 * @param bands ids that are near equal, band by band, best band first; the order within a band does not matter
 * @param seed any whole number; the same seed gives the same order
 * @returns all ids, band after band, each band in drawn order
 * @throws RangeError when the seed is not a whole number or an id stands twice
 * @source Fisher & Yates shuffle, textbook
 */
export function drawnOrder(bands: readonly (readonly string[])[], seed: number): string[] {
  if (!Number.isInteger(seed)) throw new RangeError(`seed must be a whole number, got ${seed}`);
  const all = bands.flat();
  if (new Set(all).size !== all.length) throw new RangeError('bands must hold each id once');
  const next = seeded(seed);
  return bands.flatMap((band) => {
    const ids = [...band].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
    for (let i = ids.length - 1; i > 0; i--) {
      const j = Math.floor(next() * (i + 1));
      [ids[i], ids[j]] = [ids[j]!, ids[i]!];
    }
    return ids;
  });
}
