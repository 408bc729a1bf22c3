import type { Film } from '../portfolio/index.js';
import { sheetMaterial, USUAL_INDEX } from './clear-sheet.js';
import { plainGlassOf } from './pane-at-angle.js';
import { CLEAR_3_MM, PLAIN_EMISSIVITY, type FilmOnClear, type GlazingMakeUp, type Pane } from './pane.js';

/** A film on its own: what passes it, what it throws back into the glass, and what it throws back on its free side. */
export interface BareFilm {
  readonly transmittance: number;
  readonly intoGlass: number;
  readonly freeSide: number;
}

/** A pane up to the face the film goes on, that face's own reflection taken away. */
interface OpenPane {
  readonly through: number;
  readonly front: number;
  readonly fromInside: number;
}

const surfaceOf = (index: number): number => ((index - 1) / (index + 1)) ** 2;

/** Rounded sheet figures may break a limit by this much and are still taken. */
const ROUNDING = 0.01;

/**
 * A film without the glass of its sheet.
 *
 *   x = (Rf−r)/[(1−r)² + r(Rf−r)]     D = 1 − r x     inside x/t²     through T D/[(1−r)t]     free side Rb − through² t² r/D
 *
 * @param film sheet figures on 3 mm clear
 * @returns the film alone; figures that miss a physical limit by no more than the rounding of a sheet are set on it
 * @throws RangeError when the sheet breaks a physical limit: naming which
 * @source own derivation: light to and fro between the outer face of the glass and the film, closed and reversible
 */
export function bareFilm(film: FilmOnClear): BareFilm {
  const { refractiveIndex, absorption } = sheetMaterial(CLEAR_3_MM.solarTransmittance, CLEAR_3_MM.frontReflectance);
  const r = surfaceOf(refractiveIndex);
  const t = Math.exp(-absorption);
  const above = film.frontReflectance - r;
  const x = above / ((1 - r) ** 2 + r * above);
  const d = 1 - r * x;
  const bare = { transmittance: (film.solarTransmittance * d) / ((1 - r) * t), intoGlass: x / t ** 2, freeSide: 0 };
  const freeSide = film.backReflectance - (bare.transmittance ** 2 * t ** 2 * r) / d;
  return withinLimits({ ...bare, freeSide });
}

function withinLimits(film: BareFilm): BareFilm {
  const { transmittance, intoGlass, freeSide } = film;
  if (!(transmittance > 0 && transmittance <= 1 + ROUNDING)) throw new RangeError(`solarTransmittance must be above 0 and no more than clear glass alone passes, got ${String(transmittance)} for the film by itself`);
  if (intoGlass < -ROUNDING) throw new RangeError(`frontReflectance must be at least that of the glass's own face (0.043), the film by itself comes to ${String(intoGlass)}`);
  if (freeSide < -ROUNDING) throw new RangeError(`backReflectance must be at least what the glass behind the film throws back, the film by itself comes to ${String(freeSide)}`);
  if (transmittance + intoGlass > 1 + ROUNDING) throw new RangeError(`solarTransmittance + frontReflectance must leave no more than all light, the film by itself comes to ${String(transmittance + intoGlass)}`);
  if (transmittance + freeSide > 1 + ROUNDING) throw new RangeError(`solarTransmittance + backReflectance must leave no more than all light, the film by itself comes to ${String(transmittance + freeSide)}`);
  const through = Math.min(1, transmittance);
  const held = (back: number): number => Math.min(Math.max(0, back), 1 - through);
  return { transmittance: through, intoGlass: held(intoGlass), freeSide: held(freeSide) };
}

