import fc from 'fast-check';
import { sunYear } from '../sun/index.js';
import type { HourlyYear } from '../weather/index.js';
import { clearDayGain, clearSky, cosIncidence, diffuseShare, facadeSky, irradianceOnFacade, largestClearDayGain, skyYear, type FacadeHour } from './index.js';

const site = { latitude_deg: -33.393, longitude_deg: -70.786, timeZone_h: -4 };
const sun = sunYear(site);

/** A made-up year: clear sky thinned by a cloudiness that changes from hour to hour. */
function madeUpYear(): HourlyYear {
  const blank = () => new Float64Array(8760);
  const weather: HourlyYear = {
    site, label: 'made up', source: 'made up', elevation_m: 0, outdoor_degC: blank(), wetBulb_degC: blank(), directNormal_W_m2: blank(),
    diffuseHorizontal_W_m2: blank(), globalHorizontal_W_m2: blank(), wind_m_s: blank(),
  };
  for (let i = 0; i < 8760; i++) {
    const sunAltitude_deg = sun.altitude_deg[i] ?? NaN;
    const clear = clearSky({ sunAltitude_deg, extraterrestrialNormal_W_m2: sun.extraterrestrialNormal_W_m2[i] ?? NaN, beamDepth: 0.4, diffuseDepth: 2.1, edition: 2013 });
    const cloud = (i * 7919) % 101 / 100;
    weather.directNormal_W_m2[i] = clear.directNormal_W_m2 * (1 - cloud) ** 2;
    weather.diffuseHorizontal_W_m2[i] = clear.diffuseHorizontal_W_m2 * (1 + cloud);
    weather.globalHorizontal_W_m2[i] = (weather.diffuseHorizontal_W_m2[i] ?? 0) + (weather.directNormal_W_m2[i] ?? 0) * Math.max(0, Math.sin((sunAltitude_deg * Math.PI) / 180));
  }
  weather.diffuseHorizontal_W_m2[2] = 3; // a night hour with some light left
  return weather;
}
const weather = madeUpYear();

describe('the year on a facade', () => {
  it.each([[0, 90], [270, 90], [123, 60], [0, 0], [45, 180]])('agrees with its plain twin hour by hour, azimuth %p tilt %p', (azimuth_deg, tilt_deg) => {
    const year = facadeSky({ sun, weather, azimuth_deg, tilt_deg, albedo: 0.25 });
    const shared = facadeSky({ sun, weather, sky: skyYear(sun, weather), azimuth_deg, tilt_deg, albedo: 0.25 });
    expect(shared).toEqual(year);
    for (let i = 0; i < 8760; i++) {
      const where = { sunAltitude_deg: sun.altitude_deg[i] ?? NaN, sunAzimuth_deg: sun.azimuth_deg[i] ?? NaN, azimuth_deg, tilt_deg };
      const hour = irradianceOnFacade({
        ...where, albedo: 0.25, directNormal_W_m2: weather.directNormal_W_m2[i] ?? NaN, diffuseHorizontal_W_m2: weather.diffuseHorizontal_W_m2[i] ?? NaN,
        globalHorizontal_W_m2: weather.globalHorizontal_W_m2[i] ?? NaN, extraterrestrialNormal_W_m2: sun.extraterrestrialNormal_W_m2[i] ?? NaN,
      });
      const off = [(year.beam_W_m2[i] ?? NaN) - hour.beam_W_m2, (year.sky_W_m2[i] ?? NaN) - hour.sky_W_m2, (year.ground_W_m2[i] ?? NaN) - hour.ground_W_m2];
      const facing = where.sunAltitude_deg > 0 ? Math.max(0, cosIncidence(where)) : 0;
      if (!(Math.max(...off.map(Math.abs)) < 1e-9 && Math.abs((year.cosIncidence[i] ?? NaN) - facing) < 1e-9)) throw new Error(`hour ${i}: ${off.join(', ')}`);
    }
  });

  it('the north is the sunny side south of the equator', () => {
    const beam = (azimuth_deg: number) => facadeSky({ sun, weather, azimuth_deg, tilt_deg: 90, albedo: 0.2 }).beam_W_m2.reduce((a, b) => a + b, 0);
    expect(beam(0)).toBeGreaterThan(3 * beam(180));
  });

  it('refuses what is not a facade', () => {
    expect(() => facadeSky({ sun, weather, azimuth_deg: NaN, tilt_deg: 90, albedo: 0.2 })).toThrow('azimuth_deg');
    expect(() => facadeSky({ sun, weather, azimuth_deg: 0, tilt_deg: 181, albedo: 0.2 })).toThrow('tilt_deg');
    expect(() => facadeSky({ sun, weather, azimuth_deg: 0, tilt_deg: 90, albedo: 1.1 })).toThrow('albedo');
    expect(() => facadeSky({ sun, weather, azimuth_deg: 0, tilt_deg: -1, albedo: 0.2 })).toThrow('tilt_deg');
    expect(() => facadeSky({ sun, weather, azimuth_deg: 0, tilt_deg: 90, albedo: -0.1 })).toThrow('albedo');
  });

  it('black ground gives nothing back, white ground half of what lies on the level before a wall', () => {
    const noon = weather.globalHorizontal_W_m2.indexOf(Math.max(...weather.globalHorizontal_W_m2));
    const ground = (albedo: number) => facadeSky({ sun, weather, azimuth_deg: 0, tilt_deg: 90, albedo }).ground_W_m2[noon]!;
    expect(ground(0)).toBe(0);
    expect(ground(1)).toBeCloseTo(weather.globalHorizontal_W_m2[noon]! / 2, 9);
  });
});

