import type { Optics } from './pane.js';

type Quartic = readonly [number, number, number, number, number];
interface AngleCurve {
  readonly through: Quartic;
  readonly back: Quartic;
}

// Constant term first. Source: public engineering reference of a whole-building program, window module, curves for coated glass.
const CLEAR: AngleCurve = { through: [-0.0015, 3.355, -3.84, 1.46, 0.0288], back: [0.999, -0.563, 2.043, -2.532, 1.054] };
const BRONZE: AngleCurve = { through: [-0.002, 2.813, -2.341, -0.05725, 0.599], back: [0.997, -1.868, 6.513, -7.862, 3.225] };
/** Above this normal transmittance a coated pane follows the curves of clear glass, below it those of bronze. */
const CLEAR_ABOVE = 0.645;

const at = ([a, b, c, d, e]: Quartic, x: number): number => a + x * (b + x * (c + x * (d + x * e)));

/**
 * The fitted curves of coated glass: transmittance relative to normal, and the part of reflectance that grows to 1 at grazing light.
 *
 * @param like whose curves
 * @param incidence_deg 0…90
 * @returns the raw fits; `through` passes 1 by 0.2 % (clear) or 1.2 % (bronze) at normal incidence
 * @throws RangeError when the angle is not 0…90
 * @source public engineering reference of a whole-building program, window module
 */
export function coatedCurve(like: 'clear' | 'bronze', incidence_deg: number): { readonly through: number; readonly grazing: number } {
  if (!(incidence_deg >= 0 && incidence_deg <= 90)) throw new RangeError(`incidence_deg must be 0…90, got ${String(incidence_deg)}`);
  const x = Math.cos((incidence_deg * Math.PI) / 180);
  const curve = like === 'clear' ? CLEAR : BRONZE;
  const through = at(curve.through, x);
  return { through, grazing: at(curve.back, x) - through };
}

/**
 * A coated or filmed pane at an angle.
 *
 *   T(a) = T₀ τ(a)     R(a) = R₀(1 − ρ(a)) + ρ(a)
 *
 * τ is held to 1 and ρ to 0 from below, so normal incidence gives the pane's own figures back (the fits miss it by up to 1.2 %).
 *
 * @param pane figures at normal incidence
 * @param incidence_deg 0…90
 * @returns shares 0…1 that never pass 1 together
 * @throws RangeError when the angle is not 0…90
 * @source public engineering reference of a whole-building program, window module
 */
export function coatedPaneAt(pane: Optics, incidence_deg: number): Optics {
  const { through, grazing } = coatedCurve(pane.solarTransmittance > CLEAR_ABOVE ? 'clear' : 'bronze', incidence_deg);
  const tau = Math.min(1, Math.max(0, through));
  const rho = Math.min(1, Math.max(0, grazing));
  const solarTransmittance = pane.solarTransmittance * tau;
  const back = (normal: number): number => Math.min(normal * (1 - rho) + rho, 1 - solarTransmittance);
  return { solarTransmittance, frontReflectance: back(pane.frontReflectance), backReflectance: back(pane.backReflectance) };
}
