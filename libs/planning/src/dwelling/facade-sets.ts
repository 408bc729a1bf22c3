/**
 * The sets of facades of a dwelling that are computed as options: all non-empty sets up to four facades; above four all singles, all pairs and
 * the whole; the chain that adds the best facade by marginal value is grown from these once they are valued (`chainedSets`).
 *
 * @param facades bearings in ascending order
 */
export function facadeSets(facades: readonly number[]): number[][] {
  const n = facades.length;
  const sets: number[][] = [];
  if (n <= 4) {
    for (let bits = 1; bits < 1 << n; bits++) sets.push(facades.filter((_, i) => (bits & (1 << i)) !== 0));
  } else {
    for (let i = 0; i < n; i++) sets.push([facades[i]!]);
    for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) sets.push([facades[i]!, facades[j]!]);
    sets.push([...facades]);
  }
  return sets;
}

const WINDS = [['N', 'north'], ['NE', 'north-east'], ['E', 'east'], ['SE', 'south-east'], ['S', 'south'], ['SW', 'south-west'], ['W', 'west'], ['NW', 'north-west']] as const;

function windOf(azimuth_deg: number): { readonly letters: string; readonly word: string } {
  const [letters, word] = WINDS[Math.round((((azimuth_deg % 360) + 360) % 360) / 45) % 8] ?? WINDS[0];
  return { letters, word };
}

/** Compass words of eight winds for a bearing, for sentences. */
export const sideWord = (azimuth_deg: number): string => windOf(azimuth_deg).word;

/** The same by its letters on a compass, for tables and short sentences. */
export const sideLetters = (azimuth_deg: number): string => windOf(azimuth_deg).letters;
