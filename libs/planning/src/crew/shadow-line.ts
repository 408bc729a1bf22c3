import { type Building, type HorizonPoint, inchesText, type Portfolio, type Site, sunOnGlass, sunPosition, ticksOf_mm, type WindowShade } from '#calc';
import { horizonOf } from '../dwelling/dwelling-tasks.js';
import { sideWord } from '../dwelling/facade-sets.js';
import { inEnglish, told, type Told, toldWord } from '../words/told.js';
import { type PlacedWindow, placedWindows, windowIndex } from '../known/placed-windows.js';
import { trueBearings } from '../known/true-bearings.js';

/** A window at the time of a photograph. */
export interface ShadowQuestion {
  readonly site: Site;
  readonly azimuth_deg: number;
  readonly horizon: readonly HorizonPoint[];
  readonly glass: { readonly width_mm: number; readonly height_mm: number };
  readonly shade: WindowShade;
  /** `YYYY-MM-DDTHH:MM` on the clock of the place. */
  readonly at: string;
  /** The clock showed summer time, an hour ahead of standard time. */
  readonly isSummerTime: boolean;
}

/** Where the shadow should fall on the glass. */
export interface ShadowLine {
  readonly sunAltitude_deg: number;
  readonly sunAzimuth_deg: number;
  /** Height of the sun seen in the plane square to the wall; null with the sun behind it. */
  readonly profile_deg: number | null;
  /** From the top of the glass down to the edge of the shadow of overhang and reveal; null without sun on the wall. */
  readonly down_mm: number | null;
  /** From the side of the glass inwards; `side` as seen from outside. */
  readonly across_mm: number | null;
  readonly side: 'left' | 'right' | null;
  readonly sunlitShare: number;
  /** The same with the wall turned, so that a photograph can tell a wrong bearing. */
  readonly ifTurned: readonly { readonly azimuth_deg: number; readonly down_mm: number | null }[];
  readonly text: string;
  /** The text as a sentence of the table, for another language. */
  readonly told?: Told;
}

/** Bearings tried beside the surveyed one: an eighth of a turn is what a misread compass word is worth. */
const TURNS_deg = [-45, -20, 20, 45];

interface Fall {
  readonly profile_deg: number | null;
  readonly down_mm: number | null;
  readonly across_mm: number | null;
  readonly side: ShadowLine['side'];
  readonly sunlitShare: number;
}

function fallOf(of: ShadowQuestion, azimuth_deg: number, sun: { readonly altitude_deg: number; readonly azimuth_deg: number }): Fall {
  const { shade, glass } = of;
  const geometry = { width_m: glass.width_mm / 1000, height_m: glass.height_mm / 1000, ...shade, horizon: of.horizon };
  const { profile_deg, sunlit } = sunOnGlass({ sunAltitude_deg: sun.altitude_deg, sunAzimuth_deg: sun.azimuth_deg, azimuth_deg, tilt_deg: 90, leaf: 1, geometry });
  if (profile_deg === null || sun.altitude_deg <= 0) return { profile_deg, down_mm: null, across_mm: null, side: null, sunlitShare: 0 };
  const rise = Math.tan((profile_deg * Math.PI) / 180);
  const turn = ((sun.azimuth_deg - azimuth_deg + 540) % 360) - 180;
  const aside = Math.abs(Math.tan((turn * Math.PI) / 180));
  const within = (length_m: number, most_mm: number): number => Math.min(most_mm, Math.max(0, length_m * 1000));
  return {
    profile_deg,
    down_mm: within(Math.max(shade.overhangDepth_m * rise - shade.overhangGap_m, shade.reveal_m * rise), glass.height_mm),
    across_mm: within(Math.max(shade.finDepth_m * aside - shade.finGap_m, shade.reveal_m * aside), glass.width_mm),
    side: Math.abs(turn) < 0.5 ? null : turn > 0 ? 'left' : 'right',
    sunlitShare: sunlit,
  };
}

const inches = (mm: number): string => inchesText(ticksOf_mm(mm));

