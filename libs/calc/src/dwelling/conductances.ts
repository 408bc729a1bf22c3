import { checkBody, massConductance_W_m2K, type DwellingBody } from './body.js';

/** The conductances of the network of the simple hourly method, in W/K, and how gains fall on its nodes. */
export interface Conductances {
  readonly ventilation_W_K: number;
  readonly airToSurface_W_K: number;
  readonly massToSurface_W_K: number;
  readonly outdoorToMass_W_K: number;
  readonly window_W_K: number;
  /** H_1: outdoors through the air to the surfaces. */
  readonly throughAir_W_K: number;
  /** H_2: H_1 and the windows together. */
  readonly toSurface_W_K: number;
  /** H_3: H_2 on to the mass. */
  readonly toMass_W_K: number;
  /** Share of radiant gains that falls on the mass. */
  readonly shareToMass: number;
  /** Share of radiant gains that falls on the other surfaces; what is missing to 1 leaves by the windows. */
  readonly shareToSurface: number;
}

/**
 * The five conductances of a dwelling at one rate of air change, and the three combinations the method uses.
 *
 *   H_is = 3.45 A_t   H_ms = 9.1 A_m   H_em = 1/(1/H_op − 1/H_ms)
 *   H_1 = 1/(1/H_ve + 1/H_is)   H_2 = H_1 + H_w   H_3 = 1/(1/H_2 + 1/H_ms)
 *   shares of radiant gain: A_m/A_t to the mass, 1 − A_m/A_t − H_w/(9.1 A_t) to the surfaces
 *
 * @param body the dwelling
 * @param ventilation_W_K air change with outdoors in this hour, ≥ 0
 * @returns conductances in W/K, all ≥ 0
 * @throws RangeError for a body or an air change out of range
 * @source ISO 13790:2008, annex C.2 (C.6–C.8), C.1–C.3, 12.2.2
 */
export function conductancesOf(body: DwellingBody, ventilation_W_K: number = body.ventilation_W_K): Conductances {
  checkBody(body);
  if (!(ventilation_W_K >= 0 && ventilation_W_K < Infinity)) throw new RangeError(`ventilation_W_K must be 0 or more, got ${String(ventilation_W_K)}`);
  const airToSurface = body.surfaceConductance_W_m2K * body.facingArea_m2;
  const massToSurface = massConductance_W_m2K * body.massArea_m2;
  const throughAir = (ventilation_W_K * airToSurface) / (ventilation_W_K + airToSurface);
  const toSurface = throughAir + body.window_W_K;
  const shareToMass = body.massArea_m2 / body.facingArea_m2;
  return {
    ventilation_W_K,
    airToSurface_W_K: airToSurface,
    massToSurface_W_K: massToSurface,
    outdoorToMass_W_K: body.opaqueToMass_W_K ?? (body.opaque_W_K * massToSurface) / (massToSurface - body.opaque_W_K),
    window_W_K: body.window_W_K,
    throughAir_W_K: throughAir,
    toSurface_W_K: toSurface,
    toMass_W_K: (toSurface * massToSurface) / (toSurface + massToSurface),
    shareToMass,
    shareToSurface: 1 - shareToMass - body.window_W_K / (massConductance_W_m2K * body.facingArea_m2),
  };
}
