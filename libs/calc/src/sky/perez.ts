import { RAD_PER_DEG } from '../units/index.js';

// Rows: clearness bins from dull to clear; columns f11 f12 f13 f21 f22 f23, all-sites composite.
// Perez, Ineichen, Seals, Michalsky & Stewart, Solar Energy 44 (1990), 271–289, table 6.
const COEFFICIENTS = Float64Array.of(
  -0.008, 0.588, -0.062, -0.06, 0.072, -0.022,
  0.13, 0.683, -0.151, -0.019, 0.066, -0.029,
  0.33, 0.487, -0.221, 0.055, -0.064, -0.026,
  0.568, 0.187, -0.295, 0.109, -0.152, -0.014,
  0.873, -0.392, -0.362, 0.226, -0.462, 0.001,
  1.132, -1.237, -0.412, 0.288, -0.823, 0.056,
  1.06, -1.6, -0.359, 0.264, -1.127, 0.131,
  0.678, -0.327, -0.25, 0.156, -1.377, 0.251,
);
/** Clearness at which the second to eighth bin begins. */
const BIN_STARTS = Float64Array.of(1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2);
/** Least cosine of zenith the bright ring is divided by: cos 85°. */
const LEAST_COS_ZENITH = Math.cos(85 * RAD_PER_DEG);

/** The light of the sky in its three parts; a wall's share of each depends on where it faces. */
export interface SkyParts {
  /** Even dome, on level ground. */
  dome_W_m2: number;
  /** Bright ring round the sun, on a surface that faces it. */
  ring_W_m2: number;
  /** Band at the horizon, on a wall; negative under a dull sky. */
  band_W_m2: number;
}

/** What the split of one hour hangs on; `zenith_deg` < 90 and `diffuse_W_m2` > 0. */
export interface SkyHour {
  zenith_deg: number;
  cosZenith: number;
  airMass: number;
  directNormal_W_m2: number;
  diffuse_W_m2: number;
  extraterrestrial_W_m2: number;
}

/**
 * Splits the diffuse light of an hour into dome, ring and band.
 *
 *   ε = ((D + N) / D + 1.041 z³) / (1 + 1.041 z³),  Δ = D m / E0,  z in radians
 *   F1 = max(0, f11 + f12 Δ + f13 z),  F2 = f21 + f22 Δ + f23 z
 *   dome = D (1 − F1),  ring = D F1 / max(cos 85°, cos z),  band = D F2
 *
 * @param hour the sun above the horizon and diffuse light above 0
 * @param out filled and returned, so that an hour loop makes nothing
 * @returns out
 * @source Perez et al., Solar Energy 44 (1990), 271–289, all-sites composite coefficients
 */
export function splitSky(hour: SkyHour, out: SkyParts): SkyParts {
  const z = hour.zenith_deg * RAD_PER_DEG;
  const z3 = 1.041 * z * z * z;
  const clearness = ((hour.diffuse_W_m2 + hour.directNormal_W_m2) / hour.diffuse_W_m2 + z3) / (1 + z3);
  const brightness = (hour.diffuse_W_m2 * hour.airMass) / hour.extraterrestrial_W_m2;
  let bin = 0;
  while (bin < 7 && clearness >= BIN_STARTS[bin]!) bin++;
  const at = bin * 6;
  const ring = Math.max(0, COEFFICIENTS[at]! + COEFFICIENTS[at + 1]! * brightness + COEFFICIENTS[at + 2]! * z);
  const band = COEFFICIENTS[at + 3]! + COEFFICIENTS[at + 4]! * brightness + COEFFICIENTS[at + 5]! * z;
  out.dome_W_m2 = hour.diffuse_W_m2 * (1 - ring);
  out.ring_W_m2 = (hour.diffuse_W_m2 * ring) / Math.max(LEAST_COS_ZENITH, hour.cosZenith);
  out.band_W_m2 = hour.diffuse_W_m2 * band;
  return out;
}
