import type { Efficiency, PlantKind } from '../portfolio/index.js';
import { coolingPlant, degradationOf, heatingUse, machineOf, plantOnWeather, plantYear, ratedCop, savingWarnings, seasonOverRated, seasonalChain, type PlantPerformance, type PlantState } from './index.js';

const level = [1, 0, 0, 0, 0, 0] as const;
const at = (value: number) => [value, 0, 0, 0, 0, 0] as const;
/** A machine whose curves do not care for the weather: every rating can be turned round by hand. */
const steady = (kind: PlantKind, more: Partial<PlantPerformance> = {}): PlantPerformance => ({
  kind, temperature: 'degC', speeds: [{ capacityShare: 1, capacity: level, input: level }], degradation: { under13Seer: 0.2, seer13AndOver: 0.07 }, seer2OverSeer: 0.95, seerFan_W_cfm: { underSeer16: 0, seer16AndOver: 0 },
  sensibleHeatRatio: 0.75, scales: ['cop', 'eer', 'seer', 'seer2', 'kW_ton'], wetBulbRange_degC: [10, 30], outdoorRange_degC: [10, 50], ...more,
});
const twoSpeeds = { speeds: [{ capacityShare: 0.7, capacity: level, input: at(0.8) }, { capacityShare: 1, capacity: level, input: level }] };
const plantOf = (efficiency: Efficiency, more: Partial<PlantState> = {}, performance = steady('single-speed')): PlantState => ({ kind: performance.kind, performance, ratedCapacity_W: 10_000, efficiency, ...more });
const Btu_Wh = 3.412141633;

describe('a rating as COP, by hand', () => {
  it.each<[string, PlantState, number]>([
    ['COP as it stands', plantOf({ scale: 'cop', value: 3.5 }), 3.5],
    ['EER over 3.412', plantOf({ scale: 'eer', value: 10 }), 10 / Btu_Wh],
    ['3.517 over kW per ton', plantOf({ scale: 'kW_ton', value: 0.7 }), 3.516853 / 0.7],
    // SEER 9 with a loss of 0.2 is EER 10 at 82 °F, and at 95 °F where neither curve nor fan changes it.
    ['SEER of one speed', plantOf({ scale: 'seer', value: 9 }), 10 / Btu_Wh],
    ['SEER2 by the ratio of the procedures', plantOf({ scale: 'seer2', value: 9 * 0.95 }), 10 / Btu_Wh],
    ['SEER of a mini-split by that ratio', plantOf({ scale: 'seer', value: 20 }, {}, steady('mini-split')), (20 * 0.95) / Btu_Wh],
    ['SEER2 of a mini-split as it stands', plantOf({ scale: 'seer2', value: 19 }, {}, steady('mini-split')), 19 / Btu_Wh],
  ])('%s', (_, plant, cop) => {
    const got = ratedCop(plant) as number;
    expect(Math.abs(got / cop - 1)).toBeLessThan(1e-6);
    expect(coolingPlant(plant, { outdoor_degC: 35, sensibleLoad_W: 1e9 }).electricity_W).toBeCloseTo(10_000 / got, 6);
  });

  it('a scale that is not the kind’s own is answered with why', () => {
    expect(ratedCop(plantOf({ scale: 'seer', value: 10 }, {}, steady('room-unit', { scales: ['eer', 'cop'] })))).toEqual({ why: 'a room-unit is not rated in seer; state one of eer, cop' });
    expect(() => machineOf(plantOf({ scale: 'seer', value: 10 }, {}, steady('room-unit', { scales: ['eer'] })))).toThrow('efficiency');
  });

  it('the loss at part load goes by the SEER behind a SEER2', () => {
    expect(degradationOf(plantOf({ scale: 'seer2', value: 12.4 }))).toBe(0.07); // SEER 13.05
    expect(degradationOf(plantOf({ scale: 'seer2', value: 12.3 }))).toBe(0.2); // SEER 12.95
    expect(degradationOf(plantOf({ scale: 'eer', value: 20 }))).toBe(0.2);
  });
});

