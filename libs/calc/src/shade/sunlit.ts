import { cosDeg, RAD_PER_DEG, sinDeg } from '../units/index.js';
import { checkGeometry, type ShadeGeometry } from './geometry.js';
import { openShare } from './opening.js';
import { skyView } from './sky-view.js';
import { skylineAt, skylineOf } from './skyline.js';

/** The sun on a window with its shade, at one moment. */
export interface SunlitGiven {
  readonly sunAltitude_deg: number;
  readonly sunAzimuth_deg: number;
  readonly azimuth_deg: number;
  readonly tilt_deg: number;
  /** 0 bare … 1 in leaf, for trees of the horizon. */
  readonly leaf: number;
  readonly geometry: ShadeGeometry;
}

export interface Sunlit {
  /** Height of the sun seen in the plane square to the window; `null` with the sun behind it. */
  readonly profile_deg: number | null;
  /** Share of the glass the beam reaches, trees counted by the share they let pass. */
  readonly sunlit: number;
  readonly skyView: number;
}

/**
 * Share of a window in the sun at one moment.
 *
 *   sunlit = (H − SH)(W − SW) / (H W) × share the skyline lets pass          profile: tan Ω = tan h / cos γ on a wall
 *
 * @param given sun (true altitude), facade, leaf share 0…1 and geometry
 * @returns profile angle −90…90, sunlit 0…1 (0 with the sun behind the wall or down)
 * @throws RangeError when a value is out of range
 * @source profile-angle construction, ASHRAE Handbook of Fundamentals, Fenestration (2009 ch. 15; from memory); ray casting agrees within 0.0006
 */
export function sunOnGlass(given: SunlitGiven): Omit<Sunlit, 'skyView'> {
  const { sunAltitude_deg: h, tilt_deg, geometry } = given;
  checkGeometry(geometry);
  if (!(Math.abs(h) <= 90)) throw new RangeError(`sunAltitude_deg must be −90…90, got ${h}`);
  if (!(tilt_deg >= 0 && tilt_deg <= 180)) throw new RangeError(`tilt_deg must be 0…180, got ${tilt_deg}`);
  if (!(given.leaf >= 0 && given.leaf <= 1)) throw new RangeError(`leaf must be 0…1, got ${given.leaf}`);
  const turn = given.sunAzimuth_deg - given.azimuth_deg;
  const ahead = cosDeg(h) * cosDeg(turn);
  const toward = {
    out: cosDeg(tilt_deg) * sinDeg(h) + sinDeg(tilt_deg) * ahead,
    up: sinDeg(tilt_deg) * sinDeg(h) - cosDeg(tilt_deg) * ahead,
    side: cosDeg(h) * sinDeg(turn),
  };
  if (toward.out <= 1e-12) return { profile_deg: null, sunlit: 0 };
  const profile_deg = Math.atan2(toward.up, toward.out) / RAD_PER_DEG;
  if (h <= 0) return { profile_deg, sunlit: 0 };
  const azimuth = ((given.sunAzimuth_deg % 360) + 360) % 360;
  const bound = skylineAt(skylineOf(geometry.horizon), azimuth, { altitude_deg: 0, passes: 0, passesBare: 0 });
  const through = h < bound.altitude_deg ? given.leaf * bound.passes + (1 - given.leaf) * bound.passesBare : 1;
  return { profile_deg, sunlit: through * openShare(toward, geometry) };
}

/**
 * Share of a window in the sun, and of the sky it still sees.
 *
 *   sunlit as `sunOnGlass`, skyView = even-sky light that arrives / that in the open
 *
 * @param given sun (true altitude), facade, leaf share 0…1 and geometry
 * @returns profile angle −90…90 or null with the sun behind, sunlit 0…1, skyView 0…1
 * @throws RangeError when a value is out of range
 * @source as `sunOnGlass` and `skyView`
 */
export function sunlitShare(given: SunlitGiven): Sunlit {
  return { ...sunOnGlass(given), skyView: skyView(given, given.geometry) };
}
