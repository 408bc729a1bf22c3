import fc from 'fast-check';
import { sunYear } from '../sun/index.js';
import { leafShare, shadeOnFacade, skyView, sunlitShare, sunOnGlass, type HorizonPoint, type ShadeGeometry } from './index.js';

const bare: ShadeGeometry = { width_m: 1.2, height_m: 1.5, overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0, horizon: [] };
const wall = { azimuth_deg: 270, tilt_deg: 90, leaf: 1 };
const look = (geometry: ShadeGeometry, sunAltitude_deg = 20, sunAzimuth_deg = 270) => sunlitShare({ ...wall, sunAltitude_deg, sunAzimuth_deg, geometry });
const sun = sunYear({ latitude_deg: 33.45, longitude_deg: -112, timeZone_h: -7 });

describe('sky view', () => {
  it('is 1 in the open', () => {
    expect(look(bare).skyView).toBe(1);
  });

  it.each([10, 20, 33, 45, 60])('of a skyline of one height %p° is 1 − (2e + sin 2e) / π, of a long wall opposite 1 − sin e', (e_deg) => {
    const e = (e_deg * Math.PI) / 180;
    const even = look({ ...bare, horizon: [{ azimuth_deg: 0, altitude_deg: e_deg }] }).skyView;
    expect(Math.abs(even - (1 - (2 * e + Math.sin(2 * e)) / Math.PI))).toBeLessThan(0.003);
    // The roof line of a long wall opposite sinks to both sides: tan h = tan e × cos of the bearing from straight ahead.
    const sides = Array.from({ length: 91 }, (_, i) => (i - 45) * 2);
    const horizon = sides.map((side) => ({ azimuth_deg: 270 + side, altitude_deg: (Math.atan(Math.tan(e) * Math.cos((side * Math.PI) / 180)) * 180) / Math.PI }));
    expect(Math.abs(look({ ...bare, horizon }).skyView - (1 - Math.sin(e)))).toBeLessThan(0.003);
  });

  it.each([[0.6, 0.2, 1.5], [1.5, 0, 1.2], [0.3, 0.5, 2], [3, 0, 1.5]])('of an overhang %p m deep, %p m above a glass %p m high is that of crossed strings', (depth, gap, height) => {
    // Hottel's crossed strings between two long strips at right angles; the wall sees half a sphere of sky.
    const toOverhang = (height + gap + Math.hypot(depth, gap) - Math.hypot(depth, height + gap) - gap) / (2 * height);
    const got = look({ ...bare, height_m: height, overhangDepth_m: depth, overhangGap_m: gap }).skyView;
    expect(Math.abs(got - (0.5 - toOverhang) / 0.5)).toBeLessThan(0.003);
  });
});

describe('horizon', () => {
  const tree: readonly HorizonPoint[] = [255, 285].map((azimuth_deg) => ({ azimuth_deg, altitude_deg: 35, passes: 0.2, passesBare: 0.7 }));

  it('a solid neighbour takes the whole beam below its edge and none above', () => {
    const horizon = [{ azimuth_deg: 200, altitude_deg: 30 }, { azimuth_deg: 340, altitude_deg: 30 }];
    expect(look({ ...bare, horizon }, 29.9).sunlit).toBe(0);
    expect(look({ ...bare, horizon }, 30.1).sunlit).toBe(1);
  });

  it('runs straight between two bearings, through north too', () => {
    const horizon = [{ azimuth_deg: 350, altitude_deg: 10 }, { azimuth_deg: 10, altitude_deg: 30 }];
    const north = (h: number) => sunlitShare({ azimuth_deg: 0, tilt_deg: 90, leaf: 1, sunAltitude_deg: h, sunAzimuth_deg: 0, geometry: { ...bare, horizon } }).sunlit;
    expect(north(19.9)).toBe(0);
    expect(north(20.1)).toBe(1);
  });

  it('what was not surveyed is open', () => {
    expect(look({ ...bare, horizon: tree }, 20, 300).sunlit).toBe(1);
  });

  it('a tree lets its leaf-season share through in summer and its bare share in winter', () => {
    expect(look({ ...bare, horizon: tree }).sunlit).toBeCloseTo(0.2, 12);
    expect(sunlitShare({ ...wall, leaf: 0, sunAltitude_deg: 20, sunAzimuth_deg: 270, geometry: { ...bare, horizon: tree } }).sunlit).toBeCloseTo(0.7, 12);
    expect(leafShare(200, 40)).toBe(1);
    expect(leafShare(15, 40)).toBe(0);
    expect(leafShare(15, -33)).toBe(1);
    expect(leafShare(200, -33)).toBe(0);
  });

  it('a slope to the open ground does not make a tree denser', () => {
    const slope = [{ azimuth_deg: 260, altitude_deg: 40, passes: 0.3 }, { azimuth_deg: 280, altitude_deg: 0 }];
    expect(look({ ...bare, horizon: slope }, 10).sunlit).toBeCloseTo(0.3, 12);
  });

  it('a west wall behind a tree keeps less sun than one in the open', () => {
    const open = shadeOnFacade(sun, wall, bare);
    const behind = shadeOnFacade(sun, wall, { ...bare, horizon: tree });
    const sum = (array: Float64Array) => array.reduce((a, b) => a + b, 0);
    expect(sum(behind.sunlit)).toBeLessThan(sum(open.sunlit) * 0.9);
    expect(behind.skyView).toBeLessThan(0.95);
  });
});

