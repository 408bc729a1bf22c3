import { shadowLine, type ShadowQuestion } from './shadow-line.js';

// On the equator at the equinox the sun moves in the plane east–zenith–west, noon at 12:07 by the clock: 45° up in the west at 15:07.
const question = (change: Partial<ShadowQuestion> = {}): ShadowQuestion => ({
  site: { latitude_deg: 0, longitude_deg: 0, timeZone_h: 0 }, azimuth_deg: 270, horizon: [], glass: { width_mm: 900, height_mm: 1_200 },
  shade: { overhangDepth_m: 0.6, overhangGap_m: 0.2, finDepth_m: 0, finGap_m: 0, reveal_m: 0 }, at: '2026-03-20T15:07', isSummerTime: false, ...change,
});

describe('the line of a shadow', () => {
  // 0.6 m of overhang at 45° throw 0.6 m of shadow, of which 0.2 m lie above the glass.
  it('falls 400 mm down the glass with the sun at 45°', () => {
    const line = shadowLine(question());
    expect(line.profile_deg).toBeCloseTo(45, 0);
    expect(line.down_mm!).toBeGreaterThan(390);
    expect(line.down_mm!).toBeLessThan(410);
    expect(line.sunlitShare).toBeCloseTo(1 - line.down_mm! / 1_200, 6);
    expect(line.text).toContain('in down from the top of the glass');
  });

  // A wall turned 45° sees the sun at tan Ω = tan 45° / cos 45° = 1.414: 0.6 × 1.414 − 0.2 = 0.649 m.
  it('falls deeper on a wall that is turned away, which tells a wrong bearing', () => {
    const turned = shadowLine(question()).ifTurned.find((t) => t.azimuth_deg === 315)!;
    expect(Math.abs(turned.down_mm! - 649)).toBeLessThan(15);
  });

  // Sun due west, wall to the south-west: the sun stands clockwise of the wall's own bearing, to the left of one who looks at the wall.
  it('names the side the fin throws its shadow from, as seen from outside', () => {
    const shade = { overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0.3, finGap_m: 0.1, reveal_m: 0 };
    const line = shadowLine(question({ azimuth_deg: 225, shade }));
    expect(line.side).toBe('left');
    expect(Math.abs(line.across_mm! - 200)).toBeLessThan(5); // 0.3 × tan 45° − 0.1
    expect(shadowLine(question({ azimuth_deg: 315, shade })).side).toBe('right');
  });

  it('says when the wall has no sun, and an hour of summer time moves the sun by an hour', () => {
    expect(shadowLine(question({ azimuth_deg: 90 }))).toMatchObject({ down_mm: null, sunlitShare: 0 });
    expect(shadowLine(question({ azimuth_deg: 90 })).text).toContain('has no sun');
    expect(shadowLine(question({ at: '2026-03-20T16:07', isSummerTime: true })).down_mm).toBeCloseTo(shadowLine(question()).down_mm!, 6);
  });

  it('refuses a time that is none', () => expect(() => shadowLine(question({ at: 'noon' }))).toThrow('at must be'));
});
