import { CREW_WORDS_EN } from './crew-words.js';
import { facadeShade, type SideOnDay } from './facade-shade.js';

const minutesOf = (clock: string | null): number => (clock === null ? -1 : Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3)));
const shade = (of: Partial<SideOnDay>) =>
  facadeShade({ site: { latitude_deg: 0, longitude_deg: 0, timeZone_h: 0 }, azimuth_deg: 270, horizon: [], day: '2026-03-20', ...of }, CREW_WORDS_EN.shade);

describe('when a side lies in shade', () => {
  // On the equator at the equinox the sun goes straight overhead; it culminates at 12:07 (equation of time −7 min, almanac figure).
  it('a west wall has shade from sunrise to noon by the sun', () => {
    const [morning, ...rest] = shade({});
    expect(rest).toEqual([]);
    expect(morning).toMatchObject({ side: 'west', from: null, day: '2026-03-20', why: CREW_WORDS_EN.shade.wall });
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
    expect(evening).toMatchObject({ until: null, why: CREW_WORDS_EN.shade.skyline });
    expect(Math.abs(minutesOf(evening!.from) - (15 * 60 + 7))).toBeLessThanOrEqual(5);
  });

  it('a tree that lets most of the beam pass is no shade', () => {
    expect(shade({ horizon: [{ azimuth_deg: 270, altitude_deg: 45, passes: 0.6 }] })).toHaveLength(1);
  });

  it('a south wall in winter has sun all day: no stretch of shade', () => {
    expect(shade({ site: { latitude_deg: 26, longitude_deg: -80, timeZone_h: -5 }, azimuth_deg: 180, day: '2026-12-21' })).toEqual([]);
  });

  it('a north wall in winter never sees it', () => {
    expect(shade({ site: { latitude_deg: 26, longitude_deg: -80, timeZone_h: -5 }, azimuth_deg: 0, day: '2026-12-21' })).toMatchObject([{ from: null, until: null, why: CREW_WORDS_EN.shade.neverSun }]);
  });
});
