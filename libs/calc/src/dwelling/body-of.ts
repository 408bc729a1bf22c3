import type { ThermalClass } from '../portfolio/index.js';
import { facingAreaPerFloor, fittedSurfaceConductance_W_m2K, type DwellingBody } from './body.js';
import { thermalClasses } from './thermal-class.js';
import { yearUFactor_W_m2K, type BodyWindow } from './window-path.js';

/** What is known of a dwelling in trade terms. Party walls, floors and ceilings border on neighbours at the same temperature: no loss, only mass. */
export interface BodyGiven {
  readonly floorArea_m2: number;
  readonly thermalClass: ThermalClass;
  readonly ceilingHeight_m: number;
  readonly exposedWall_m2: number;
  readonly wallU_W_m2K: number;
  readonly exposedRoof_m2: number;
  readonly roofU_W_m2K: number;
  readonly airChange_1_h: number;
  readonly windows: readonly BodyWindow[];
}

/** Heat capacity of air by volume, J/m³K. ISO 13790:2008, 9.3.1. */
export const airCapacity_J_m3K = 1200;

/**
 * Conductance of an air change with outdoors.
 *
 *   1200 × volume × air change / 3600
 *
 * @param volume_m3 of the dwelling, > 0
 * @param airChange_1_h changes per hour, ≥ 0
 * @returns W/K
 * @throws RangeError when a figure is out of range
 * @source ISO 13790:2008, 9.3.1, equation 21
 */
export function ventilationOf_W_K(volume_m3: number, airChange_1_h: number): number {
  if (!(volume_m3 > 0)) throw new RangeError(`volume_m3 must be above 0, got ${String(volume_m3)}`);
  if (!(airChange_1_h >= 0)) throw new RangeError(`airChange_1_h must be 0 or more, got ${String(airChange_1_h)}`);
  return (airCapacity_J_m3K * volume_m3 * airChange_1_h) / 3600;
}

/**
 * The body of a dwelling from what a survey knows.
 *
 *   C_m, A_m from the class × floor; A_t = 4.5 × floor; H_op = Σ U A of exposed wall and roof; H_w = Σ U A of windows at their year-round films
 *
 * @param given floor area, class, exposed parts, windows, air change
 * @returns the body
 * @throws RangeError when a figure is out of range
 * @source ISO 13790:2008, Table 12, 7.2.2.2, 9.3.1; window films and h_is as the note on single glass says
 */
export function bodyOf(given: BodyGiven): DwellingBody {
  const { floorArea_m2, windows, exposedWall_m2, wallU_W_m2K, exposedRoof_m2, roofU_W_m2K } = given;
  if (!(floorArea_m2 > 0)) throw new RangeError(`floorArea_m2 must be above 0, got ${String(floorArea_m2)}`);
  const figures = thermalClasses[given.thermalClass];
  return {
    floor_m2: floorArea_m2,
    capacity_J_K: figures.capacity_J_m2K * floorArea_m2,
    massArea_m2: figures.massAreaPerFloor * floorArea_m2,
    facingArea_m2: facingAreaPerFloor * floorArea_m2,
    opaque_W_K: exposedWall_m2 * wallU_W_m2K + exposedRoof_m2 * roofU_W_m2K,
    window_W_K: windows.reduce((sum, window) => sum + window.area_m2 * yearUFactor_W_m2K(window), 0),
    ventilation_W_K: ventilationOf_W_K(floorArea_m2 * given.ceilingHeight_m, given.airChange_1_h),
    surfaceConductance_W_m2K: fittedSurfaceConductance_W_m2K,
  };
}
