import { getPosition } from 'suncalc';
import { extraterrestrialNormal_W_m2 } from './extraterrestrial.js';
import { trueAltitude_deg } from './position.js';
import { checkSite, type Site } from './site.js';

/** The sun over a year at a place: 8760 values, hour 0 = 00:00–01:00 on 1 January, local standard time, taken at half past. */
export interface SunYear {
  readonly site: Site;
  /** True altitude, without refraction. */
  readonly altitude_deg: Float64Array;
  /** Clockwise from true north. */
  readonly azimuth_deg: Float64Array;
  readonly extraterrestrialNormal_W_m2: Float64Array;
}

const HOUR_MS = 3_600_000;
/** The sun's calendar is the year 2001 for every file; a record's own year would move facade totals by up to 0.12 %. */
const YEAR_START_MS = Date.UTC(2001, 0, 1);

/**
 * The sun at half past every hour of the year at a place; worked out once per site and shared by all its facades.
 *
 *   instant of hour i = 1 January 2001 00:00 UTC + (i + 0.5 − time zone) h
 *
 * @param site latitude −90…90, longitude −180…180 (east positive), time zone −12…14 h east of UTC
 * @returns true altitude, azimuth and extraterrestrial normal radiation, 8760 values each
 * @throws RangeError when the site is out of range
 * @source as `sunPosition` and `extraterrestrialNormal_W_m2`; mid-hour convention of EPW and TMY3 files
 */
export function sunYear(site: Site): SunYear {
  checkSite(site);
  const altitude_deg = new Float64Array(8760);
  const azimuth_deg = new Float64Array(8760);
  const extraterrestrial = new Float64Array(8760);
  const instant = new Date(0); // one clock set forward, so the loop makes no dates
  const start_ms = YEAR_START_MS + (0.5 - site.timeZone_h) * HOUR_MS;
  for (let hour = 0; hour < 8760; hour++) {
    instant.setTime(start_ms + hour * HOUR_MS);
    const seen = getPosition(instant, site.latitude_deg, site.longitude_deg);
    altitude_deg[hour] = trueAltitude_deg(seen.altitude);
    azimuth_deg[hour] = seen.azimuth;
    extraterrestrial[hour] = extraterrestrialNormal_W_m2(Math.floor(hour / 24) + 1);
  }
  return { site, altitude_deg, azimuth_deg, extraterrestrialNormal_W_m2: extraterrestrial };
}
