import type { OptionWindow } from '../options/option.js';
import { grouped } from '../grouped.js';
import type { CrewWords } from './crew-words.js';
import type { KitItem } from './work-order-types.js';

/** How much of what a crew uses up; from the assumptions on work. */
export interface KitRates {
  readonly slip_L_m2: number;
  readonly panesPerBlade: number;
}

const glass_m2 = (windows: readonly OptionWindow[]): number => windows.reduce((sum, w) => sum + (w.paneCount * w.width_mm * w.height_mm) / 1e6, 0);

/** What to take along for one dwelling: cut pieces by film, solution, blades, cloths, and what its windows ask for. */
export function kitList(windows: readonly OptionWindow[], rates: KitRates, words: CrewWords['kit']): KitItem[] {
  const panes = windows.reduce((sum, w) => sum + w.paneCount, 0);
  const { piece, litre } = words.units;
  const films = [...grouped(windows, (w) => w.film)].map(([film, of]): KitItem => ({ what: words.cutPieces(film), quantity: of.reduce((sum, w) => sum + w.paneCount, 0), unit: piece }));
  const item = (what: string, quantity: number, isNeeded = true): KitItem[] => (isNeeded ? [{ what, quantity, unit: piece }] : []);
  return [
    ...films,
    { what: words.slip, quantity: Math.max(1, Math.ceil(glass_m2(windows) * rates.slip_L_m2)), unit: litre },
    ...item(words.blades, Math.max(1, Math.ceil(panes / rates.panesPerBlade))),
    ...item(words.cloths, 6),
    ...item(words.tape, 1),
    ...item(words.sheet, new Set(windows.map((w) => w.room)).size),
    ...item(words.ladder, 1, windows.some((w) => w.reach !== 'floor')),
    ...item(words.scraper, 1, windows.some((w) => w.existingFilm)),
    ...item(words.leaveBehind, 1),
  ];
}
