import { bodyOf, conductancesOf, dwellingLoads, dwellingYear, everyHour, facadeSun_W, hourResponse, opaqueGain_W, plantLimit, prepareDrive, ventilationOf_W_K, yearUFactor_W_m2K, type DwellingDrive } from './index.js';

const year = (of: (h: number) => number) => Float64Array.from({ length: 8760 }, (_, h) => of(h));
const flat = year(() => 0);
const given = {
  floorArea_m2: 100, thermalClass: 'medium', ceilingHeight_m: 2.5, exposedWall_m2: 40, wallU_W_m2K: 0.5, exposedRoof_m2: 100, roofU_W_m2K: 0.25, airChange_1_h: 0.6, windows: [{ area_m2: 10, uFactor_W_m2K: 0 }, { area_m2: 5, uFactor_W_m2K: 5.8 }],
} as const;
const body = bodyOf(given);
const drive = (more: Partial<DwellingDrive> = {}): DwellingDrive => ({ outdoor_degC: flat, solar_W: flat, internal_W: 0, heatingSetPoint_degC: 20, coolingSetPoint_degC: 26, ...more });

describe('a body added up by hand', () => {
  it('walls and roof by area and U, windows at their films of the year, air by volume', () => {
    expect(body.floor_m2).toBe(100);
    expect(body.opaque_W_K).toBeCloseTo(40 * 0.5 + 100 * 0.25, 12);
    expect(body.window_W_K).toBeCloseTo(5 * yearUFactor_W_m2K({ uFactor_W_m2K: 5.8 }), 12);
    expect(body.ventilation_W_K).toBeCloseTo((1200 * 250 * 0.6) / 3600, 12);
    expect(body.facingArea_m2).toBe(450);
  });

  // ISO 13790:2008, Table 12: capacity in kJ/m²K and mass area per floor.
  it.each([['very-light', 80, 2.5], ['light', 110, 2.5], ['medium', 165, 2.5], ['heavy', 260, 3], ['very-heavy', 370, 3.5]] as const)('%s holds %p kJ/m²K on %p times the floor', (thermalClass, capacity, area) => {
    const { capacity_J_K, massArea_m2 } = bodyOf({ ...given, thermalClass });
    expect([capacity_J_K, massArea_m2]).toEqual([capacity * 1000 * 100, area * 100]);
  });

  // H_is = h_is × 4.5 × floor; H_ms = 9.1 × 250 = 2275; H_em = 1/(1/45 − 1/2275); H_1 = 1/(1/50 + 1/H_is).
  it('its conductances are those of the standard', () => {
    const own = { ...body, surfaceConductance_W_m2K: 3.45 };
    const of = conductancesOf(own);
    const through = 1 / (1 / 50 + 1 / (3.45 * 450));
    expect(of.airToSurface_W_K).toBeCloseTo(3.45 * 450, 9);
    expect(of.massToSurface_W_K).toBeCloseTo(2275, 9);
    expect(of.outdoorToMass_W_K).toBeCloseTo(1 / (1 / 45 - 1 / 2275), 9);
    expect(of.throughAir_W_K).toBeCloseTo(through, 9);
    expect(of.toSurface_W_K).toBeCloseTo(through + body.window_W_K, 9);
    expect(of.toMass_W_K).toBeCloseTo(1 / (1 / (through + body.window_W_K) + 1 / 2275), 9);
    expect(of.shareToMass).toBeCloseTo(250 / 450, 12);
    expect(of.shareToSurface).toBeCloseTo(1 - 250 / 450 - body.window_W_K / (9.1 * 450), 12);
    expect(conductancesOf({ ...own, opaqueToMass_W_K: 12 }).outdoorToMass_W_K).toBe(12);
    expect(conductancesOf(own, 0).throughAir_W_K).toBe(0);
  });

  it.each([
    ['no floor', { floor_m2: 0 }], ['no mass', { capacity_J_K: 0 }], ['endless mass', { capacity_J_K: Infinity }], ['no mass area', { massArea_m2: 0 }], ['no surfaces', { facingArea_m2: 0 }], ['endless surfaces', { facingArea_m2: Infinity }],
    ['no surface film', { surfaceConductance_W_m2K: 0 }], ['walls below nothing', { opaque_W_K: -1 }], ['endless walls', { opaque_W_K: Infinity }], ['endless windows', { window_W_K: Infinity }], ['no figure', { window_W_K: Number.NaN }],
  ])('%s are refused', (_, wrong) => {
    expect(() => conductancesOf({ ...body, ...wrong })).toThrow(Object.keys(wrong)[0]);
    expect(() => conductancesOf({ ...body, ...wrong })).toThrow(RangeError);
  });

  it('all its surface may be mass; air, volume and windows have their ends', () => {
    expect(conductancesOf({ ...body, massArea_m2: 450 }).shareToMass).toBe(1);
    for (const air of [-1, Infinity, Number.NaN]) expect(() => conductancesOf(body, air)).toThrow('ventilation_W_K');
    for (const volume of [0, -1, Number.NaN]) expect(() => ventilationOf_W_K(volume, 1)).toThrow('volume_m3');
    expect(ventilationOf_W_K(180, 0)).toBe(0);
    expect(yearUFactor_W_m2K({ uFactor_W_m2K: 0 })).toBe(0);
    for (const uFactor_W_m2K of [-0.1, 12, 13, Number.NaN]) expect(() => yearUFactor_W_m2K({ uFactor_W_m2K })).toThrow('uFactor_W_m2K');
    for (const share of [-0.1, 1.1]) expect(() => hourResponse(body, 10, share)).toThrow('internalConvectiveShare');
  });
});

