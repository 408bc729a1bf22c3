import { hoursOfYear } from './drive.js';

/** The windows of one facade: glass and the sun that comes through a square metre of it. */
export interface FacadeGain {
  readonly glass_m2: number;
  readonly gain_W_m2: Float64Array;
}

/**
 * Sun into a dwelling through all its facades.
 *
 *   Σ glass × gain, hour by hour
 *
 * @param facades glass area ≥ 0 and 8760 hours of gain each
 * @param out buffer to fill; new when absent
 * @returns W by hour
 * @throws RangeError when an area is negative or a series is not 8760 hours
 * @source definition
 */
export function facadeSun_W(facades: readonly FacadeGain[], out: Float64Array = new Float64Array(hoursOfYear)): Float64Array {
  for (const { glass_m2, gain_W_m2 } of facades) {
    if (!(glass_m2 >= 0)) throw new RangeError(`glass_m2 must be 0 or more, got ${String(glass_m2)}`);
    if (gain_W_m2.length !== hoursOfYear) throw new RangeError(`gain_W_m2 must have 8760 hours, got ${String(gain_W_m2.length)}`);
  }
  if (facades.length === 0) return out.fill(0);
  for (let first = 0; first < facades.length; first += 4) addFour(facades, first, out);
  return out;
}

/** Four facades in one pass; the first four overwrite, later ones add. Missing ones lend the first series at no glass. */
function addFour(facades: readonly FacadeGain[], first: number, out: Float64Array): void {
  const of = (i: number): FacadeGain => facades[first + i] ?? { glass_m2: 0, gain_W_m2: facades[first]!.gain_W_m2 };
  const { glass_m2: ma, gain_W_m2: a } = of(0);
  const { glass_m2: mb, gain_W_m2: b } = of(1);
  const { glass_m2: mc, gain_W_m2: c } = of(2);
  const { glass_m2: md, gain_W_m2: d } = of(3);
  if (first === 0) for (let h = 0; h < hoursOfYear; h++) out[h] = ma * a[h]! + mb * b[h]! + mc * c[h]! + md * d[h]!;
  else for (let h = 0; h < hoursOfYear; h++) out[h] = out[h]! + (ma * a[h]! + mb * b[h]! + mc * c[h]! + md * d[h]!);
}
