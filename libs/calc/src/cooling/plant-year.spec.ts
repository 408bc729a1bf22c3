import { openCatalogue } from '#catalogue';
import fc from 'fast-check';
import { bodyOf, dwellingLoads, facadeSun_W, prepareDrive } from '../dwelling/index.js';
import type { Efficiency, PlantKind } from '../portfolio/index.js';
import { coolingPlant, degradationOf, heatingUse, latentLoad_W, plantOnWeather, plantYear, ratedCop, runPlant, savingWarnings, seasonalChain, seasonOverRated, sensibleLimit_W, type PlantState } from './index.js';
import { plainYear } from './plain-year.bench.js';

const { plants } = openCatalogue();
const plantOf = (kind: PlantKind, efficiency: Efficiency, more: Partial<PlantState> = {}): PlantState => ({ kind, efficiency, performance: plants.performance(kind), ratedCapacity_W: 7000, ...more });
const kinds: readonly (readonly [PlantKind, Efficiency])[] = [
  ['single-speed', { scale: 'seer', value: 14 }], ['two-speed', { scale: 'seer', value: 16 }], ['heat-pump', { scale: 'seer2', value: 14.3 }],
  ['room-unit', { scale: 'eer', value: 10.7 }], ['mini-split', { scale: 'seer2', value: 20 }], ['central', { scale: 'kW_ton', value: 0.7 }],
];
const year = (of: (h: number) => number) => Float64Array.from({ length: 8760 }, (_, h) => of(h));
const outdoor_degC = year((h) => 22 - 12 * Math.cos((2 * Math.PI * (h - 480)) / 8760) + 8 * Math.sin((2 * Math.PI * ((h % 24) - 9)) / 24));
const weather = { outdoor_degC };
const load_W = year((h) => Math.max(0, (outdoor_degC[h]! - 20) * 330));
const sum = (series: ArrayLike<number>) => Array.from(series).reduce((a, b) => a + b, 0);

