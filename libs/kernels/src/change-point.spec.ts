import { kernel } from './change-point.js';
import type { KernelRoom } from './kernel.js';

const nothing = (): never => {
  throw new Error('not read here');
};
const room: KernelRoom = { catalogue: nothing, weather: nothing };

/** 30 days a month; 12 kWh a day and 3 more for each K above 18 °C. */
const warmth = [8, 10, 14, 17, 21, 25, 28, 27, 24, 19, 13, 9];
const periods = (share = 1) => warmth.map((outdoor_degC) => ({ days: 30, outdoor_degC, use_kWh: 30 * share * (12 + 3 * Math.max(outdoor_degC - 18, 0)) }));

function refusalOf(value: unknown): unknown {
  try {
    return kernel.run(value, room);
  } catch (fault) {
    return fault;
  }
}

describe('kernel change-point', () => {
  it('finds the change point, base load and slope of a meter without noise', () => {
    const fit = kernel.run({ periods: periods(), model: '3PC' }, room) as { coefficients: Record<string, number>; coolingBalance_degC: number; r2: number; heatingBalance_degC: null };
    expect(fit.coefficients['base_kWh_day']).toBeCloseTo(12, 6);
    expect(fit.coefficients['cooling_kWh_dayK']).toBeCloseTo(3, 6);
    expect(fit.coolingBalance_degC).toBeCloseTo(18, 6);
    expect(fit.heatingBalance_degC).toBeNull();
    expect(fit.r2).toBeCloseTo(1, 9);
  });

  it('gives the saving of the bills after the work', () => {
    const result = kernel.run({ periods: periods(), reporting: periods(0.9), model: 'degree-day', coolingBalance_degC: 18 }, room) as { savingShare: number; isTold: boolean };
    expect(result.savingShare).toBeCloseTo(0.1, 9);
    expect(result.isTold).toBe(true);
  });

  it('takes days and their temperatures in either form', () => {
    const values = Array.from({ length: 120 }, (_, i) => 15 + 10 * Math.sin(i / 19));
    const dated = [0, 20, 40, 60, 80, 100].map((first) => ({
      start: new Date(Date.UTC(2026, 0, 1 + first)).toISOString().slice(0, 10),
      end: new Date(Date.UTC(2026, 0, 21 + first)).toISOString().slice(0, 10),
      use_kWh: values.slice(first, first + 20).reduce((sum, t) => sum + 5 + 2 * Math.max(t - 18, 0), 0),
    }));
    const byDay = Object.fromEntries(values.map((value, i) => [new Date(Date.UTC(2026, 0, 1 + i)).toISOString().slice(0, 10), value]));
    const given = { periods: dated, model: 'degree-day', coolingBalance_degC: 18 };
    const fit = kernel.run({ ...given, dailyTemperatures_degC: byDay }, room) as { coefficients: Record<string, number> };
    expect(fit.coefficients['cooling_kWh_dayK']).toBeCloseTo(2, 9);
    expect(kernel.run({ ...given, dailyTemperatures_degC: { start: '2026-01-01', values } }, room)).toEqual(fit);
  });

  it('says null and why where use rose or there is no model', () => {
    expect(kernel.run({ periods: periods(), reporting: periods(1.1), model: '3PC' }, room)).toMatchObject({ fractionalUncertainty: null, isTold: false });
    expect(kernel.run({ periods: periods().map((each) => ({ ...each, outdoor_degC: 18 })), model: 'degree-day', coolingBalance_degC: 10 }, room)).toMatchObject({ coefficients: null });
  });

  it.each([
    [{ model: '3PC' }, '/periods'],
    [{ periods: periods(), model: '4P' }, '/model'],
    [{ periods: periods().map(({ use_kWh, days }) => ({ use_kWh, days })), model: '3PC' }, '/periods/0/outdoor_degC'],
    [{ periods: periods(), dailyTemperatures_degC: { start: '2026-01-01', values: [1] }, model: '3PC' }, '/periods/0/start'],
    [{ periods: periods(), model: '3PC', coolingBalance_degC: 18 }, '/coolingBalance_degC'],
    [{ periods: periods().slice(0, 3), model: '3PC' }, ''],
    [{ periods: periods(), model: '3PC', window: 2 }, '/window'],
  ])('refuses case %# at "%s"', (given, pointer) => {
    expect(refusalOf(given)).toMatchObject({ pointer });
  });
});
