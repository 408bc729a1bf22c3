import { type HorizonPoint, type Site, sunOnGlass, sunPosition } from '#calc';
import { sideWord } from '../dwelling/facade-sets.js';
import type { CrewWords } from './crew-words.js';
import type { ShadeTime } from './work-order-types.js';

/** A side of a building on a day. */
export interface SideOnDay {
  readonly site: Site;
  readonly azimuth_deg: number;
  readonly horizon: readonly HorizonPoint[];
  /** ISO date. */
  readonly day: string;
}

type Light = 'night' | 'sun' | 'wall' | 'skyline';

const STEP_min = 5;
const BARE = { width_m: 1, height_m: 1, overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0 };

const clock = (minute: number): string => `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** A skyline that lets less than half of the beam pass counts as shade; trees are taken in leaf. */
const SHADE_SHARE = 0.5;

function lightAt(of: SideOnDay, minute: number): Light {
  const { site } = of;
  const utc_ms = Date.parse(`${of.day}T00:00:00Z`) + (minute / 60 - site.timeZone_h) * 3_600_000;
  const sun = sunPosition(utc_ms, site.latitude_deg, site.longitude_deg);
  if (sun.altitude_deg <= 0) return 'night';
  const { profile_deg, sunlit } = sunOnGlass({ sunAltitude_deg: sun.altitude_deg, sunAzimuth_deg: sun.azimuth_deg, azimuth_deg: of.azimuth_deg, tilt_deg: 90, leaf: 1, geometry: { ...BARE, horizon: of.horizon } });
  if (profile_deg === null) return 'wall';
  return sunlit >= SHADE_SHARE ? 'sun' : 'skyline';
}

/**
 * When a side lies in shade between sunrise and sunset, to five minutes, standard time: the sun behind the wall or below the skyline.
 * Overhangs and fins of single windows are left out; they only add shade.
 *
 * @returns stretches of shade in order; none where the side has sun all day
 */
export function facadeShade(of: SideOnDay, words: CrewWords['shade']): ShadeTime[] {
  const minutes = Array.from({ length: 1440 / STEP_min }, (_, i) => i * STEP_min);
  const day = minutes.map((minute) => ({ minute, light: lightAt(of, minute) })).filter((m) => m.light !== 'night');
  const stretches: { from: number; until: number | null; lights: Set<Light> }[] = [];
  day.forEach(({ minute, light }, i) => {
    const before = day[i - 1];
    const open = before !== undefined && before.light !== 'sun' ? stretches.at(-1) : undefined;
    if (light === 'sun') {
      if (open !== undefined) open.until = minute;
    } else if (open === undefined) stretches.push({ from: minute, until: null, lights: new Set([light]) });
    else open.lights.add(light);
  });
  const rise = day[0]?.minute;
  return stretches.map(({ from, until, lights }): ShadeTime => {
    const start = from === rise ? null : clock(from);
    const why = start === null && until === null ? words.neverSun : lights.size > 1 ? words.both : lights.has('wall') ? words.wall : words.skyline;
    return { side: sideWord(of.azimuth_deg), azimuth_deg: of.azimuth_deg, day: of.day, from: start, until: until === null ? null : clock(until), why };
  });
}
