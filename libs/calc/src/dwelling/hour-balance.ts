import type { DwellingBody } from './body.js';
import { conductancesOf, type Conductances } from './conductances.js';

/** What acts on a dwelling in one hour. `plant_W` is heat put in: heating positive, cooling negative. */
export interface HourGiven {
  /** Mass temperature at the start of the hour. */
  readonly massStart_degC: number;
  readonly outdoor_degC: number;
  /** Sun through the windows, and on opaque parts less the loss to the sky. */
  readonly solar_W: number;
  readonly internal_W: number;
  /** Share of the internal gain that warms the air at once, 0…1. */
  readonly convectiveShare: number;
  readonly plant_W: number;
}

/** Temperatures of the network in one hour; all but the two mass ends are means of the hour. */
export interface HourBalance {
  readonly air_degC: number;
  readonly surface_degC: number;
  readonly mass_degC: number;
  readonly massEnd_degC: number;
  readonly operative_degC: number;
}

/**
 * One hour of the simple hourly method, written out as the standard does.
 *
 *   C.1–C.3 gains to air, surfaces and mass; C.4, C.5 the mass; C.9–C.11 means of the hour; C.12 operative = 0.3 air + 0.7 surface
 *
 * H_1/H_ve is written H_is/(H_is + H_ve), so a dwelling without air change has an answer too.
 *
 * @param body the dwelling
 * @param given what acts on it in the hour
 * @param network its conductances in this hour
 * @returns temperatures in °C
 * @source ISO 13790:2008, annex C.2 and C.3
 */
export function hourBalance(body: DwellingBody, given: HourGiven, network: Conductances = conductancesOf(body)): HourBalance {
  const { airToSurface_W_K: His, massToSurface_W_K: Hms, outdoorToMass_W_K: Hem, window_W_K: Hw, ventilation_W_K: Hve } = network;
  const { throughAir_W_K: H1, toSurface_W_K: H2, toMass_W_K: H3 } = network;
  const { massStart_degC, outdoor_degC, solar_W, internal_W, convectiveShare, plant_W } = given;
  const radiant = (1 - convectiveShare) * internal_W + solar_W;
  const toAir = convectiveShare * internal_W + plant_W;
  const viaAir = (His / (His + Hve)) * toAir + H1 * outdoor_degC;
  const atSurface = network.shareToSurface * radiant + Hw * outdoor_degC + viaAir;
  const intoMass = network.shareToMass * radiant + Hem * outdoor_degC + (Hms / (Hms + H2)) * atSurface;
  const store = body.capacity_J_K / 3600;
  const half = (H3 + Hem) / 2;
  const massEnd_degC = (massStart_degC * (store - half) + intoMass) / (store + half);
  const mass_degC = (massStart_degC + massEnd_degC) / 2;
  const surface_degC = (Hms * mass_degC + atSurface) / (Hms + H2);
  const air_degC = (His * surface_degC + Hve * outdoor_degC + toAir) / (His + Hve);
  return { air_degC, surface_degC, mass_degC, massEnd_degC, operative_degC: 0.3 * air_degC + 0.7 * surface_degC };
}
