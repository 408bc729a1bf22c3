import type { GlazingMakeUp } from './pane.js';

/** Heat transfer at the two faces of a glazing; the room side is convection plus radiation for a face that emits fully. */
export interface SurfaceFilms {
  readonly outdoor_W_m2K: number;
  readonly indoorConvection_W_m2K: number;
  /** Times the emissivity of the room face. */
  readonly indoorRadiation_W_m2K: number;
}

/** Rating conditions of summer: 2.75 m/s outdoors, 32 and 24 °C. Source: ISO 15099 style constants of the handbook's solar tables. */
export const SUMMER_FILMS: SurfaceFilms = { outdoor_W_m2K: 20.3, indoorConvection_W_m2K: 3.2, indoorRadiation_W_m2K: 6.1 };
/** Winter night, 21 and −7 °C, wind: the conditions of published U-factors. */
export const WINTER_FILMS: SurfaceFilms = { outdoor_W_m2K: 29, indoorConvection_W_m2K: 3.1, indoorRadiation_W_m2K: 5.4 };
/** EN 410 / ISO 9050: 8.0 W/m²K indoors with plain glass. */
export const EN_410_FILMS: SurfaceFilms = { outdoor_W_m2K: 23, indoorConvection_W_m2K: 3.6, indoorRadiation_W_m2K: 4.4 / 0.837 };
/** Conductivity of soda-lime glass. Source: EN 673. */
const GLASS_W_mK = 1;

/** A chain of resistances from outdoors to the room. */
export interface HeatPath {
  readonly outdoor_W_m2K: number;
  readonly indoor_W_m2K: number;
  /** One for each pane. */
  readonly glass_m2K_W: readonly number[];
  /** One fewer than panes. */
  readonly gaps_m2K_W: readonly number[];
}

/**
 * The room-side surface coefficient for a face of given emissivity.
 *
 *   hi = hc + hr × ε
 *
 * @param films surface conditions
 * @param roomEmissivity of the face that looks at the room, 0…1
 * @returns W/m²K, above 0
 * @throws RangeError when the emissivity is not 0…1
 * @source ISO 15099 style summer 3.2 + 6.1 ε; EN 410 3.6 + 4.4 ε/0.837
 */
export function indoorFilm_W_m2K(films: SurfaceFilms, roomEmissivity: number): number {
  if (!(roomEmissivity >= 0 && roomEmissivity <= 1)) throw new RangeError(`roomEmissivity must be 0…1, got ${String(roomEmissivity)}`);
  return films.indoorConvection_W_m2K + films.indoorRadiation_W_m2K * roomEmissivity;
}

/**
 * The resistances of a make-up, from the film of air outdoors to the one indoors.
 *
 * @param makeUp panes as filmed; the back emissivity of the last one is the room face
 * @param films surface conditions
 * @returns resistances in m²K/W
 * @throws RangeError when the room face's emissivity is not 0…1
 */
export function heatPath(makeUp: GlazingMakeUp, films: SurfaceFilms): HeatPath {
  const roomFace = makeUp.panes[makeUp.panes.length - 1]!;
  return {
    outdoor_W_m2K: films.outdoor_W_m2K,
    indoor_W_m2K: indoorFilm_W_m2K(films, roomFace.emissivityBack),
    glass_m2K_W: makeUp.panes.map((pane) => pane.thickness_mm / 1000 / GLASS_W_mK),
    gaps_m2K_W: makeUp.gaps.map((gap) => gap.resistance_m2K_W),
  };
}

/**
 * Heat that passes a square metre for each kelvin between outdoors and room.
 *
 *   1/U = 1/ho + Σ glass + Σ gaps + 1/hi
 *
 * @param path resistances
 * @returns W/m²K
 * @throws RangeError when a surface coefficient is not above 0
 * @source EN 673 / ISO 10292, series of resistances
 */
