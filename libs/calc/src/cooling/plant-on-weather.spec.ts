import { openCatalogue } from '#catalogue';
import fc from 'fast-check';
import { bodyOf, dwellingLoads, facadeSun_W, prepareDrive } from '../dwelling/index.js';
import { electricityRatio, latentLoad_W, plantCurves, plantOnWeather, runPlant, type PlantState } from './index.js';
import { plainYear } from './plain-year.bench.js';

const { plants } = openCatalogue();
const plantOf = (value: number, more: Partial<PlantState> = {}): PlantState => ({ kind: 'single-speed', performance: plants.performance('single-speed'), ratedCapacity_W: 7000, efficiency: { scale: 'eer', value }, ...more });
const year = (of: (h: number) => number) => Float64Array.from({ length: 8760 }, (_, h) => of(h));
const weatherOf = (mean_degC: number) => ({ outdoor_degC: year((h) => mean_degC - 12 * Math.cos((2 * Math.PI * (h - 480)) / 8760) + 8 * Math.sin((2 * Math.PI * ((h % 24) - 9)) / 24)) });
const weather = weatherOf(22);
const load_W = year((h) => Math.max(0, (weather.outdoor_degC[h]! - 20) * 330));
const near = (got: number, wanted: number) => {
  expect(wanted).toBeGreaterThan(0);
  expect(Math.abs(got / wanted - 1)).toBeLessThan(1e-9);
};

describe('machines of one kind under one weather', () => {
  test('curves made once serve any size and efficiency', () => {
    const curves = plantCurves(plantOf(9), weather);
    for (const plant of [plantOf(11, { ratedCapacity_W: 5000 }), plantOf(14.5, { ratedCapacity_W: 12_000 })]) {
      const [shared, own] = [plantOnWeather(plant, weather, curves), plantOnWeather(plant, weather)];
      expect(runPlant(shared, { sensibleLoad_W: load_W }).electricity_kWh).toEqual(runPlant(own, { sensibleLoad_W: load_W }).electricity_kWh);
    }
    expect(() => plantOnWeather(plantOf(11, { indoorWetBulb_degC: 17 }), weather, curves)).toThrow(/wet bulb/);
  });

  test.each([6000, 2500])('of two that differ in efficiency alone one run gives both, at %d W and beyond its limit', (ratedCapacity_W) => {
    const [old, young] = [plantOnWeather(plantOf(9, { ratedCapacity_W }), weather), plantOnWeather(plantOf(13, { ratedCapacity_W }), weather)];
    const loads = { sensibleLoad_W: load_W, latentLoad_W: latentLoad_W(old, load_W) };
    const ratio = electricityRatio(young, old)!;
    expect(ratio).toBeCloseTo(9 / 13, 12);
    const [before, after] = [runPlant(old, loads), runPlant(young, loads)];
    near(ratio * before.electricity_total_kWh, after.electricity_total_kWh);
    near(ratio * before.peak_kW, after.peak_kW);
    near(before.runHours_h, after.runHours_h);
  });

  test.each([['part load', { degradationCoefficient: 0.07 }], ['size', { ratedCapacity_W: 8000 }], ['ducts', { distributionEfficiency: 0.8 }], ['moisture', { sensibleHeatRatio: 0.8 }], ['indoor air', { indoorWetBulb_degC: 17 }]])('a difference in %s asks for a run', (_, more) => {
    expect(electricityRatio(plantOnWeather(plantOf(13, more), weather), plantOnWeather(plantOf(9), weather))).toBeNull();
  });
});

describe('the fast line and its plain twin', () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  test('agree to 1e-9 for any dwelling, schedule, weather and machine', () => {
    const some = fc.record({ floor_m2: between(30, 200), wall_m2: between(5, 120), glass_m2: between(1, 30), U: between(1.2, 5.9), air: between(0.1, 2), mean_degC: between(14, 28), setPoint: between(23, 27), setBack: between(0, 3), internal_W: between(50, 900), ton_W: between(2500, 14_000), eer: between(7, 16), limit_W: between(1500, 9000), peaks: fc.array(between(50, 700), { minLength: 4, maxLength: 4 }), thermalClass: fc.constantFrom('very-light' as const, 'medium' as const, 'very-heavy' as const) });
    fc.assert(fc.property(some, (x) => {
      const body = bodyOf({ floorArea_m2: x.floor_m2, thermalClass: x.thermalClass, ceilingHeight_m: 2.5, exposedWall_m2: x.wall_m2, wallU_W_m2K: 0.6, exposedRoof_m2: 0, roofU_W_m2K: 0.3, airChange_1_h: x.air, windows: [{ area_m2: x.glass_m2, uFactor_W_m2K: x.U }] });
      const facades = x.peaks.map((peak, i) => ({ glass_m2: x.glass_m2 / 4, gain_W_m2: year((h) => Math.max(0, peak * Math.sin((Math.PI * ((h % 24) - 3 - 3 * i)) / 12))) }));
      const { outdoor_degC } = weatherOf(x.mean_degC);
      const schedules = { internal_W: Array.from({ length: 24 }, (_, h) => (h < 8 ? x.internal_W : x.internal_W / 2)), heatingSetPoint_degC: 19, coolingSetPoint_degC: Array.from({ length: 24 }, (_, h) => (h < 9 ? x.setPoint : x.setPoint + x.setBack)), coolingLimit_W: x.limit_W, heatingLimit_W: 3000 };
      const plant = plantOf(x.eer, { ratedCapacity_W: x.ton_W });
      const plain = plainYear({ body, facades, outdoor_degC, ...schedules, plant });
      const loads = dwellingLoads(body, prepareDrive({ outdoor_degC, solar_W: facadeSun_W(facades), ...schedules }));
      const machine = runPlant(plantOnWeather(plant, { outdoor_degC }), { sensibleLoad_W: loads.cooling_W });
      for (const [got, wanted] of [[loads.cooling_kWh, plain.cooling_kWh], [loads.heating_kWh, plain.heating_kWh], [loads.peakCooling_W, plain.peakCooling_W], [machine.electricity_total_kWh, plain.electricity_kWh], [machine.runHours_h, plain.runHours_h]] as const) {
        expect(Math.abs(got - wanted)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted)));
      }
    }), { numRuns: 8 });
  });

  test('a sum that begins with a base, of any number of sides, is base and sides one by one', () => {
    const base = year((h) => (h % 13) - 4);
    fc.assert(fc.property(fc.array(between(0, 20), { maxLength: 9 }), fc.boolean(), (areas, withBase) => {
      const facades = areas.map((glass_m2, i) => ({ glass_m2, gain_W_m2: year((h) => (h % (5 + i)) * 31) }));
      const sum = facadeSun_W(facades, new Float64Array(8760).fill(5), withBase ? base : undefined);
      for (const h of [0, 17, 4000, 8759]) expect(sum[h]).toBeCloseTo(facades.reduce((W, f) => W + f.glass_m2 * f.gain_W_m2[h]!, withBase ? base[h]! : 0), 8);
    }), { numRuns: 12 });
    expect(() => facadeSun_W([], undefined, new Float64Array(24))).toThrow(/base_W/);
  });
});