/** The pane's far face opened: for plain glass from its index; a coated pane's free face is taken as usual glass. */
function opened(pane: Pane): OpenPane {
  const plain = plainGlassOf(pane);
  if (plain !== null) {
    const r = surfaceOf(plain.refractiveIndex);
    const t = Math.exp(-plain.absorption);
    return { through: (1 - r) * t, front: r, fromInside: t * t * r };
  }
  const r = Math.min(surfaceOf(USUAL_INDEX), pane.backReflectance);
  const above = pane.backReflectance - r;
  const fromInside = above / ((1 - r) ** 2 + r * above);
  const d = 1 - fromInside * r;
  const through = (pane.solarTransmittance * d) / (1 - r);
  return { through, front: Math.max(0, pane.frontReflectance - (through ** 2 * r) / d), fromInside };
}

const turned = (pane: Pane): Pane => ({
  ...pane,
  frontReflectance: pane.backReflectance,
  backReflectance: pane.frontReflectance,
  emissivityFront: pane.emissivityBack,
  emissivityBack: pane.emissivityFront,
});

/**
 * A pane with a film on it, at normal incidence.
 *
 *   through, front and inside of the open pane with the film behind:
 *   T = S tf/D     Rf = front + S² rf/D     Rb = rb + tf² inside/D     D = 1 − inside × rf
 *
 * A room-side film gives the room face its emissivity; an outdoor film turns the same stack and leaves emissivities alone.
 *
 * @param film sheet figures on 3 mm clear
 * @param pane the glass it goes on, bare
 * @returns the filmed pane, to be taken as coated
 * @throws RangeError when the sheet breaks a physical limit
 * @source own derivation, closed and reversible: on 3 mm clear it returns the sheet
 */
export function filmedPane(film: FilmOnClear, pane: Pane): Pane {
  if (!(film.roomEmissivity >= 0 && film.roomEmissivity <= 1)) throw new RangeError(`roomEmissivity must be 0…1, got ${String(film.roomEmissivity)}`);
  const { transmittance, intoGlass, freeSide } = bareFilm(film);
  const glass = film.side === 'room' ? pane : turned(pane);
  const open = opened(glass);
  const d = 1 - open.fromInside * intoGlass;
  const filmed: Pane = {
    ...glass,
    solarTransmittance: (open.through * transmittance) / d,
    frontReflectance: open.front + (open.through ** 2 * intoGlass) / d,
    backReflectance: freeSide + (transmittance ** 2 * open.fromInside) / d,
    coated: true,
  };
  return film.side === 'room' ? { ...filmed, emissivityBack: film.roomEmissivity } : turned(filmed);
}

/**
 * A make-up with a film on its room face or, for an outdoor film, on its outer face.
 *
 * @param makeUp as found
 * @param film sheet figures, or null for none
 * @returns the make-up as filmed
 * @throws RangeError when the sheet breaks a physical limit
 */
export function filmedMakeUp(makeUp: GlazingMakeUp, film: FilmOnClear | null): GlazingMakeUp {
  if (film === null) return makeUp;
  const at = film.side === 'room' ? makeUp.panes.length - 1 : 0;
  return { ...makeUp, panes: makeUp.panes.map((pane, k) => (k === at ? filmedPane(film, pane) : pane)) };
}

/**
 * The figures of a film record that the glass needs; an unknown room emissivity is taken as plain glass.
 *
 * @param film a film record
 * @returns its sheet
 */
export function sheetOf(film: Film): FilmOnClear {
  return {
    solarTransmittance: film.solarTransmittance,
    frontReflectance: film.frontReflectance,
    backReflectance: film.backReflectance,
    roomEmissivity: film.roomEmissivity ?? PLAIN_EMISSIVITY,
    side: film.side,
  };
}

/**
 * Whether a film sheet can be true.
 *
 * @param film sheet figures on 3 mm clear
 * @returns null, or why not
 */
export function filmFault(film: FilmOnClear): { readonly why: string } | null {
  try {
    filmedPane(film, CLEAR_3_MM);
    return null;
  } catch (fault) {
    if (fault instanceof RangeError) return { why: fault.message };
    throw fault;
  }
}
