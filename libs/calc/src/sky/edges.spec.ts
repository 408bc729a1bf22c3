import { clearDayGain, clearSky, diffuseShare, irradianceOnFacade, relativeAirMass, type FacadeHour } from './index.js';

const near = (value: number, digits: number): unknown => expect.closeTo(value, digits) as unknown;

describe('what cannot be is refused, what just can is not', () => {
  it('air mass from the zenith to the horizon', () => {
    // 1 / (1 + 0.50572 × 96.07995^−1.6364) and 1 / (0.50572 × 6.07995^−1.6364), worked by hand.
    expect(relativeAirMass(0)).toBeCloseTo(0.99971, 5);
    expect(relativeAirMass(90)).toBeCloseTo(37.92, 2);
    for (const zenith of [-0.1, 90.1, Number.NaN]) expect(() => relativeAirMass(zenith)).toThrow(RangeError);
  });

  it('diffuse share at the joints of its three pieces', () => {
    expect(diffuseShare(0)).toBe(1);
    expect(diffuseShare(0.22)).toBeCloseTo(1 - 0.0198, 12);
    // 0.9511 − 0.12832 + 2.80832 − 8.518656 + 5.0528256 = 0.1652696 at 0.8; beyond, 0.165.
    expect(diffuseShare(0.8)).toBeCloseTo(0.1652696, 9);
    expect(diffuseShare(0.81)).toBe(0.165);
    expect(diffuseShare(7)).toBe(0.165);
    for (const clearness of [-0.01, Number.NaN]) expect(() => diffuseShare(clearness)).toThrow(RangeError);
  });

  const clear = { sunAltitude_deg: 30, extraterrestrialNormal_W_m2: 1360, beamDepth: 0.4, diffuseDepth: 2.1, edition: 2013 as const };
  it('a clear sky is dark with the sun on the horizon, and its whole is the beam on the level and the sky', () => {
    for (const sunAltitude_deg of [0, -5, -90]) expect(clearSky({ ...clear, sunAltitude_deg })).toEqual({ directNormal_W_m2: 0, diffuseHorizontal_W_m2: 0, globalHorizontal_W_m2: 0 });
    const at = clearSky(clear);
    expect(at.globalHorizontal_W_m2).toBeCloseTo(at.directNormal_W_m2 / 2 + at.diffuseHorizontal_W_m2, 9);
    expect(clearSky({ ...clear, sunAltitude_deg: 90 }).directNormal_W_m2).toBeGreaterThan(at.directNormal_W_m2);
    for (const wrong of [{ beamDepth: 0 }, { beamDepth: Number.NaN }, { diffuseDepth: 0 }, { sunAltitude_deg: 91 }, { sunAltitude_deg: -91 }]) expect(() => clearSky({ ...clear, ...wrong })).toThrow(RangeError);
  });

  const hour: FacadeHour = {
    sunAltitude_deg: 30, sunAzimuth_deg: 180, azimuth_deg: 180, tilt_deg: 90, directNormal_W_m2: 500, diffuseHorizontal_W_m2: 100, globalHorizontal_W_m2: 350, extraterrestrialNormal_W_m2: 1000, albedo: 0.2,
  };
  it.each([
    [{ sunAltitude_deg: 91 }], [{ sunAltitude_deg: -91 }], [{ tilt_deg: -1 }], [{ tilt_deg: 181 }], [{ albedo: -0.1 }], [{ albedo: 1.1 }], [{ directNormal_W_m2: -1 }], [{ diffuseHorizontal_W_m2: -1 }],
    [{ globalHorizontal_W_m2: -1 }], [{ extraterrestrialNormal_W_m2: 0 }], [{ directNormal_W_m2: Number.NaN }],
  ])('a facade in the light: %j', (wrong) => expect(() => irradianceOnFacade({ ...hour, ...wrong })).toThrow(RangeError));

  it('nothing shining is nothing received, at every end of the ranges', () => {
    const dark = { directNormal_W_m2: 0, diffuseHorizontal_W_m2: 0, globalHorizontal_W_m2: 0 };
    for (const end of [{ tilt_deg: 0 }, { tilt_deg: 180 }, { albedo: 0 }, { albedo: 1 }, { sunAltitude_deg: 90 }, { sunAltitude_deg: -90 }]) expect(irradianceOnFacade({ ...hour, ...dark, ...end }).total_W_m2).toBe(0);
  });

  // Wall facing the sun at 30°: cos θ = cos 30°. Half the dome, half the ground.
  it('on a wall by hand: even sky and sky with a ring', () => {
    const cos = Math.sqrt(0.75);
    expect(irradianceOnFacade({ ...hour, sky: 'isotropic' })).toMatchObject({
      incidence_deg: near(30, 9), beam_W_m2: near(500 * cos, 9), sky_W_m2: near(50, 9), ground_W_m2: near(35, 9), total_W_m2: near(500 * cos + 85, 9),
    });
    // Hay-Davies: half of the light is in the ring, thrown up by cos θ / sin h = 2 cos 30°; the other half is even.
    expect(irradianceOnFacade({ ...hour, sky: 'hay-davies' }).sky_W_m2).toBeCloseTo(100 * (0.5 * 2 * cos + 0.5 * 0.5), 9);
    // With the sun behind the wall nothing of the ring is left, and no beam.
    expect(irradianceOnFacade({ ...hour, sunAzimuth_deg: 0, sky: 'hay-davies' })).toMatchObject({ beam_W_m2: 0, sky_W_m2: near(25, 9) });
    // With the sun at 0.5° the ring is held to that of 1°: 0.01745.
    const low = irradianceOnFacade({ ...hour, sunAltitude_deg: 0.5, sky: 'hay-davies' });
    expect(low.sky_W_m2).toBeCloseTo(100 * ((0.5 * Math.cos(Math.PI / 360)) / 0.01745 + 0.25), 6);
  });

  it('with the sun on the horizon or under it the sky is even and there is no beam', () => {
    for (const sunAltitude_deg of [0, -3]) expect(irradianceOnFacade({ ...hour, sunAltitude_deg })).toMatchObject({ beam_W_m2: 0, sky_W_m2: near(50, 9) });
  });
});

