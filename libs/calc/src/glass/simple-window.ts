const SINGLE_FROM_U = 4.5;
const SEALED_TO_U = 3.4;

/** Between sealed units and single glass the published forms are joined by a straight line in U. */
function byKind(uFactor_W_m2K: number, sealed: number, single: number): number {
  const share = Math.min(1, Math.max(0, (uFactor_W_m2K - SEALED_TO_U) / (SINGLE_FROM_U - SEALED_TO_U)));
  return sealed + share * (single - sealed);
}

function checkedLabel(solarHeatGain: number, uFactor_W_m2K: number): void {
  if (!(solarHeatGain > 0 && solarHeatGain < 1)) throw new RangeError(`solarHeatGain must be above 0 and below 1, got ${String(solarHeatGain)}`);
  if (!(uFactor_W_m2K > 0 && uFactor_W_m2K < 8)) throw new RangeError(`uFactor_W_m2K must be above 0 and below 8, got ${String(uFactor_W_m2K)}`);
}

/**
 * Solar transmittance at normal incidence of a window known by its label alone.
 *
 * @param solarHeatGain of the label, 0…1
 * @param uFactor_W_m2K of the label
 * @returns 0…1, for unfilmed products of ordinary kind
 * @throws RangeError when a figure is outside its range
 * @source Arasteh, Kohler, Griffith, LBNL-2804E (2009)
 */
export function simpleTransmittance(solarHeatGain: number, uFactor_W_m2K: number): number {
  checkedLabel(solarHeatGain, uFactor_W_m2K);
  const s = solarHeatGain;
  const single = s < 0.7206 ? 0.939998 * s ** 2 + 0.20332 * s : 1.30415 * s - 0.30515;
  const sealed = s <= 0.15 ? 0.4104 * s : 0.085775 * s ** 2 + 0.963954 * s - 0.084958;
  return byKind(uFactor_W_m2K, sealed, single);
}

/**
 * Share of the heat taken up by a window of the label that flows inward, with the pane as one resistance.
 *
 *   (Ro + Rl/2)/(Ro + Rl + Ri)     Ri, Ro of the summer faces as polynomials in SHGC − T
 *
 * @param solarHeatGain of the label, 0…1
 * @param uFactor_W_m2K of the label, of winter
 * @returns 0…1
 * @throws RangeError when a figure is outside its range
 * @source Arasteh, Kohler, Griffith, LBNL-2804E (2009); winter films of the same paper from memory
 */
export function simpleInwardFraction(solarHeatGain: number, uFactor_W_m2K: number): number {
  const x = solarHeatGain - simpleTransmittance(solarHeatGain, uFactor_W_m2K);
  const u = uFactor_W_m2K;
  const room = 1 / byKind(u, 199.8208128 * x ** 3 - 90.639733 * x ** 2 + 19.737055 * x + 6.766575, 29.436546 * x ** 3 - 21.943415 * x ** 2 + 9.945872 * x + 7.426151);
  const outside = 1 / byKind(u, 5.763355 * x + 20.541528, 2.225824 * x + 20.57708);
  const winterRoom = u < 5.85 ? 1 / (0.359073 * Math.log(u) + 6.949915) : 1 / (1.788041 * u - 2.886625);
  const winterOutside = 1 / (0.025342 * u + 29.163853);
  const pane = Math.max(0, 1 / u - winterRoom - winterOutside);
  return (outside + pane / 2) / (outside + pane + room);
}

/**
 * Solar transmittance by angle of a window known by its label alone.
 *
 *   T(a) = T₀ cos a [1 + (0.768 + 0.817 S⁴) sin³ a]
 *
 * @param solarHeatGain of the label, 0…1
 * @param uFactor_W_m2K of the label
 * @param incidence_deg 0…90
 * @returns 0…1
 * @throws RangeError when a figure is outside its range
 * @source the angular form published with the simple window index
 */
export function simpleTransmittanceAt(solarHeatGain: number, uFactor_W_m2K: number, incidence_deg: number): number {
  if (!(incidence_deg >= 0 && incidence_deg <= 90)) throw new RangeError(`incidence_deg must be 0…90, got ${String(incidence_deg)}`);
  const a = (incidence_deg * Math.PI) / 180;
  const shape = Math.cos(a) * (1 + (0.768 + 0.817 * solarHeatGain ** 4) * Math.sin(a) ** 3);
  return simpleTransmittance(solarHeatGain, uFactor_W_m2K) * Math.max(0, shape);
}

/**
 * Solar heat gain by angle of a window known by its label alone: it follows the transmittance.
 *
 *   S × T(a)/T₀
 *
 * @param solarHeatGain of the label, 0…1
 * @param uFactor_W_m2K of the label
 * @param incidence_deg 0…90; holds to about 0.02 up to 70
 * @returns 0…1
 * @throws RangeError when a figure is outside its range
 * @source LBNL-2804E route
 */
export function simpleSolarHeatGainAt(solarHeatGain: number, uFactor_W_m2K: number, incidence_deg: number): number {
  return (solarHeatGain * simpleTransmittanceAt(solarHeatGain, uFactor_W_m2K, incidence_deg)) / simpleTransmittance(solarHeatGain, uFactor_W_m2K);
}
