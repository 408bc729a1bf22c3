import { extraterrestrialNormal_W_m2, sunPosition, sunYear } from './index.js';
import { trueAltitude_deg } from './position.js';

describe('the ends of what is allowed', () => {
  it('the poles, the date line and the last day of a leap year are places and days', () => {
    for (const [latitude_deg, longitude_deg] of [[90, 180], [-90, -180], [0, 180]] as const) expect(Number.isFinite(sunPosition(0, latitude_deg, longitude_deg).altitude_deg)).toBe(true);
    expect(Number.isFinite(extraterrestrialNormal_W_m2(366))).toBe(true);
    expect(() => extraterrestrialNormal_W_m2(367)).toThrow(RangeError);
    expect(() => extraterrestrialNormal_W_m2(Number.NaN)).toThrow(RangeError);
  });

  it('a year is refused for a place off the earth and for a clock no country keeps', () => {
    const site = { latitude_deg: 90, longitude_deg: 180, timeZone_h: 14 };
    expect(sunYear(site).altitude_deg).toHaveLength(8760);
    expect(sunYear({ latitude_deg: -90, longitude_deg: -180, timeZone_h: -12 }).altitude_deg).toHaveLength(8760);
    for (const wrong of [{ latitude_deg: 90.1 }, { latitude_deg: -90.1 }, { latitude_deg: Number.NaN }, { longitude_deg: 180.1 }, { longitude_deg: -180.1 }, { timeZone_h: 14.5 }, { timeZone_h: -12.5 }]) {
      expect(() => sunYear({ ...site, ...wrong })).toThrow(RangeError);
    }
  });
});

describe('refraction', () => {
  // Meeus 16.4 in radians at a true altitude h: 0.0002967 / tan(h + 0.00312536 / (h + 0.08901179)).
  it.each([0.5, 2, 10, 45, 89])('taken off what is seen of a sun at %p° gives that altitude back', (altitude_deg) => {
    const h = (altitude_deg * Math.PI) / 180;
    const seen_deg = ((h + 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179))) * 180) / Math.PI;
    expect(trueAltitude_deg(seen_deg)).toBeCloseTo(altitude_deg, 9);
  });

  // 0.0002967 / tan(0.00312536 / 0.08901179) rad = 0.4840°.
  it('below the horizon is the constant of the horizon, 0.484°', () => {
    expect(-5 - trueAltitude_deg(-5)).toBeCloseTo(0.484, 3);
    expect(0.484 - trueAltitude_deg(0.484)).toBeCloseTo(0.484, 3);
    expect(0.3 - trueAltitude_deg(0.3)).toBeCloseTo(0.484, 3);
  });
});
