import {
  CLEAR_3_MM, clearSheetAt, coatedCurve, dewPoint_degC, EN_410_FILMS, gapResistance_m2K_W, glazingOptics, indoorFilm_W_m2K, inwardFractions, simpleTransmittance, simpleTransmittanceAt, SINGLE_CLEAR_3_MM,
  stacked, surfaceReflectance, uFactorOfPath_W_m2K, type GlazingMakeUp, type Pane,
} from './index.js';

const refused = (...tries: readonly (() => unknown)[]): void => tries.forEach((attempt) => expect(attempt).toThrow(RangeError));
const pane = (more: Partial<Pane>): GlazingMakeUp => ({ key: 'one', panes: [{ ...CLEAR_3_MM, ...more }], gaps: [] });
const double = (resistance_m2K_W: number): GlazingMakeUp => ({ key: 'two', panes: [CLEAR_3_MM, CLEAR_3_MM], gaps: [{ resistance_m2K_W }] });

describe('glass that cannot be is refused, what just can is not', () => {
  it('faces and sheets', () => {
    expect(surfaceReflectance(1.5, 90).parallel).toBeCloseTo(1, 9);
    // ((1.5 − 1) / (1.5 + 1))² = 0.04 straight on, either way of polarisation.
    expect(surfaceReflectance(1.5, 0).perpendicular).toBeCloseTo(0.04, 12);
    expect(surfaceReflectance(1.5, 0).parallel).toBeCloseTo(0.04, 12);
    // At the angle whose tangent is the index no light of one polarisation is thrown back (Brewster).
    expect(surfaceReflectance(1.5, (Math.atan(1.5) * 180) / Math.PI).parallel).toBeCloseTo(0, 12);
    refused(() => surfaceReflectance(1, 30), () => surfaceReflectance(1.5, -1), () => surfaceReflectance(1.5, 91), () => surfaceReflectance(Number.NaN, 0));
    // A sheet that takes up nothing: T = (1 − r) / (1 + r) with r = 0.04.
    expect(clearSheetAt({ refractiveIndex: 1.5, absorption: 0 }, 0).solarTransmittance).toBeCloseTo(0.96 / 1.04, 12);
    expect(coatedCurve('clear', 0).through).toBeCloseTo(1, 2);
    refused(() => coatedCurve('clear', -1), () => coatedCurve('bronze', 90.1));
  });

  it('panes and what is built of them', () => {
    refused(
      () => glazingOptics(pane({ solarTransmittance: -0.1 })), () => glazingOptics(pane({ solarTransmittance: 1.1 })), () => glazingOptics(pane({ frontReflectance: 1.1 })), () => glazingOptics(pane({ backReflectance: -0.1 })),
      () => glazingOptics(pane({ solarTransmittance: 0.9, frontReflectance: 0.2 })), () => glazingOptics(pane({ solarTransmittance: 0.9, backReflectance: 0.2 })), () => glazingOptics(pane({ thickness_mm: 0 })),
      () => glazingOptics(pane({ emissivityBack: 1.1 })), () => glazingOptics(pane({ emissivityFront: -0.1 })), () => glazingOptics({ key: 'none', panes: [], gaps: [] }),
      () => glazingOptics({ ...SINGLE_CLEAR_3_MM, gaps: [{ resistance_m2K_W: 0.17 }] }), () => glazingOptics({ ...double(0.17), gaps: [] }), () => glazingOptics(double(0)), () => stacked([]),
    );
    const mirror = { solarTransmittance: 0, backTransmittance: 0, frontReflectance: 1, backReflectance: 1 };
    expect(stacked([mirror])).toMatchObject({ solarTransmittance: 0, frontReflectance: 1 });
  });

  it('paths of heat', () => {
    // 1/20 + 0.003 + 1/8 = 0.178; a single pane is taken at one temperature, so it passes hi / (hi + ho) inward.
    const path = { outdoor_W_m2K: 20, indoor_W_m2K: 8, glass_m2K_W: [0.003], gaps_m2K_W: [] };
    expect(uFactorOfPath_W_m2K(path)).toBeCloseTo(1 / 0.178, 12);
    expect(inwardFractions(path)[0]).toBeCloseTo(8 / 28, 12);
    refused(() => uFactorOfPath_W_m2K({ ...path, outdoor_W_m2K: 0 }), () => uFactorOfPath_W_m2K({ ...path, indoor_W_m2K: 0 }));
    expect(indoorFilm_W_m2K(EN_410_FILMS, 0.837)).toBeCloseTo(8, 9);
    expect(indoorFilm_W_m2K(EN_410_FILMS, 0)).toBeCloseTo(3.6, 9);
    refused(() => indoorFilm_W_m2K(EN_410_FILMS, -0.1), () => indoorFilm_W_m2K(EN_410_FILMS, 1.1));
    expect(dewPoint_degC(21, 1)).toBeCloseTo(21, 9);
    refused(() => dewPoint_degC(21, 0), () => dewPoint_degC(21, 1.1));
    for (const emissivities of [[0, 0.84], [0.84, 0], [1.1, 0.84], [0.84, 1.1]] as const) refused(() => gapResistance_m2K_W({ width_mm: 12, gas: 'air', emissivities: [...emissivities] }));
    refused(() => gapResistance_m2K_W({ width_mm: 0, gas: 'air', emissivities: [0.84, 0.84] }));
    expect(gapResistance_m2K_W({ width_mm: 12, gas: 'air', emissivities: [1, 1] })).toBeGreaterThan(0);
  });

  it('labels', () => {
    refused(() => simpleTransmittance(0, 5), () => simpleTransmittance(1, 5), () => simpleTransmittance(0.5, 0), () => simpleTransmittance(0.5, 8), () => simpleTransmittanceAt(0.5, 5, -1), () => simpleTransmittanceAt(0.5, 5, 91));
    expect(simpleTransmittanceAt(0.5, 5, 0)).toBeCloseTo(simpleTransmittance(0.5, 5), 12);
    expect(simpleTransmittanceAt(0.5, 5, 90)).toBeCloseTo(0, 12);
    // U above 4.5, S 0.5: 0.939998 × 0.25 + 0.20332 × 0.5 = 0.3366595; below 3.4: 0.085775 × 0.25 + 0.963954 × 0.5 − 0.084958 = 0.41846275.
    expect(simpleTransmittance(0.5, 5)).toBeCloseTo(0.3366595, 9);
    expect(simpleTransmittance(0.5, 3)).toBeCloseTo(0.41846275, 9);
    // Half way between, at U 3.95, the mean of both.
    expect(simpleTransmittance(0.5, 3.95)).toBeCloseTo((0.3366595 + 0.41846275) / 2, 9);
    // S 0.1 at U 2: 0.4104 × 0.1; S 0.8 at U 5: 1.30415 × 0.8 − 0.30515.
    expect(simpleTransmittance(0.1, 2)).toBeCloseTo(0.04104, 9);
    expect(simpleTransmittance(0.8, 5)).toBeCloseTo(0.73817, 9);
  });
});