describe('the season of a machine of two speeds', () => {
  // AHRI 210/240 bins: share of the hours, and load (T − 65)/30/1.1 of a capacity that the weather does not change; at 102 °F all of it.
  const bins = [[0.214, 2 / 33], [0.231, 7 / 33], [0.216, 12 / 33], [0.161, 17 / 33], [0.104, 22 / 33], [0.052, 27 / 33], [0.018, 32 / 33], [0.004, 1]] as const;
  const heat = bins.reduce((sum, [share, load]) => sum + share * load, 0);

  it('cycles at the low speed up to its capacity and turns between the two above it', () => {
    // Low speed: 0.7 of the heat for 0.56 of the power; between, 0.44 more power for 0.3 more heat.
    const input = (loss: number) => bins.reduce((sum, [share, load]) => sum + share * (load <= 0.7 ? (0.8 * load) / (1 - loss * (1 - load / 0.7)) : 0.56 + (0.44 * (load - 0.7)) / 0.3), 0);
    const performance = steady('two-speed', twoSpeeds);
    for (const loss of [0, 0.07, 0.2]) expect(seasonOverRated(performance, loss)).toBeCloseTo(heat / input(loss), 12);
    const plant = plantOf({ scale: 'seer', value: 14 }, {}, performance);
    expect(ratedCop(plant)).toBeCloseTo((14 * input(0.07)) / heat / Btu_Wh, 9);
  });

  it('of one speed without loss is its steady rating', () => {
    expect(seasonOverRated(steady('single-speed'), 0)).toBeCloseTo(1, 12);
  });

  it('a machine without a speed is refused', () => {
    const none = steady('single-speed', { speeds: [] });
    expect(() => seasonOverRated(none, 0)).toThrow('speeds');
    expect(() => seasonalChain(10, none, 0)).toThrow('speeds');
    expect(() => machineOf(plantOf({ scale: 'cop', value: 3 }, {}, none))).toThrow('speeds');
    expect(() => machineOf(plantOf({ scale: 'cop', value: 3 }, {}, steady('single-speed', { speeds: [...twoSpeeds.speeds, ...twoSpeeds.speeds] })))).toThrow('speeds');
  });
});

describe('one hour of it', () => {
  const plant = plantOf({ scale: 'cop', value: 4 }, { degradationCoefficient: 0.2, distributionEfficiency: 0.8 });
  it('by hand: half load, ducts, latent heat', () => {
    // 3 kW sensible is 4 kW in all at 0.75; over ducts of 0.8, 5 kW of 10: half load runs 0.5/0.9 of the hour.
    expect(coolingPlant(plant, { outdoor_degC: 35, sensibleLoad_W: 3000 })).toMatchObject({
      coilLoad_W: expect.closeTo(5000, 9) as unknown, partLoadRatio: expect.closeTo(0.5, 12) as unknown, partLoadFactor: expect.closeTo(0.9, 12) as unknown, runShare: expect.closeTo(0.5 / 0.9, 12) as unknown,
      electricity_W: expect.closeTo((2500 * 0.5) / 0.9, 9) as unknown, unmet_W: 0, availableCapacity_W: 10_000,
    });
    expect(coolingPlant(plant, { outdoor_degC: 35, sensibleLoad_W: 3000, latentLoad_W: 0 }).coilLoad_W).toBeCloseTo(3750, 9);
    // 10 kW are 8 kW in the rooms: of 9 kW one stays.
    expect(coolingPlant(plant, { outdoor_degC: 35, sensibleLoad_W: 9000, latentLoad_W: 0 })).toMatchObject({ unmet_W: expect.closeTo(1000, 9) as unknown, runShare: 1, electricity_W: expect.closeTo(2500, 9) as unknown });
  });

  it('between two speeds by hand', () => {
    const two = plantOf({ scale: 'cop', value: 4 }, { sensibleHeatRatio: 1, degradationCoefficient: 0.1 }, steady('two-speed', twoSpeeds));
    // 8.5 kW: half way from 7 kW for 1.4 kW of power to 10 kW for 2.5 kW.
    expect(coolingPlant(two, { outdoor_degC: 35, sensibleLoad_W: 8500 })).toMatchObject({ electricity_W: expect.closeTo(1950, 9) as unknown, runShare: 1, partLoadRatio: expect.closeTo(0.85, 12) as unknown });
    expect(coolingPlant(two, { outdoor_degC: 35, sensibleLoad_W: 3500 }).electricity_W).toBeCloseTo((1400 * 0.5) / 0.95, 9);
  });

  it('ten years at two percent take their share of the efficiency', () => {
    const old = machineOf(plantOf({ scale: 'cop', value: 4 }, { ageing: { age_yr: 10, loss_1_yr: 0.02 } }));
    expect(old.cop).toBeCloseTo(4 * 0.98 ** 10, 12);
    expect(machineOf(plantOf({ scale: 'cop', value: 4 })).indoorWetBulb_degC).toBeCloseTo(19.4444, 4);
  });

  it.each([
    ['sensibleLoad_W', { sensibleLoad_W: -1 }], ['sensibleLoad_W', { sensibleLoad_W: Infinity }], ['latentLoad_W', { latentLoad_W: -1 }], ['latentLoad_W', { latentLoad_W: Infinity }], ['latentLoad_W', { latentLoad_W: Number.NaN }],
  ])('refuses %s', (name, wrong) => {
    expect(() => coolingPlant(plant, { outdoor_degC: 35, sensibleLoad_W: 1, ...wrong })).toThrow(name);
  });

  it.each<[string, Partial<PlantState>]>([
    ['ratedCapacity_W', { ratedCapacity_W: Infinity }], ['age_yr', { ageing: { age_yr: 100, loss_1_yr: 0 } }], ['age_yr', { ageing: { age_yr: -1, loss_1_yr: 0 } }], ['loss_1_yr', { ageing: { age_yr: 1, loss_1_yr: 1 } }],
    ['loss_1_yr', { ageing: { age_yr: 1, loss_1_yr: -0.1 } }], ['cop', { efficiency: { scale: 'cop', value: 0 } }], ['cop', { efficiency: { scale: 'cop', value: Infinity } }], ['degradationCoefficient', { degradationCoefficient: -0.1 }],
    ['sensibleHeatRatio', { sensibleHeatRatio: 1.1 }], ['distributionEfficiency', { distributionEfficiency: 0 }],
  ])('refuses %s %j', (name, wrong) => {
    expect(() => machineOf(plantOf({ scale: 'cop', value: 4 }, wrong))).toThrow(name);
  });
});

