import { cosDeg, sinDeg } from '../units/index.js';
import type { ShadeGeometry } from './geometry.js';
import { openShare } from './opening.js';
import { skylineAt, skylineOf } from './skyline.js';

const STEP_DEG = 2;
/** Middles of the patches from the horizon up; their sines and cosines serve every window. */
const ALTITUDES_DEG = Array.from({ length: 90 / STEP_DEG }, (_, i) => (i + 0.5) * STEP_DEG);
const LEVELS = Float64Array.from(ALTITUDES_DEG, cosDeg);
const HEIGHTS = Float64Array.from(ALTITUDES_DEG, sinDeg);

/**
 * Share of an even sky's light that still reaches the glass past overhang, fins, reveal and skyline.
 *
 *   ∫ open(direction) × passes(direction) × cos θ dω / ∫ cos θ dω          over the sky the facade faces, in patches of 2° × 2°
 *
 * A patch the skyline cuts is counted by the part of it above. Seasonal trees count with the mean of leaf and bare.
 *
 * @param facade azimuth_deg; tilt_deg 0…180, facing some sky
 * @param geometry checked lengths and horizon
 * @returns 0…1; 1 in the open
 * @source view factor of a plane to an even sky by summation; against crossed strings for a long overhang, 1 − (2e + sin 2e) / π for a skyline of one height and 1 − sin e for a long wall opposite within 0.003
 */
export function skyView(facade: { readonly azimuth_deg: number; readonly tilt_deg: number }, geometry: ShadeGeometry): number {
  const skyline = skylineOf(geometry.horizon);
  const cosTilt = cosDeg(facade.tilt_deg);
  const sinTilt = sinDeg(facade.tilt_deg);
  const toward = { out: 0, up: 0, side: 0 };
  const bound = { altitude_deg: 0, passes: 0, passesBare: 0 };
  let arrives = 0;
  let whole = 0;
  for (let turn = -180 + STEP_DEG / 2; turn < 180; turn += STEP_DEG) {
    const cosTurn = cosDeg(turn);
    const sinTurn = sinDeg(turn);
    const azimuth = (((facade.azimuth_deg + turn) % 360) + 360) % 360;
    skylineAt(skyline, azimuth, bound);
    const through = (bound.passes + bound.passesBare) / 2;
    for (let i = 0; i < LEVELS.length; i++) {
      const level = LEVELS[i]!;
      const height = HEIGHTS[i]!;
      toward.out = cosTilt * height + sinTilt * level * cosTurn;
      if (toward.out <= 0) continue;
      toward.up = sinTilt * height - cosTilt * level * cosTurn;
      toward.side = level * sinTurn;
      const light = toward.out * level;
      const above = Math.min(1, Math.max(0, ((i + 1) * STEP_DEG - bound.altitude_deg) / STEP_DEG));
      whole += light;
      arrives += light * (above + (1 - above) * through) * openShare(toward, geometry);
    }
  }
  return whole > 0 ? arrives / whole : 0;
}
