// Small parts all six buildings use. Everything is made up; sizes vary by a fixed rule, as sizes on site do.

/** Inches and eighths as a tape reads them: 367 eighths → "45 7/8". */
export function inches(eighths) {
  const whole = Math.floor(eighths / 8);
  let over = eighths % 8;
  let under = 8;
  if (over === 0) return String(whole);
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return `${whole} ${over}/${under}`;
}

/** Size number n of a kind: the nominal size and up to 3/8 in more or less, by the fixed rule (5 n + shift) mod 7. */
export const varied = (nominal_in, n, shift = 0) => inches(Math.round(nominal_in * 8) + ((5 * n + shift) % 7) - 3);

/** Sight width and height of window number n. */
export const sizes = (width_in, height_in, n) => ({ width_in: varied(width_in, n), height_in: varied(height_in, n, 2) });

/** Marks W01, W02, … */
export const mark = (n) => `W${String(n).padStart(2, '0')}`;

/** The n-th of a list, round and round. */
export const turn = (list, n) => list[n % list.length];

export const PLACE = { latitude_deg: 25.82, longitude_deg: -80.3, time_zone_h: -5, daylight_time: 'yes', climate: 'miami-fl' };
