import { cosIncidence, irradianceOnFacade, relativeAirMass, type SkyModel } from '#calc';
import { incidenceAngles, transposition } from './sky-transposition.js';

describe('light on a facade in one hour', () => {
  const limit = transposition.tolerance.abs ?? 0;

  it.each(['perez', 'isotropic', 'hay-davies'] as const)('326 hours, sky %s, every part within 0.05 W/m²', (sky: SkyModel) => {
    expect(transposition.rows).toHaveLength(326);
    const off = transposition.rows.map(({ given, expect: want, place }) => {
      const got = irradianceOnFacade({ ...given, albedo: 0.2, sky });
      const wantSky = { perez: want.perez_W_m2, isotropic: want.isotropic_W_m2, 'hay-davies': want.hayDavies_W_m2 }[sky];
      const parts = [got.beam_W_m2 - want.beam_W_m2, got.sky_W_m2 - wantSky, got.ground_W_m2 - want.ground_W_m2, got.total_W_m2 - want.beam_W_m2 - wantSky - want.ground_W_m2];
      return { place, worst: Math.max(...parts.map(Math.abs)), incidence: Math.abs(got.incidence_deg - want.incidence_deg) };
    });
    expect(off.filter(({ worst, incidence }) => !(worst <= limit && incidence <= 0.001))).toEqual([]);
  });

  it('air mass of the same hours', () => {
    for (const { given, expect: want } of transposition.rows) {
      expect(Math.abs(relativeAirMass(90 - given.sunAltitude_deg) - want.relativeAirMass)).toBeLessThan(2e-5);
    }
  });

  it('90 angles of incidence, any tilt', () => {
    for (const { given, expect: want } of incidenceAngles.rows) {
      expect(Math.abs(cosIncidence(given) - want.cosIncidence)).toBeLessThanOrEqual(incidenceAngles.tolerance.abs ?? 0);
    }
  });
});
