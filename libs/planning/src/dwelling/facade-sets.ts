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

/** Compass words of eight winds for a bearing, for sentences. */
export function sideWord(azimuth_deg: number): string {
  const words = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];
  return words[Math.round((((azimuth_deg % 360) + 360) % 360) / 45) % 8] ?? 'north';
}