describe('a plant through the year', () => {
  test.each(kinds)('%s: the fast year is the single hours one after the other', (kind, efficiency) => {
    const plant = plantOf(kind, efficiency, { distributionEfficiency: 0.9 });
    const fast = plantYear(plant, load_W, weather);
    let [electricity, run, unmet, peak] = [0, 0, 0, 0];
    for (let h = 0; h < 8760; h++) {
      const hour = coolingPlant(plant, { outdoor_degC: outdoor_degC[h]!, sensibleLoad_W: load_W[h]! });
      electricity += hour.electricity_W / 1000;
      run += hour.runShare;
      unmet += hour.unmet_W / 1000;
      peak = Math.max(peak, hour.electricity_W / 1000);
      expect(Math.abs(fast.electricity_kWh[h]! * 1000 - hour.electricity_W)).toBeLessThan(1e-8);
    }
    expect(Math.abs(fast.electricity_total_kWh / electricity - 1)).toBeLessThan(1e-9);
    expect(Math.abs(fast.runHours_h / run - 1)).toBeLessThan(1e-9);
    expect(Math.abs(fast.peak_kW / peak - 1)).toBeLessThan(1e-9);
    expect(fast.unmet_kWh).toBeCloseTo(unmet, 6);
  });

  test('dwelling and plant agree with the plain twin to 1e-9', () => {
    const body = bodyOf({ floorArea_m2: 75, thermalClass: 'light', ceilingHeight_m: 2.5, exposedWall_m2: 40, wallU_W_m2K: 0.6, exposedRoof_m2: 20, roofU_W_m2K: 0.3, airChange_1_h: 0.5, windows: [{ area_m2: 12, uFactor_W_m2K: 5.8 }] });
    const facades = [0, 3, 6, 9].map((turn) => ({ glass_m2: 2 + turn / 3, gain_W_m2: year((h) => Math.max(0, 450 * Math.sin((Math.PI * ((h % 24) - 3 - turn)) / 12))) }));
    const schedules = { internal_W: Array.from({ length: 24 }, (_, h) => (h < 8 ? 300 : 180)), heatingSetPoint_degC: 20, coolingSetPoint_degC: Array.from({ length: 24 }, (_, h) => (h < 9 ? 24 : 26)) };
    const limits = { coolingLimit_W: 3500, heatingLimit_W: 900 };
    const plant = plantOf('single-speed', { scale: 'eer', value: 11 });
    const plain = plainYear({ body, facades, outdoor_degC, ...schedules, ...limits, plant });
    const loads = dwellingLoads(body, prepareDrive({ outdoor_degC, solar_W: facadeSun_W(facades), ...schedules, ...limits }));
    const machine = runPlant(plantOnWeather(plant, weather), { sensibleLoad_W: loads.cooling_W });
    for (const [got, wanted] of [[loads.cooling_kWh, plain.cooling_kWh], [loads.heating_kWh, plain.heating_kWh], [loads.peakCooling_W, plain.peakCooling_W], [machine.electricity_total_kWh, plain.electricity_kWh], [machine.runHours_h, plain.runHours_h]] as const) {
      expect(wanted).toBeGreaterThan(0);
      expect(Math.abs(got / wanted - 1)).toBeLessThan(1e-9);
    }
    expect(loads.hoursOverCoolingSetPoint).toBeGreaterThan(0);
  });

  test.each(kinds)('%s: more load never draws less, and never beyond full run', (kind, efficiency) => {
    const plant = plantOf(kind, efficiency);
    fc.assert(fc.property(fc.double({ min: 0, max: 9000, noNaN: true }), fc.double({ min: 0, max: 3000, noNaN: true }), fc.double({ min: 15, max: 48, noNaN: true }), (load, more, outdoor) => {
      const at = (sensibleLoad_W: number) => coolingPlant(plant, { outdoor_degC: outdoor, sensibleLoad_W });
      const [less, most] = [at(load), at(load + more)];
      expect(most.electricity_W).toBeGreaterThanOrEqual(less.electricity_W - 1e-9);
      expect(most.runShare).toBeLessThanOrEqual(1);
      expect(most.electricity_W).toBeLessThanOrEqual(at(1e6).electricity_W + 1e-9);
    }));
  });

  test('no load, no electricity', () => {
    const idle = plantYear(plantOf('single-speed', { scale: 'eer', value: 11 }), year(() => 0), weather);
    expect([idle.electricity_total_kWh, idle.runHours_h, idle.unmet_kWh, idle.peakHour]).toEqual([0, 0, 0, null]);
  });

  test('with the moisture of the dwelling as found kept, a film saves less than with moisture following', () => {
    const on = plantOnWeather(plantOf('single-speed', { scale: 'eer', value: 11 }, { ratedCapacity_W: 12_000 }), weather);
    const filmed = load_W.map((W) => W * 0.8);
    const asFound = runPlant(on, { sensibleLoad_W: load_W });
    const kept = runPlant(on, { sensibleLoad_W: filmed, latentLoad_W: latentLoad_W(on, load_W) });
    const following = runPlant(on, { sensibleLoad_W: filmed });
    const [low, high] = [asFound.electricity_total_kWh - kept.electricity_total_kWh, asFound.electricity_total_kWh - following.electricity_total_kWh];
    expect(low).toBeGreaterThan(0);
    // dQ/COP against dQ/(SHR·COP): the two differ by the sensible heat ratio, but for part load.
    expect(low / high).toBeGreaterThan(0.7);
    expect(low / high).toBeLessThan(0.76);
    expect(runPlant(on, { sensibleLoad_W: load_W, latentLoad_W: latentLoad_W(on, load_W) }).electricity_total_kWh).toBeCloseTo(asFound.electricity_total_kWh, 9);
  });

  test('beyond capacity heat is left, not electricity; held to its limit nothing is left', () => {
    const plant = plantOf('single-speed', { scale: 'eer', value: 11 }, { ratedCapacity_W: 4000 });
    const on = plantOnWeather(plant, weather);
    const over = runPlant(on, { sensibleLoad_W: load_W.map((W) => W * 3) });
    expect(over.unmet_kWh).toBeGreaterThan(0);
    expect(over.unmetHours).toBeGreaterThan(0);
    const limit = sensibleLimit_W(on);
    const held = runPlant(on, { sensibleLoad_W: load_W.map((W, h) => Math.min(W * 3, limit[h]!)) });
    expect(held.unmet_kWh).toBeCloseTo(0, 6);
    expect(held.electricity_total_kWh).toBeCloseTo(over.electricity_total_kWh, 6);
  });

  test('a load off an oversized machine saves less than the average kWh: at half load and Cd 0.2, 0.988 of full-load input', () => {
    const plant = plantOf('single-speed', { scale: 'eer', value: 10 }, { degradationCoefficient: 0.2, sensibleHeatRatio: 1 });
    const { availableCapacity_W, inputFactor } = coolingPlant(plant, { outdoor_degC: 35, sensibleLoad_W: 1000 });
    const at = (sensibleLoad_W: number) => coolingPlant(plant, { outdoor_degC: 35, sensibleLoad_W }).electricity_W;
    const half = availableCapacity_W / 2;
    const full = (inputFactor * 3.412141633) / 10;
    expect((at(half + 1) - at(half - 1)) / 2 / full).toBeCloseTo(0.988, 3);
    expect(at(half) / half / full).toBeCloseTo(1.111, 3);
  });
});

