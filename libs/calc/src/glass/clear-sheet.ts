import type { Optics } from './pane.js';

/** What an uncoated sheet is made of: index of refraction and absorption along its thickness at normal incidence. */
export interface SheetMaterial {
  readonly refractiveIndex: number;
  /** Extinction coefficient × thickness, no unit. */
  readonly absorption: number;
}

/** Soda-lime glass, used where a sheet's own index cannot be told from its figures. */
export const USUAL_INDEX = 1.526;

/**
 * Share of light thrown back by one glass surface, the two polarisations apart.
 *
 *   perpendicular [sin(b−a)/sin(b+a)]²     parallel [tan(b−a)/tan(b+a)]²     sin b = sin a / n
 *
 * @param refractiveIndex above 1
 * @param incidence_deg 0…90
 * @returns both reflectances, 0…1, and the angle inside the glass
 * @throws RangeError when an argument is outside its range
 * @source Duffie & Beckman, Solar Engineering of Thermal Processes, ch. 5 (Fresnel)
 */
export function surfaceReflectance(
  refractiveIndex: number,
  incidence_deg: number,
): { readonly perpendicular: number; readonly parallel: number; readonly refraction_deg: number } {
  if (!(refractiveIndex > 1)) throw new RangeError(`refractiveIndex must be above 1, got ${String(refractiveIndex)}`);
  if (!(incidence_deg >= 0 && incidence_deg <= 90)) throw new RangeError(`incidence_deg must be 0…90, got ${String(incidence_deg)}`);
  const a = (incidence_deg * Math.PI) / 180;
  const b = Math.asin(Math.sin(a) / refractiveIndex);
  const refraction_deg = (b * 180) / Math.PI;
  if (incidence_deg < 1e-4) {
    const normal = ((refractiveIndex - 1) / (refractiveIndex + 1)) ** 2;
    return { perpendicular: normal, parallel: normal, refraction_deg };
  }
  return {
    perpendicular: (Math.sin(b - a) / Math.sin(b + a)) ** 2,
    parallel: (Math.tan(b - a) / Math.tan(b + a)) ** 2,
    refraction_deg,
  };
}

const slab = (r: number, t: number): { readonly through: number; readonly back: number } => {
  const through = (t * (1 - r) ** 2) / (1 - (r * t) ** 2);
  return { through, back: r * (1 + t * through) };
};

/**
 * An uncoated sheet at an angle: what passes, what is thrown back. Polarisations are kept apart and averaged last.
 *
 *   T = t(1−r)²/(1−(rt)²)     R = r(1 + tT)     t = exp(−KL / cos b)
 *
 * @param sheet index and absorption
 * @param incidence_deg 0…90; at 90 nothing passes
 * @returns shares 0…1, equal from both sides
 * @throws RangeError when the index or the angle is outside its range
 * @source Duffie & Beckman, Solar Engineering of Thermal Processes, ch. 5
 */
export function clearSheetAt(sheet: SheetMaterial, incidence_deg: number): Optics {
  if (incidence_deg >= 90 - 1e-9 && incidence_deg <= 90) return { solarTransmittance: 0, frontReflectance: 1, backReflectance: 1 };
  const { perpendicular, parallel, refraction_deg } = surfaceReflectance(sheet.refractiveIndex, incidence_deg);
  const t = Math.exp(-sheet.absorption / Math.cos((refraction_deg * Math.PI) / 180));
  const one = slab(perpendicular, t);
  const other = slab(parallel, t);
  const back = (one.back + other.back) / 2;
  return { solarTransmittance: (one.through + other.through) / 2, frontReflectance: back, backReflectance: back };
}

/**
 * Index and absorption of an uncoated sheet from its figures at normal incidence.
 *
 *   β = T² − R² + 2R + 1     ρ = [β − √(β² − 4(2−R)R)] / [2(2−R)]     n = (1+√ρ)/(1−√ρ)     e^(−KL) = (R−ρ)/(ρT)
 *
 * Where the figures leave no room for absorption, the usual index is taken and the absorption solved from T alone.
 *
 * @param transmittance at normal incidence, above 0
 * @param reflectance at normal incidence, above 0
 * @returns index above 1, absorption 0 or more
 * @throws RangeError when the two are not above 0 or pass 1 together
 * @source ASHRAE-type window calculation, public engineering reference of a whole-building program, window module
 */
export function sheetMaterial(transmittance: number, reflectance: number): SheetMaterial {
  if (!(transmittance > 0 && reflectance > 0 && transmittance + reflectance <= 1)) {
    throw new RangeError(`transmittance and reflectance must be above 0 and at most 1 together, got ${String(transmittance)}, ${String(reflectance)}`);
  }
  const beta = transmittance ** 2 - reflectance ** 2 + 2 * reflectance + 1;
  const root = Math.sqrt(Math.max(0, beta ** 2 - 4 * (2 - reflectance) * reflectance));
  const surface = (beta - root) / (2 * (2 - reflectance));
  const inside = (reflectance - surface) / (surface * transmittance);
  if (inside > 0 && inside <= 1) {
    return { refractiveIndex: (1 + Math.sqrt(surface)) / (1 - Math.sqrt(surface)), absorption: -Math.log(inside) };
  }
  return { refractiveIndex: USUAL_INDEX, absorption: absorptionFor(transmittance) };
}

/** Solves T = t(1−r)²/(1−r²t²) for the usual index; a sheet clearer than that glass can be absorbs nothing. */
function absorptionFor(transmittance: number): number {
  const r = ((USUAL_INDEX - 1) / (USUAL_INDEX + 1)) ** 2;
  const clear = (1 - r) ** 2;
  const inside = (-clear + Math.sqrt(clear ** 2 + 4 * transmittance ** 2 * r ** 2)) / (2 * transmittance * r ** 2);
  return inside >= 1 ? 0 : -Math.log(inside);
}
