import type { SunYear } from '../sun/index.js';
import { cosDeg, RAD_PER_DEG, sinDeg } from '../units/index.js';
import type { HourlyYear } from '../weather/index.js';
import { relativeAirMass } from './air-mass.js';
import { splitSky } from './perez.js';

/** The parts of the sky at a site, hour by hour; the same for all its facades. */
export interface SkyYear {
  readonly sun: SunYear;
  readonly weather: HourlyYear;
  readonly sinAltitude: Float64Array;
  readonly cosAltitude: Float64Array;
  readonly dome_W_m2: Float64Array;
  readonly ring_W_m2: Float64Array;
  readonly band_W_m2: Float64Array;
}

/** Light on a facade with nothing in front of it: 8760 means of the hour. */
export interface FacadeSky {
  readonly azimuth_deg: number;
  readonly tilt_deg: number;
  /** 0…1; 0 with the sun behind the facade or below the horizon. */
  readonly cosIncidence: Float64Array;
  readonly beam_W_m2: Float64Array;
  readonly sky_W_m2: Float64Array;
  readonly ground_W_m2: Float64Array;
}

/**
 * Splits a year's diffuse light into dome, ring and band; worked out once per site.
 *
 *   as `splitSky`; with the sun below the horizon at half past the whole is dome
 *
 * @param sun the sun at the same site
 * @param weather the year of weather
 * @returns 8760 values of each part
 * @source Perez et al., Solar Energy 44 (1990), 271–289
 */
export function skyYear(sun: SunYear, weather: HourlyYear): SkyYear {
  const sinAltitude = new Float64Array(8760);
  const cosAltitude = new Float64Array(8760);
  const dome_W_m2 = new Float64Array(8760);
  const ring_W_m2 = new Float64Array(8760);
  const band_W_m2 = new Float64Array(8760);
  const hour = { zenith_deg: 0, cosZenith: 0, airMass: 1, directNormal_W_m2: 0, diffuse_W_m2: 0, extraterrestrial_W_m2: 0 };
  const parts = { dome_W_m2: 0, ring_W_m2: 0, band_W_m2: 0 };
  for (let i = 0; i < 8760; i++) {
    const altitude = sun.altitude_deg[i]!;
    const diffuse = weather.diffuseHorizontal_W_m2[i]!;
    sinAltitude[i] = Math.sin(altitude * RAD_PER_DEG);
    cosAltitude[i] = Math.cos(altitude * RAD_PER_DEG);
    if (altitude <= 0 || diffuse <= 0) {
      dome_W_m2[i] = diffuse;
      continue;
    }
    hour.zenith_deg = 90 - altitude;
    hour.cosZenith = sinAltitude[i]!;
    hour.airMass = relativeAirMass(hour.zenith_deg);
    hour.directNormal_W_m2 = weather.directNormal_W_m2[i]!;
    hour.diffuse_W_m2 = diffuse;
    hour.extraterrestrial_W_m2 = sun.extraterrestrialNormal_W_m2[i]!;
    splitSky(hour, parts);
    dome_W_m2[i] = parts.dome_W_m2;
    ring_W_m2[i] = parts.ring_W_m2;
    band_W_m2[i] = parts.band_W_m2;
  }
  return { sun, weather, sinAltitude, cosAltitude, dome_W_m2, ring_W_m2, band_W_m2 };
}

/** A facade and the ground before it, at a site with its sun and weather. */
export interface FacadeAt {
  readonly sun: SunYear;
  readonly weather: HourlyYear;
  readonly azimuth_deg: number;
  readonly tilt_deg: number;
  readonly albedo: number;
  /** The site's sky in parts, when several facades share it. */
  readonly sky?: SkyYear | undefined;
}

/**
 * Beam, sky and ground light on a facade through the year, nothing standing in front of it; worked out once per (site, azimuth, tilt).
 *
 *   hour by hour as `irradianceOnFacade` with the Perez sky
 *
 * @param at site, facade (azimuth clockwise from north, tilt 0…180) and albedo 0…1
 * @returns 8760 means of the hour of each part, ≥ 0
 * @throws RangeError when tilt_deg or albedo is out of range or azimuth_deg is not finite
 * @source Perez et al., Solar Energy 44 (1990), 271–289
 */
export function facadeSky(at: FacadeAt): FacadeSky {
  const { azimuth_deg, tilt_deg, albedo, sun, weather } = at;
  if (!Number.isFinite(azimuth_deg)) throw new RangeError(`azimuth_deg must be finite, got ${azimuth_deg}`);
  if (!(tilt_deg >= 0 && tilt_deg <= 180)) throw new RangeError(`tilt_deg must be 0…180, got ${tilt_deg}`);
  if (!(albedo >= 0 && albedo <= 1)) throw new RangeError(`albedo must be 0…1, got ${albedo}`);
  const sky = at.sky ?? skyYear(sun, weather);
  const cosIncidence = new Float64Array(8760);
  const beam_W_m2 = new Float64Array(8760);
  const sky_W_m2 = new Float64Array(8760);
  const ground_W_m2 = new Float64Array(8760);
  const cosTilt = cosDeg(tilt_deg);
  const sinTilt = sinDeg(tilt_deg);
  const domeShare = (1 + cosTilt) / 2;
  const groundShare = (albedo * (1 - cosTilt)) / 2;
  for (let i = 0; i < 8760; i++) {
    const up = sky.sinAltitude[i]!;
    let facing = 0;
    if (up > 0) {
      const turn = Math.cos((sun.azimuth_deg[i]! - azimuth_deg) * RAD_PER_DEG);
      facing = Math.min(1, Math.max(0, cosTilt * up + sinTilt * sky.cosAltitude[i]! * turn));
    }
    cosIncidence[i] = facing;
    beam_W_m2[i] = weather.directNormal_W_m2[i]! * facing;
    sky_W_m2[i] = Math.max(0, sky.dome_W_m2[i]! * domeShare + sky.ring_W_m2[i]! * facing + sky.band_W_m2[i]! * sinTilt);
    ground_W_m2[i] = weather.globalHorizontal_W_m2[i]! * groundShare;
  }
  return { azimuth_deg, tilt_deg, cosIncidence, beam_W_m2, sky_W_m2, ground_W_m2 };
}
