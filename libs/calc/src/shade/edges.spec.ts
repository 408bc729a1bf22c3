import { leafShare, sunlitShare, type ShadeGeometry } from './index.js';

const bare: ShadeGeometry = { width_m: 2, height_m: 2, overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0, horizon: [] };
const at = (geometry: Partial<ShadeGeometry>, ...[sunAltitude_deg, turn_deg = 0, tilt_deg = 90]: [number, number?, number?]) =>
  sunlitShare({ azimuth_deg: 180, tilt_deg, leaf: 1, sunAltitude_deg, sunAzimuth_deg: 180 + turn_deg, geometry: { ...bare, ...geometry } });

describe('a window of 2 m by 2 m with the sun at 45°, where every shadow is as long as what throws it', () => {
  it.each([
    ['nothing before it', {}, 45, 0, 1],
    ['a balcony 1 m deep on the lintel', { overhangDepth_m: 1 }, 45, 0, 0.5],
    ['the same half a metre above it', { overhangDepth_m: 1, overhangGap_m: 0.5 }, 45, 0, 0.75],
    ['a balcony too small to reach the glass', { overhangDepth_m: 0.5, overhangGap_m: 1 }, 45, 0, 1],
    ['a balcony larger than the window', { overhangDepth_m: 9 }, 45, 0, 0],
    ['a reveal of 0.2 m', { reveal_m: 0.2 }, 45, 0, 0.9],
    ['a reveal and a balcony: the longer shadow counts, not the sum', { reveal_m: 0.2, overhangDepth_m: 1 }, 45, 0, 0.5],
  ] as const)('%s', (...[, geometry, altitude, turn, share]) => {
    expect(at(geometry, altitude, turn).sunlit).toBeCloseTo(share, 9);
  });

  // Beside the wall's normal by 45°: a fin throws its depth sideways, a reveal too.
  it.each([
    ['a fin of 1 m at the glass', { finDepth_m: 1 }, 45, 0.5],
    ['the same on the other side', { finDepth_m: 1 }, -45, 0.5],
    ['the same half a metre aside', { finDepth_m: 1, finGap_m: 0.5 }, 45, 0.75],
    ['a reveal of 0.2 m', { reveal_m: 0.2 }, 45, 0.9],
    ['a fin and a reveal', { finDepth_m: 1, reveal_m: 0.2 }, 45, 0.5],
    ['a fin too far aside', { finDepth_m: 0.5, finGap_m: 1 }, 45, 1],
  ] as const)('low sun, %s', (...[, geometry, turn, share]) => {
    expect(at(geometry, 1e-6, turn).sunlit).toBeCloseTo(share, 5);
  });

  it('on a roof window of 45° the sun straight above its normal meets no shadow, from below its normal the sill’s', () => {
    expect(at({ overhangDepth_m: 1 }, 45, 0, 45).sunlit).toBeCloseTo(1, 9);
    // At 30° the sun stands 15° below the normal: the sill of a 0.2 m reveal shades 0.2 tan 15°.
    expect(at({ reveal_m: 0.2 }, 30, 0, 45).sunlit).toBeCloseTo(1 - (0.2 * Math.tan(Math.PI / 12)) / 2, 9);
  });

  it('a sun down, or behind the wall, reaches nothing', () => {
    expect(at({}, 0).sunlit).toBe(0);
    expect(at({}, -10).sunlit).toBe(0);
    expect(at({}, -10).profile_deg).toBeCloseTo(-10, 9);
    expect(at({}, 30, 90)).toMatchObject({ sunlit: 0, profile_deg: null });
    expect(at({}, 30, 120).profile_deg).toBeNull();
    expect(at({}, 30).profile_deg).toBeCloseTo(30, 9);
  });
});

describe('what cannot be is refused, what just can is not', () => {
  it.each([
    [{ width_m: 0 }], [{ width_m: 1000 }], [{ height_m: 0 }], [{ height_m: Number.NaN }], [{ overhangDepth_m: -0.1 }], [{ overhangDepth_m: 1000 }], [{ overhangGap_m: -0.1 }], [{ finDepth_m: -0.1 }],
    [{ finGap_m: -0.1 }], [{ reveal_m: -0.1 }], [{ horizon: [{ azimuth_deg: Infinity, altitude_deg: 1 }] }], [{ horizon: [{ azimuth_deg: 0, altitude_deg: -1 }] }],
    [{ horizon: [{ azimuth_deg: 0, altitude_deg: 91 }] }], [{ horizon: [{ azimuth_deg: 0, altitude_deg: 1, passes: 1.1 }] }], [{ horizon: [{ azimuth_deg: 0, altitude_deg: 1, passes: -0.1 }] }],
    [{ horizon: [{ azimuth_deg: 0, altitude_deg: 1, passesBare: 1.1 }] }], [{ horizon: [{ azimuth_deg: 0, altitude_deg: 1, passesBare: -0.1 }] }],
  ])('%j', (geometry) => {
    expect(() => at(geometry, 45)).toThrow(RangeError);
  });

  it('whole skylines and whole shares', () => {
    expect(at({ horizon: [{ azimuth_deg: 0, altitude_deg: 90, passes: 1, passesBare: 0 }] }, 45).sunlit).toBe(1);
    expect(at({ horizon: [{ azimuth_deg: 0, altitude_deg: 90, passes: 0, passesBare: 1 }] }, 45).sunlit).toBe(0);
    expect(at({ horizon: [{ azimuth_deg: 0, altitude_deg: 0 }] }, 1).sunlit).toBe(1);
  });

  it.each([[{ sunAltitude_deg: 91 }], [{ sunAltitude_deg: -91 }], [{ sunAltitude_deg: Number.NaN }], [{ tilt_deg: -1 }], [{ tilt_deg: 181 }], [{ leaf: -0.1 }], [{ leaf: 1.1 }]])('%j', (wrong) => {
    expect(() => sunlitShare({ azimuth_deg: 180, tilt_deg: 90, leaf: 1, sunAltitude_deg: 45, sunAzimuth_deg: 180, geometry: bare, ...wrong })).toThrow(RangeError);
  });

  it('the sun in the zenith over a level window, and the whole turn of a tilt', () => {
    expect(at({}, 90, 0, 0).sunlit).toBe(1);
    expect(at({}, 45, 0, 180).sunlit).toBe(0);
    expect(at({}, -90, 0, 180).sunlit).toBe(0);
  });
});

describe('leaf', () => {
  // 1 April is day 91, 1 May day 121, 15 October day 288, 15 November day 319.
  it.each([[91, 0], [106, 0.5], [121, 1], [288, 1], [303.5, 0.5], [319, 0], [1, 0], [365, 0]])('on day %p is %p', (day, share) => {
    expect(leafShare(day, 40)).toBeCloseTo(share, 9);
  });

  // South of the equator 1 October (day 274) stands for 1 April, 31 October for 1 May, 16 April for 15 October, 17 May for 15 November.
  it('on the equator follows the north, south of it comes 182 days later', () => {
    expect(leafShare(200, 0)).toBe(1);
    expect([274, 289, 304, 106, 137, 200].map((day) => leafShare(day, -1))).toEqual([0, 0.5, 1, 1, 0, 0]);
  });
});