describe('years that are no years', () => {
  const weather = { outdoor_degC: new Float64Array(8760).fill(35) };
  const plant = plantOf({ scale: 'cop', value: 4 });
  it('are refused, of weather, load and heat', () => {
    expect(() => plantOnWeather(plant, { outdoor_degC: new Float64Array(24) })).toThrow('8760');
    expect(() => plantYear(plant, new Float64Array(24), weather)).toThrow('8760');
    expect(() => heatingUse({ kind: 'gas', efficiency: 0.8 }, new Float64Array(24))).toThrow('8760');
    for (const efficiency of [0, 20, -1]) expect(() => heatingUse({ kind: 'gas', efficiency }, new Float64Array(8760))).toThrow('efficiency');
  });

  it('a load of just what the machine can take is met, and the peak is that of its first hour', () => {
    const full = plantYear(plantOf({ scale: 'cop', value: 4 }, { sensibleHeatRatio: 1 }), new Float64Array(8760).fill(10_000), weather);
    expect(full).toMatchObject({ unmet_kWh: 0, unmetHours: 0, peakHour: 0, peak_kW: 2.5 });
    expect(full.runHours_h).toBeCloseTo(8760, 6);
    expect(full.electricity_total_kWh).toBeCloseTo(8760 * 2.5, 6);
  });
});

describe('the band of published savings', () => {
  const of = (perArea: number, share: number) => savingWarnings({ saved_kWh: perArea * 100, bare_kWh: (perArea * 100) / share, film_m2: 9.290304 });
  it('is quiet inside it and names what lies outside', () => {
    expect(of(1.01, 0.021)).toEqual([]);
    expect(of(10.99, 0.449)).toEqual([]);
    expect(of(0.5, 0.2)).toEqual([expect.stringContaining('0.5 kWh per square foot')]);
    expect(of(12, 0.2)).toEqual([expect.stringContaining('12.0 kWh per square foot')]);
    expect(of(5, 0.01)).toEqual([expect.stringContaining('1 % of the dwelling')]);
    expect(of(5, 0.5)).toEqual([expect.stringContaining('50 % of the dwelling')]);
    expect(of(20, 0.6)).toHaveLength(2);
    expect(savingWarnings({ saved_kWh: 500, bare_kWh: 0, film_m2: 9.290304 })).toEqual([]);
  });
});