describe('sun on opaque parts', () => {
  const light = (W: number) => ({ azimuth_deg: 0, tilt_deg: 0, cosIncidence: flat, beam_W_m2: year(() => W), sky_W_m2: flat, ground_W_m2: flat });
  // A roof sees all of the sky, a wall half, a floor over air none; 0.04 × U × A × 5 ε × 11 K.
  it.each([[0, 1], [90, 0.5], [60, 0.75], [180, 0]])('at a tilt of %p° the sky is seen with a share of %p', (tilt_deg, share) => {
    const surface = { area_m2: 20, u_W_m2K: 0.4, absorptance: 0.5, tilt_deg };
    expect(opaqueGain_W([surface])[7]).toBeCloseTo(-0.04 * 0.4 * 20 * share * 5 * 0.9 * 11, 9);
    expect(opaqueGain_W([{ ...surface, emittance: 0.2 }])[7]).toBeCloseTo(-0.04 * 0.4 * 20 * share * 5 * 0.2 * 11, 9);
    expect(opaqueGain_W([{ ...surface, sky: light(600) }, { ...surface, absorptance: 0, sky: light(600) }])[8759]).toBeCloseTo(0.04 * 0.4 * 20 * (0.5 * 600 - 2 * share * 5 * 0.9 * 11), 9);
  });

  it.each([[{ area_m2: -1 }], [{ u_W_m2K: -1 }], [{ absorptance: -0.1 }], [{ absorptance: 1.1 }], [{ tilt_deg: -1 }], [{ tilt_deg: 181 }], [{ area_m2: Number.NaN }], [{ u_W_m2K: Number.NaN }], [{ tilt_deg: Number.NaN }]])('refuses %j', (wrong) => {
    expect(() => opaqueGain_W([{ area_m2: 1, u_W_m2K: 1, absorptance: 0.5, tilt_deg: 90, ...wrong }])).toThrow(Object.keys(wrong)[0]);
  });

  it('no area, no loss through it, black and white are taken', () => {
    for (const end of [{ area_m2: 0 }, { u_W_m2K: 0 }]) expect(opaqueGain_W([{ area_m2: 1, u_W_m2K: 1, absorptance: 1, tilt_deg: 0, sky: light(500), ...end }])[0]).toBeCloseTo(0, 12);
    expect(opaqueGain_W([{ area_m2: 1, u_W_m2K: 1, absorptance: 1, tilt_deg: 180, sky: light(500) }])[0]).toBeCloseTo(0.04 * 500, 9);
  });

  it('joins the sun through the windows', () => {
    expect(prepareDrive(drive({ solar_W: year((h) => h), opaqueSolar_W: year(() => -30) })).solar_W[100]).toBe(70);
    expect(() => prepareDrive(drive({ opaqueSolar_W: [1] }))).toThrow('opaqueSolar_W');
  });
});

describe('sun through any number of facades', () => {
  const facades = (count: number) => Array.from({ length: count }, (_, i) => ({ glass_m2: i + 1, gain_W_m2: year((h) => h * 10 ** i) }));
  it.each([1, 2, 3, 4, 5, 8, 9])('%p facades one by one', (count) => {
    const sum = Array.from({ length: count }, (_, i) => (i + 1) * 10 ** i).reduce((a, b) => a + b, 0);
    const used = year(() => 99);
    expect(facadeSun_W(facades(count), used)[3]).toBeCloseTo(3 * sum, 4);
    expect(facadeSun_W(facades(count), used, year(() => 5))[3]).toBeCloseTo(3 * sum + 5, 4);
    expect(used[8759]! / (8759 * sum + 5)).toBeCloseTo(1, 12);
  });
  it('none at all leave the base, or nothing', () => {
    expect(facadeSun_W([], year(() => 9), year(() => 5))[3]).toBe(5);
    expect(facadeSun_W([], year(() => 9))[3]).toBe(0);
  });
  it('refuses glass below nothing and years too short', () => {
    expect(() => facadeSun_W([{ glass_m2: -1, gain_W_m2: flat }])).toThrow('glass_m2');
    expect(() => facadeSun_W([{ glass_m2: 1, gain_W_m2: new Float64Array(24) }])).toThrow('gain_W_m2');
    expect(() => facadeSun_W([], undefined, new Float64Array(24))).toThrow('base_W');
    expect(facadeSun_W([{ glass_m2: 0, gain_W_m2: year(() => 7) }])[0]).toBe(0);
  });
});

