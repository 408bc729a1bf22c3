import fc from 'fast-check';
import { bodyOf, conductancesOf, dwellingLoads, dwellingYear, everyHour, facadeSun_W, hourBalance, hourResponse, opaqueGain_W, prepareDrive, ventilationOf_W_K, yearUFactor_W_m2K, type DwellingBody, type DwellingDrive } from './index.js';

const flat = { floorArea_m2: 70, thermalClass: 'medium', ceilingHeight_m: 2.5, exposedWall_m2: 35, wallU_W_m2K: 0.6, exposedRoof_m2: 0, roofU_W_m2K: 0.3, airChange_1_h: 0.5, windows: [{ area_m2: 10, uFactor_W_m2K: 5.8 }] } as const;
const body = bodyOf(flat);
const year = (of: (h: number) => number) => Float64Array.from({ length: 8760 }, (_, h) => of(h));
const outdoor_degC = year((h) => 16 - 12 * Math.cos((2 * Math.PI * (h - 480)) / 8760) + 6 * Math.sin((2 * Math.PI * ((h % 24) - 9)) / 24));
const sun = (peak_W: number) => year((h) => Math.max(0, peak_W * Math.sin((Math.PI * ((h % 24) - 6)) / 12)) * (0.6 + 0.4 * Math.sin(h * h)));
const drive = (more: Partial<DwellingDrive> = {}): DwellingDrive => ({ outdoor_degC, solar_W: sun(2500), internal_W: 250, heatingSetPoint_degC: 20, coolingSetPoint_degC: 25, ...more });
const sum = (series: ArrayLike<number>) => Array.from(series).reduce((a, b) => a + b, 0);

const someBody = fc.record({
  capacity_J_K: fc.double({ min: 3e6, max: 4e7, noNaN: true }), opaque_W_K: fc.double({ min: 0, max: 200, noNaN: true }), window_W_K: fc.double({ min: 0, max: 200, noNaN: true }),
  ventilation_W_K: fc.double({ min: 0, max: 200, noNaN: true }), surfaceConductance_W_m2K: fc.double({ min: 1.5, max: 5, noNaN: true }),
}).map((some): DwellingBody => ({ floor_m2: 70, massArea_m2: 175, facingArea_m2: 315, ...some }));

describe('the collapsed hour', () => {
  test('equals the hour written out as the standard does', () => {
    fc.assert(fc.property(someBody, fc.double({ min: 0, max: 1, noNaN: true }), fc.array(fc.double({ min: -30, max: 50, noNaN: true }), { minLength: 5, maxLength: 5 }), (some, convectiveShare, [mass = 0, outdoor = 0, solar = 0, internal = 0, plant = 0]) => {
      const r = hourResponse(some, some.ventilation_W_K, convectiveShare);
      const given = { massStart_degC: mass, outdoor_degC: outdoor, solar_W: solar * 100, internal_W: internal * 10, convectiveShare, plant_W: plant * 100 };
      const long = hourBalance(some, given);
      const end = r.massKept * mass + r.massOutdoor * outdoor + r.massSolar_K_W * given.solar_W + r.massInternal_K_W * given.internal_W + r.massPerPlant_K_W * given.plant_W;
      const air = r.airMass * mass + r.airOutdoor * outdoor + r.airSolar_K_W * given.solar_W + r.airInternal_K_W * given.internal_W + r.airPerPlant_K_W * given.plant_W;
      expect(Math.abs(end - long.massEnd_degC)).toBeLessThan(1e-9);
      expect(Math.abs(air - long.air_degC)).toBeLessThan(1e-9);
    }));
  });

  test('everything at one temperature and no gain stays there', () => {
    fc.assert(fc.property(someBody, fc.double({ min: -20, max: 40, noNaN: true }), (some, t) => {
      const hour = hourBalance(some, { massStart_degC: t, outdoor_degC: t, solar_W: 0, internal_W: 0, convectiveShare: 0.5, plant_W: 0 });
      for (const value of Object.values(hour) as number[]) expect(value).toBeCloseTo(t, 9);
    }));
  });

  test('operative temperature is 0.3 of the air and 0.7 of the surfaces', () => {
    const hour = hourBalance(body, { massStart_degC: 22, outdoor_degC: 33, solar_W: 1500, internal_W: 200, convectiveShare: 0.5, plant_W: -1000 });
    expect(hour.operative_degC).toBeCloseTo(0.3 * hour.air_degC + 0.7 * hour.surface_degC, 12);
  });
});

