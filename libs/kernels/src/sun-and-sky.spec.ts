import { openCatalogue } from '#catalogue';
import { kernel as facadeIrradiance } from './facade-irradiance.js';
import { kernel as facadeYear } from './facade-year.js';
import { kernel as solarGainFactor } from './solar-gain-factor.js';
import { kernel as sunPosition } from './sun-position.js';
import { kernel as sunlitShare } from './sunlit-share.js';
import { InputFault, type KernelRoom } from './kernel.js';

const catalogue = openCatalogue();
const room: KernelRoom = {
  catalogue: () => catalogue,
  weather: (of) => {
    if ('epw' in of) throw new RangeError('no files here');
    return catalogue.climates.year(of.climate);
  },
};

describe('kernel sun-position', () => {
  it('gives the worked example of NREL/TP-560-34302', () => {
    const got = sunPosition.run({ utc: '2003-10-17T19:30:30Z', latitude_deg: 39.742476, longitude_deg: -105.1786 }, room) as Record<string, number>;
    expect(Math.abs((got.altitude_deg ?? NaN) - (90 - 50.127954))).toBeLessThan(0.02);
    expect(Math.abs((got.azimuth_deg ?? NaN) - 194.340241)).toBeLessThan(0.03);
    expect(sunPosition.run([{ utc: '2003-10-17T12:30:30-07:00', latitude_deg: 39.742476, longitude_deg: -105.1786 }], room)).toEqual([got]);
  });

  it.each([
    [{ utc: '2003-10-17T19:30:30', latitude_deg: 0, longitude_deg: 0 }, '/utc'],
    [{ utc: '2003-10-17T19:30:30Z', latitude_deg: 99, longitude_deg: 0 }, '/latitude_deg'],
    [{ utc: '2003-10-17T19:30:30Z', latitude_deg: 0, longitude_deg: 0, height: 3 }, '/height'],
  ])('refuses %j at %s', (given, pointer) => {
    expect(() => sunPosition.run(given, room)).toThrow(InputFault);
    expect(() => sunPosition.run(given, room)).toThrow(expect.objectContaining({ pointer }) as Error);
  });
});

it('kernel facade-irradiance gives the first transposition row of the reference', () => {
  const given = {
    sunAltitude_deg: 90 - 38.414, sunAzimuth_deg: 3.18, azimuth_deg: 0, tilt_deg: 90, directNormal_W_m2: 785.2, diffuseHorizontal_W_m2: 86.5,
    globalHorizontal_W_m2: 701.74, extraterrestrialNormal_W_m2: 1322.83, albedo: 0.2,
  };
  const got = facadeIrradiance.run(given, room) as Record<string, number>;
  const want = { incidence_deg: 51.65593, beam_W_m2: 487.124, sky_W_m2: 73.562, ground_W_m2: 70.174, total_W_m2: 630.86 };
  for (const [name, value] of Object.entries(want)) expect(Math.abs((got[name] ?? NaN) - value)).toBeLessThan(0.05);
});

it('kernel facade-year sums to its months and its hours, from a built-in climate', () => {
  const hours = Array.from({ length: 744 }, (_, i) => i);
  const { facades } = facadeYear.run({ weather: { climate: 'miami-fl' }, facades: [{ azimuth_deg: 90, tilt_deg: 90 }], albedo: 0.2, hours }, room) as {
    facades: { annual_kWh_m2: { beam: number; sky: number; ground: number; total: number }; monthly_kWh_m2: number[]; hours: { total_W_m2: number }[] }[];
  };
  const [east] = facades;
  if (east === undefined) throw new Error('no facade');
  expect(Math.abs(east.annual_kWh_m2.total / 992.4 - 1)).toBeLessThan(0.02); // the hourly file's reference total
  expect(east.monthly_kWh_m2.reduce((a, b) => a + b, 0)).toBeCloseTo(east.annual_kWh_m2.total, 9);
  expect(east.hours.reduce((sum, hour) => sum + hour.total_W_m2, 0) / 1000).toBeCloseTo(east.monthly_kWh_m2[0] ?? NaN, 9);
  expect(() => facadeYear.run({ weather: { epw: 'x' }, facades: [{ azimuth_deg: 0, tilt_deg: 90 }] }, room)).toThrow('no files here');
});

it('kernel sunlit-share gives the reference window, and a null profile with why behind the wall', () => {
  const window = { width_m: 1.2, height_m: 1.5, overhangDepth_m: 0.9, overhangGap_m: 0.3, finDepth_m: 0.4, finGap_m: 0.1, azimuth_deg: 225 };
  const got = sunlitShare.run({ ...window, sunAltitude_deg: 57.904, sunAzimuth_deg: 241.743 }, room) as Record<string, number>;
  expect(Math.abs((got.profile_deg ?? NaN) - 59.01)).toBeLessThan(0.01);
  expect(Math.abs((got.sunlit ?? NaN) - 0.1976)).toBeLessThan(0.001);
  expect(sunlitShare.run({ ...window, sunAltitude_deg: 30, sunAzimuth_deg: 90 }, room)).toMatchObject({ profile_deg: null, sunlit: 0, why: 'the sun is behind the window' });
  const behindTree = sunlitShare.run({ ...window, sunAltitude_deg: 20, sunAzimuth_deg: 225, horizon: [{ azimuth_deg: 220, altitude_deg: 40 }, { azimuth_deg: 230, altitude_deg: 40, passes: 0.3 }] }, room);
  expect(behindTree).toMatchObject({ profile_deg: expect.closeTo(20, 6) as number });
});

it('kernel solar-gain-factor gives 40° N, July, east at 8 h: 215.6 Btu/h·ft²', () => {
  const east = { latitude_deg: 40, month: 7, azimuth_deg: 90 };
  const at8 = solarGainFactor.run({ ...east, solarTime_h: 8 }, room) as Record<string, number>;
  expect(Math.abs((at8.gain_W_m2 ?? NaN) - 215.6 * 3.15459)).toBeLessThan(1.5);
  const daily = solarGainFactor.run({ ...east, daily: true }, room) as Record<string, number>;
  expect(daily.gain_W_m2).toBe(at8.gain_W_m2);
  expect(daily).toMatchObject({ largestSolarTime_h: 8 });
  expect(() => solarGainFactor.run(east, room)).toThrow('give either solarTime_h or daily');
});
