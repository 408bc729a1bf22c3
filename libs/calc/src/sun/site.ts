/** A place on the ground; longitude east positive, time zone in hours east of UTC (standard time). */
export interface Site {
  readonly latitude_deg: number;
  readonly longitude_deg: number;
  readonly timeZone_h: number;
}

/**
 * Refuses a site that is not on the earth.
 *
 * @param site latitude −90…90, longitude −180…180, time zone −12…14
 * @throws RangeError naming the field that is out of range
 * @source definition
 */
export function checkSite(site: Site): void {
  const { latitude_deg, longitude_deg, timeZone_h } = site;
  if (!(Math.abs(latitude_deg) <= 90)) throw new RangeError(`latitude_deg must be −90…90, got ${latitude_deg}`);
  if (!(Math.abs(longitude_deg) <= 180)) throw new RangeError(`longitude_deg must be −180…180, got ${longitude_deg}`);
  if (!(timeZone_h >= -12 && timeZone_h <= 14)) throw new RangeError(`timeZone_h must be −12…14, got ${timeZone_h}`);
}
