import type { ShadeGeometry } from './geometry.js';

/** A direction in the facade's own frame: out of the wall, up along it, and along it to the side. */
export interface FacadeDirection {
  out: number;
  up: number;
  side: number;
}

/** Length of a strip of the glass that a plate throws shade on, not above the glass's own length. */
const shaded_m = (shadow_m: number, length_m: number): number => Math.min(length_m, Math.max(0, shadow_m));

/**
 * Share of the glass that a ray direction reaches past overhang, fins and reveal.
 *
 *   (H − SH)(W − SW) / (H W),  SH = max(P tan Ω − gap, reveal tan Ω),  SW = max(F |tan γ| − gap, reveal |tan γ|), each clipped
 *   tan Ω = up / out (profile angle),  tan γ = side / out; so it holds for sloped glass too
 *
 * A ray from below the normal of the wall meets no overhang, but the sill of the reveal.
 *
 * @param toward direction to the light, `out` above 0
 * @param geometry checked lengths in metres
 * @returns 0…1
 * @source profile-angle construction, ASHRAE Handbook of Fundamentals, Fenestration (2009 ch. 15, eq. 33–40; numbers from memory)
 */
export function openShare(toward: FacadeDirection, geometry: ShadeGeometry): number {
  const rise = toward.up / toward.out;
  const turn = Math.abs(toward.side / toward.out);
  const { width_m, height_m, reveal_m } = geometry;
  const above = rise > 0 ? Math.max(geometry.overhangDepth_m * rise - geometry.overhangGap_m, reveal_m * rise) : -reveal_m * rise;
  const beside = Math.max(geometry.finDepth_m * turn - geometry.finGap_m, reveal_m * turn);
  const high = height_m - shaded_m(above, height_m);
  const wide = width_m - shaded_m(beside, width_m);
  return (high * wide) / (height_m * width_m);
}
