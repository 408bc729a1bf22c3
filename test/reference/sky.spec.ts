import { clearDayGain, clearSky, cosIncidence, diffuseShare, irradianceOnFacade, largestClearDayGain, relativeAirMass, type SkyModel } from '#calc';
import { clearSkies, phoenixNoons } from './sky-clear.js';
import { erbsHours } from './sky-diffuse-share.js';
import { solarGainFactors } from './sky-solar-gain-factor.js';
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

it.each([['60 skies by both editions', clearSkies], ['12 noons of Phoenix', phoenixNoons]] as const)('clear sky: %s', (_name, table) => {
  const off = table.rows.map(({ given, expect: want, place }) => {
    const got = clearSky(given);
    return { place, worst: Math.max(Math.abs(got.directNormal_W_m2 - want.directNormal_W_m2), Math.abs(got.diffuseHorizontal_W_m2 - want.diffuseHorizontal_W_m2)) };
  });
  expect(off.filter(({ worst }) => !(worst <= (table.tolerance.abs ?? 0)))).toEqual([]);
});

it('150 hours of global light split by Erbs', () => {
  expect(erbsHours.rows).toHaveLength(150);
  for (const { given, expect: want } of erbsHours.rows) {
    expect(Math.abs(given.globalHorizontal_W_m2 * diffuseShare(given.clearness) - want)).toBeLessThanOrEqual(erbsHours.tolerance.abs ?? 0);
  }
});

it('solar heat gain factors of the handbook: maxima of the months and hours of July', () => {
  const off = solarGainFactors.rows.map(({ given: { solarTime_h, ...window }, expect: want, place }) => {
    const got = solarTime_h === null ? largestClearDayGain(window) : clearDayGain(window, solarTime_h);
    return { place, ...window, solarTime_h, off_W_m2: Math.abs(got.gain_W_m2 - want) };
  });
  expect(off.length).toBeGreaterThan(300);
  expect(off.filter(({ off_W_m2 }) => !(off_W_m2 <= (solarGainFactors.tolerance.abs ?? 0)))).toEqual([]);
});
