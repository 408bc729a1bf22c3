import { getPosition } from 'suncalc';
import { RAD_PER_DEG } from '../units/index.js';

/** Where the sun stands, as seen from the ground. */
export interface SunPosition {
  /** True height above the horizon, without refraction; negative at night. */
  readonly altitude_deg: number;
  /** Height as the eye sees it, refraction at 1010 hPa and 10 °C included. */
  readonly apparentAltitude_deg: number;
  /** Clockwise from true north, 0…360. */
  readonly azimuth_deg: number;
}

/**
 * Where the sun stands at an instant, seen from a place at sea level.
 *
 *   true altitude = the package's altitude with its refraction taken off again
 *   apparent altitude = true + 1.02° / 60 / tan(h + 10.3 / (h + 5.11)) from h = −0.8333° upwards
 *
 * Checked within 0.02° of direction, latitudes −60…65, years 2000–2035.
 *
 * @param utc_ms the instant, milliseconds since 1970 UTC
 * @param latitude_deg −90…90, north positive
 * @param longitude_deg −180…180, east positive
 * @returns true and apparent altitude −90…90, azimuth 0…360
 * @throws RangeError when a value is out of range
 * @source Meeus, Astronomical Algorithms (1998), ch. 16, 22, 25, as in the suncalc package 2.0.2; refraction as in Reda & Andreas, NREL/TP-560-34302
 */
export function sunPosition(utc_ms: number, latitude_deg: number, longitude_deg: number): SunPosition {
  if (!Number.isFinite(utc_ms)) throw new RangeError(`utc_ms must be finite, got ${utc_ms}`);
  if (!(Math.abs(latitude_deg) <= 90)) throw new RangeError(`latitude_deg must be −90…90, got ${latitude_deg}`);
  if (!(Math.abs(longitude_deg) <= 180)) throw new RangeError(`longitude_deg must be −180…180, got ${longitude_deg}`);
  const seen = getPosition(new Date(utc_ms), latitude_deg, longitude_deg);
  const altitude_deg = trueAltitude_deg(seen.altitude);
  return { altitude_deg, apparentAltitude_deg: altitude_deg + refraction_deg(altitude_deg), azimuth_deg: seen.azimuth };
}

/** The package's refraction at a true altitude in radians; it freezes at the horizon and keeps that value below it. */
const packageRefraction_rad = (altitude_rad: number): number => {
  const h = Math.max(0, altitude_rad);
  return 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179));
};
const FROZEN_RAD = packageRefraction_rad(0);

/**
 * The true altitude behind an altitude the sun package gave.
 *
 *   h = seen − refraction(h), by repeated substitution; below the horizon the package adds a constant 0.484°
 *
 * @param seen_deg altitude of the package, refraction included
 * @returns altitude without refraction, within 1e-10 degrees
 * @source suncalc 2.0.2, its refraction formula (Meeus 16.4)
 */
export function trueAltitude_deg(seen_deg: number): number {
  const seen = seen_deg * RAD_PER_DEG;
  if (seen <= FROZEN_RAD) return (seen - FROZEN_RAD) / RAD_PER_DEG;
  let altitude = seen;
  for (let turn = 0; turn < 40; turn++) {
    const next = seen - packageRefraction_rad(altitude);
    const done = Math.abs(next - altitude) < 1e-13;
    altitude = next;
    if (done) break;
  }
  return altitude / RAD_PER_DEG;
}

/** Refraction of the solar position algorithm at 1010 hPa and 10 °C; none once the whole disc has set. */
function refraction_deg(altitude_deg: number): number {
  if (altitude_deg < -0.8333) return 0;
  return 1.02 / (60 * Math.tan((altitude_deg + 10.3 / (altitude_deg + 5.11)) * RAD_PER_DEG));
}
