import { type Building, installMinutes, labour_cents, type PaneWork, type PersonMinutes, type TimeModel } from '#calc';
import { pieceOf } from '../rolls/cut-list.js';
import type { InstalledCost, PricedFilm } from './option.js';
import { paneCount, type PlacedWindow } from '../known/placed-windows.js';
import type { PlanTerms } from '../plan/terms.js';

/** What a window adds to any option that films it; worked out once per window. */
export interface WindowWork {
  readonly pane: PaneWork;
  readonly panes: number;
  readonly glass_m2: number;
  readonly piece_m2: number;
}

/** Below this a pane of several is a small lite between bars, quicker than a full pane; the leaves of a door are full panes. Common practice, no source. */
const SMALL_LITE_m2 = 0.3;

export function windowWork(window: PlacedWindow, terms: Pick<PlanTerms, 'trimPerEdge_mm' | 'edgeGap_mm'>): WindowWork {
  const count = paneCount(window);
  const piece = pieceOf({ width_mm: window.width.mm, height_mm: window.height.mm }, terms);
  const area_m2 = (window.width.mm * window.height.mm) / 1e6;
  return {
    pane: { count, area_m2, reach: window.reach ?? 'floor', isDividedLite: count > 1 && area_m2 < SMALL_LITE_m2, hasOldFilm: window.existingFilm === 'present' },
    panes: count,
    glass_m2: count * area_m2,
    piece_m2: (count * piece.width_mm * piece.length_mm) / 1e6,
  };
}

/** What a building's contractor asks by the area of glass; null where the own crew puts film on. A contractor without a price is left to the own crew's minutes. */
export const contractorPrice_cents_m2 = (building: Building | undefined): number | null => (building?.crew === 'contractor' ? building.contractor_cents_m2 : null);

/** A window's work with the film that goes on it. */
export interface FilmedWork extends WindowWork {
  readonly film: PricedFilm;
}

/** Cost and effort of filming a list of windows. */
export interface CostedWork {
  readonly cost: InstalledCost;
  readonly minutes: PersonMinutes;
  readonly paneCount: number;
  readonly glassArea_m2: number;
  readonly pieceArea_m2: number;
}

/**
 * Installed cost: film of the cut pieces with the waste of cutting all candidates, person-minutes at the loaded rate, consumables, taking old
 * film off, taxes. A contractor asks by the area of glass instead of the minutes of putting film on. Visits, freight, whole rolls and contingency belong to the plan.
 */
export function installedCost(work: readonly FilmedWork[], of: { readonly terms: PlanTerms; readonly timeModel: TimeModel; readonly contractor_cents_m2: number | null }): CostedWork {
  const { terms } = of;
  const sum = (part: (w: FilmedWork) => number): number => work.reduce((total, w) => total + part(w), 0);
  const pieceArea_m2 = sum((w) => w.piece_m2);
  const { removal, ...minutes } = installMinutes({ panes: work.map((w) => w.pane) }, of.timeModel);
  const film_cents = sum((w) => w.piece_m2 * w.film.price_cents_m2 * (1 + w.film.waste));
  const consumables_cents = pieceArea_m2 * terms.consumables_cents_m2;
  const removal_cents = labour_cents(removal, terms.labour_cents_h);
  const glassArea_m2 = sum((w) => w.glass_m2);
  const allLabour_cents = of.contractor_cents_m2 === null ? labour_cents(minutes.best - removal, terms.labour_cents_h) : glassArea_m2 * of.contractor_cents_m2;
  const materialTax_cents = (film_cents + consumables_cents) * terms.materialTaxShare;
  const labourTax_cents = (allLabour_cents + removal_cents) * terms.labourTaxShare;
  return {
    cost: {
      film_cents,
      labour_cents: allLabour_cents,
      consumables_cents,
      removal_cents,
      materialTax_cents,
      labourTax_cents,
      total_cents: film_cents + allLabour_cents + consumables_cents + removal_cents + materialTax_cents + labourTax_cents,
    },
    minutes,
    paneCount: sum((w) => w.panes),
    glassArea_m2,
    pieceArea_m2,
  };
}