function wordsOf(of: ShadowQuestion, fall: Fall, turned: ShadowLine['ifTurned']): Told {
  const at = of.at.replace('T', ' ');
  const wall = told('shadow.wall', { side: toldWord('side', sideWord(of.azimuth_deg)), azimuth: of.azimuth_deg.toFixed(0) });
  if (fall.down_mm === null) return told('shadow.noSun', { at, wall });
  if (fall.sunlitShare === 0) return told('shadow.allShade', { at, wall });
  const down = told('shadow.down', { down: inches(fall.down_mm) });
  const edge = fall.across_mm === null || fall.across_mm === 0 || fall.side === null ? down : told('shadow.across', { edge: down, across: inches(fall.across_mm), side: told(`shadow.${fall.side}`) });
  const others = turned.map((t) => (t.down_mm === null ? told('shadow.turnedNoSun', { azimuth: t.azimuth_deg.toFixed(0) }) : told('shadow.turned', { azimuth: t.azimuth_deg.toFixed(0), down: inches(t.down_mm) })));
  return told('shadow.line', { at, wall, edge, others });
}

/** Where the shadow falls at the time of a photograph, and how to compare. @throws RangeError for a time that is none */
export function shadowLine(of: ShadowQuestion): ShadowLine {
  const clock_ms = Date.parse(`${of.at}:00Z`);
  if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d$/.test(of.at) || Number.isNaN(clock_ms)) throw new RangeError(`at must be YYYY-MM-DDTHH:MM, got ${of.at}`);
  const sun = sunPosition(clock_ms - (of.site.timeZone_h + (of.isSummerTime ? 1 : 0)) * 3_600_000, of.site.latitude_deg, of.site.longitude_deg);
  const fall = fallOf(of, of.azimuth_deg, sun);
  const ifTurned = TURNS_deg.map((turn) => {
    const azimuth_deg = (of.azimuth_deg + turn + 360) % 360;
    return { azimuth_deg, down_mm: fallOf(of, azimuth_deg, sun).down_mm };
  });
  const sentence = wordsOf(of, fall, ifTurned);
  return { sunAltitude_deg: sun.altitude_deg, sunAzimuth_deg: sun.azimuth_deg, ...fall, ifTurned, text: inEnglish(sentence), told: sentence };
}

const BARE: WindowShade = { overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0 };

function siteOf(building: Building): Site {
  const { latitude_deg, longitude_deg, timeZone_h } = building;
  if (latitude_deg === null || longitude_deg === null || timeZone_h === null) throw new RangeError(`building ${building.id} must have latitude, longitude and time zone`);
  return { latitude_deg, longitude_deg, timeZone_h };
}

/** The question for a window of the portfolio. @throws RangeError when dwelling or window is not there */
export function shadowQuestion(surveyed: Portfolio, at: { readonly dwelling: string; readonly mark: string; readonly at: string; readonly isSummerTime: boolean }): ShadowQuestion {
  const { portfolio } = trueBearings(surveyed);
  const dwelling = portfolio.dwellings.find((d) => d.id === at.dwelling);
  const building = portfolio.buildings.find((b) => b.id === dwelling?.building);
  if (dwelling === undefined || building === undefined) throw new RangeError(`dwelling must be in the portfolio, got ${at.dwelling}`);
  const { windows } = placedWindows(dwelling, windowIndex(portfolio.windows));
  const window: PlacedWindow | undefined = windows.find((w) => w.mark === at.mark || w.id === at.mark);
  if (window === undefined) throw new RangeError(`window must be one of ${windows.map((w) => w.mark).join(', ')}, got ${at.mark}`);
  return {
    site: siteOf(building),
    azimuth_deg: window.azimuth_deg,
    horizon: horizonOf(building, window.azimuth_deg),
    glass: { width_mm: (window.liteColumns ?? 1) * window.width.mm, height_mm: (window.liteRows ?? 1) * window.height.mm },
    shade: window.shade ?? BARE,
    at: at.at,
    isSummerTime: at.isSummerTime,
  };
}
