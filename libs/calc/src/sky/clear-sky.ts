import { sinDeg } from '../units/index.js';
import { relativeAirMass } from './air-mass.js';

/** A cloudless moment. */
export interface ClearSkyGiven {
  readonly sunAltitude_deg: number;
  readonly extraterrestrialNormal_W_m2: number;
  /** Optical depth of the air for the beam and for the diffuse light; monthly values of a place. */
  readonly beamDepth: number;
  readonly diffuseDepth: number;
  /** Form of the air mass exponents; 2013 also serves the 2017 edition. */
  readonly edition: 2009 | 2013;
}

export interface ClearSky {
  readonly directNormal_W_m2: number;
  readonly diffuseHorizontal_W_m2: number;
  readonly globalHorizontal_W_m2: number;
}

/**
 * Sun and sky of a cloudless moment from two optical depths.
 *
 *   direct = E0 exp(−τb m^ab),  diffuse = E0 exp(−τd m^ad)
 *   2009: ab = 1.219 − 0.043 τb − 0.151 τd − 0.204 τb τd;  ad = 0.202 + 0.852 τb − 0.007 τd − 0.357 τb τd
 *   2013: ab = 1.454 − 0.406 τb − 0.268 τd + 0.021 τb τd;  ad = 0.507 + 0.205 τb − 0.080 τd − 0.190 τb τd
 *
 * @param given true altitude −90…90, extraterrestrial radiation, optical depths above 0
 * @returns W/m², all 0 with the sun at or below the horizon
 * @throws RangeError when an optical depth is not above 0 or the altitude is out of range
 * @source ASHRAE Handbook of Fundamentals, Climatic Design Information, ch. 14 (2009; 2013); read in public code
 */
export function clearSky(given: ClearSkyGiven): ClearSky {
  const { sunAltitude_deg, beamDepth: tb, diffuseDepth: td } = given;
  if (!(tb > 0)) throw new RangeError(`beamDepth must be above 0, got ${tb}`);
  if (!(td > 0)) throw new RangeError(`diffuseDepth must be above 0, got ${td}`);
  if (!(Math.abs(sunAltitude_deg) <= 90)) throw new RangeError(`sunAltitude_deg must be −90…90, got ${sunAltitude_deg}`);
  if (sunAltitude_deg <= 0) return { directNormal_W_m2: 0, diffuseHorizontal_W_m2: 0, globalHorizontal_W_m2: 0 };
  const mass = relativeAirMass(90 - sunAltitude_deg);
  const old = given.edition === 2009;
  const ab = old ? 1.219 - 0.043 * tb - 0.151 * td - 0.204 * tb * td : 1.454 - 0.406 * tb - 0.268 * td + 0.021 * tb * td;
  const ad = old ? 0.202 + 0.852 * tb - 0.007 * td - 0.357 * tb * td : 0.507 + 0.205 * tb - 0.08 * td - 0.19 * tb * td;
  const directNormal_W_m2 = given.extraterrestrialNormal_W_m2 * Math.exp(-tb * mass ** ab);
  const diffuseHorizontal_W_m2 = given.extraterrestrialNormal_W_m2 * Math.exp(-td * mass ** ad);
  return { directNormal_W_m2, diffuseHorizontal_W_m2, globalHorizontal_W_m2: directNormal_W_m2 * sinDeg(sunAltitude_deg) + diffuseHorizontal_W_m2 };
}
