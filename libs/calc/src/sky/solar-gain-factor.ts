import { cosDeg, RAD_PER_DEG, sinDeg } from '../units/index.js';
import { cosIncidence } from './facade-hour.js';

/** Clear day of the 21st: beam at no air, its loss through one air mass, diffuse share, declination. */
interface ClearDay { readonly top_W_m2: number; readonly loss: number; readonly diffuse: number; readonly declination_deg: number }
const day = (top_W_m2: number, loss: number, rest: readonly [diffuse: number, declination_deg: number]): ClearDay => ({ top_W_m2, loss, diffuse: rest[0], declination_deg: rest[1] });

// A, B, C of the ASHRAE Handbook of Fundamentals 1985–1993, ch. 26/27, table 1, A in W/m²; from memory, confirmed through the gain tables they make.
const CLEAR_DAYS: readonly ClearDay[] = [
  day(1230, 0.142, [0.058, -20]), day(1215, 0.144, [0.06, -10.8]), day(1186, 0.156, [0.071, 0]), day(1136, 0.18, [0.097, 11.6]),
  day(1104, 0.196, [0.121, 20]), day(1088, 0.205, [0.134, 23.45]), day(1085, 0.207, [0.136, 20.6]), day(1107, 0.201, [0.122, 12.3]),
  day(1151, 0.177, [0.092, 0]), day(1192, 0.16, [0.073, -10.5]), day(1221, 0.149, [0.063, -19.8]), day(1233, 0.142, [0.057, -23.45]),
];
// Double-strength sheet glass, powers 0…5 of cos θ: what passes and what is absorbed. Same chapter; read in a public program.
const PASSES = [-0.00885, 2.71235, -0.62062, -7.07329, 9.75995, -3.89922];
const ABSORBS = [0.01154, 0.77674, -3.94657, 8.57881, -8.38135, 3.01188];
/** Share of the absorbed heat that goes inwards, still air inside and 3.4 m/s outside. */
const INWARD = 0.267;
const GROUND = 0.2;

const atAngle = (powers: readonly number[], cos: number): number => powers.reduceRight((sum, factor) => sum * cos + factor, 0);
const allAround = (powers: readonly number[]): number => 2 * powers.reduce((sum, factor, power) => sum + factor / (power + 2), 0);
const AROUND = allAround(PASSES) + INWARD * allAround(ABSORBS);

/** A wall or roof light on a clear handbook day. */
export interface ClearDayWindow {
  readonly latitude_deg: number;
  /** 1…12; the 21st of it. */
  readonly month: number;
  readonly azimuth_deg: number;
  /** 90 a wall, 0 a roof light; nothing between is in the handbook's tables. */
  readonly tilt_deg: 90 | 0;
}

/** Gain behind reference glass at one moment, and what it is made of. */
export interface ClearDayGain {
  readonly gain_W_m2: number;
  readonly sunAltitude_deg: number;
  readonly sunAzimuth_deg: number;
  readonly incidence_deg: number;
  readonly directNormal_W_m2: number;
  readonly beam_W_m2: number;
  readonly diffuse_W_m2: number;
}

function sunAt(latitude_deg: number, declination_deg: number, solarTime_h: number): { h: number; azimuth: number } {
  const turn = (solarTime_h - 12) * 15;
  const up = sinDeg(latitude_deg) * sinDeg(declination_deg) + cosDeg(latitude_deg) * cosDeg(declination_deg) * cosDeg(turn);
  const east = -cosDeg(declination_deg) * sinDeg(turn);
  const north = cosDeg(latitude_deg) * sinDeg(declination_deg) - sinDeg(latitude_deg) * cosDeg(declination_deg) * cosDeg(turn);
  return { h: Math.asin(Math.min(1, Math.max(-1, up))) / RAD_PER_DEG, azimuth: (Math.atan2(east, north) / RAD_PER_DEG + 360) % 360 };
}

