import { m2Of_ft2 } from '../units/index.js';

/** What a film saved in a dwelling. */
export interface FilmSaving {
  readonly saved_kWh: number;
  /** Cooling electricity as found. */
  readonly bare_kWh: number;
  readonly film_m2: number;
}

/** Electricity saved per square foot of film and year in published cases. */
export const savingBand_kWh_ft2 = [1, 11] as const;
/** Share of a dwelling's cooling saved in published cases. */
export const shareBand = [0.02, 0.45] as const;

/**
 * Sentences to show where a saving lies outside what published cases found. A warning, never a clamp.
 *
 *   saved / film area against 1–11 kWh/ft²; saved / cooling as found against 2–45 %
 *
 * @param saving what film saved, all figures of one year
 * @returns sentences, none when both lie in the band
 * @throws RangeError when the film area is not above 0
 * @source studies of the US General Services Administration with Lawrence Berkeley National Laboratory (findings 017 and low-e film), PNNL-23355,
 * Energies 17(6) 1388 (2024); band set from them, no single source
 */
export function savingWarnings(saving: FilmSaving): string[] {
  if (!(saving.film_m2 > 0)) throw new RangeError(`film_m2 must be above 0, got ${String(saving.film_m2)}`);
  const warnings: string[] = [];
  const perArea = (saving.saved_kWh / saving.film_m2) * m2Of_ft2(1);
  const [low, high] = savingBand_kWh_ft2;
  if (perArea < low || perArea > high) warnings.push(`The saving is ${perArea.toFixed(1)} kWh per square foot of film and year; published cases lie between ${String(low)} and ${String(high)}.`);
  if (saving.bare_kWh > 0) {
    const share = saving.saved_kWh / saving.bare_kWh;
    const [least, most] = shareBand;
    if (share < least || share > most) warnings.push(`The saving is ${(share * 100).toFixed(0)} % of the dwelling's cooling; published cases lie between ${String(least * 100)} and ${String(most * 100)} %.`);
  }
  return warnings;
}
