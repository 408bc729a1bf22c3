/**
 * A dwelling as the hourly method sees it: one zone, one mass, conductances to outdoors.
 * Areas in m², conductances in W/K. The optional field replaces what the method derives.
 */
export interface DwellingBody {
  readonly floor_m2: number;
  /** Effective heat capacity of everything the room touches, C_m. */
  readonly capacity_J_K: number;
  /** Effective area of the mass, A_m. */
  readonly massArea_m2: number;
  /** All surfaces facing the room, A_t. */
  readonly facingArea_m2: number;
  /** Opaque parts to outdoors, H_op; what borders on another dwelling is not in it. */
  readonly opaque_W_K: number;
  /** Windows and doors to outdoors, H_w. */
  readonly window_W_K: number;
  /** Air change with outdoors, H_ve; an hourly series of the drive takes its place. */
  readonly ventilation_W_K: number;
  /** Between room air and surfaces, h_is; 3.45 in the standard. */
  readonly surfaceConductance_W_m2K: number;
  /** Opaque path from outdoors to the mass, H_em; derived from `opaque_W_K` when absent. */
  readonly opaqueToMass_W_K?: number;
}

/** Between room air and the surfaces around it. ISO 13790:2008, 7.2.2.2. */
export const surfaceConductance_W_m2K = 3.45;
/**
 * The same, set once on the thermal fabric cases of ANSI/ASHRAE Standard 140-2020 with windows at their year-round films: the value at which
 * annual cooling of all shared cases lies within the programs' own range. The standard's 3.45 is 3 to 5 % above their mean.
 */
export const fittedSurfaceConductance_W_m2K = 2.9;
/** Between the mass and its surface. ISO 13790:2008, 12.2.2. */
export const massConductance_W_m2K = 9.1;
/** Surfaces facing the room over floor area. ISO 13790:2008, 7.2.2.2. */
export const facingAreaPerFloor = 4.5;

/**
 * Refuses a body the method has no answer for.
 *
 *   H_op must stay under 9.1 × A_m, else the mass would lie outside the wall
 *
 * @param body the dwelling
 * @throws RangeError naming the field, its range and the value
 * @source ISO 13790:2008, 12.2.2, equation 64
 */
export function checkBody(body: DwellingBody): void {
  const positive = ['floor_m2', 'capacity_J_K', 'massArea_m2', 'facingArea_m2', 'surfaceConductance_W_m2K'] as const;
  const notNegative = ['opaque_W_K', 'window_W_K', 'ventilation_W_K', 'opaqueToMass_W_K'] as const;
  for (const name of positive) {
    if (!(body[name] > 0 && body[name] < Infinity)) throw new RangeError(`${name} must be above 0, got ${String(body[name])}`);
  }
  for (const name of notNegative) {
    const value = body[name] ?? 0;
    if (!(value >= 0 && value < Infinity)) throw new RangeError(`${name} must be 0 or more, got ${String(value)}`);
  }
  if (body.massArea_m2 > body.facingArea_m2) throw new RangeError(`massArea_m2 must be at most facingArea_m2 (${String(body.facingArea_m2)}), got ${String(body.massArea_m2)}`);
  const toSurface = massConductance_W_m2K * body.massArea_m2;
  if (body.opaqueToMass_W_K === undefined && body.opaque_W_K >= toSurface) {
    throw new RangeError(`opaque_W_K must be under 9.1 × massArea_m2 (${String(toSurface)}), got ${String(body.opaque_W_K)}`);
  }
}
