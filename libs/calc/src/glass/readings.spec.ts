import {
  CLEAR_3_MM, filmAsMeasured, filmedMakeUp, filmedPane, glassAsMeasured, glazingOptics, highestBehindClear_W_m2, meterPair, pairGlass, simpleInwardFraction, simpleTransmittance, SINGLE_CLEAR_3_MM, type FilmOnClear, type GlazingMakeUp,
  type MeterReadings,
} from './index.js';

const film: FilmOnClear = { solarTransmittance: 0.3, frontReflectance: 0.3, backReflectance: 0.35, roomEmissivity: 0.7, side: 'room' };
const double: GlazingMakeUp = { key: 'two', panes: [CLEAR_3_MM, CLEAR_3_MM], gaps: [{ resistance_m2K_W: 0.17 }] };
const near = (value: number, digits = 12): unknown => expect.closeTo(value, digits) as unknown;

describe('a pair of readings by hand', () => {
  // A quarter of the light passes: 0.2 of 0.8. Of 1 − 0.2 − 0.2 taken up, 0.3 comes in: 0.2 + 0.3 × 0.6 = 0.38.
  const pair: MeterReadings = { bare_W_m2: 400, filmed_W_m2: 100, bareTransmittance: 0.8, bareSolarHeatGain: 0.85, inwardFraction: 0.3, filmReflectance: { low: 0.1, best: 0.2, high: 0.3 } };
  const of = (more: Partial<MeterReadings>) => meterPair({ ...pair, ...more });

  it('ratio, gain and cuts', () => {
    expect(meterPair(pair)).toMatchObject({
      transmittanceRatio: 0.25, filmedTransmittance: near(0.2), absorptance: near(0.6), solarHeatGain: { low: near(0.35), best: near(0.38), high: near(0.41) }, cutInReading: 0.75,
      cutInHeatGain: { low: near(1 - 0.41 / 0.85), best: near(1 - 0.38 / 0.85), high: near(1 - 0.35 / 0.85) }, impliedOutdoors_W_m2: near(500), isPlausible: true,
    });
    expect(meterPair(pair).warnings).toHaveLength(1);
    expect(meterPair(pair).warnings[0]).toContain('It reads 75 % less sunlight; the cut in heat gain is about 55 % (52 % to 59 %');
  });

  it('its uncertainty is that of readings, reflectance and inward share', () => {
    // 5 % of 400 is 20, at least 10 on 100: 0.025 and a quarter of 0.05. Triangle 0.1, 0.2, 0.3: variance 0.03/18. Inward share within 0.03.
    const ratio = Math.hypot(0.025, 0.0125);
    expect(meterPair(pair).transmittanceRatioUncertainty).toBeCloseTo(ratio, 12);
    expect(meterPair(pair).solarHeatGain.standardUncertainty).toBeCloseTo(Math.hypot(0.7 * ratio * 0.8, 0.3 * Math.sqrt(0.03 / 18), 0.6 * 0.03), 12);
    expect(of({ meterAccuracy: { relative: 0.1, absolute_W_m2: 0 } }).transmittanceRatioUncertainty).toBeCloseTo(Math.hypot(0.025, 0.025), 12);
  });

  it('panes in front take up light of their own', () => {
    expect(of({ outerAbsorptance: 0.1, outerInwardHeat: 0.02 }).solarHeatGain.best).toBeCloseTo(0.2 + 0.3 * 0.5 + 0.02, 12);
    expect(of({ outerAbsorptance: 0.9 }).solarHeatGain.best).toBeCloseTo(0.2, 12);
  });

  it('a film that lets nothing through, and one that hides nothing', () => {
    expect(of({ filmed_W_m2: 0 })).toMatchObject({ transmittanceRatio: 0, solarHeatGain: { best: near(0.3 * 0.8) } });
    expect(of({ filmed_W_m2: 400 }).warnings[1]).toContain('not below the bare one');
    expect(of({ filmed_W_m2: 399 }).warnings).toHaveLength(1);
  });

  it('warns of weak sun below 200 W/m²', () => {
    expect(of({ bare_W_m2: 199, filmed_W_m2: 50 }).warnings[1]).toContain('weak (199 W/m² bare)');
    expect(of({ bare_W_m2: 200, filmed_W_m2: 50 }).warnings).toHaveLength(1);
  });

  it('warns where no window plane gets as much', () => {
    // 800 behind 0.8 are 834 behind clear glass of 0.834; the handbook's most is 804.
    expect(of({ bare_W_m2: 800 })).toMatchObject({ isPlausible: false });
    expect(of({ bare_W_m2: 800 }).warnings[1]).toContain('asks for 1000 W/m² outdoors, more than a vertical window plane gets');
    expect(of({ bare_W_m2: 800, highestBehindClear_W_m2: 835 })).toMatchObject({ isPlausible: true });
    expect(of({ bare_W_m2: 600, highestBehindClear_W_m2: 500 }).warnings[1]).toContain('more than this facade about this day (at most 500 W/m² behind clear glass) gets');
  });

  it('warns where the reading outdoors tells of another glass', () => {
    expect(of({ outdoors_W_m2: 450 }).warnings).toHaveLength(1);
    expect(of({ outdoors_W_m2: 400 }).warnings[1]).toContain('passes 1.00 by the outdoor reading, 0.80 by its figures');
    expect(of({ outdoors_W_m2: 700 }).warnings).toHaveLength(2);
  });

  it.each<[string, Partial<MeterReadings>]>([
    ['bare', { bare_W_m2: 0 }], ['bare', { bare_W_m2: Infinity }], ['filmed', { filmed_W_m2: -1 }], ['filmed', { filmed_W_m2: Infinity }], ['outdoors', { outdoors_W_m2: 0 }], ['bareTransmittance', { bareTransmittance: 0 }],
    ['bareTransmittance', { bareTransmittance: 1.1 }], ['bareSolarHeatGain', { bareSolarHeatGain: 0 }], ['bareSolarHeatGain', { bareSolarHeatGain: 1.1 }], ['filmReflectance', { filmReflectance: { low: -0.1, best: 0.2, high: 0.3 } }],
    ['filmReflectance', { filmReflectance: { low: 0.3, best: 0.2, high: 0.4 } }], ['filmReflectance', { filmReflectance: { low: 0.1, best: 0.4, high: 0.3 } }], ['filmReflectance', { filmReflectance: { low: 0.1, best: 0.2, high: 1.1 } }],
  ])('refuses %s %j', (name, wrong) => {
    expect(() => of(wrong)).toThrow(new RegExp(`^${name} must`));
    expect(() => of({ bareTransmittance: 1, bareSolarHeatGain: 1, filmReflectance: { low: 0, best: 0, high: 1 } })).not.toThrow();
  });
});

