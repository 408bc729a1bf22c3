import fc from 'fast-check';
import { extraterrestrialNormal_W_m2, sunPosition, sunYear } from './index.js';

const site = { latitude_deg: 39.83, longitude_deg: -104.65, timeZone_h: -7 };

describe('the year of the sun', () => {
  it('agrees with the single instant at half past every hour', () => {
    const year = sunYear(site);
    for (let hour = 0; hour < 8760; hour += 7) {
      const one = sunPosition(Date.UTC(2001, 0, 1) + (hour + 0.5 + 7) * 3_600_000, site.latitude_deg, site.longitude_deg);
      expect(Math.abs(one.altitude_deg - (year.altitude_deg[hour] ?? NaN))).toBeLessThan(1e-9);
      expect(year.azimuth_deg[hour]).toBe(one.azimuth_deg);
      expect(year.extraterrestrialNormal_W_m2[hour]).toBe(extraterrestrialNormal_W_m2(Math.floor(hour / 24) + 1));
    }
  });

  it('stands in the north at noon south of the tropics and in the south north of them', () => {
    const santiago = sunYear({ latitude_deg: -33.393, longitude_deg: -70.786, timeZone_h: -4 });
    const highest = (azimuth: Float64Array, altitude: Float64Array, day: number) => {
      const hours = Array.from({ length: 24 }, (_, h) => day * 24 + h);
      const top = hours.reduce((a, b) => ((altitude[b] ?? 0) > (altitude[a] ?? 0) ? b : a));
      return azimuth[top] ?? NaN;
    };
    for (let day = 0; day < 365; day += 5) {
      expect(Math.cos((highest(santiago.azimuth_deg, santiago.altitude_deg, day) * Math.PI) / 180)).toBeGreaterThan(0.3);
    }
  });

  it('half-hour time zones move the sun by half an hour', () => {
    const whole = sunYear({ latitude_deg: 28.567, longitude_deg: 77.103, timeZone_h: 5 });
    const half = sunYear({ latitude_deg: 28.567, longitude_deg: 77.103, timeZone_h: 5.5 });
    const instant = sunPosition(Date.UTC(2001, 5, 21, 6, 30) + 0.5 * 3_600_000, 28.567, 77.103); // 12:30 at +5.5
    expect(half.altitude_deg[(31 + 28 + 31 + 30 + 31 + 20) * 24 + 12]).toBeCloseTo(instant.altitude_deg, 9);
    expect(whole.altitude_deg[4000]).not.toBeCloseTo(half.altitude_deg[4000] ?? NaN, 2);
  });
});

describe('the sun anywhere', () => {
  it('is never higher than the sky and never lower than the other side of the earth', () => {
    fc.assert(
      fc.property(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }), fc.integer({ min: 9e11, max: 2e12 }), (lat, lon, utc) => {
        const sun = sunPosition(utc, lat, lon);
        expect(Math.abs(sun.altitude_deg)).toBeLessThanOrEqual(90);
        expect(sun.apparentAltitude_deg).toBeGreaterThanOrEqual(sun.altitude_deg - 0.01);
        expect(sun.azimuth_deg >= 0 && sun.azimuth_deg <= 360).toBe(true);
      }),
    );
  });

  it('refuses a place that is not on the earth', () => {
    expect(() => sunPosition(0, 91, 0)).toThrow('latitude_deg');
    expect(() => sunPosition(0, 0, 181)).toThrow('longitude_deg');
    expect(() => sunPosition(Number.NaN, 0, 0)).toThrow('utc_ms');
    expect(() => sunYear({ ...site, timeZone_h: 15 })).toThrow('timeZone_h');
    expect(() => extraterrestrialNormal_W_m2(0)).toThrow('dayOfYear');
  });
});
