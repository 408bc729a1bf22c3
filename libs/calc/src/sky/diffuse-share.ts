/**
 * Diffuse share of the light on level ground, when only the whole was measured.
 *
 *   kt = G / (E0 cos z)
 *   kt ≤ 0.22: 1 − 0.09 kt;  kt ≤ 0.80: 0.9511 − 0.1604 kt + 4.388 kt² − 16.638 kt³ + 12.336 kt⁴;  above: 0.165
 *
 * @param clearness kt, 0 or more; above 1 counts as the clearest
 * @returns 0.165…1
 * @throws RangeError when clearness is below 0 or not a number
 * @source Erbs, Klein & Duffie, Solar Energy 28 (1982), 293–302
 */
export function diffuseShare(clearness: number): number {
  if (!(clearness >= 0)) throw new RangeError(`clearness must be 0 or more, got ${clearness}`);
  if (clearness <= 0.22) return 1 - 0.09 * clearness;
  if (clearness > 0.8) return 0.165;
  return 0.9511 + clearness * (-0.1604 + clearness * (4.388 + clearness * (-16.638 + clearness * 12.336)));
}