describe('a dwelling through the year', () => {
  test('mild weather at 22 °C and no gains ask for nothing', () => {
    const loads = dwellingLoads(body, prepareDrive(drive({ outdoor_degC: year(() => 22), solar_W: year(() => 0), internal_W: 0, initialMass_degC: 22 })));
    expect([loads.cooling_kWh, loads.heating_kWh, loads.coolingHours, loads.heatingHours, loads.peakCoolingHour]).toEqual([0, 0, 0, 0, null]);
  });

  test('more gain never asks for less cooling nor for more heating', () => {
    fc.assert(fc.property(someBody, fc.double({ min: 0, max: 3000, noNaN: true }), fc.double({ min: 0, max: 2000, noNaN: true }), (some, peak_W, more_W) => {
      const of = (W: number) => dwellingLoads(some, prepareDrive(drive({ solar_W: sun(W) })));
      const [less, more] = [of(peak_W), of(peak_W + more_W)];
      expect(more.cooling_kWh).toBeGreaterThanOrEqual(less.cooling_kWh - 1e-9);
      expect(more.heating_kWh).toBeLessThanOrEqual(less.heating_kWh + 1e-9);
      expect(more.peakCooling_W).toBeGreaterThanOrEqual(less.peakCooling_W - 1e-9);
    }), { numRuns: 25 });
  });

  test('a film that takes a share of the sun off any facade never adds cooling, and two films never save more than the sum of each alone', () => {
    const [south, west] = [sun(1800), year((h) => Math.max(0, 2200 * Math.sin((Math.PI * ((h % 24) - 10)) / 10)))];
    const cooling = (s: number, w: number) => dwellingLoads(body, prepareDrive(drive({ solar_W: facadeSun_W([{ glass_m2: s, gain_W_m2: south }, { glass_m2: w, gain_W_m2: west }]) }))).cooling_kWh;
    fc.assert(fc.property(fc.double({ min: 0, max: 0.7, noNaN: true }), fc.double({ min: 0, max: 0.7, noNaN: true }), (cutSouth, cutWest) => {
      const [none, onSouth, onWest, both] = [cooling(1, 1), cooling(1 - cutSouth, 1), cooling(1, 1 - cutWest), cooling(1 - cutSouth, 1 - cutWest)];
      expect(onSouth).toBeLessThanOrEqual(none + 1e-9);
      expect(both).toBeLessThanOrEqual(Math.min(onSouth, onWest) + 1e-9);
      expect(none - both).toBeLessThanOrEqual(none - onSouth + (none - onWest) + 1e-6);
    }), { numRuns: 15 });
  });

  test('months add up to the year, hours to the months, and the peak is an hour of the year', () => {
    const loads = dwellingLoads(body, prepareDrive(drive()));
    expect(sum(loads.monthlyCooling_kWh)).toBeCloseTo(loads.cooling_kWh, 9);
    expect(sum(loads.cooling_W) / 1000).toBeCloseTo(loads.cooling_kWh, 6);
    expect(sum(loads.heating_W) / 1000).toBeCloseTo(loads.heating_kWh, 6);
    expect(Math.max(...loads.cooling_W)).toBe(loads.peakCooling_W);
    expect(loads.cooling_W[loads.peakCoolingHour ?? -1]).toBe(loads.peakCooling_W);
    expect(loads.heating_W[loads.peakHeatingHour ?? -1]).toBe(loads.peakHeating_W);
    expect(loads.cooling_W.filter((W) => W > 0)).toHaveLength(loads.coolingHours);
    expect(loads.monthlyCooling_kWh[0]).toBeCloseTo(sum(loads.cooling_W.subarray(0, 31 * 24)) / 1000, 9);
  });

  test('buffers used again give the same year', () => {
    const buffers = { heating_W: new Float64Array(8760).fill(7), cooling_W: new Float64Array(8760).fill(7) };
    const fresh = dwellingLoads(body, prepareDrive(drive()));
    const again = dwellingLoads(body, prepareDrive(drive()), buffers);
    expect(again.cooling_W).toBe(buffers.cooling_W);
    expect(again.cooling_W).toEqual(fresh.cooling_W);
    expect(again.heating_W).toEqual(fresh.heating_W);
  });

  test('the set point is held with power enough, and passed by name of the hour without', () => {
    const held = dwellingYear(body, drive());
    const short = dwellingYear(body, drive({ coolingLimit_W: 800, heatingLimit_W: 500 }));
    const peak = held.peakCoolingHour ?? 0;
    expect(held.hour(peak).air_degC).toBeCloseTo(25, 9);
    expect(held.hoursOverCoolingSetPoint).toBe(0);
    expect(short.hour(peak).air_degC).toBeGreaterThan(25.1);
    expect(short.peakCooling_W).toBe(800);
    expect(short.hoursOverCoolingSetPoint).toBeGreaterThan(0);
    expect(short.hoursUnderHeatingSetPoint).toBeGreaterThan(0);
    expect(short.cooling_kWh).toBeLessThan(held.cooling_kWh);
  });

  test('a fan at night is the body with the fan while it runs', () => {
    const fan = Array.from({ length: 24 }, (_, h) => (h < 6 ? 150 : body.ventilation_W_K));
    const loads = dwellingLoads(body, prepareDrive(drive({ ventilation_W_K: fan })));
    expect(loads.cooling_kWh).toBeLessThan(dwellingLoads(body, prepareDrive(drive())).cooling_kWh);
    const steady = dwellingLoads({ ...body, ventilation_W_K: 150 }, prepareDrive(drive()));
    expect(dwellingLoads(body, prepareDrive(drive({ ventilation_W_K: 150 }))).cooling_kWh).toBeCloseTo(steady.cooling_kWh, 9);
  });

  test('free float leaves the plant out of it', () => {
    const floating = dwellingYear(body, drive({ heatingLimit_W: 0, coolingLimit_W: 0 }));
    expect(floating.cooling_kWh + floating.heating_kWh).toBe(0);
    expect(dwellingYear(body, drive()).freeFloat).toEqual(floating.freeFloat);
    expect(floating.freeFloat.min_degC).toBeLessThan(floating.freeFloat.mean_degC);
  });
});

