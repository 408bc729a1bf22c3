/** Ticks in a millimetre; the finest common grain in which both mm and 1/64 in are whole. */
export const TICKS_PER_MM = 320;
/** Ticks in an inch: 25.4 mm, exact. */
export const TICKS_PER_IN = 8128;

/**
 * Whole ticks of a length.
 *
 *   round(mm × 320)          1 mm = 320 ticks, 1/64 in = 127 ticks, both exact
 *
 * @param length_mm any finite length in mm
 * @returns whole ticks of 1/320 mm
 * @throws RangeError when length_mm is not finite
 * @source international inch of 25.4 mm exactly, NIST SP 811 (2008), appendix B.8 (from memory)
 */
export function ticksOf_mm(length_mm: number): number {
  if (!Number.isFinite(length_mm)) throw new RangeError(`length_mm must be finite, got ${length_mm}`);
  return Math.round(length_mm * TICKS_PER_MM);
}

/**
 * The length in mm of a number of ticks.
 *
 *   ticks / 320
 *
 * @param ticks ticks of 1/320 mm
 * @returns mm
 * @source as `ticksOf_mm`
 */
export function mmOfTicks(ticks: number): number {
  return ticks / TICKS_PER_MM;
}

/**
 * A length rounded up to the next eighth of an inch, in ticks.
 *
 *   ceil(ticks / 1016) × 1016          1/8 in = 1016 ticks, so a size already on an eighth stays
 *
 * @param ticks whole ticks of 1/320 mm
 * @returns whole ticks, a multiple of 1016, ≥ ticks
 * @throws RangeError when ticks is not whole
 * @source common practice, no source (film is cut to the eighth)
 */
export function ceilToEighthInch_ticks(ticks: number): number {
  if (!Number.isSafeInteger(ticks)) throw new RangeError(`ticks must be a whole number, got ${ticks}`);
  return Math.ceil(ticks / 1016) * 1016;
}

/**
 * A length as a tape reads it: whole inches and a reduced fraction, to the nearest sixteenth.
 *
 *   36.5 in → "36 1/2", 0.25 in → "1/4", 48 in → "48"
 *
 * @param ticks ticks of 1/320 mm, ≥ 0
 * @returns inches without the inch mark
 * @throws RangeError when ticks is negative or not finite
 * @source common practice, no source
 */
export function inchesText(ticks: number): string {
  if (!(ticks >= 0 && Number.isFinite(ticks))) throw new RangeError(`ticks must be 0 or more, got ${ticks}`);
  const sixteenths = Math.round((ticks * 16) / TICKS_PER_IN);
  const whole = Math.floor(sixteenths / 16);
  let over = sixteenths % 16;
  if (over === 0) return String(whole);
  let under = 16;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return `${whole === 0 ? '' : `${whole} `}${over}/${under}`;
}