describe('the glass a pair was read behind', () => {
  const bare = glazingOptics(double);
  const filmed = glazingOptics(filmedMakeUp(double, film));
  it('gives its bare figures, and of its panes what the filmed one and the others do', () => {
    const { inwardFractions, layerAbsorptance } = filmed;
    expect(pairGlass(bare, filmed)).toEqual({
      bareTransmittance: bare.solarTransmittance, bareSolarHeatGain: bare.solarHeatGain, inwardFraction: inwardFractions[1], outerAbsorptance: near(layerAbsorptance[0]!), outerInwardHeat: near(layerAbsorptance[0]! * inwardFractions[0]!),
      filmReflectance: { low: near(filmed.frontReflectance - 0.05), best: filmed.frontReflectance, high: near(filmed.frontReflectance + 0.05) },
    });
    expect(pairGlass(bare, filmed, 'outdoor')).toMatchObject({ inwardFraction: inwardFractions[0], outerAbsorptance: near(layerAbsorptance[1]!) });
    expect(pairGlass(bare)).toMatchObject({ inwardFraction: bare.inwardFractions[1] });
    expect(pairGlass(bare)).not.toHaveProperty('filmReflectance');
    expect(pairGlass(bare, { ...filmed, frontReflectance: 0.02 }).filmReflectance!.low).toBe(0);
    expect(pairGlass(bare, { ...filmed, frontReflectance: 0.97 }).filmReflectance!.high).toBe(1);
  });
});

describe('figures moved to what was measured', () => {
  it.each([0.2, 0.3, 0.45, 0.6, 0.75])('a film with a heat gain of %p gives it', (solarHeatGain) => {
    const moved = filmAsMeasured(SINGLE_CLEAR_3_MM, film, solarHeatGain) as FilmOnClear;
    expect(glazingOptics(filmedMakeUp(SINGLE_CLEAR_3_MM, moved)).solarHeatGain).toBeCloseTo(solarHeatGain, 6);
    expect([moved.roomEmissivity, moved.side]).toEqual([0.7, 'room']);
    const own = glazingOptics(filmedMakeUp(SINGLE_CLEAR_3_MM, film)).solarHeatGain;
    if (solarHeatGain < own) expect([moved.frontReflectance, moved.backReflectance]).toEqual([0.3, 0.35]);
    else expect(moved.frontReflectance).toBeLessThan(0.3);
  });

  it('a gain that no film of the kind can give is answered with why', () => {
    for (const gain of [0.01, 0.95]) expect(filmAsMeasured(SINGLE_CLEAR_3_MM, film, gain)).toHaveProperty('why');
  });

  it.each([0.05, 0.3, 0.6, 0.75])('a glass that passes %p passes it', (transmittance) => {
    const moved = glassAsMeasured(double, transmittance) as GlazingMakeUp;
    expect(glazingOptics(moved).solarTransmittance).toBeCloseTo(transmittance, 6);
    expect(moved.panes[1]).toEqual(CLEAR_3_MM);
    expect(moved.panes[0]).toEqual({ ...CLEAR_3_MM, solarTransmittance: moved.panes[0]!.solarTransmittance });
  });

  it('a transmittance no such glass has is answered with why', () => {
    for (const transmittance of [0, 0.9, 1]) expect(glassAsMeasured(double, transmittance)).toHaveProperty('why');
    expect(() => glassAsMeasured({ key: 'none', panes: [], gaps: [] }, 0.5)).toThrow('panes');
  });
});