describe('what is refused', () => {
  test.each([
    ['a mass outside the wall', () => conductancesOf({ ...body, opaque_W_K: 9.1 * body.massArea_m2 }), /opaque_W_K/],
    ['a negative window', () => conductancesOf({ ...body, window_W_K: -1 }), /window_W_K/],
    ['no floor', () => bodyOf({ ...flat, floorArea_m2: 0 }), /floorArea_m2/],
    ['more mass than surface', () => conductancesOf({ ...body, massArea_m2: body.facingArea_m2 + 1 }), /massArea_m2/],
    ['heating above cooling', () => prepareDrive(drive({ heatingSetPoint_degC: 26 })), /heatingSetPoint_degC/],
    ['a short year', () => prepareDrive(drive({ solar_W: [1, 2] })), /solar_W/],
    ['half a day', () => everyHour([1, 2, 3], 'internal_W'), /internal_W/],
    ['no number', () => everyHour(NaN, 'internal_W'), /internal_W/],
    ['a negative limit', () => prepareDrive(drive({ coolingLimit_W: -1 })), /coolingLimit_W/],
    ['a share above 1', () => hourResponse(body, 10, 1.1), /internalConvectiveShare/],
    ['air that leaves twice', () => ventilationOf_W_K(100, -1), /airChange_1_h/],
    ['an absorptance above 1', () => opaqueGain_W([{ area_m2: 1, u_W_m2K: 1, absorptance: 1.2, tilt_deg: 90 }]), /absorptance/],
    ['an hour after the last', () => dwellingYear(body, drive()).hour(8760), /hour/],
  ])('%s', (_, wrong, name) => {
    expect(wrong).toThrow(RangeError);
    expect(wrong).toThrow(name);
  });
});

describe('parts by hand', () => {
  test('half an air change in 180 m³ is 30 W/K', () => {
    expect(ventilationOf_W_K(180, 0.5)).toBeCloseTo(30, 12);
  });
  test('10 m² of wall at 0.5 W/m²K with absorptance 0.6 in 500 W/m² gains 0.04 × 5 × (300 − 0.5 × 4.5 × 11) W', () => {
    const light = { azimuth_deg: 180, tilt_deg: 90, cosIncidence: year(() => 1), beam_W_m2: year(() => 300), sky_W_m2: year(() => 150), ground_W_m2: year(() => 50) };
    expect(opaqueGain_W([{ area_m2: 10, u_W_m2K: 0.5, absorptance: 0.6, tilt_deg: 90, sky: light }])[12]).toBeCloseTo(0.04 * 5 * (300 - 0.5 * 4.5 * 11), 9);
  });
  test('single glass of 5.8 at rating films is 1/(1/5.8 − 1/20.3 − 1/8.324 + 1/12 + 1/7.036) through the year', () => {
    expect(yearUFactor_W_m2K({ uFactor_W_m2K: 5.8 })).toBeCloseTo(1 / (1 / 5.8 - 1 / 20.3 - 1 / 8.324 + 1 / 12 + 1 / 7.036), 9);
  });
  test('six facades add up as they would one by one', () => {
    const facades = Array.from({ length: 6 }, (_, i) => ({ glass_m2: i + 1, gain_W_m2: year((h) => (h % 24) * (i + 1)) }));
    expect(facadeSun_W(facades)[15]).toBeCloseTo(15 * (1 + 4 + 9 + 16 + 25 + 36), 9);
    expect(sum(facadeSun_W([], new Float64Array(8760).fill(3)))).toBe(0);
  });
});