export function uFactorOfPath_W_m2K(path: HeatPath): number {
  if (!(path.outdoor_W_m2K > 0)) throw new RangeError(`outdoor_W_m2K must be above 0, got ${String(path.outdoor_W_m2K)}`);
  if (!(path.indoor_W_m2K > 0)) throw new RangeError(`indoor_W_m2K must be above 0, got ${String(path.indoor_W_m2K)}`);
  const sum = (of: readonly number[]): number => of.reduce((total, r) => total + r, 0);
  return 1 / (1 / path.outdoor_W_m2K + sum(path.glass_m2K_W) + sum(path.gaps_m2K_W) + 1 / path.indoor_W_m2K);
}

/**
 * Share of the heat taken up by each pane that ends in the room.
 *
 *   one pane  hi/(hi+ho)     more  N_k = U × (resistance from outdoors to the middle of pane k)
 *
 * A single sheet is taken as one temperature, as the handbook does; its own resistance would move N by 0.004.
 *
 * @param path resistances
 * @returns one share for each pane, 0…1, outdoors first
 * @throws RangeError when a surface coefficient is not above 0
 * @source ISO 15099 style summer conditions; EN 410 with glass resistances 0
 */
export function inwardFractions(path: HeatPath): number[] {
  const u = uFactorOfPath_W_m2K(path);
  if (path.glass_m2K_W.length === 1) return [path.indoor_W_m2K / (path.indoor_W_m2K + path.outdoor_W_m2K)];
  let outwards = 1 / path.outdoor_W_m2K;
  return path.glass_m2K_W.map((glass, k) => {
    const share = u * (outwards + glass / 2);
    outwards += glass + (path.gaps_m2K_W[k] ?? 0);
    return share;
  });
}

/**
 * Heat taken up by the panes that flows into the room, as a share of the sun on the glass.
 *
 *   q = Σ N_k A_k
 *
 * @param path resistances; EN 410 takes the glass itself as 0
 * @param layerAbsorptance one for each pane
 * @returns share 0…1
 * @throws RangeError when absorptances and panes differ in number
 * @source EN 410:2011 secondary heat transfer factor
 */
export function secondaryHeat(path: HeatPath, layerAbsorptance: readonly number[]): number {
  const inward = inwardFractions(path);
  if (inward.length !== layerAbsorptance.length) {
    throw new RangeError(`layerAbsorptance must have ${String(inward.length)} values, got ${String(layerAbsorptance.length)}`);
  }
  return inward.reduce((total, n, k) => total + n * layerAbsorptance[k]!, 0);
}

/**
 * Temperature of the room face, where moisture settles first.
 *
 *   room − (U/hi)(room − outdoors)
 *
 * @param path resistances
 * @param outdoor_degC air outdoors
 * @param indoor_degC air of the room
 * @returns °C, without sun
 * @throws RangeError when a surface coefficient is not above 0
 * @source series of resistances, EN 673
 */
export function roomFace_degC(path: HeatPath, outdoor_degC: number, indoor_degC: number): number {
  return indoor_degC - (uFactorOfPath_W_m2K(path) / path.indoor_W_m2K) * (indoor_degC - outdoor_degC);
}

/**
 * Temperature at which the room's air begins to wet a surface.
 *
 * @param air_degC −45…60
 * @param relativeHumidity above 0…1
 * @returns °C, at most the air's temperature
 * @throws RangeError when the humidity is not above 0 and at most 1
 * @source Magnus formula, 17.62 and 243.12 °C
 */
export function dewPoint_degC(air_degC: number, relativeHumidity: number): number {
  if (!(relativeHumidity > 0 && relativeHumidity <= 1)) {
    throw new RangeError(`relativeHumidity must be above 0 and at most 1, got ${String(relativeHumidity)}`);
  }
  const g = Math.log(relativeHumidity) + (17.62 * air_degC) / (243.12 + air_degC);
  return (243.12 * g) / (17.62 - g);
}
