import type { SunYear } from '../sun/index.js';
import { cosDeg, RAD_PER_DEG, sinDeg } from '../units/index.js';
import { checkGeometry, type ShadeGeometry } from './geometry.js';
import { leafShare } from './leaf-season.js';
import { openShare } from './opening.js';
import { skyView } from './sky-view.js';
import { skylineAt, skylineOf } from './skyline.js';

/** What shade leaves of the sun and the sky on a window. */
export interface FacadeShade {
  /** Share of the beam that reaches the glass each hour, 0…1; 8760 values. */
  readonly sunlit: Float64Array;
  /** Share of the open sky's diffuse light that arrives, 1 = open. */
  readonly skyView: number;
}

/**
 * Shade on a window through the year; worked out once per distinct geometry on a facade.
 *
 *   hour by hour as `sunlitShare`, trees by the leaf share of the day
 *
 * @param sun the sun at the site
 * @param facade azimuth clockwise from north, tilt 0…180
 * @param geometry what stands round and in front of the window
 * @returns sunlit share of each hour and the sky view
 * @throws RangeError when tilt_deg or a length is out of range
 * @source as `sunlitShare` and `skyView`
 */
export function shadeOnFacade(
  sun: SunYear,
  facade: { readonly azimuth_deg: number; readonly tilt_deg: number },
  geometry: ShadeGeometry,
): FacadeShade {
  checkGeometry(geometry);
  const { azimuth_deg, tilt_deg } = facade;
  if (!(tilt_deg >= 0 && tilt_deg <= 180)) throw new RangeError(`tilt_deg must be 0…180, got ${tilt_deg}`);
  const sunlit = new Float64Array(8760);
  const skyline = skylineOf(geometry.horizon);
  const cosTilt = cosDeg(tilt_deg);
  const sinTilt = sinDeg(tilt_deg);
  const toward = { out: 0, up: 0, side: 0 };
  const bound = { altitude_deg: 0, passes: 0, passesBare: 0 };
  let leaf = 0;
  for (let i = 0; i < 8760; i++) {
    if (i % 24 === 0) leaf = leafShare(i / 24 + 1, sun.site.latitude_deg);
    const altitude = sun.altitude_deg[i]!;
    if (altitude <= 0) continue;
    const turn = (sun.azimuth_deg[i]! - azimuth_deg) * RAD_PER_DEG;
    const height = Math.sin(altitude * RAD_PER_DEG);
    const level = Math.cos(altitude * RAD_PER_DEG);
    const ahead = level * Math.cos(turn);
    toward.out = cosTilt * height + sinTilt * ahead;
    if (toward.out <= 1e-12) continue;
    toward.up = sinTilt * height - cosTilt * ahead;
    toward.side = level * Math.sin(turn);
    let through = 1;
    if (skyline.azimuth_deg.length > 0) {
      skylineAt(skyline, sun.azimuth_deg[i]!, bound);
      if (altitude < bound.altitude_deg) through = leaf * bound.passes + (1 - leaf) * bound.passesBare;
    }
    sunlit[i] = through > 0 ? through * openShare(toward, geometry) : 0;
  }
  return { sunlit, skyView: skyView(facade, geometry) };
}