describe('what drives a year', () => {
  it('is a figure, a day or a year', () => {
    expect(everyHour(3)[8759]).toBe(3);
    expect(everyHour(Array.from({ length: 24 }, (_, h) => h))[8759]).toBe(23);
    expect(everyHour(Array.from({ length: 8760 }, (_, h) => h))[8759]).toBe(8759);
    expect(everyHour(flat)).toBe(flat);
    for (const wrong of [new Float64Array(24 * 365 - 1), new Float64Array(25), []]) expect(() => everyHour(wrong)).toThrow('24 or 8760');
    expect(() => everyHour(Number.NaN)).toThrow('value must be numbers');
    expect(everyHour(new Float64Array(24).fill(2))[100]).toBe(2);
  });

  it.each([
    ['outdoor_degC', { outdoor_degC: [1] }], ['solar_W', { solar_W: Array<number>(24).fill(0) }], ['internal_W', { internal_W: Number.NaN }], ['ventilation_W_K', { ventilation_W_K: -1 }], ['heatingLimit_W', { heatingLimit_W: -1 }],
    ['coolingLimit_W', { coolingLimit_W: -1 }], ['heatingSetPoint_degC', { heatingSetPoint_degC: Number.NaN }], ['coolingSetPoint_degC', { coolingSetPoint_degC: Number.NaN }],
  ])('names a wrong %s', (name, wrong) => {
    expect(() => prepareDrive(drive(wrong))).toThrow(new RegExp(`^${name} must`));
  });

  it('set points may meet, in every hour but none may cross', () => {
    expect(prepareDrive(drive({ heatingSetPoint_degC: 22, coolingSetPoint_degC: 22 })).internalConvectiveShare).toBe(0.5);
    expect(() => prepareDrive(drive({ heatingSetPoint_degC: year((h) => (h === 8759 ? 27 : 20)) }))).toThrow('in hour 8759');
    expect(() => plantLimit(-1)).toThrow('limit_W must be 0 or more');
    expect(plantLimit([...Array<number>(23).fill(500), 200]).least_W).toBe(200);
  });
});

