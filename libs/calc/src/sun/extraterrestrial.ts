/** Radiation outside the air on a surface facing the sun, mean over the year. */
export const SOLAR_CONSTANT_W_m2 = 1367;

/**
 * Sun outside the air, facing the sun, on a day of the year.
 *
 *   1367 (1.00011 + 0.034221 cos B + 0.00128 sin B + 0.000719 cos 2B + 0.000077 sin 2B),  B = 2π (n − 1) / 365
 *
 * @param dayOfYear 1…366
 * @returns W/m², 1321…1415
 * @throws RangeError when dayOfYear is not 1…366
 * @source Spencer, Search 2 (1971), p. 172, with 1367 W/m²
 */
export function extraterrestrialNormal_W_m2(dayOfYear: number): number {
  if (!(dayOfYear >= 1 && dayOfYear < 367)) throw new RangeError(`dayOfYear must be 1…366, got ${dayOfYear}`);
  const b = (2 * Math.PI * (dayOfYear - 1)) / 365;
  const ratio = 1.00011 + 0.034221 * Math.cos(b) + 0.00128 * Math.sin(b) + 0.000719 * Math.cos(2 * b) + 0.000077 * Math.sin(2 * b);
  return SOLAR_CONSTANT_W_m2 * ratio;
}
