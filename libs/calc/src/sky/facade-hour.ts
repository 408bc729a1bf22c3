import { cosDeg, RAD_PER_DEG, sinDeg } from '../units/index.js';
import { relativeAirMass } from './air-mass.js';
import { splitSky } from './perez.js';

export type SkyModel = 'perez' | 'isotropic' | 'hay-davies';

/** One hour of sun and sky on one facade. */
export interface FacadeHour {
  /** True altitude, without refraction. */
  readonly sunAltitude_deg: number;
  readonly sunAzimuth_deg: number;
  readonly azimuth_deg: number;
  /** 0 a roof light, 90 a wall. */
  readonly tilt_deg: number;
  readonly directNormal_W_m2: number;
  readonly diffuseHorizontal_W_m2: number;
  readonly globalHorizontal_W_m2: number;
  readonly extraterrestrialNormal_W_m2: number;
  /** Share of light the ground throws back, 0…1. */
  readonly albedo: number;
  readonly sky?: SkyModel | undefined;
  /** Given instead of worked out from the altitude. */
  readonly relativeAirMass?: number | undefined;
}

/** What falls on the facade in that hour. */
export interface FacadeLight {
  readonly incidence_deg: number;
  readonly beam_W_m2: number;
  readonly sky_W_m2: number;
  readonly ground_W_m2: number;
  readonly total_W_m2: number;
}

/**
 * Cosine of the angle between the sun and the outward normal of a facade.
 *
 *   cos θ = cos T sin h + sin T cos h cos(A_sun − A)          negative: the sun is behind the facade
 *
 * @param at sunAltitude_deg (true), sunAzimuth_deg, azimuth_deg, tilt_deg 0…180
 * @returns −1…1
 * @source Duffie & Beckman, Solar Engineering of Thermal Processes, eq. 1.6.3
 */
export function cosIncidence(at: Pick<FacadeHour, 'sunAltitude_deg' | 'sunAzimuth_deg' | 'azimuth_deg' | 'tilt_deg'>): number {
  const { sunAltitude_deg: h, tilt_deg: tilt } = at;
  const cos = cosDeg(tilt) * sinDeg(h) + sinDeg(tilt) * cosDeg(h) * cosDeg(at.sunAzimuth_deg - at.azimuth_deg);
  return Math.min(1, Math.max(-1, cos));
}

function check(hour: FacadeHour): void {
  if (!(Math.abs(hour.sunAltitude_deg) <= 90)) throw new RangeError(`sunAltitude_deg must be −90…90, got ${hour.sunAltitude_deg}`);
  if (!(hour.tilt_deg >= 0 && hour.tilt_deg <= 180)) throw new RangeError(`tilt_deg must be 0…180, got ${hour.tilt_deg}`);
  if (!(hour.albedo >= 0 && hour.albedo <= 1)) throw new RangeError(`albedo must be 0…1, got ${hour.albedo}`);
  for (const name of ['directNormal_W_m2', 'diffuseHorizontal_W_m2', 'globalHorizontal_W_m2'] as const) {
    if (!(hour[name] >= 0)) throw new RangeError(`${name} must be 0 or more, got ${hour[name]}`);
  }
  if (!(hour.extraterrestrialNormal_W_m2 > 0)) throw new RangeError(`extraterrestrialNormal_W_m2 must be above 0, got ${hour.extraterrestrialNormal_W_m2}`);
}

/** Diffuse light of the sky on the facade by the model asked for; the sun is above the horizon. */
function skyLight_W_m2(hour: FacadeHour, cos: number): number {
  const diffuse = hour.diffuseHorizontal_W_m2;
  const domeShare = (1 + cosDeg(hour.tilt_deg)) / 2;
  const facing = Math.max(0, cos);
  if (diffuse === 0 || hour.sky === 'isotropic') return diffuse * domeShare;
  const cosZenith = sinDeg(hour.sunAltitude_deg);
  if (hour.sky === 'hay-davies') {
    const clear = hour.directNormal_W_m2 / hour.extraterrestrialNormal_W_m2;
    return diffuse * ((clear * facing) / Math.max(0.01745, cosZenith) + (1 - clear) * domeShare);
  }
  const zenith_deg = 90 - hour.sunAltitude_deg;
  const parts = splitSky(
    {
      zenith_deg,
      cosZenith,
      airMass: hour.relativeAirMass ?? relativeAirMass(zenith_deg),
      directNormal_W_m2: hour.directNormal_W_m2,
      diffuse_W_m2: diffuse,
      extraterrestrial_W_m2: hour.extraterrestrialNormal_W_m2,
    },
    { dome_W_m2: 0, ring_W_m2: 0, band_W_m2: 0 },
  );
  return Math.max(0, parts.dome_W_m2 * domeShare + parts.ring_W_m2 * facing + parts.band_W_m2 * sinDeg(hour.tilt_deg));
}

/**
 * Beam, sky and ground light on a facade in one hour, nothing standing in front of it.
 *
 *   beam = N max(0, cos θ);  ground = albedo × G (1 − cos T) / 2
 *   sky, Perez: dome (1 + cos T) / 2 + ring max(0, cos θ) + band sin T, not below 0
 *   sky, Hay-Davies: D (A Rb + (1 − A)(1 + cos T) / 2), A = N / E0, Rb = max(0, cos θ) / max(0.01745, cos z)
 *
 * With the sun below the horizon there is no beam and the sky is even.
 *
 * @param hour sun, facade and the three measured radiations; `sky` is 'perez' unless said
 * @returns incidence 0…180°, each part ≥ 0 W/m²
 * @throws RangeError when a value is out of range
 * @source Perez et al., Solar Energy 44 (1990), 271–289; Hay & Davies 1980 and the even sky as in Duffie & Beckman, ch. 2.15–2.16
 */
export function irradianceOnFacade(hour: FacadeHour): FacadeLight {
  check(hour);
  const cos = cosIncidence(hour);
  const up = hour.sunAltitude_deg > 0;
  const beam_W_m2 = up ? hour.directNormal_W_m2 * Math.max(0, cos) : 0;
  const sky_W_m2 = up ? skyLight_W_m2(hour, cos) : (hour.diffuseHorizontal_W_m2 * (1 + cosDeg(hour.tilt_deg))) / 2;
  const ground_W_m2 = (hour.albedo * hour.globalHorizontal_W_m2 * (1 - cosDeg(hour.tilt_deg))) / 2;
  return { incidence_deg: Math.acos(cos) / RAD_PER_DEG, beam_W_m2, sky_W_m2, ground_W_m2, total_W_m2: beam_W_m2 + sky_W_m2 + ground_W_m2 };
}