/** Sky's light on a wall against that on level ground: brighter towards the sun. */
const wallSky = (cos: number): number => (cos <= -0.2 ? 0.45 : 0.55 + 0.437 * cos + 0.313 * cos * cos);

/**
 * Solar heat gain behind double-strength sheet glass on a clear 21st, as the handbook's tables give it.
 *
 *   direct N = A exp(−B / sin h);  beam = N cos θ;  wall: diffuse = C N Y + 0.2 N (C + sin h) / 2;  level: diffuse = C N
 *   gain = beam Σ t_j cosʲθ + diffuse 2 Σ t_j/(j+2) + 0.267 (the same with a_j)
 *   Y = 0.55 + 0.437 cos θ + 0.313 cos² θ, 0.45 where cos θ ≤ −0.2
 *
 * Serves as a check and as the band a reading on site must fall in; haze takes up to 15 % off.
 *
 * @param window latitude −66…66, month 1…12, azimuth clockwise from north, tilt 90 or 0
 * @param solarTime_h 0…24, noon 12
 * @returns gain ≥ 0 and its parts; all 0 with the sun below the horizon
 * @throws RangeError when a value is out of range
 * @source ASHRAE Handbook of Fundamentals 1985–1993, Fenestration, solar heat gain factors (constants A, B, C from memory)
 */
export function clearDayGain(window: ClearDayWindow, solarTime_h: number): ClearDayGain {
  const clear = CLEAR_DAYS[window.month - 1];
  if (clear === undefined) throw new RangeError(`month must be 1…12, got ${window.month}`);
  if (!(Math.abs(window.latitude_deg) <= 66)) throw new RangeError(`latitude_deg must be −66…66, got ${window.latitude_deg}`);
  if (!(solarTime_h >= 0 && solarTime_h <= 24)) throw new RangeError(`solarTime_h must be 0…24, got ${solarTime_h}`);
  const { h, azimuth } = sunAt(window.latitude_deg, clear.declination_deg, solarTime_h);
  const cos = cosIncidence({ sunAltitude_deg: h, sunAzimuth_deg: azimuth, azimuth_deg: window.azimuth_deg, tilt_deg: window.tilt_deg });
  const where = { sunAltitude_deg: h, sunAzimuth_deg: azimuth, incidence_deg: Math.acos(cos) / RAD_PER_DEG };
  if (h <= 0) return { gain_W_m2: 0, ...where, directNormal_W_m2: 0, beam_W_m2: 0, diffuse_W_m2: 0 };
  const direct = clear.top_W_m2 * Math.exp(-clear.loss / sinDeg(h));
  const facing = Math.max(0, cos);
  const beam_W_m2 = direct * facing;
  const level = clear.diffuse * direct;
  const diffuse_W_m2 = window.tilt_deg === 0 ? level : level * wallSky(cos) + (GROUND * direct * (clear.diffuse + sinDeg(h))) / 2;
  const gain_W_m2 = beam_W_m2 * (atAngle(PASSES, facing) + INWARD * atAngle(ABSORBS, facing)) + diffuse_W_m2 * AROUND;
  return { gain_W_m2: Math.max(0, gain_W_m2), ...where, directNormal_W_m2: direct, beam_W_m2, diffuse_W_m2 };
}

/**
 * The largest gain of the whole solar hours of that day, as the tables print it.
 *
 *   max over 1, 2, … 23 h of `clearDayGain`          between the hours it can be up to 30 W/m² more
 *
 * @param window as `clearDayGain`
 * @returns the gain and its hour
 * @throws RangeError as `clearDayGain`
 * @source as `clearDayGain`
 */
export function largestClearDayGain(window: ClearDayWindow): { readonly gain_W_m2: number; readonly solarTime_h: number } {
  let best = { gain_W_m2: 0, solarTime_h: 12 };
  for (let solarTime_h = 1; solarTime_h <= 23; solarTime_h++) {
    const { gain_W_m2 } = clearDayGain(window, solarTime_h);
    if (gain_W_m2 > best.gain_W_m2) best = { gain_W_m2, solarTime_h };
  }
  return best;
}