describe('one hour on a facade', () => {
  const light = fc.double({ min: 0, max: 1000, noNaN: true });
  const turn = fc.double({ min: 0, max: 360, noNaN: true });
  const anyHour: fc.Arbitrary<FacadeHour> = fc.record({
    sunAltitude_deg: fc.double({ min: -90, max: 90, noNaN: true }), sunAzimuth_deg: turn, azimuth_deg: turn, tilt_deg: fc.double({ min: 0, max: 180, noNaN: true }),
    directNormal_W_m2: light, diffuseHorizontal_W_m2: light, globalHorizontal_W_m2: light, extraterrestrialNormal_W_m2: fc.double({ min: 1320, max: 1415, noNaN: true }),
    albedo: fc.double({ min: 0, max: 1, noNaN: true }), sky: fc.constantFrom('perez' as const, 'isotropic' as const, 'hay-davies' as const),
  });

  it('no part is ever negative, and turning sun and facade together changes nothing', () => {
    fc.assert(
      fc.property(anyHour, turn, (hour, by) => {
        const got = irradianceOnFacade(hour);
        for (const part of [got.beam_W_m2, got.sky_W_m2, got.ground_W_m2]) expect(part).toBeGreaterThanOrEqual(0);
        const turned = irradianceOnFacade({ ...hour, sunAzimuth_deg: hour.sunAzimuth_deg + by, azimuth_deg: hour.azimuth_deg + by });
        expect(Math.abs(turned.total_W_m2 - got.total_W_m2)).toBeLessThan(1e-6 * (1 + got.total_W_m2));
      }),
    );
  });

  it('level ground gets what was measured: direct × sin h, and the diffuse light to the last watt under an even sky', () => {
    const level = irradianceOnFacade({
      sunAltitude_deg: 30, sunAzimuth_deg: 100, azimuth_deg: 0, tilt_deg: 0, directNormal_W_m2: 800, diffuseHorizontal_W_m2: 100, globalHorizontal_W_m2: 500,
      extraterrestrialNormal_W_m2: 1367, albedo: 0.2, sky: 'isotropic',
    });
    expect(level.beam_W_m2).toBeCloseTo(400, 9);
    expect(level.sky_W_m2).toBeCloseTo(100, 9);
    expect(level.ground_W_m2).toBe(0);
  });

  const hour: FacadeHour = { sunAltitude_deg: 30, sunAzimuth_deg: 100, azimuth_deg: 90, tilt_deg: 90, directNormal_W_m2: 1, diffuseHorizontal_W_m2: 1, globalHorizontal_W_m2: 1, extraterrestrialNormal_W_m2: 1367, albedo: 0.2 };
  it.each([['sunAltitude_deg', 91], ['tilt_deg', -1], ['albedo', 2], ['directNormal_W_m2', -1], ['diffuseHorizontal_W_m2', NaN], ['globalHorizontal_W_m2', -5], ['extraterrestrialNormal_W_m2', 0]])('refuses %s %p', (name, value) => {
    expect(() => irradianceOnFacade({ ...hour, [name]: value })).toThrow(name);
  });
});

describe('clear days', () => {
  it('morning and afternoon mirror each other in solar time', () => {
    const east = { latitude_deg: 33, month: 7, azimuth_deg: 90, tilt_deg: 90 as const };
    expect(clearDayGain(east, 8.5).gain_W_m2).toBeCloseTo(clearDayGain({ ...east, azimuth_deg: 270 }, 15.5).gain_W_m2, 9);
    expect(largestClearDayGain(east).gain_W_m2).toBe(clearDayGain(east, largestClearDayGain(east).solarTime_h).gain_W_m2);
    expect(clearDayGain(east, 2).gain_W_m2).toBe(0);
  });

  it('refuses what is not a day', () => {
    const east = { latitude_deg: 33, month: 7, azimuth_deg: 90, tilt_deg: 90 as const };
    expect(() => clearDayGain({ ...east, month: 13 }, 8)).toThrow('month');
    expect(() => clearDayGain({ ...east, latitude_deg: 80 }, 8)).toThrow('latitude_deg');
    expect(() => clearDayGain(east, 25)).toThrow('solarTime_h');
    expect(() => diffuseShare(-0.1)).toThrow('clearness');
    const sky = { sunAltitude_deg: 30, extraterrestrialNormal_W_m2: 1367, beamDepth: 0.4, diffuseDepth: 2, edition: 2013 as const };
    expect(() => clearSky({ ...sky, beamDepth: 0 })).toThrow('beamDepth');
    expect(() => clearSky({ ...sky, diffuseDepth: -1 })).toThrow('diffuseDepth');
    expect(clearSky({ ...sky, sunAltitude_deg: -1 }).directNormal_W_m2).toBe(0);
  });
});
