import { hoursOfYear } from './drive.js';

/** The windows of one facade: glass and the sun that comes through a square metre of it. */
export interface FacadeGain {
  readonly glass_m2: number;
  readonly gain_W_m2: Float64Array;
}

/**
 * Sun into a dwelling through all its facades.
 *
 *   base + Σ glass × gain, hour by hour
 *
 * @param facades glass area ≥ 0 and 8760 hours of gain each
 * @param out buffer to fill; new when absent
 * @param base_W 8760 hours the sum begins with, such as the sun on opaque parts; 0 when absent
 * @returns W by hour
 * @throws RangeError when an area is negative or a series is not 8760 hours
 * @source definition
 */
export function facadeSun_W(facades: readonly FacadeGain[], out: Float64Array = new Float64Array(hoursOfYear), base_W?: Float64Array): Float64Array {
  for (const { glass_m2, gain_W_m2 } of facades) {
    if (!(glass_m2 >= 0)) throw new RangeError(`glass_m2 must be 0 or more, got ${String(glass_m2)}`);
    if (gain_W_m2.length !== hoursOfYear) throw new RangeError(`gain_W_m2 must have 8760 hours, got ${String(gain_W_m2.length)}`);
  }
  if (base_W !== undefined && base_W.length !== hoursOfYear) throw new RangeError(`base_W must have 8760 hours, got ${String(base_W.length)}`);
  if (base_W !== undefined) out.set(base_W);
  else if (facades.length === 0) out.fill(0);
  for (let first = 0; first < facades.length; first += 4) addFour(facades.slice(first, first + 4), out, first > 0 || base_W !== undefined);
  return out;
}

/** Four facades in one pass, over what stands in `out` or on top of it. Missing ones lend the first series at no glass. */
function addFour(four: readonly FacadeGain[], out: Float64Array, onTop: boolean): void {
  const of = (i: number): FacadeGain => four[i] ?? { glass_m2: 0, gain_W_m2: four[0]!.gain_W_m2 };
  const { glass_m2: ma, gain_W_m2: a } = of(0);
  const { glass_m2: mb, gain_W_m2: b } = of(1);
  const { glass_m2: mc, gain_W_m2: c } = of(2);
  const { glass_m2: md, gain_W_m2: d } = of(3);
  if (!onTop) for (let h = 0; h < hoursOfYear; h++) out[h] = ma * a[h]! + mb * b[h]! + mc * c[h]! + md * d[h]!;
  else for (let h = 0; h < hoursOfYear; h++) out[h] = out[h]! + (ma * a[h]! + mb * b[h]! + mc * c[h]! + md * d[h]!);
}
