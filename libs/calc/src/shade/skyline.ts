import type { HorizonPoint } from './geometry.js';

/** A skyline ready for many look-ups: bearings rising, altitude between them in a straight line. */
export interface Skyline {
  /** Bearings 0…360 and one turn more, so that every azimuth lies between two of them. */
  readonly azimuth_deg: Float64Array;
  readonly altitude_deg: Float64Array;
  readonly passes: Float64Array;
  readonly passesBare: Float64Array;
  /** First bearing beyond each whole degree 0…360: where a look-up begins. */
  readonly beyond: Uint16Array;
}

const NONE = new Float64Array(0);
const OPEN: Skyline = { azimuth_deg: NONE, altitude_deg: NONE, passes: NONE, passesBare: NONE, beyond: new Uint16Array(0) };

/**
 * Puts horizon points in order round the compass.
 *
 * Between neighbouring points the altitude runs in a straight line, as long as they are not more than 180° apart; a wider gap was not
 * surveyed and is open. One point alone stands for the whole skyline. Two points on one bearing make a vertical edge.
 *
 * @param points in any order, azimuth in any turn, altitude 0…90
 * @returns the skyline; without points an open one
 * @source own rule, stated here
 */
export function skylineOf(points: readonly HorizonPoint[]): Skyline {
  if (points.length === 0) return OPEN;
  const turned = points.map((point) => ({ ...point, azimuth_deg: ((point.azimuth_deg % 360) + 360) % 360 }));
  turned.sort((a, b) => a.azimuth_deg - b.azimuth_deg);
  const round: HorizonPoint[] = [];
  turned.forEach((point, i) => {
    round.push(point);
    const next = turned[i + 1] ?? turned[0] ?? point;
    const nextAzimuth = i + 1 < turned.length ? next.azimuth_deg : next.azimuth_deg + 360;
    if (turned.length > 1 && nextAzimuth - point.azimuth_deg > 180) {
      round.push({ azimuth_deg: point.azimuth_deg, altitude_deg: 0 }, { azimuth_deg: nextAzimuth, altitude_deg: 0 });
    }
  });
  const lastTurn = round.map((point) => ({ ...point, azimuth_deg: point.azimuth_deg - 360 }));
  const nextTurn = round.map((point) => ({ ...point, azimuth_deg: point.azimuth_deg + 360 }));
  const all = [...lastTurn, ...round, ...nextTurn];
  const beyond = Uint16Array.from({ length: 361 }, (_, degree) => {
    const first = all.findIndex((point) => point.azimuth_deg > degree);
    return first < 0 ? all.length - 1 : first;
  });
  return {
    beyond,
    azimuth_deg: Float64Array.from(all, (point) => point.azimuth_deg),
    altitude_deg: Float64Array.from(all, (point) => point.altitude_deg),
    passes: Float64Array.from(all, (point) => point.passes ?? 0),
    passesBare: Float64Array.from(all, (point) => point.passesBare ?? point.passes ?? 0),
  };
}

/** What a skyline is on one bearing. */
export interface SkylineAt {
  altitude_deg: number;
  passes: number;
  passesBare: number;
}

/**
 * The skyline on a bearing.
 *
 *   altitude in a straight line between the two points beside; the shares that pass weighted by what each point contributes to the altitude,
 *   so that the open end of a slope does not make a tree denser
 *
 * @param skyline from `skylineOf`
 * @param azimuth_deg 0…360
 * @param out filled and returned, so that an hour loop makes nothing
 * @returns out
 * @source own rule, stated here
 */
export function skylineAt(skyline: Skyline, azimuth_deg: number, out: SkylineAt): SkylineAt {
  const bearings = skyline.azimuth_deg;
  out.altitude_deg = 0;
  out.passes = 0;
  out.passesBare = 0;
  if (bearings.length === 0) return out;
  let right = skyline.beyond[Math.floor(azimuth_deg)]!;
  while (right < bearings.length - 1 && bearings[right]! <= azimuth_deg) right++;
  const left = Math.max(0, right - 1);
  const apart = bearings[right]! - bearings[left]!;
  const share = apart > 0 ? (azimuth_deg - bearings[left]!) / apart : 1;
  const fromLeft = (1 - share) * skyline.altitude_deg[left]!;
  const fromRight = share * skyline.altitude_deg[right]!;
  const altitude = fromLeft + fromRight;
  out.altitude_deg = altitude;
  if (altitude <= 0) return out;
  out.passes = (fromLeft * skyline.passes[left]! + fromRight * skyline.passes[right]!) / altitude;
  out.passesBare = (fromLeft * skyline.passesBare[left]! + fromRight * skyline.passesBare[right]!) / altitude;
  return out;
}
