import type { ThermalClass } from '../portfolio/index.js';

/** Heat capacity and effective mass area of a dwelling, per square metre of floor. */
export interface ThermalClassFigures {
  readonly capacity_J_m2K: number;
  readonly massAreaPerFloor: number;
}

/**
 * The five classes of the standard: constants of the method, not data a user replaces.
 * Light, medium and heavy seen in two code bases that quote ISO 13790:2008, Table 12; very light and very heavy from memory.
 */
export const thermalClasses: Readonly<Record<ThermalClass, ThermalClassFigures>> = {
  'very-light': { capacity_J_m2K: 80_000, massAreaPerFloor: 2.5 },
  light: { capacity_J_m2K: 110_000, massAreaPerFloor: 2.5 },
  medium: { capacity_J_m2K: 165_000, massAreaPerFloor: 2.5 },
  heavy: { capacity_J_m2K: 260_000, massAreaPerFloor: 3.0 },
  'very-heavy': { capacity_J_m2K: 370_000, massAreaPerFloor: 3.5 },
};