describe('the year', () => {
  const geometry: ShadeGeometry = {
    ...bare, overhangDepth_m: 0.9, overhangGap_m: 0.3, finDepth_m: 0.4, finGap_m: 0.1, reveal_m: 0.08,
    horizon: [{ azimuth_deg: 230, altitude_deg: 25, passes: 0.2, passesBare: 0.6 }, { azimuth_deg: 290, altitude_deg: 5 }],
  };

  it.each([[270, 90], [180, 90], [200, 60], [0, 0]])('agrees with the single hour, azimuth %p tilt %p', (azimuth_deg, tilt_deg) => {
    const year = shadeOnFacade(sun, { azimuth_deg, tilt_deg }, geometry);
    for (let hour = 0; hour < 8760; hour += 11) {
      const one = sunOnGlass({
        sunAltitude_deg: sun.altitude_deg[hour] ?? NaN, sunAzimuth_deg: sun.azimuth_deg[hour] ?? NaN, azimuth_deg, tilt_deg,
        leaf: leafShare(Math.floor(hour / 24) + 1, 33.45), geometry,
      });
      expect(Math.abs((year.sunlit[hour] ?? NaN) - one.sunlit)).toBeLessThan(1e-9);
      
    }
    expect(year.skyView).toBe(skyView({ azimuth_deg, tilt_deg }, geometry));
  });
});

describe('any shade', () => {
  const length = fc.double({ min: 0, max: 3, noNaN: true });
  const anyGeometry = fc.record({
    width_m: fc.double({ min: 0.2, max: 4, noNaN: true }), height_m: fc.double({ min: 0.2, max: 4, noNaN: true }),
    overhangDepth_m: length, overhangGap_m: length, finDepth_m: length, finGap_m: length, reveal_m: fc.double({ min: 0, max: 0.3, noNaN: true }),
    horizon: fc.array(fc.record({ azimuth_deg: fc.double({ min: 0, max: 360, noNaN: true }), altitude_deg: fc.double({ min: 0, max: 60, noNaN: true }) }), { maxLength: 6 }),
  });

  it('leaves between none and all, and a deeper overhang never leaves more', () => {
    fc.assert(
      fc.property(anyGeometry, fc.double({ min: 0, max: 90, noNaN: true }), fc.double({ min: 180, max: 360, noNaN: true }), (geometry, h, azimuth) => {
        const one = look(geometry, h, azimuth);
        const deeper = look({ ...geometry, overhangDepth_m: geometry.overhangDepth_m + 0.5 }, h, azimuth);
        for (const share of [one.sunlit, one.skyView]) expect(share >= 0 && share <= 1).toBe(true);
        expect(deeper.sunlit).toBeLessThanOrEqual(one.sunlit);
        expect(deeper.skyView).toBeLessThanOrEqual(one.skyView);
      }),
    );
  });

  it('refuses what cannot be', () => {
    expect(() => look({ ...bare, width_m: 0 })).toThrow('width_m');
    expect(() => look({ ...bare, finDepth_m: -1 })).toThrow('finDepth_m');
    expect(() => look({ ...bare, horizon: [{ azimuth_deg: 0, altitude_deg: 95 }] })).toThrow('altitude_deg');
    expect(() => look({ ...bare, horizon: [{ azimuth_deg: 0, altitude_deg: 5, passes: 2 }] })).toThrow('passes');
  });
});
