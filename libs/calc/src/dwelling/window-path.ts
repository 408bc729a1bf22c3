import { indoorFilm_W_m2K, SUMMER_FILMS, type SurfaceFilms } from '../glass/index.js';

/**
 * Surface films a window has through the year, not those of its rating.
 *
 * Outdoors 12 W/m²K: smooth glass at 3 m/s of local wind, √((0.84 ΔT^⅓)² + (a V^b)²) with a, b = 3.26, 0.89 windward and 3.55, 0.617
 * leeward, gives 8; radiation gives 4. Indoors convection 2.5 and radiation 5.4 × emissivity. Rating films (20.3 outdoors, 5.5 m/s and
 * more in winter) belong to labels; with them a single pane loses a quarter more than whole-building programs find.
 *
 * Source: Yazdanian and Klems, ASHRAE Transactions 100(1), 1994 (coefficients from memory); ISO 6946:2007, annex A.
 */
export const yearFilms: SurfaceFilms = { outdoor_W_m2K: 12, indoorConvection_W_m2K: 2.5, indoorRadiation_W_m2K: 5.4 };

/** A window as a path for heat. */
export interface BodyWindow {
  readonly area_m2: number;
  /** At summer rating films, as glazing optics give it. */
  readonly uFactor_W_m2K: number;
  /** Of the face that looks at the room; plain glass, 0.84, when absent. */
  readonly roomEmissivity?: number;
}

/**
 * U-factor of a window at the surface films it has through the year.
 *
 *   1 / (1/U − 1/ho − 1/hi at rating + 1/ho + 1/hi through the year)
 *
 * @param window U-factor at rating films, room emissivity
 * @returns W/m²K, under the rated value
 * @throws RangeError when a figure is out of range
 * @source series of resistances, EN 673; films as `yearFilms`
 */
export function yearUFactor_W_m2K(window: Omit<BodyWindow, 'area_m2'>): number {
  const { uFactor_W_m2K, roomEmissivity = 0.84 } = window;
  if (!(uFactor_W_m2K >= 0 && uFactor_W_m2K < 12)) throw new RangeError(`uFactor_W_m2K must be 0…12, got ${String(uFactor_W_m2K)}`);
  if (uFactor_W_m2K === 0) return 0;
  const faces = (films: SurfaceFilms) => 1 / films.outdoor_W_m2K + 1 / indoorFilm_W_m2K(films, roomEmissivity);
  return 1 / (1 / uFactor_W_m2K - faces(SUMMER_FILMS) + faces(yearFilms));
}
