import type { HorizonPoint } from '../portfolio/index.js';

export type { HorizonPoint };

/** What stands round and in front of a window. Lengths in metres; overhang and fins are long, as is usual for balconies and side walls. */
export interface ShadeGeometry {
  /** Of the glass. */
  readonly width_m: number;
  readonly height_m: number;
  /** Overhang or balcony above, out from the glass. */
  readonly overhangDepth_m: number;
  /** From the top of the glass up to the overhang. */
  readonly overhangGap_m: number;
  /** Fins on both sides, out from the glass. */
  readonly finDepth_m: number;
  /** From the side of the glass to the fin. */
  readonly finGap_m: number;
  /** How far the glass stands back from the face of the wall: a short overhang and fins without a gap. */
  readonly reveal_m: number;
  /** Skyline seen from the middle of the glass. */
  readonly horizon: readonly HorizonPoint[];
}

const LENGTHS = ['overhangDepth_m', 'overhangGap_m', 'finDepth_m', 'finGap_m', 'reveal_m'] as const;

/**
 * Refuses a geometry that cannot be.
 *
 * @param geometry width and height above 0, the other lengths 0 or more, horizon altitudes 0…90°, shares that pass 0…1
 * @throws RangeError naming the field
 * @source definition
 */
export function checkGeometry(geometry: ShadeGeometry): void {
  for (const name of ['width_m', 'height_m'] as const) {
    if (!(geometry[name] > 0 && geometry[name] < 1000)) throw new RangeError(`${name} must be above 0, got ${geometry[name]}`);
  }
  for (const name of LENGTHS) {
    if (!(geometry[name] >= 0 && geometry[name] < 1000)) throw new RangeError(`${name} must be 0 or more, got ${geometry[name]}`);
  }
  for (const { azimuth_deg, altitude_deg, passes = 0, passesBare = passes } of geometry.horizon) {
    if (!Number.isFinite(azimuth_deg)) throw new RangeError(`azimuth_deg of the horizon must be finite, got ${azimuth_deg}`);
    if (!(altitude_deg >= 0 && altitude_deg <= 90)) throw new RangeError(`altitude_deg of the horizon must be 0…90, got ${altitude_deg}`);
    if (!(passes >= 0 && passes <= 1)) throw new RangeError(`passes must be 0…1, got ${passes}`);
    if (!(passesBare >= 0 && passesBare <= 1)) throw new RangeError(`passesBare must be 0…1, got ${passesBare}`);
  }
}
