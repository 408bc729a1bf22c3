import { planSentences } from '../words/told.js';
import { facadeShade, type SideOnDay } from './facade-shade.js';

const minutesOf = (clock: string | null): number => (clock === null ? -1 : Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3)));
const shade = (of: Partial<SideOnDay>) =>
  facadeShade({ site: { latitude_deg: 0, longitude_deg: 0, timeZone_h: 0 }, azimuth_deg: 270, horizon: [], panes: [], day: '2026-03-20', clock: { tariff: null, ahead_h: () => null }, sunlitShare: 0.1, ...of });

describe('when a side lies in shade', () => {
  // On the equator at the equinox the sun goes straight overhead; it culminates at 12:07 (equation of time −7 min, almanac figure).
  it('a west wall has shade from sunrise to noon by the sun', () => {
    const [morning, ...rest] = shade({});
    expect(rest).toEqual([]);
    expect(morning).toMatchObject({ side: 'west', from: null, day: '2026-03-20', why: planSentences['shade.wall'] });
    expect(Math.abs(minutesOf(morning!.until) - (12 * 60 + 7))).toBeLessThanOrEqual(5);
  });

  it('an east wall the other way round', () => {
    const [afternoon, ...rest] = shade({ azimuth_deg: 90 });
    expect(rest).toEqual([]);
    expect(afternoon).toMatchObject({ side: 'east', until: null });
    expect(Math.abs(minutesOf(afternoon!.from) - (12 * 60 + 7))).toBeLessThanOrEqual(5);
  });

  // 3 November: the sun is 16 min 25 s early (almanac). At 80.3° W, 5.3° west of its time meridian, noon comes 21 min 12 s late: 12:04:47.
  it('counts longitude and the time of year', () => {
    const [afternoon] = shade({ site: { latitude_deg: 25.82, longitude_deg: -80.3, timeZone_h: -5 }, azimuth_deg: 90, day: '2026-11-03' });
    expect(['12:05', '12:10']).toContain(afternoon!.from);
  });

  // Straight overhead the sun sinks 15° an hour: a skyline 45° high hides it three hours after noon, 15:07.
  it('a skyline brings shade earlier in the evening', () => {
    const wall = [{ azimuth_deg: 269, altitude_deg: 45 }, { azimuth_deg: 271, altitude_deg: 45 }, { azimuth_deg: 180, altitude_deg: 45 }, { azimuth_deg: 0, altitude_deg: 45 }];
    const evening = shade({ horizon: wall })[1];
    expect(evening).toMatchObject({ until: null, why: planSentences['shade.skyline'] });
    expect(Math.abs(minutesOf(evening!.from) - (15 * 60 + 7))).toBeLessThanOrEqual(5);
  });

  it('a tree that lets most of the beam pass is no shade', () => {
    expect(shade({ horizon: [{ azimuth_deg: 270, altitude_deg: 45, passes: 0.6 }] })).toHaveLength(1);
  });

  it('a south wall in winter has sun all day: no stretch of shade', () => {
    expect(shade({ site: { latitude_deg: 26, longitude_deg: -80, timeZone_h: -5 }, azimuth_deg: 180, day: '2026-12-21' })).toEqual([]);
  });

  it('a north wall in winter never sees it', () => {
    expect(shade({ site: { latitude_deg: 26, longitude_deg: -80, timeZone_h: -5 }, azimuth_deg: 0, day: '2026-12-21' })).toMatchObject([{ from: null, until: null, why: planSentences['shade.neverSun'] }]);
  });

  // The same sun on a metre of glass under a plate a metre deep: a tenth of it has sun where tan(altitude) = 0.9, 41.99°, 3 h 12 min after noon.
  it('glass under an overhang stays in shade until a tenth of it has sun', () => {
    const own = { width_m: 1, height_m: 1, overhangDepth_m: 1, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0 };
    const [whole, ...rest] = shade({ panes: [{ glass_m2: 1, tilt_deg: 90, geometry: own }] });
    expect(rest).toEqual([]);
    expect(whole).toMatchObject({ from: null, why: planSentences['shade.both'], sunlitShare: 0.1 });
    expect(Math.abs(minutesOf(whole!.until) - (15 * 60 + 19))).toBeLessThanOrEqual(5);
    // Nine such panes beside one that is bare: a tenth of the glass has sun as soon as the sun is round the corner, and a sliver more soon after.
    const bare = { ...own, overhangDepth_m: 0 };
    const [mixed] = shade({ panes: [{ glass_m2: 9.5, tilt_deg: 90, geometry: own }, { glass_m2: 0.5, tilt_deg: 90, geometry: bare }] });
    // 5 % bare, 95 % under the plate: 0.05 + 0.95 (1 − tan a) = 0.1, a = 43.5°: 15:13.
    expect(Math.abs(minutesOf(mixed!.until) - (15 * 60 + 13))).toBeLessThanOrEqual(5);
  });

  it('says which clock its times are by, and adds the hour of daylight time', () => {
    const at = (ahead: 0 | 1 | null) => shade({ clock: { tariff: ahead === null ? null : 'T', ahead_h: () => ahead } })[0]!;
    expect(minutesOf(at(1).until) - minutesOf(at(0).until)).toBe(60);
    expect([at(1).clock, at(0).clock, at(null).clock]).toEqual(['daylight', 'standard', 'standard, rule not known']);
    expect([at(1).tariff, at(null).tariff]).toEqual(['T', undefined]);
  });
});

