import { filmedMakeUp } from './film-on-glass.js';
import { heatPath, inwardFractions, SUMMER_FILMS, uFactorOfPath_W_m2K, type SurfaceFilms } from './inward-heat.js';
import { stacked, type Stack } from './layers.js';
import { paneByAngle } from './pane-at-angle.js';
import { checkedMakeUp, type FilmOnClear, type GlazingMakeUp, type Optics } from './pane.js';

/** A glazing at one angle of incidence: shares of the sun on it. */
export interface GlazingAtAngle {
  readonly solarTransmittance: number;
  readonly frontReflectance: number;
  readonly backReflectance: number;
  readonly layerAbsorptance: readonly number[];
  readonly solarHeatGain: number;
}

/** What a glazing does with the sun, bare or filmed; the hour loop reads `gainByCosine` alone. */
export interface GlazingOptics {
  /** Make-up as filmed. */
  readonly makeUp: GlazingMakeUp;
  readonly normal: GlazingAtAngle;
  readonly hemispherical: GlazingAtAngle;
  readonly solarHeatGain: number;
  readonly solarTransmittance: number;
  readonly frontReflectance: number;
  readonly layerAbsorptance: readonly number[];
  /** One for each layer; a blind keeps all its heat in the room. */
  readonly inwardFractions: readonly number[];
  readonly hemisphericalSolarHeatGain: number;
  readonly uFactor_W_m2K: number;
  readonly at: (incidence_deg: number) => GlazingAtAngle;
  readonly solarHeatGainAt: (incidence_deg: number) => number;
  readonly transmittanceAt: (incidence_deg: number) => number;
  /** Solar heat gain over the cosine of incidence in `COSINE_STEPS` equal steps from 0 to 1, one spare value at the end. */
  readonly gainByCosine: Float64Array;
}

/** Steps of the look-up over the cosine of incidence. */
export const COSINE_STEPS = 256;

/** An inside device in front of the glass as seen from the room, alike at all angles. */
export type InnerLayer = Optics;

const degOfCosine = (cosine: number): number => (Math.acos(Math.min(1, Math.max(0, cosine))) * 180) / Math.PI;

/**
 * Averages a share over light from the whole half-space.
 *
 *   2 ∫ P(a) cos a sin a da = ∫ 2 c P(c) dc     Simpson over the cosine
 */
function overHalfSpace(samples: readonly GlazingAtAngle[], of: (at: GlazingAtAngle) => number): number {
  const steps = samples.length - 1;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * 2 * (i / steps) * of(samples[i]!);
  }
  return sum / (3 * steps);
}

const gainOf = (stack: Stack, inward: readonly number[]): number =>
  stack.layerAbsorptance.reduce((sum, a, k) => sum + a * inward[k]!, stack.solarTransmittance);

