import { coolingPlant, copOf_eer, copOf_kW_ton, curveAt, degCOf_degF, seasonalChain, WOf_ton } from '#calc';
import { openCooling } from '../../libs/catalogue/src/cooling.js';
import { ownDataFolder } from '../../libs/catalogue/src/data-folder.js';
import { plantCurves, plantHours, publishedGrossCop, seerChain } from './cooling-plant.js';

const plants = openCooling(ownDataFolder());

describe(`${plantCurves.of} against ${plantCurves.source}`, () => {
  test.each(plantCurves.rows)('$place', ({ given, expect: wanted }) => {
    const performance = plants.performance(given.kind);
    const degC = given.unit === 'degF' ? degCOf_degF : (t: number) => t;
    const air = { wetBulb_degC: degC(given.wetBulb), outdoor_degC: degC(given.outdoor) };
    const speed = performance.speeds[0];
    if (!speed) throw new Error('no speed');
    const abs = plantCurves.tolerance.abs ?? 0;
    expect(Math.abs(curveAt(speed.capacity, performance, air) - wanted.capacityFactor)).toBeLessThan(abs);
    expect(Math.abs(curveAt(speed.input, performance, air) - wanted.inputFactor)).toBeLessThan(abs);
  });
});

describe(`${plantHours.of} against ${plantHours.source}`, () => {
  test.each(plantHours.rows)('$place', ({ given, expect: wanted }) => {
    const { eer, outdoor_degF, indoorWetBulb_degF, sensibleLoad_W, ...plant } = given;
    const state = { ...plant, kind: 'single-speed', performance: plants.performance('single-speed'), efficiency: { scale: 'eer', value: eer } } as const;
    const hour = coolingPlant(state, { outdoor_degC: degCOf_degF(outdoor_degF), indoorWetBulb_degC: degCOf_degF(indoorWetBulb_degF), sensibleLoad_W });
    for (const [name, value] of Object.entries(wanted) as [keyof typeof wanted, number][]) {
      expect(Math.abs(hour[name] / value - 1)).toBeLessThan(plantHours.tolerance.rel ?? 0);
    }
  });
});

describe(`${seerChain.of} against ${seerChain.source}`, () => {
  const performance = plants.performance('single-speed');
  test.each(seerChain.rows)('$place', ({ given, expect: wanted }) => {
    const chain = seasonalChain(given.seer, performance, given.degradation);
    for (const [name, value] of Object.entries(wanted) as [keyof typeof wanted, number][]) expect(Math.abs(chain[name] / value - 1)).toBeLessThan(seerChain.tolerance.rel ?? 0);
  });
  test.each(publishedGrossCop)('SEER %d prints as gross COP %d', (seer, printed) => {
    expect(seasonalChain(seer, performance, seer < 13 ? 0.2 : 0.07).grossCop.toFixed(2)).toBe(printed.toFixed(2));
  });
});

describe('scales of efficiency, by their definitions', () => {
  test.each([[10, 2.9307107018321124, 1.2], [12, 3.516852842198535, 1]])('EER %d', (eer, cop, rate_kW_ton) => {
    expect(copOf_eer(eer)).toBeCloseTo(cop, 8);
    expect(copOf_kW_ton(rate_kW_ton)).toBeCloseTo(cop, 8);
  });
  test('a ton is 3516.8528 W', () => {
    expect(WOf_ton(1)).toBeCloseTo(3516.8528, 3);
  });
});
