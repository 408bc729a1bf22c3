import type { DwellingBody } from './body.js';
import { conductancesOf } from './conductances.js';

/**
 * The hour of the method collapsed to two lines, for the loop over a year:
 *
 *   mass' = massKept × mass + u + massPerPlant_K_W × plant          u = massOutdoor × outdoors + massSolar × solar + massInternal × internal
 *   air   = airMass × mass + w + airPerPlant_K_W × plant            w likewise with air…
 */
export interface HourResponse {
  readonly massKept: number;
  readonly massOutdoor: number;
  readonly massSolar_K_W: number;
  readonly massInternal_K_W: number;
  readonly massPerPlant_K_W: number;
  readonly airMass: number;
  readonly airOutdoor: number;
  readonly airSolar_K_W: number;
  readonly airInternal_K_W: number;
  readonly airPerPlant_K_W: number;
}

/**
 * The constants of the collapsed hour at one rate of air change.
 *
 *   the equations of the method are linear in mass, outdoor temperature and gains; these are their slopes
 *
 * @param body the dwelling
 * @param ventilation_W_K air change with outdoors, ≥ 0
 * @param convectiveShare share of the internal gain that warms the air at once, 0…1
 * @returns constants of the two lines
 * @throws RangeError for a body, an air change or a share out of range
 * @source ISO 13790:2008, annex C, equations C.1–C.11 solved for the new mass and the air temperature
 */
export function hourResponse(body: DwellingBody, ventilation_W_K: number, convectiveShare: number): HourResponse {
  if (!(convectiveShare >= 0 && convectiveShare <= 1)) throw new RangeError(`internalConvectiveShare must be 0…1, got ${String(convectiveShare)}`);
  const network = conductancesOf(body, ventilation_W_K);
  const { airToSurface_W_K: His, massToSurface_W_K: Hms, outdoorToMass_W_K: Hem, ventilation_W_K: Hve, toSurface_W_K: H2, toMass_W_K: H3 } = network;
  const store = body.capacity_J_K / 3600;
  const half = (H3 + Hem) / 2;
  const perMass = 1 / (store + half);
  const surfaceToMass = (Hms / (Hms + H2)) * perMass;
  const viaAir = His / (His + Hve);
  const radiantToMass = network.shareToMass * perMass + network.shareToSurface * surfaceToMass;
  const massKept = (store - half) * perMass;
  const massOutdoor = Hem * perMass + H2 * surfaceToMass;
  const massInternal_K_W = (1 - convectiveShare) * radiantToMass + convectiveShare * viaAir * surfaceToMass;
  const massPerPlant_K_W = viaAir * surfaceToMass;
  // Air temperature per W arriving at the surface node, and per K of the mean mass temperature.
  const airOfSurface = viaAir / (Hms + H2);
  const airOfMean = airOfSurface * Hms;
  const airOfAir = 1 / (His + Hve) + airOfSurface * viaAir;
  return {
    massKept,
    massOutdoor,
    massSolar_K_W: radiantToMass,
    massInternal_K_W,
    massPerPlant_K_W,
    airMass: (airOfMean * (1 + massKept)) / 2,
    airOutdoor: (airOfMean * massOutdoor) / 2 + airOfSurface * H2 + Hve / (His + Hve),
    airSolar_K_W: (airOfMean * radiantToMass) / 2 + airOfSurface * network.shareToSurface,
    airInternal_K_W: (airOfMean * massInternal_K_W) / 2 + airOfSurface * network.shareToSurface * (1 - convectiveShare) + airOfAir * convectiveShare,
    airPerPlant_K_W: (airOfMean * massPerPlant_K_W) / 2 + airOfAir,
  };
}