/** The same for a glazing with or without an inside device. */
function opticsOf(makeUp: GlazingMakeUp, surface: SurfaceFilms, innerLayer: InnerLayer | null): GlazingOptics {
  const path = heatPath(makeUp, surface);
  const inward = innerLayer === null ? inwardFractions(path) : [...inwardFractions(path), 1];
  const panes = makeUp.panes.map(paneByAngle);
  const at = (incidence_deg: number): GlazingAtAngle => {
    const layers: Optics[] = panes.map((pane) => pane(incidence_deg));
    const stack = stacked(innerLayer === null ? layers : [...layers, innerLayer]);
    return { ...stack, solarHeatGain: gainOf(stack, inward) };
  };
  const samples = Array.from({ length: COSINE_STEPS + 1 }, (_, i) => at(degOfCosine(i / COSINE_STEPS)));
  const normal = samples[COSINE_STEPS]!;
  const hemispherical: GlazingAtAngle = {
    solarTransmittance: overHalfSpace(samples, (s) => s.solarTransmittance),
    frontReflectance: overHalfSpace(samples, (s) => s.frontReflectance),
    backReflectance: overHalfSpace(samples, (s) => s.backReflectance),
    layerAbsorptance: inward.map((_, k) => overHalfSpace(samples, (s) => s.layerAbsorptance[k]!)),
    solarHeatGain: overHalfSpace(samples, (s) => s.solarHeatGain),
  };
  const gainByCosine = new Float64Array(COSINE_STEPS + 2);
  samples.forEach((sample, i) => (gainByCosine[i] = sample.solarHeatGain));
  gainByCosine[COSINE_STEPS + 1] = normal.solarHeatGain;
  return {
    makeUp,
    normal,
    hemispherical,
    solarHeatGain: normal.solarHeatGain,
    solarTransmittance: normal.solarTransmittance,
    frontReflectance: normal.frontReflectance,
    layerAbsorptance: normal.layerAbsorptance,
    inwardFractions: inward,
    hemisphericalSolarHeatGain: hemispherical.solarHeatGain,
    uFactor_W_m2K: uFactorOfPath_W_m2K(path),
    at,
    solarHeatGainAt: (incidence_deg) => at(incidence_deg).solarHeatGain,
    transmittanceAt: (incidence_deg) => at(incidence_deg).solarTransmittance,
    gainByCosine,
  };
}

/**
 * What a glazing does with the sun at every angle, bare or with a film, and what it lets through by warmth.
 *
 *   SHGC(a) = T(a) + Σ N_k A_k(a)
 *
 * @param makeUp the glass as found, outdoors first
 * @param film sheet figures on 3 mm clear, or none
 * @param surface surface coefficients; summer rating conditions by default
 * @returns shares of the sun on the glass, 0…1; U-factor of the glass without frame
 * @throws RangeError when the make-up or the film cannot be true
 * @source handbook solar heat gain method; layer recursion and inward fractions as in `stacked`, `inwardFractions`
 */
export function glazingOptics(makeUp: GlazingMakeUp, film: FilmOnClear | null = null, surface: SurfaceFilms = SUMMER_FILMS): GlazingOptics {
  return opticsOf(filmedMakeUp(checkedMakeUp(makeUp), film), surface, null);
}

/**
 * The same glazing with a blind or curtain drawn behind it: the innermost layer, whose own heat stays in the room.
 *
 * @param makeUp the glass as found
 * @param film sheet figures, or none
 * @param innerLayer the device's figures, alike at all angles
 * @returns shares of the sun on the glass with the device drawn
 * @throws RangeError when make-up, film or device cannot be true
 * @source the device as one more layer of the recursion, public engineering reference of a whole-building program
 */
export function shadedGlazingOptics(makeUp: GlazingMakeUp, film: FilmOnClear | null, innerLayer: InnerLayer): GlazingOptics {
  const { solarTransmittance, frontReflectance } = innerLayer;
  if (!(solarTransmittance >= 0 && frontReflectance >= 0 && solarTransmittance + frontReflectance <= 1)) {
    throw new RangeError(`solarTransmittance + frontReflectance of the device must be 0…1, got ${String(solarTransmittance + frontReflectance)}`);
  }
  return opticsOf(filmedMakeUp(checkedMakeUp(makeUp), film), SUMMER_FILMS, innerLayer);
}

/**
 * U-factor of a glazing under other surface conditions than those of its solar figures.
 *
 * @param makeUp the glass as found
 * @param film sheet figures, or none
 * @param surface surface coefficients, for example winter
 * @returns W/m²K of the glass without frame
 * @throws RangeError when the make-up or the film cannot be true
 * @source series of resistances, EN 673
 */
export function uFactorAt_W_m2K(makeUp: GlazingMakeUp, film: FilmOnClear | null, surface: SurfaceFilms): number {
  return uFactorOfPath_W_m2K(heatPath(filmedMakeUp(checkedMakeUp(makeUp), film), surface));
}
