import fc from 'fast-check';
import { dewPointOf_degC, relativeHumidityOf, saturationPressure_Pa, standardPressure_Pa, wetBulb_degC, yearOfDayTypes, type DayType, type DayTypeClimate } from './index.js';

describe('moist air', () => {
  it.each([[-10, 259.9], [0, 611.2], [20, 2338.9], [40, 7383.5]])('at %p °C saturated vapour presses %p Pa (ASHRAE Handbook, table of saturated air; from memory)', (t, p) => {
    expect(Math.abs(saturationPressure_Pa(t) / p - 1)).toBeLessThan(5e-4);
  });

  it('the standard air presses 101.325 kPa at the sea and 83.4 kPa in Denver at 1610 m', () => {
    expect(standardPressure_Pa(0)).toBe(101_325);
    expect(Math.abs(standardPressure_Pa(1610) - 83_430)).toBeLessThan(60);
  });

  it.each([
    // Handbook ch. 1, example 1: 40 °C with a wet bulb of 20 °C has a dew point of 7 °C (from memory); Stull 2011: 20 °C and 50 % give 13.7 °C.
    [40, relativeHumidityOf(40, 7), 20], [20, 0.5, 13.7], [30, 1, 30],
  ])('%p °C at humidity %p has a wet bulb of %p °C', (dry, humidity, wet) => {
    // Printed dew point and wet bulb are rounded to a degree and a tenth.
    expect(Math.abs(wetBulb_degC(dry, humidity, 101_325) - wet)).toBeLessThan(0.2);
  });

  it('the wet bulb lies between dew point and dry bulb, and the dew point leads back to the humidity', () => {
    const humidity = fc.double({ min: 0.02, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: -30, max: 50, noNaN: true }), humidity, fc.double({ min: 70_000, max: 105_000, noNaN: true }), (dry, rh, pressure) => {
        const wet = wetBulb_degC(dry, rh, pressure);
        const dew = dewPointOf_degC(dry, rh);
        expect(wet).toBeLessThanOrEqual(dry);
        // Below freezing the two are taken over ice in slightly different forms: a few hundredths of a kelvin.
        expect(wet).toBeGreaterThanOrEqual(dew - 0.05);
        expect(Math.abs(relativeHumidityOf(dry, dew) / rh - 1)).toBeLessThan(1e-3);
      }),
    );
  });

  it('refuses what is not air', () => {
    expect(() => wetBulb_degC(20, 1.2, 101_325)).toThrow('relativeHumidity');
    expect(() => wetBulb_degC(20, 0.5, 101)).toThrow('pressure_Pa');
    expect(() => dewPointOf_degC(20, 0)).toThrow('relativeHumidity');
    expect(() => saturationPressure_Pa(300)).toThrow('temperature_degC');
    expect(() => standardPressure_Pa(12_000)).toThrow('elevation_m');
  });
});

describe('a year of day types', () => {
  const flat = (value: number) => Array.from({ length: 24 }, () => value);
  const type = (days: number, value: number): DayType => ({
    days, outdoor_degC: flat(value), dewPoint_degC: flat(value - 5), directNormal_W_m2: flat(value), diffuseHorizontal_W_m2: flat(value),
    globalHorizontal_W_m2: flat(2 * value), wind_m_s: flat(value / 10),
  });
  const split = (days: number) => [Math.ceil(days / 3), Math.ceil((days - 1) / 3), Math.floor(days / 3)];
  const months = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map((days, month) => split(days).map((count, kind) => type(count, month + kind * 12 + 1)));
  const climate: DayTypeClimate = { key: 'x', label: 'X', source: 'made up', site: { latitude_deg: 30, longitude_deg: -90, timeZone_h: -6 }, elevation_m: 10, months };

  it('runs dull, middle, bright in every month, the days left over last', () => {
    const year = yearOfDayTypes(climate);
    const kinds = (from: number, days: number, month: number) => Array.from({ length: days }, (_, d) => ((year.outdoor_degC[(from + d) * 24] ?? NaN) - month - 1) / 12);
    expect(kinds(0, 31, 0)).toEqual([...Array.from({ length: 30 }, (_, d) => d % 3), 0]);
    expect(kinds(31, 28, 1)).toEqual([...Array.from({ length: 27 }, (_, d) => d % 3), 0]);
  });

  it('keeps the sums of every month', () => {
    const year = yearOfDayTypes(climate);
    const july = year.directNormal_W_m2.subarray(181 * 24, 212 * 24).reduce((a, b) => a + b, 0);
    expect(july).toBe((months[6] ?? []).reduce((sum, each) => sum + each.days * 24 * (each.directNormal_W_m2[0] ?? NaN), 0));
    expect(year.wetBulb_degC[0]).toBeCloseTo(wetBulb_degC(1, relativeHumidityOf(1, -4), standardPressure_Pa(10)), 9);
  });

  it('refuses months whose days do not add up and days of 23 hours', () => {
    expect(() => yearOfDayTypes({ ...climate, months: months.slice(1) })).toThrow('months');
    expect(() => yearOfDayTypes({ ...climate, months: [months[1] ?? [], ...months.slice(1)] })).toThrow('days of month 1');
    const short = { ...type(11, 3), wind_m_s: flat(1).slice(1) };
    expect(() => yearOfDayTypes({ ...climate, months: [[short, type(10, 2), type(10, 3)], ...months.slice(1)] })).toThrow('wind_m_s');
  });
});