describe('the handbook’s clear day', () => {
  const wall = { latitude_deg: 40, month: 1, azimuth_deg: 180, tilt_deg: 90 } as const;
  // ASHRAE Handbook of Fundamentals 1985–1993, table 1 (A in Btu/h·ft², B, C, declination; from memory). At noon the sun stands at 90° − 40° + declination.
  it.each([
    [1, 390, 0.142, 0.058, -20], [2, 385, 0.144, 0.06, -10.8], [3, 376, 0.156, 0.071, 0], [4, 360, 0.18, 0.097, 11.6], [5, 350, 0.196, 0.121, 20], [6, 345, 0.205, 0.134, 23.45],
    [7, 344, 0.207, 0.136, 20.6], [8, 351, 0.201, 0.122, 12.3], [9, 365, 0.177, 0.092, 0], [10, 378, 0.16, 0.073, -10.5], [11, 387, 0.149, 0.063, -19.8], [12, 391, 0.142, 0.057, -23.45],
  ])('of month %p has at noon in 40° N the beam A exp(−B / sin h), and C of it on level ground', (...[month, A, B, C, declination]) => {
    const gain = clearDayGain({ latitude_deg: 40, month, azimuth_deg: 0, tilt_deg: 0 }, 12);
    const direct = A * 3.154591 * Math.exp(-B / Math.sin(((50 + declination) * Math.PI) / 180));
    expect(gain.sunAltitude_deg).toBeCloseTo(50 + declination, 9);
    // A is printed in whole Btu/h·ft², 0.15 % of it.
    expect(Math.abs(gain.directNormal_W_m2 / direct - 1)).toBeLessThan(0.0015);
    expect(gain.diffuse_W_m2 / gain.directNormal_W_m2).toBeCloseTo(C, 12);
  });

  it('is taken to 66° and from midnight to midnight, and refused beyond', () => {
    for (const latitude_deg of [66, -66]) expect(clearDayGain({ ...wall, latitude_deg, month: 6 }, 12).gain_W_m2).toBeGreaterThanOrEqual(0);
    for (const hour of [0, 24]) expect(clearDayGain(wall, hour)).toMatchObject({ gain_W_m2: 0, beam_W_m2: 0, diffuse_W_m2: 0, directNormal_W_m2: 0 });
    for (const hour of [-0.1, 24.1, Number.NaN]) expect(() => clearDayGain(wall, hour)).toThrow(RangeError);
    for (const latitude_deg of [66.1, -66.1, Number.NaN]) expect(() => clearDayGain({ ...wall, latitude_deg }, 12)).toThrow(RangeError);
    for (const month of [0, 13]) expect(() => clearDayGain({ ...wall, month }, 12)).toThrow(RangeError);
  });
});
