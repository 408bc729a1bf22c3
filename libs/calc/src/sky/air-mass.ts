import { cosDeg } from '../units/index.js';

/**
 * Path of the beam through the air, relative to the path from straight overhead.
 *
 *   m = 1 / (cos z + 0.50572 (96.07995 − z)^−1.6364)          z = zenith angle in degrees
 *
 * @param zenith_deg 0…90 (true, unrefracted)
 * @returns 1…about 38 at the horizon, no correction for pressure
 * @throws RangeError when zenith_deg is not 0…90
 * @source Kasten & Young, Applied Optics 28 (1989), 4735–4738
 */
export function relativeAirMass(zenith_deg: number): number {
  if (!(zenith_deg >= 0 && zenith_deg <= 90)) throw new RangeError(`zenith_deg must be 0…90, got ${zenith_deg}`);
  return 1 / (cosDeg(zenith_deg) + 0.50572 * (96.07995 - zenith_deg) ** -1.6364);
}
