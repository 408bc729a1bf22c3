import { openCatalogue } from '#catalogue';
import { kernel } from './cooling-plant.js';
import type { KernelRoom } from './kernel.js';

const catalogue = openCatalogue();
const room: KernelRoom = { catalogue: () => catalogue, weather: () => { throw new Error('no weather here'); } };
const unit = { kind: 'single-speed', ratedCapacity_W: 7000, eer: 11, outdoor_degC: 35, indoorWetBulb_degC: 19.4444444444, sensibleLoad_W: 3000, sensibleHeatRatio: 0.75, degradationCoefficient: 0.2 };
const run = (given: object) => kernel.run(given, room) as Record<string, number>;

describe('the kernel cooling-plant', () => {
  test('a plant of 0.7 kW per ton draws 0.7 kW for each ton it takes from the coil', () => {
    const rest = { ...unit, eer: undefined };
    const hour = run({ ...rest, kind: 'central', ratedCapacity_W: 350_000, kW_ton: 0.7, sensibleLoad_W: 3516.8528420667, sensibleHeatRatio: 1, degradationCoefficient: 0 });
    expect(hour['electricity_W']).toBeCloseTo(700, 6);
  });

  test('beyond its capacity it runs the whole hour and draws no more', () => {
    const full = run({ ...unit, sensibleLoad_W: 20_000 });
    expect(full['runShare']).toBe(1);
    expect(full['electricity_W']).toBeCloseTo(run({ ...unit, sensibleLoad_W: 40_000 })['electricity_W'] ?? 0, 9);
    expect(full['coilLoad_W']).toBeGreaterThan(full['availableCapacity_W'] ?? 0);
  });

  test('ten years of age at 1 % a year cost 1/0.99^10', () => {
    expect((run({ ...unit, age_yr: 10 })['electricity_W'] ?? 0) / (run(unit)['electricity_W'] ?? 1)).toBeCloseTo(1 / 0.99 ** 10, 12);
  });

  test('SEER2 reads as more than the same number of SEER, because its test is harder', () => {
    const rest = { ...unit, eer: undefined };
    expect(run({ ...rest, seer2: 14 })['electricity_W']).toBeLessThan(run({ ...rest, seer: 14 })['electricity_W'] ?? 0);
  });

  test('moisture that is stated takes the place of that by the sensible heat ratio', () => {
    // At 0.75 a sensible load of 3000 W comes with 1000 W of moisture.
    expect(run({ ...unit, latentLoad_W: 1000 })['electricity_W']).toBeCloseTo(run(unit)['electricity_W'] ?? 0, 9);
    expect(run({ ...unit, latentLoad_W: 0 })['coilLoad_W']).toBe(3000);
    expect(run({ ...unit, latentLoad_W: 0, distributionEfficiency: 0.8 })['coilLoad_W']).toBeCloseTo(3750, 9);
  });

  test.each([
    [{ latentLoad_W: -1 }, '/latentLoad_W'],
    [{ cop: 3 }, ''],
    [{ eer: -1 }, '/eer'],
    [{ kind: 'tower' }, '/kind'],
    [{ sensibleLoad_W: -1 }, '/sensibleLoad_W'],
    [{ kind: 'room-unit', eer: undefined, seer: 12 }, ''],
    [{ colour: 'white' }, '/colour'],
  ])('refuses %j at "%s"', (wrong, pointer) => {
    let seen: unknown;
    try {
      kernel.run({ ...unit, ...wrong }, room);
    } catch (fault) {
      seen = fault;
    }
    expect(seen).toMatchObject({ pointer });
  });
});