describe('a dwelling at rest', () => {
  // Everything steady: what comes in at the mass and the surfaces leaves by the air and the windows.
  const steady = { outdoor_degC: year(() => 0), initialMass_degC: 20 };
  const lossOf = (set: number) => {
    const { throughAir_W_K, outdoorToMass_W_K, massToSurface_W_K, window_W_K, airToSurface_W_K } = conductancesOf(body);
    // Surfaces between the air at the set point and outdoors by windows and by walls behind the mass.
    const walls = 1 / (1 / outdoorToMass_W_K + 1 / massToSurface_W_K);
    const surface = (airToSurface_W_K * set) / (airToSurface_W_K + window_W_K + walls);
    expect(throughAir_W_K).toBeGreaterThan(0);
    return body.ventilation_W_K * set + (window_W_K + walls) * surface;
  };

  it('takes the heat it loses, hour by hour, at the end of a long cold', () => {
    const loads = dwellingLoads(body, prepareDrive(drive(steady)));
    expect(loads.heating_W[8759]).toBeCloseTo(lossOf(20), 6);
    expect(loads.heatingHours).toBe(8760);
    expect(loads.heating_kWh).toBeCloseTo(loads.heating_W.reduce((a, b) => a + b, 0) / 1000, 6);
    expect(loads.monthlyHeating_kWh).toHaveLength(12);
    expect(loads.monthlyCooling_kWh).toEqual(Array(12).fill(0));
    expect(loads.monthlyHeating_kWh.reduce((a, b) => a + b, 0)).toBeCloseTo(loads.heating_kWh, 6);
    expect(loads.monthlyHeating_kWh[11]).toBeCloseTo((lossOf(20) * 744) / 1000, 6);
    expect([loads.peakCoolingHour, loads.coolingHours, loads.hoursUnderHeatingSetPoint]).toEqual([null, 0, 0]);
  });

  it('gives up what comes in on long hot days, and says the first hour of the peak', () => {
    const hot = dwellingLoads(body, prepareDrive(drive({ outdoor_degC: year(() => 26), internal_W: year((h) => (h < 100 ? 0 : 1000)), internalConvectiveShare: 1, initialMass_degC: 26 })));
    expect(hot.cooling_W[8759]).toBeCloseTo(1000, 6);
    expect([hot.peakHeatingHour, hot.heatingHours]).toEqual([null, 0]);
    expect(hot.peakCooling_W).toBeCloseTo(1000, 6);
    const cold = dwellingLoads(body, prepareDrive(drive({ outdoor_degC: year((h) => (h === 50 ? -10 : h === 60 ? -5 : 20)) })));
    expect(cold.peakHeatingHour).toBe(50);
    expect(dwellingLoads(body, prepareDrive(drive({ ...steady, initialMass_degC: -10 }))).peakHeatingHour).toBe(0);
    expect(dwellingLoads(body, prepareDrive(drive({ outdoor_degC: year(() => 40), initialMass_degC: 60 }))).peakCoolingHour).toBe(0);
  });

  it('with as much plant as it needs holds its set points, with a watt less does not', () => {
    const need = lossOf(20);
    const of = (heatingLimit_W: number) => dwellingLoads(body, prepareDrive(drive({ ...steady, initialMass_degC: 15, heatingLimit_W })));
    const short = of(need - 1);
    expect(short.heatingHours).toBe(8760);
    expect(short.hoursUnderHeatingSetPoint).toBe(8760);
    expect(short.peakHeating_W).toBe(need - 1);
    expect(of(need * 3).hoursUnderHeatingSetPoint).toBeLessThan(100);
    expect(of(0)).toMatchObject({ heatingHours: 0, peakHeatingHour: null, hoursUnderHeatingSetPoint: 8760, heating_kWh: 0 });
    const hot = (coolingLimit_W: number) => dwellingLoads(body, prepareDrive(drive({ outdoor_degC: year(() => 26), internal_W: 1000, initialMass_degC: 26, coolingLimit_W })));
    expect(hot(5000).hoursOverCoolingSetPoint).toBe(0);
    expect(hot(400).hoursOverCoolingSetPoint).toBeGreaterThan(8700);
    expect(hot(0)).toMatchObject({ coolingHours: 0, peakCoolingHour: null, cooling_kWh: 0 });
  });

  it('a plant that is short at night only is short at night only', () => {
    const night = Array.from({ length: 24 }, (_, h) => (h < 6 ? 10 : 1e6));
    const loads = dwellingLoads(body, prepareDrive(drive({ ...steady, heatingLimit_W: night })));
    expect(loads.hoursUnderHeatingSetPoint).toBe(365 * 6);
    expect(loads.heating_W[5]).toBe(10);
    const hot = dwellingLoads(body, prepareDrive(drive({ outdoor_degC: year(() => 40), initialMass_degC: 30, coolingLimit_W: night })));
    expect(hot.hoursOverCoolingSetPoint).toBe(365 * 6);
    expect(hot.cooling_W[24 * 200]).toBe(10);
  });

  it('left to itself comes to the weather, and to its gains over its losses', () => {
    const free = dwellingYear(body, drive({ outdoor_degC: year(() => 15), initialMass_degC: 15 })).freeFloat;
    expect([free.min_degC, free.mean_degC, free.max_degC]).toEqual([15, 15, 15].map((t) => expect.closeTo(t, 9) as unknown));
    const swing = dwellingYear(body, drive({ outdoor_degC: year((h) => 15 + 10 * Math.sin((2 * Math.PI * h) / 24)), initialMass_degC: 15 })).freeFloat;
    expect(swing.mean_degC).toBeGreaterThan(14.9);
    expect(swing.mean_degC).toBeLessThan(15.1);
    expect(swing.max_degC).toBeGreaterThan(15.5);
    expect(swing.min_degC).toBeLessThan(14.5);
  });

  it('shows its temperatures in any hour of the year, with the air change of that hour', () => {
    const fan = year((h) => (h % 24 < 6 ? 400 : 20));
    const run = dwellingYear(body, drive({ outdoor_degC: year(() => 30), internal_W: 500, ventilation_W_K: fan, coolingLimit_W: 0, heatingLimit_W: 0, initialMass_degC: 30 }));
    // With the fan the air is nearer to the 30° outdoors than without.
    expect(run.hour(8755 - 19).air_degC).toBeLessThan(run.hour(8755).air_degC);
    for (const hour of [-1, 0.5, 8760, Number.NaN]) expect(() => run.hour(hour)).toThrow('hour must be 0…8759');
    expect(run.hour(0).air_degC).toBeGreaterThan(30);
  });
});
