import { clearSheetAt, sheetMaterial, type SheetMaterial } from './clear-sheet.js';
import { coatedPaneAt } from './coated-angle.js';
import type { Optics, Pane } from './pane.js';

/** Index a plain sheet's rounded figures may give; outside it the sheet carries a coating. */
const PLAIN_INDEX = { least: 1.3, most: 1.8 };
/** Two sides of a plain sheet reflect alike; published figures are rounded to 0.01. */
const SIDES_ALIKE = 0.0051;
const PLAIN_EMISSIVITY_FROM = 0.75;

/**
 * The glass of an uncoated pane, or nothing when the pane is coated.
 *
 * Uncoated: not marked coated, both faces emit like glass, both sides reflect alike, and the index told by the figures is one of glass.
 *
 * @param pane figures at normal incidence
 * @returns index and absorption, or null for a coated pane
 * @source own rule; inversion as `sheetMaterial`
 */
export function plainGlassOf(pane: Pane): SheetMaterial | null {
  if (pane.coated === true) return null;
  if (pane.solarTransmittance <= 0 || pane.frontReflectance <= 0) return null;
  if (pane.solarTransmittance + pane.frontReflectance > 1) return null;
  if (Math.abs(pane.frontReflectance - pane.backReflectance) > SIDES_ALIKE) return null;
  if (Math.min(pane.emissivityFront, pane.emissivityBack) < PLAIN_EMISSIVITY_FROM) return null;
  const glass = sheetMaterial(pane.solarTransmittance, pane.frontReflectance);
  return glass.refractiveIndex >= PLAIN_INDEX.least && glass.refractiveIndex <= PLAIN_INDEX.most ? glass : null;
}

/**
 * How a pane answers light by angle: Fresnel and Bouguer for plain glass, fitted curves for coated or filmed glass.
 *
 * @param pane figures at normal incidence
 * @returns a function of the angle of incidence (0…90 degrees) giving the shares
 * @source `clearSheetAt`, `coatedPaneAt`
 */
export function paneByAngle(pane: Pane): (incidence_deg: number) => Optics {
  const glass = plainGlassOf(pane);
  return glass === null ? (incidence_deg) => coatedPaneAt(pane, incidence_deg) : (incidence_deg) => clearSheetAt(glass, incidence_deg);
}
