import { glazingOptics } from './glazing-optics.js';
import { stacked } from './layers.js';
import { paneByAngle } from './pane-at-angle.js';
import { CLEAR_3_MM, type FilmOnClear, type GlazingMakeUp } from './pane.js';

/** Halvings of a line: the last one moves a share by less than 1e-9. */
const HALVINGS = 32;
/** A film passes at least this share of what its sheet says. */
const DARKEST = 0.02;

/** The place 0…1 at which a rising function meets a value that lies between its ends. */
function placeOf(rising: (place: number) => number, wanted: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (rising(middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A film darker than its sheet (below ½) passes less and reflects the same; a lighter one lies on the line to clear glass (1). */
function filmAt(film: FilmOnClear, place: number): FilmOnClear {
  if (place <= 0.5) return { ...film, solarTransmittance: film.solarTransmittance * (DARKEST + (1 - DARKEST) * 2 * place) };
  const along = (own: number, clear: number): number => own + (2 * place - 1) * (clear - own);
  return {
    ...film,
    solarTransmittance: along(film.solarTransmittance, CLEAR_3_MM.solarTransmittance),
    frontReflectance: along(film.frontReflectance, CLEAR_3_MM.frontReflectance),
    backReflectance: along(film.backReflectance, CLEAR_3_MM.backReflectance),
  };
}

/**
 * A film sheet moved until the film gives the heat gain that was measured on a glass.
 *
 *   darker than the sheet: solar transmittance × share; lighter: on the straight line from the sheet to clear glass
 *
 * @param makeUp the glass as found
 * @param film the sheet, which keeps its emissivity and side
 * @param solarHeatGain measured with the film at normal incidence, 0…1
 * @returns the sheet that gives it within 1e-6, or why no film of this kind can
 * @throws RangeError when make-up or sheet cannot be true
 * @source own method
 */
export function filmAsMeasured(makeUp: GlazingMakeUp, film: FilmOnClear, solarHeatGain: number): FilmOnClear | { readonly why: string } {
  const gainAt = (place: number): number => glazingOptics(makeUp, filmAt(film, place)).solarHeatGain;
  const [least, most] = [gainAt(0), gainAt(1)];
  if (!(solarHeatGain > least && solarHeatGain < most)) {
    return { why: `a heat gain of ${solarHeatGain.toFixed(2)} lies outside ${least.toFixed(2)} to ${most.toFixed(2)}, what this film can give on this glass` };
  }
  return filmAt(film, placeOf(gainAt, solarHeatGain));
}

/**
 * A make-up with its outer pane moved until the whole passes what was measured.
 *
 *   outer pane's transmittance × share, its reflectances kept; no more than they leave
 *
 * @param makeUp the glass of the catalogue
 * @param solarTransmittance measured at normal incidence, 0…1
 * @returns the make-up that passes it within 1e-6, or why it cannot
 * @source own method
 */
export function glassAsMeasured(makeUp: GlazingMakeUp, solarTransmittance: number): GlazingMakeUp | { readonly why: string } {
  const outer = makeUp.panes[0];
  if (outer === undefined) throw new RangeError('panes must be 1 or more, got 0');
  const most = 1 - Math.max(outer.frontReflectance, outer.backReflectance);
  const at = (place: number): GlazingMakeUp => ({ ...makeUp, panes: [{ ...outer, solarTransmittance: place * most }, ...makeUp.panes.slice(1)] });
  const passes = (place: number): number => stacked(at(place).panes.map((pane) => paneByAngle(pane)(0))).solarTransmittance;
  const [low, high] = [passes(0.001), passes(0.999)];
  if (!(solarTransmittance > low && solarTransmittance < high)) {
    return { why: `a transmittance of ${solarTransmittance.toFixed(2)} is more than glass of this kind can pass (${high.toFixed(2)}), or none` };
  }
  return at(0.001 + 0.998 * placeOf((place) => passes(0.001 + 0.998 * place), solarTransmittance));
}