describe('ratings', () => {
  test('SEER2 of a mini-split is used as it stands, at any temperature and load', () => {
    const split = plantOf('mini-split', { scale: 'seer2', value: 20 }, { sensibleHeatRatio: 1 });
    expect(coolingPlant(split, { outdoor_degC: 41, sensibleLoad_W: 1500 }).electricity_W).toBeCloseTo((1500 * 3.412141633) / 20, 5);
  });
  test('the loss at part load goes by SEER, and a stated one wins', () => {
    expect(degradationOf(plantOf('single-speed', { scale: 'seer', value: 12.9 }))).toBe(0.2);
    expect(degradationOf(plantOf('single-speed', { scale: 'seer', value: 13 }))).toBe(0.07);
    expect(degradationOf(plantOf('room-unit', { scale: 'eer', value: 10 }))).toBe(0.22);
    expect(degradationOf(plantOf('single-speed', { scale: 'seer', value: 16 }, { degradationCoefficient: 0.25 }))).toBe(0.25);
  });
  test('a load that is not a year of hours is refused, never worked into a figure', () => {
    const on = plantOnWeather(plantOf('single-speed', { scale: 'seer', value: 14 }), { outdoor_degC: new Float64Array(8760).fill(30) });
    const year = new Float64Array(8760);
    expect(() => runPlant(on, { sensibleLoad_W: new Float64Array(24) })).toThrow('sensibleLoad_W must have 8760 hours, got 24');
    expect(() => runPlant(on, { sensibleLoad_W: year, latentLoad_W: new Float64Array(8759) })).toThrow('latentLoad_W must have 8760 hours, got 8759');
  });
  test('a scale that says nothing of a kind is answered with why', () => {
    expect(ratedCop(plantOf('room-unit', { scale: 'seer', value: 12 }))).toMatchObject({ why: expect.stringContaining('room-unit') as string });
    expect(() => coolingPlant(plantOf('central', { scale: 'seer2', value: 15 }), { outdoor_degC: 30, sensibleLoad_W: 1 })).toThrow(RangeError);
  });
  test('the season of bins gives a single-speed machine what its 82 °F point gives, within 3 %', () => {
    const performance = plants.performance('single-speed');
    const byPoint = (1 - 0.5 * 0.2) / 0.8050774179999998;
    expect(Math.abs(seasonOverRated(performance, 0.2) / byPoint - 1)).toBeLessThan(0.03);
    expect(seasonalChain(10, performance, 0.2).eerAt82degF).toBeCloseTo(10 / 0.9, 12);
  });
  test.each([[{ ratedCapacity_W: 0 }, /ratedCapacity_W/], [{ sensibleHeatRatio: 0 }, /sensibleHeatRatio/], [{ distributionEfficiency: 1.1 }, /distributionEfficiency/], [{ degradationCoefficient: 1 }, /degradationCoefficient/], [{ ageing: { age_yr: -1, loss_1_yr: 0.01 } }, /age_yr/], [{ kind: 'central' as const }, /performance/]])('refuses %j', (wrong, name) => {
    expect(() => plantOnWeather(plantOf('single-speed', { scale: 'eer', value: 11 }, wrong), weather)).toThrow(name);
  });
});

describe('heating and the band of savings', () => {
  test('gas takes heat over 0.8, a heat pump heat over its COP, none takes nothing', () => {
    const heat_W = year((h) => (h < 744 ? 1000 : 0));
    const gas = heatingUse({ kind: 'gas', efficiency: 0.8 }, heat_W);
    expect(gas.gas_total_kWh).toBeCloseTo(744 / 0.8, 9);
    expect(gas.monthlyGas_kWh[0]).toBeCloseTo(744 / 0.8, 9);
    expect(gas.electricity_total_kWh).toBe(0);
    const pump = heatingUse({ kind: 'heat-pump', efficiency: 2.5 }, heat_W);
    expect(pump.electricity_total_kWh).toBeCloseTo(744 / 2.5, 9);
    expect(sum(pump.electricity_kWh)).toBeCloseTo(744 / 2.5, 6);
    expect(heatingUse({ kind: 'none', efficiency: 1 }, heat_W)).toMatchObject({ gas_total_kWh: 0, electricity_total_kWh: 0 });
    expect(() => heatingUse({ kind: 'gas', efficiency: 0 }, heat_W)).toThrow(/efficiency/);
  });
  test('a saving of 20 kWh/ft² or 60 % is shown as unusual, one of 5 kWh/ft² and 20 % is not', () => {
    expect(savingWarnings({ saved_kWh: 500, bare_kWh: 2500, film_m2: 100 * 0.09290304 })).toEqual([]);
    expect(savingWarnings({ saved_kWh: 2000, bare_kWh: 10_000, film_m2: 100 * 0.09290304 })).toHaveLength(1);
    expect(savingWarnings({ saved_kWh: 500, bare_kWh: 800, film_m2: 100 * 0.09290304 })).toHaveLength(1);
    expect(() => savingWarnings({ saved_kWh: 1, bare_kWh: 1, film_m2: 0 })).toThrow(/film_m2/);
  });
});
