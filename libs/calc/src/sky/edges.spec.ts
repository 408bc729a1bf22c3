import { clearSky, diffuseShare, irradianceOnFacade, relativeAirMass, type FacadeHour } from './index.js';

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