/** Sun by the almanac's short formulas (Michalsky, Solar Energy 40, 1988; from memory; good to 0.01° between 1950 and 2050), on another path than the library. */
function almanacSun(utc_ms: number, latitude_deg: number, longitude_deg: number): { up: number; north: number; east: number } {
  const rad = Math.PI / 180;
  const n = utc_ms / 86_400_000 - 10_957.5; // days since 2000-01-01 12:00
  const g = (357.528 + 0.9856003 * n) * rad;
  const l = (280.46 + 0.9856474 * n + 1.915 * Math.sin(g) + 0.02 * Math.sin(2 * g)) * rad;
  const tilt = (23.439 - 4e-7 * n) * rad;
  const rightAscension = Math.atan2(Math.cos(tilt) * Math.sin(l), Math.cos(l));
  const declination = Math.asin(Math.sin(tilt) * Math.sin(l));
  const hours = 6.697375 + 0.0657098242 * n + ((utc_ms / 3_600_000) % 24);
  const angle = (hours * 15 + longitude_deg) * rad - rightAscension;
  const lat = latitude_deg * rad;
  return {
    up: Math.sin(lat) * Math.sin(declination) + Math.cos(lat) * Math.cos(declination) * Math.cos(angle),
    north: Math.cos(lat) * Math.sin(declination) - Math.sin(lat) * Math.cos(declination) * Math.cos(angle),
    east: -Math.cos(declination) * Math.sin(angle),
  };
}

/** Share of a 40 × 40 grid of points on the glass whose ray to the sun meets no plate: a long overhang above, fins on both sides, the reveal all round. */
function rayShare(sun: ReturnType<typeof almanacSun>, azimuth_deg: number, g: { width_m: number; height_m: number; overhangDepth_m: number; overhangGap_m: number; finDepth_m: number; finGap_m: number; reveal_m: number }): number {
  const turn = (azimuth_deg * Math.PI) / 180;
  const out = sun.north * Math.cos(turn) + sun.east * Math.sin(turn);
  const side = sun.east * Math.cos(turn) - sun.north * Math.sin(turn);
  if (out <= 0 || sun.up <= 0) return 0;
  let lit = 0;
  for (let i = 0.5; i < 40; i++) {
    for (let j = 0.5; j < 40; j++) {
      const [x, y] = [(i / 40) * g.width_m, (j / 40) * g.height_m];
      const far = (length: number, step: number): number => (step > 0 ? (length / step) * out : Infinity); // how far out the ray passes a plate
      const across = side > 0 ? g.width_m - x : x;
      const hits = far(g.height_m - y + g.overhangGap_m, sun.up) < g.overhangDepth_m || far(g.height_m - y, sun.up) < g.reveal_m || far(across + g.finGap_m, Math.abs(side)) < g.finDepth_m || far(across, Math.abs(side)) < g.reveal_m;
      if (!hits) lit++;
    }
  }
  return lit / 1600;
}

describe('shade of the panes beside rays cast to an almanac sun', () => {
  const site = { latitude_deg: 25.82, longitude_deg: -80.3, timeZone_h: -5 };
  const shaded = { width_m: 1.8, height_m: 2, overhangDepth_m: 1.5, overhangGap_m: 0.3, finDepth_m: 0, finGap_m: 0, reveal_m: 0.1 };
  const finned = { width_m: 0.9, height_m: 1.2, overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0.6, finGap_m: 0.1, reveal_m: 0.15 };

  it.each([['2027-03-21', 135, shaded], ['2026-06-21', 270, shaded], ['2027-04-10', 180, shaded], ['2027-09-21', 225, finned], ['2026-06-21', 90, finned]] as const)('on %s, a wall at %i°', (day, azimuth_deg, geometry) => {
    const found = facadeShade({ site, azimuth_deg, horizon: [], panes: [{ glass_m2: 1, tilt_deg: 90, geometry }], day, clock: { tariff: null, ahead_h: () => null }, sunlitShare: 0.1 });
    const inShade = (minute: number): boolean => found.some((s) => (s.from === null || minute >= minutesOf(s.from)) && (s.until === null || minute < minutesOf(s.until)));
    const wrong: number[] = [];
    for (let minute = 0; minute < 1440; minute++) {
      const shareAt = (m: number): number => rayShare(almanacSun(Date.parse(`${day}T05:00:00Z`) + m * 60_000, site.latitude_deg, site.longitude_deg), azimuth_deg, geometry);
      if (almanacSun(Date.parse(`${day}T05:00:00Z`) + minute * 60_000, site.latitude_deg, site.longitude_deg).up < 0.02) continue;
      // A change may lie anywhere in the five minutes before it is told.
      if (inShade(minute) !== shareAt(minute) <= 0.1 && [-6, 6].every((by) => shareAt(minute + by) <= 0.1 === shareAt(minute) <= 0.1)) wrong.push(minute);
    }
    expect(found.length).toBeGreaterThan(0);
    expect(wrong).toEqual([]);
  });
});
