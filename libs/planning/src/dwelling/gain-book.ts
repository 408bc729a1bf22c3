import { type DrawnBlind, type FacadeShade, type FilmOnClear, type GlazingMakeUp, glazingOptics, type GlazingOptics, shadedGlazingOptics, shadeOnFacade, windowGain_W_m2 } from '#calc';
import type { WindowPanel } from './dwelling-task.js';
import type { OptionRoom } from './option-room.js';
import { facadeKey, type SiteSky } from '../sky/sky-on-facades.js';

/** What is on the glass: nothing, the old film that was found, or film number `film` of the room. */
export type OnGlass = 'bare' | 'old film' | number;

/** Heat through a square metre of glass each hour, and what it passes by warmth. */
export interface GlassGain {
  readonly gain_W_m2: Float64Array;
  readonly uFactor_W_m2K: number;
  /** Of the face towards the room; a low-e film changes it. */
  readonly roomEmissivity: number;
}

/** Gains worked out once per distinct (facade, shade, glazing, film) and looked up after that. */
export interface GainBook {
  readonly of: (site: SiteSky, panel: WindowPanel, on: OnGlass) => GlassGain;
  /** How doubtful a film's cut is on a panel over what is assumed of all films: 1, or less (or more) where it was measured. */
  readonly cutDoubt: (panel: WindowPanel, film: number) => number;
}

/** Keeps at most `most` results and forgets what was asked for longest ago: what many windows share stays, a window's own shade goes. */
function bounded<T>(most: number, make: (key: string) => T): { readonly get: (key: string, making?: () => T) => T } {
  const kept = new Map<string, T>();
  return {
    get: (key, making = () => make(key)) => {
      const known = kept.get(key);
      if (known !== undefined) {
        kept.delete(key);
        kept.set(key, known);
        return known;
      }
      const made = making();
      if (kept.size >= most) {
        const oldest = kept.keys().next();
        if (oldest.done !== true) kept.delete(oldest.value);
      }
      kept.set(key, made);
      return made;
    },
  };
}

const unreachable = (key: string): never => {
  throw new RangeError(`nothing makes ${key}`);
};

/**
 * A book of gains for one thread.
 *
 * @param most gains kept at once, and as many shades: 400 of each are 56 MB a thread
 */
export function gainBook(room: OptionRoom, most = 400): GainBook {
  const optics = bounded<GlazingOptics>(5000, unreachable);
  const shades = bounded<FacadeShade>(most, unreachable);
  const gains = bounded<GlassGain>(most, unreachable);
  const seenAt = (panel: WindowPanel) => (panel.measuredAt === null ? undefined : room.measured.get(panel.measuredAt));
  const filmOf = (on: OnGlass, panel: WindowPanel): FilmOnClear | null => {
    if (typeof on !== 'number') return on === 'bare' ? null : room.oldFilm;
    return seenAt(panel)?.films.get(on)?.sheet ?? room.films[on]?.sheet ?? null;
  };
  const drawnBlind = (kind: 'light' | 'medium' | 'dark', glass: { readonly key: string; readonly makeUp: GlazingMakeUp; readonly film: FilmOnClear | null }): DrawnBlind => ({
    drawn: optics.get(`${glass.key}|${kind}`, () => shadedGlazingOptics(glass.makeUp, glass.film, room.blinds[kind])),
    covered: room.blindCovered,
    closesAt_W_m2: room.blindClosesAt_W_m2,
  });
  const make = (site: SiteSky, panel: WindowPanel, on: OnGlass): GlassGain => {
    const sky = site.facades.get(facadeKey(panel.azimuth_deg, panel.tilt_deg));
    const makeUp = seenAt(panel)?.makeUp ?? room.glazings.get(panel.glazing);
    const glassKey = `${panel.glazing}|${panel.measuredAt ?? ''}|${String(on)}`;
    const film = filmOf(on, panel);
    if (sky === undefined || makeUp === undefined) throw new RangeError(`panel must lie on a known facade with a known glazing, got ${panel.window}`);
    const glass = optics.get(glassKey, () => glazingOptics(makeUp, film));
    const shade = shades.get(`${site.site}|${facadeKey(panel.azimuth_deg, panel.tilt_deg)}|${panel.shadeKey}`, () =>
      shadeOnFacade(site.sun, { azimuth_deg: panel.azimuth_deg, tilt_deg: panel.tilt_deg }, panel.shade),
    );
    const blind = panel.blind === 'none' ? null : drawnBlind(panel.blind, { key: glassKey, makeUp, film });
    return { gain_W_m2: windowGain_W_m2({ optics: glass, sky, shade, screenShare: panel.screenShare, screenPasses: room.screenPasses[panel.screenKind], ...(blind === null ? {} : { blind }) }), uFactor_W_m2K: glass.uFactor_W_m2K, roomEmissivity: glass.makeUp.panes.at(-1)!.emissivityBack };
  };
  return {
    of: (site, panel, on) => {
      const key = [site.site, panel.azimuth_deg, panel.tilt_deg, panel.shadeKey, panel.glazing, panel.measuredAt, on, panel.screenShare, panel.screenKind, panel.blind].join('|');
      return gains.get(key, () => make(site, panel, on));
    },
    cutDoubt: (panel, film) => {
      const measured = seenAt(panel)?.films.get(film)?.cutDoubt;
      return measured === undefined || room.doubt.filmCut === 0 ? 1 : measured / room.doubt.filmCut;
    },
  };
}
