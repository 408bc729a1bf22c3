import type { FacadeSky } from '../sky/index.js';
import { hoursOfYear } from './drive.js';

/** An opaque wall or roof to outdoors, or (with absorptance 0) the sky side of a window. */
export interface OutsideSurface {
  readonly area_m2: number;
  readonly u_W_m2K: number;
  /** Share of the sun on it that it takes up, 0…1. */
  readonly absorptance: number;
  readonly tilt_deg: number;
  /** Thermal emittance of the outside face; 0.9 when absent. */
  readonly emittance?: number;
  /** The light on it; none for a surface that only loses heat to the sky. */
  readonly sky?: FacadeSky;
}

/** Resistance of the outside air film, m²K/W. ISO 13790:2008, 11.3.2 with ISO 6946. */
export const outsideResistance_m2K_W = 0.04;
/** Mean difference between air and sky temperature, intermediate zone. ISO 13790:2008, 11.4.6. */
export const skyTemperatureDrop_K = 11;

/**
 * Heat a dwelling's outside surfaces gain from the sun, less what they lose to the sky.
 *
 *   Σ R_se U A (absorptance × irradiance − F_r h_r ΔT_sky)     h_r = 5 ε W/m²K, F_r = 1 for a roof, 0.5 for a wall
 *
 * @param surfaces walls, roofs and window panes to outdoors
 * @param out 8760 hours to fill; new when absent
 * @returns W, mean of the hour; negative at night
 * @throws RangeError for an area, U-value or share out of range
 * @source ISO 13790:2008, 11.3.2 (equation 43), 11.3.4 and 11.3.5, 11.4.6
 */
export function opaqueGain_W(surfaces: readonly OutsideSurface[], out: Float64Array = new Float64Array(hoursOfYear)): Float64Array {
  out.fill(0);
  for (const surface of surfaces) {
    const { area_m2, u_W_m2K, absorptance, tilt_deg, emittance = 0.9, sky } = surface;
    if (!(area_m2 >= 0)) throw new RangeError(`area_m2 must be 0 or more, got ${String(area_m2)}`);
    if (!(u_W_m2K >= 0)) throw new RangeError(`u_W_m2K must be 0 or more, got ${String(u_W_m2K)}`);
    if (!(absorptance >= 0 && absorptance <= 1)) throw new RangeError(`absorptance must be 0…1, got ${String(absorptance)}`);
    if (!(tilt_deg >= 0 && tilt_deg <= 180)) throw new RangeError(`tilt_deg must be 0…180, got ${String(tilt_deg)}`);
    const scale = outsideResistance_m2K_W * u_W_m2K * area_m2;
    const seesSky = (1 + Math.cos((tilt_deg * Math.PI) / 180)) / 2;
    const lost_W = scale * seesSky * 5 * emittance * skyTemperatureDrop_K;
    const taken = scale * absorptance;
    if (!sky || taken === 0) {
      for (let h = 0; h < hoursOfYear; h++) out[h] = out[h]! - lost_W;
      continue;
    }
    const { beam_W_m2, sky_W_m2, ground_W_m2 } = sky;
    for (let h = 0; h < hoursOfYear; h++) out[h] = out[h]! + taken * (beam_W_m2[h]! + sky_W_m2[h]! + ground_W_m2[h]!) - lost_W;
  }
  return out;
}
