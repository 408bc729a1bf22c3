import { glazingOptics } from './glazing-optics.js';
import { SINGLE_CLEAR_3_MM, type FilmOnClear, type GlazingMakeUp } from './pane.js';

/** How much of a film's sheet promise holds on a given glass; shares of the sun's heat at normal incidence. */
export interface SurvivingCut {
  /** Share of the glazing's own heat gain that the film takes away. */
  readonly cut: number;
  /** The same on single 3 mm clear, what the sheet speaks of. */
  readonly cutOnSingleClear: number;
  /** Of the single-clear cut, the share left on this glass; 1 on single clear itself. */
  readonly survives: number;
}

/**
 * The share of a film's single-clear benefit that survives on another glass.
 *
 *   (1 − filmed/bare on this glass) / (1 − filmed/bare on single 3 mm clear)
 *
 * @param makeUp the glass as found
 * @param film sheet figures; must cut the gain of single clear
 * @returns cuts and their ratio
 * @throws RangeError when the film takes nothing off single clear, or a figure cannot be true
 * @source own measure
 */
export function survivingCut(makeUp: GlazingMakeUp, film: FilmOnClear): SurvivingCut {
  const cutOn = (glass: GlazingMakeUp): number => 1 - glazingOptics(glass, film).solarHeatGain / glazingOptics(glass).solarHeatGain;
  const cutOnSingleClear = cutOn(SINGLE_CLEAR_3_MM);
  if (!(cutOnSingleClear > 0)) throw new RangeError(`film must cut the gain of single clear glass, got a cut of ${String(cutOnSingleClear)}`);
  const cut = cutOn(makeUp);
  return { cut, cutOnSingleClear, survives: cut / cutOnSingleClear };
}
