import type { OptionWindow } from '../options/option.js';
import { grouped } from '../grouped.js';
import { inEnglish, told, type Told } from '../words/told.js';
import type { KitItem } from './work-order-types.js';

/** How much of what a crew uses up; from the assumptions on work. */
export interface KitRates {
  readonly slip_L_m2: number;
  readonly panesPerBlade: number;
}

const glass_m2 = (windows: readonly OptionWindow[]): number => windows.reduce((sum, w) => sum + (w.paneCount * w.width_mm * w.height_mm) / 1e6, 0);

/** Nothing where none is needed. */
const item = (what: Told, quantity: number, unit: 'pieces' | 'litres' = 'pieces'): KitItem[] => (quantity === 0 ? [] : [{ what: inEnglish(what), quantity, unit, told: what }]);

/** What to take along for one dwelling: cut pieces by film, solution, blades, cloths, and what its windows ask for. */
export function kitList(windows: readonly OptionWindow[], rates: KitRates): KitItem[] {
  const panes = windows.reduce((sum, w) => sum + w.paneCount, 0);
  const films = [...grouped(windows, (w) => w.film)].flatMap(([film, of]) => item(told('kit.cutPieces', { film }), of.reduce((sum, w) => sum + w.paneCount, 0)));
  return [
    ...films,
    ...item(told('kit.slip'), Math.max(1, Math.ceil(glass_m2(windows) * rates.slip_L_m2)), 'litres'),
    ...item(told('kit.blades'), Math.max(1, Math.ceil(panes / rates.panesPerBlade))),
    ...item(told('kit.cloths'), 6),
    ...item(told('kit.tape'), 1),
    ...item(told('kit.sheet'), new Set(windows.map((w) => w.room)).size),
    ...item(told('kit.ladder'), windows.some((w) => w.reach !== 'floor') ? 1 : 0),
    ...item(told('kit.scraper'), windows.some((w) => w.existingFilm) ? 1 : 0),
    ...item(told('kit.leaveBehind'), 1),
  ];
}
