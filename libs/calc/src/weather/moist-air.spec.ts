import { dewPointOf_degC, relativeHumidityOf, saturationPressure_Pa, standardPressure_Pa, wetBulb_degC } from './index.js';

/** Water per dry air by the wet bulb, handbook eq. 35 over water and 37 over ice, written out again. */
function ratioByWetBulb(dry: number, wet: number, pressure: number): number {
  const saturated = (0.621945 * saturationPressure_Pa(wet)) / (pressure - saturationPressure_Pa(wet));
  if (wet < 0) return ((2830 - 0.24 * wet) * saturated - 1.006 * (dry - wet)) / (2830 + 1.86 * dry - 2.1 * wet);
  return ((2501 - 2.326 * wet) * saturated - 1.006 * (dry - wet)) / (2501 + 1.86 * dry - 4.186 * wet);
}
const ratioByHumidity = (dry: number, humidity: number, pressure: number): number => {
  const vapour = humidity * saturationPressure_Pa(dry);
  return (0.621945 * vapour) / (pressure - vapour);
};

describe('the wet bulb', () => {
  const airs = [-40, -20, -5, -0.5, 0, 0.5, 5, 12, 20, 30, 45, 60].flatMap((dry) => [0.05, 0.3, 0.6, 0.95].flatMap((humidity) => [70_000, 101_325].map((pressure) => [dry, humidity, pressure] as const)));

  it.each(airs)('of %p °C at humidity %p and %p Pa satisfies the handbook’s own equation', (dry, humidity, pressure) => {
    const wet = wetBulb_degC(dry, humidity, pressure);
    const [at, wanted] = [ratioByWetBulb(dry, wet, pressure), ratioByHumidity(dry, humidity, pressure)];
    const slope = Math.abs(ratioByWetBulb(dry, wet - 0.001, pressure) - at) / 0.001;
    // Where ice and water part at 0 °C there is a gap no wet bulb fills: the largest over ice is taken.
    if (wet < 0 && wet > -1e-6) expect(at).toBeLessThanOrEqual(wanted);
    else expect(Math.abs(at - wanted) / slope).toBeLessThan(0.001);
    if (wet >= 0) return;
    // Ice is only taken where water at 0 °C would hold more than the air does.
    expect(dry < 0 || ratioByWetBulb(dry, 0, pressure) > wanted).toBe(true);
  });

  it.each([-30, 0, 25])('of saturated air at %p °C is the air’s own temperature', (dry) => {
    expect(wetBulb_degC(dry, 1, 101_325)).toBeCloseTo(dry, 6);
  });

  it('is found at the ends of what is allowed and refused beyond', () => {
    for (const [dry, humidity, pressure] of [[-60, 0.5, 101_325], [70, 0.5, 101_325], [20, 0, 101_325], [20, 1, 101_325], [20, 0.5, 60_000], [20, 0.5, 110_000]] as const) {
      expect(wetBulb_degC(dry, humidity, pressure)).toBeLessThanOrEqual(dry);
    }
    for (const [dry, humidity, pressure] of [[-60.1, 0.5, 101_325], [70.1, 0.5, 101_325], [20, -0.01, 101_325], [20, 1.01, 101_325], [20, 0.5, 59_999], [20, 0.5, 110_001], [Number.NaN, 0.5, 101_325]] as const) {
      expect(() => wetBulb_degC(dry, humidity, pressure)).toThrow(RangeError);
    }
  });
});

describe('the dew point', () => {
  it.each([[-20, 0.4], [0, 0.5], [20, 0.5], [35, 0.9]])('of %p °C at humidity %p is where its vapour saturates', (dry, humidity) => {
    const dew = dewPointOf_degC(dry, humidity);
    expect(saturationPressure_Pa(dew)).toBeGreaterThanOrEqual(humidity * saturationPressure_Pa(dry));
    expect(saturationPressure_Pa(dew - 0.0005)).toBeLessThan(humidity * saturationPressure_Pa(dry));
  });

  it('of saturated air is that air’s temperature, and more than saturated is refused', () => {
    expect(dewPointOf_degC(20, 1)).toBe(20);
    expect(() => dewPointOf_degC(20, 1.01)).toThrow(RangeError);
    expect(() => dewPointOf_degC(20, -0.1)).toThrow(RangeError);
  });
});

it('heights and temperatures at the ends of their range are taken, beyond are refused', () => {
  expect(standardPressure_Pa(-500)).toBeGreaterThan(101_325);
  // 101325 × (1 − 2.25577e-5 × 11000)^5.2559 = 22.63 kPa, the foot of the stratosphere.
  expect(standardPressure_Pa(11_000) / 1000).toBeCloseTo(22.63, 1);
  for (const height of [-501, 11_001, Number.NaN]) expect(() => standardPressure_Pa(height)).toThrow(RangeError);
  for (const temperature of [-100, 200]) expect(saturationPressure_Pa(temperature)).toBeGreaterThan(0);
  for (const temperature of [-100.1, 200.1, Number.NaN]) expect(() => saturationPressure_Pa(temperature)).toThrow(RangeError);
});

it('over ice and over water saturated vapour meets at 0 °C, 611 Pa, and air saturated beyond its own temperature counts as saturated', () => {
  // Hyland and Wexler: 611.2 Pa either side, apart by less than a pascal.
  expect(saturationPressure_Pa(0)).toBeCloseTo(611.2, 0);
  expect(saturationPressure_Pa(-1e-9)).toBeCloseTo(611.15, 1);
  expect(relativeHumidityOf(20, 25)).toBe(1);
});