describe('the most a reading can be', () => {
  const at = (date: string) => highestBehindClear_W_m2({ latitude_deg: 40, date, azimuth_deg: 180 });
  it('is the larger of the clear 21sts around the day', () => {
    // On a south wall in 40° N December is above June, and autumn above summer.
    expect(at('2026-06-21')).toBeLessThan(at('2026-06-22'));
    expect(at('2026-07-01')).toBe(at('2026-07-21'));
    expect(at('2026-12-20')).toBeGreaterThanOrEqual(at('2026-12-21'));
    expect(at('2026-01-05')).toBe(Math.max(at('2026-12-21'), at('2026-01-21')));
    expect(at('2026-12-25')).toBe(Math.max(at('2026-12-21'), at('2026-01-21')));
    // The handbook's table: 254 Btu/h·ft² in January at noon, whole hours; from memory.
    expect(Math.abs(at('2026-01-21') / 3.154591 - 254)).toBeLessThan(3);
  });
  it.each(['2026-13-01', '2026-00-10', '2026-01-00', '2026-01-32', '26-01-01', 'x2026-01-01', '2026-01-01T00', '2026-1-01', '2026-01-1', 'abcd-01-01', '2026-ab-01', '2026-01-cd', ''])('refuses the day %p', (date) => {
    expect(() => at(date)).toThrow('date must be YYYY-MM-DD');
  });
});

describe('a sheet that cannot be', () => {
  it.each<[string, Partial<FilmOnClear>]>([
    ['roomEmissivity', { roomEmissivity: -0.1 }], ['roomEmissivity', { roomEmissivity: 1.1 }], ['solarTransmittance', { solarTransmittance: 0 }], ['solarTransmittance', { solarTransmittance: 0.95, frontReflectance: 0.05, backReflectance: 0.05 }],
    ['frontReflectance', { frontReflectance: 0.01 }], ['backReflectance', { solarTransmittance: 0.8, frontReflectance: 0.07, backReflectance: 0 }], ['solarTransmittance \\+ backReflectance', { solarTransmittance: 0.3, frontReflectance: 0.2, backReflectance: 0.9 }],
  ])('is refused by its %s', (name, wrong) => {
    expect(() => filmedPane({ ...film, ...wrong }, CLEAR_3_MM)).toThrow(new RegExp(`^${name} `));
  });
  it('an emissivity of nothing or all is taken', () => {
    for (const roomEmissivity of [0, 1]) expect(filmedPane({ ...film, roomEmissivity }, CLEAR_3_MM).emissivityBack).toBe(roomEmissivity);
  });
});

describe('the inward share of a label', () => {
  // LBNL-2804E: faces of summer as polynomials of S − T, of winter by U; the pane is what is left of 1/U.
  it('sealed below U 3.4, single above 4.5, half way between', () => {
    const share = (room: number, outside: number, pane: number) => (outside + pane / 2) / (outside + pane + room);
    const [S, sealedU, singleU] = [0.5, 2, 6];
    const sealed = (() => {
      const x = S - simpleTransmittance(S, sealedU);
      const pane = 1 / sealedU - 1 / (0.359073 * Math.log(sealedU) + 6.949915) - 1 / (0.025342 * sealedU + 29.163853);
      return share(1 / (199.8208128 * x ** 3 - 90.639733 * x ** 2 + 19.737055 * x + 6.766575), 1 / (5.763355 * x + 20.541528), pane);
    })();
    const single = (() => {
      const x = S - simpleTransmittance(S, singleU);
      const pane = Math.max(0, 1 / singleU - 1 / (1.788041 * singleU - 2.886625) - 1 / (0.025342 * singleU + 29.163853));
      return share(1 / (29.436546 * x ** 3 - 21.943415 * x ** 2 + 9.945872 * x + 7.426151), 1 / (2.225824 * x + 20.57708), pane);
    })();
    expect(simpleInwardFraction(S, sealedU)).toBeCloseTo(sealed, 9);
    expect(simpleInwardFraction(S, singleU)).toBeCloseTo(single, 9);
    // A single pane is thin against its films: about hi/(hi + ho) of 8.3 and 20.3.
    expect(Math.abs(simpleInwardFraction(0.86, 5.9) - 0.29)).toBeLessThan(0.02);
  });
});
