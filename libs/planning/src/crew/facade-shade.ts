import { type HorizonPoint, type ShadeGeometry, type Site, sunOnGlass, sunPosition } from '#calc';
import { sideWord } from '../dwelling/facade-sets.js';
import { inEnglish, told } from '../words/told.js';
import type { ShadeTime } from './work-order-types.js';
import type { WallClock } from './wall-clock.js';

/** Equal panes of a side with what stands before them. */
export interface ShadedGlass {
  readonly glass_m2: number;
  readonly tilt_deg: number;
  /** Own overhang, balcony above, fins and reveal, as the heat balance has them; its skyline is not looked at. */
  readonly geometry: Omit<ShadeGeometry, 'horizon'>;
}

/** The panes of one side of a dwelling on a day. */
export interface SideOnDay {
  readonly site: Site;
  readonly azimuth_deg: number;
  readonly horizon: readonly HorizonPoint[];
  /** Panes to be filmed; none stands for the bare wall. */
  readonly panes: readonly ShadedGlass[];
  /** ISO date. */
  readonly day: string;
  readonly clock: WallClock;
  /** The side counts as in shade while no more than this share of its glass has sun, 0…1. */
  readonly sunlitShare: number;
}

type Light = 'sun' | 'wall' | 'skyline' | 'own';

/** The sun at a time of the day, minutes of standard time. */
export interface SunAt {
  readonly minute: number;
  readonly altitude_deg: number;
  readonly azimuth_deg: number;
}

const STEP_min = 5;
const WALL: readonly ShadedGlass[] = [{ glass_m2: 1, tilt_deg: 90, geometry: { width_m: 1, height_m: 1, overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0 } }];
/** A skyline that lets less than half of the beam pass counts as shade; trees are taken in leaf. */
const TREE_SHARE = 0.5;

const clock = (minute: number): string => `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** The sun from rise to set, every five minutes of standard time. */
export function sunOfDay(site: Site, day: string): SunAt[] {
  const midnight_ms = Date.parse(`${day}T00:00:00Z`) - site.timeZone_h * 3_600_000;
  return Array.from({ length: 1440 / STEP_min }, (_, i): SunAt => {
    const { altitude_deg, azimuth_deg } = sunPosition(midnight_ms + i * STEP_min * 60_000, site.latitude_deg, site.longitude_deg);
    return { minute: i * STEP_min, altitude_deg, azimuth_deg };
  }).filter((sun) => sun.altitude_deg > 0);
}

function lightAt(of: SideOnDay, sun: SunAt): Light {
  const panes = of.panes.length === 0 ? WALL : of.panes;
  const at = { sunAltitude_deg: sun.altitude_deg, sunAzimuth_deg: sun.azimuth_deg, azimuth_deg: of.azimuth_deg, leaf: 1 };
  let glass_m2 = 0;
  let sunny_m2 = 0;
  let why: Light = 'wall';
  for (const pane of panes) {
    glass_m2 += pane.glass_m2;
    const open = sunOnGlass({ ...at, tilt_deg: pane.tilt_deg, geometry: { ...WALL[0]!.geometry, horizon: of.horizon } });
    if (open.profile_deg === null) continue;
    if (open.sunlit < TREE_SHARE) {
      if (why === 'wall') why = 'skyline';
      continue;
    }
    why = 'own';
    sunny_m2 += pane.glass_m2 * sunOnGlass({ ...at, tilt_deg: pane.tilt_deg, geometry: { ...pane.geometry, horizon: [] } }).sunlit;
  }
  return sunny_m2 > of.sunlitShare * glass_m2 ? 'sun' : why;
}

function whyOf(lights: ReadonlySet<Light>, isAllDay: boolean): string {
  if (isAllDay) return inEnglish(told(lights.has('own') ? 'shade.ownAllDay' : 'shade.neverSun'));
  const [only] = lights;
  return inEnglish(told(lights.size > 1 ? 'shade.both' : only === 'wall' ? 'shade.wall' : only === 'own' ? 'shade.own' : 'shade.skyline'));
}

/**
 * When the panes of a side lie in shade between sunrise and sunset, to five minutes: the sun behind the wall, below the skyline, or kept off
 * by overhang, balcony above, fins and reveal. Times are those of the clock on the wall where its rule is known, else standard time.
 *
 * @param sun the day's sun where it is known already
 * @returns stretches of shade in order; none where the side has sun all day
 */
export function facadeShade(of: SideOnDay, sun: readonly SunAt[] = sunOfDay(of.site, of.day)): ShadeTime[] {
  const stretches: { from: number; until: number | null; lights: Set<Light> }[] = [];
  let before: Light | null = null;
  for (const at of sun) {
    const light = lightAt(of, at);
    const open = before !== null && before !== 'sun' ? stretches.at(-1) : undefined;
    if (light === 'sun') {
      if (open !== undefined) open.until = at.minute;
    } else if (open === undefined) stretches.push({ from: at.minute, until: null, lights: new Set([light]) });
    else open.lights.add(light);
    before = light;
  }
  const rise = sun[0]?.minute;
  const ahead_h = of.clock.ahead_h(of.day);
  const ahead_min = (ahead_h ?? 0) * 60;
  return stretches.map(({ from, until, lights }): ShadeTime => {
    const start = from === rise ? null : clock(from + ahead_min);
    return {
      side: sideWord(of.azimuth_deg), azimuth_deg: of.azimuth_deg, day: of.day, from: start, until: until === null ? null : clock(until + ahead_min),
      clock: ahead_h === null ? 'standard, rule not known' : ahead_h === 1 ? 'daylight' : 'standard', ...(of.clock.tariff === null ? {} : { tariff: of.clock.tariff }), ...(of.clock.isSurveyed === true ? { isSurveyed: true as const } : {}),
      sunlitShare: of.sunlitShare, why: whyOf(lights, start === null && until === null),
    };
  });
}
