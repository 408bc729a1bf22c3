import { clearDayGain } from '../sky/index.js';

/** Where and when a reading behind glass was taken. */
export interface ReadingPlace {
  readonly latitude_deg: number;
  /** ISO date, YYYY-MM-DD. */
  readonly date: string;
  readonly azimuth_deg: number;
}

/** The two months whose 21sts stand on either side of a day. */
function monthsAround(date: string): readonly [number, number] {
  const found = /^\d{4}-(\d{2})-(\d{2})$/.exec(date);
  const month = Number(found?.[1]);
  const day = Number(found?.[2]);
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= 31)) throw new RangeError(`date must be YYYY-MM-DD, got ${date}`);
  const other = day < 21 ? month - 1 : day > 21 ? month + 1 : month;
  return [month, ((other + 11) % 12) + 1];
}

/**
 * The most that sun and sky give behind 3 mm clear glass of a wall about that day under a clear sky.
 *
 *   the larger of the clear 21sts before and after, looked at every quarter of a solar hour
 *
 * Dry air of high places can pass it by some percent.
 *
 * @param at latitude −66…66, ISO date, azimuth clockwise from north
 * @returns W/m², above 0
 * @throws RangeError for a latitude or a date that is none
 * @source solar heat gain factors of the handbook, `clearDayGain`
 */
export function highestBehindClear_W_m2(at: ReadingPlace): number {
  let highest = 0;
  for (const month of monthsAround(at.date)) {
    for (let quarter = 0; quarter <= 96; quarter++) {
      const window = { latitude_deg: at.latitude_deg, month, azimuth_deg: at.azimuth_deg, tilt_deg: 90 } as const;
      highest = Math.max(highest, clearDayGain(window, quarter / 4).gain_W_m2);
    }
  }
  return highest;
}
