import type { Window } from '../portfolio/index.js';
import { filmedMakeUp } from './film-on-glass.js';
import { stacked } from './layers.js';
import { paneByAngle } from './pane-at-angle.js';
import { paneHeat, paneStress, type PaneWeather } from './pane-stress.js';
import type { FilmOnClear, GlazingMakeUp } from './pane.js';
import { NOTHING_KNOWN, type PaneFacts } from './suitability.js';

/** A surveyed window with the glass and the film that are looked at together. */
export interface FilmedWindow {
  readonly window: Window;
  /** Null when the glazing type is not known. */
  readonly makeUp: GlazingMakeUp | null;
  readonly tinted: boolean | null;
  readonly lowE: boolean | null;
  readonly film: FilmOnClear;
  /** ISO date on which the film would go on. */
  readonly onDate: string;
  /** Year the glass is from: the window's, else the building's. */
  readonly glassYear: number | null;
  /** Weather cases for the stress estimate; none leaves it unknown. */
  readonly weathers: readonly PaneWeather[];
}

/**
 * Share of the sun that glass and film take up together at normal incidence: the filmed pane by itself, or a pane of the unit that
 * takes up more because the film sends light back through it.
 *
 * @param makeUp the glass as found
 * @param film sheet figures
 * @returns 0…1, the larger of the two
 * @throws RangeError when the sheet breaks a physical limit
 * @source combined glass and film absorption of the trade's film-to-glass guidance; the look at the other panes is our own
 */
export function combinedAbsorptance(makeUp: GlazingMakeUp, film: FilmOnClear): number {
  const filmed = filmedMakeUp(makeUp, film);
  const pane = filmed.panes[film.side === 'room' ? filmed.panes.length - 1 : 0]!;
  const alone = stacked([paneByAngle(pane)(0)]).layerAbsorptance;
  return Math.max(...alone, ...paneHeat(makeUp, film).layerAbsorptance);
}

/** Years since the glass was set; a seal the survey calls old counts as ten at least. */
function sealAge_yr(of: FilmedWindow): number | null {
  const told = of.glassYear === null ? null : Number(of.onDate.slice(0, 4)) - of.glassYear;
  return of.window.flags.includes('old-seal') ? Math.max(10, told ?? 10) : told;
}

/**
 * What a survey, a make-up and a film say about a pane, for the rule table; anything the survey is silent on stays unknown.
 *
 * A flag that is not set counts as "not seen" for what a surveyor cannot miss, and as unknown for the rest.
 *
 * @param of window, glass, film, date and weather cases
 * @returns facts, null where nothing is known
 * @throws RangeError when the film sheet breaks a physical limit
 */
export function paneFacts(of: FilmedWindow): PaneFacts {
  const { window, makeUp, film } = of;
  const flagged = new Set(window.flags);
  const edges_m = [window.width.mm / 1000, window.height.mm / 1000] as const;
  const stresses = makeUp === null ? [] : of.weathers.map((weather) => paneStress(paneHeat(makeUp, film), weather).stress_MPa);
  const tempered = flagged.has('tempered-mark-seen');
  return {
    ...NOTHING_KNOWN,
    layers: makeUp === null ? null : makeUp.panes.length,
    strength: tempered ? 'tempered' : null,
    temperedMarkSeen: tempered,
    tinted: of.tinted,
    lowE: of.lowE,
    thickness_mm: makeUp === null ? null : Math.max(...makeUp.panes.map((pane) => pane.thickness_mm)),
    paneArea_m2: edges_m[0] * edges_m[1],
    longestEdge_m: Math.max(...edges_m),
    combinedAbsorptance: makeUp === null ? null : combinedAbsorptance(makeUp, film),
    edgeStress_MPa: stresses.length === 0 ? null : Math.max(...stresses),
    sealAge_yr: sealAge_yr(of),
    fogged: flagged.has('fogged'),
    damaged: flagged.has('cracked'),
    wired: flagged.has('wired'),
    laminated: flagged.has('laminated') ? true : null,
    patterned: flagged.has('patterned'),
    skylight: flagged.has('skylight'),
    fireRated: flagged.has('fire-rated') ? true : null,
    escape: flagged.has('escape'),
    heatTrap: flagged.has('heavy-curtain'),
    warrantyInForce: window.warrantyEnd === null ? null : window.warrantyEnd >= of.onDate,
    existingFilm: window.existingFilm,
  };
}
