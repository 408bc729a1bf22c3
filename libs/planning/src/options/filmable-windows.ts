import { type Consent, type Film, type FilmOnClear, paneFacts, type PaneWeather, suitability, type SuitabilityOutcome, type SuitabilityRule } from '#calc';
import type { Building } from '#calc';
import { buildingOf } from '../building-id.js';
import { consentState } from '../known/consent-state.js';
import { type GlazingBook, glazingKeyOf } from '../known/glazing-book.js';
import type { MeasuredBook } from '../known/measured-glass.js';
import type { PlacedWindow } from '../known/placed-windows.js';
import type { Told } from '../words/told.js';

/** How it stands with a window's panes and one film. */
export interface FilmableWindow {
  readonly state: 'ready' | 'waiting' | 'no';
  /** ISO date from which it may be filmed; null at once, or never. */
  readonly from: string | null;
  readonly waitsFor: readonly string[];
  readonly outcome: SuitabilityOutcome;
  readonly reasons: readonly string[];
  /** Rules behind the reasons, in their order; the standing advice at the end is of none. */
  readonly rules: readonly string[];
  readonly consent: string;
  readonly consentTold: Told;
}

export interface FilmableWindows {
  /** In the order of the films. */
  readonly of: (window: PlacedWindow) => readonly FilmableWindow[];
}

export interface FilmableRequest {
  readonly films: readonly { readonly film: Film; readonly sheet: FilmOnClear }[];
  readonly buildings: ReadonlyMap<string, Building>;
  readonly consents: readonly Consent[];
  readonly glazings: GlazingBook;
  readonly measured: MeasuredBook;
  readonly rules: readonly SuitabilityRule[];
  /** By building: the weather its panes are looked at in. */
  readonly paneWeathers: ReadonlyMap<string, readonly PaneWeather[]>;
  readonly onDate: string;
  /** Why, by id of a window locked out. */
  readonly windowsOut: ReadonlyMap<string, string>;
  /** Film that work already done has put on, by dwelling, and by building where one film is the rule. */
  readonly filmOn?: ReadonlyMap<string, string>;
}

/** Why a building's limits shut a film out, or null. */
export function filmLimit(film: Film, building: Building): string | null {
  if (building.allowedFilms !== null && !building.allowedFilms.includes(film.id)) return `film ${film.id} is not on the list of ${building.id}`;
  const { minVisibleTransmittance: least, maxOutsideVisibleReflectance: most } = building;
  if (least !== null && film.visibleTransmittance !== null && film.visibleTransmittance < least) return `film ${film.id} passes ${String(film.visibleTransmittance)} of the light, ${building.id} asks for ${String(least)}`;
  if (most !== null && film.outsideVisibleReflectance !== null && film.outsideVisibleReflectance > most) return `film ${film.id} reflects ${String(film.outsideVisibleReflectance)} outside, ${building.id} allows ${String(most)}`;
  return null;
}

/** Puts limits, suitability rules and letters together for every window and film; worked out once per window. */
export function filmableWindows(request: FilmableRequest): FilmableWindows {
  const known = new Map<string, readonly FilmableWindow[]>();
  const look = (window: PlacedWindow, at: FilmableRequest['films'][number], place: number): FilmableWindow => {
    const building = request.buildings.get(buildingOf(window.dwelling));
    const glazing = request.glazings.get(glazingKeyOf(window));
    if (building === undefined || glazing === undefined) throw new RangeError(`window must stand in a known building with a booked glazing, got ${window.id}`);
    const locked = request.windowsOut.get(window.id);
    const on = request.filmOn?.get(window.dwelling) ?? request.filmOn?.get(building.id);
    const other = on === undefined || on === at.film.id ? null : `film ${on} is on other windows already`;
    const limit = locked ?? filmLimit(at.film, building) ?? other;
    if (limit !== null) return { state: 'no', from: null, waitsFor: [], outcome: 'no-listed-trigger', reasons: [limit], rules: [], consent: limit, consentTold: { key: 'limit', otherwise: limit } };
    const seen = request.measured.glass.get(request.measured.keyOf(window) ?? '');
    const facts = paneFacts({
      window,
      makeUp: glazing.unknown ? null : (seen?.makeUp ?? glazing.makeUp),
      tinted: glazing.tinted,
      lowE: glazing.lowE,
      film: seen?.films.get(place)?.sheet ?? at.sheet,
      onDate: request.onDate,
      glassYear: building.builtYear,
      weathers: request.paneWeathers.get(building.id) ?? [],
    });
    const { outcome, reasons, rules } = suitability(facts, request.rules);
    const consent = consentState({ building: building.id, glazing: glazing.key, surveyedGlazing: window.glazing, film: at.film.id, window: window.id, outcome }, request.consents);
    const state = consent.state === 'refused' ? 'no' : consent.state === 'waiting' ? 'waiting' : 'ready';
    return { state, from: consent.date, waitsFor: consent.waitsFor, outcome, reasons, rules, consent: consent.text, consentTold: consent.told };
  };
  return {
    of: (window) => {
      let states = known.get(window.id);
      if (states === undefined) known.set(window.id, (states = request.films.map((film, place) => look(window, film, place))));
      return states;
    },
  };
}
