import type { KernelRoom } from './kernel.js';
import { kernel } from './dwelling-year.js';

const room: KernelRoom = { catalogue: () => { throw new Error('no built-in data here'); }, weather: () => { throw new Error('no weather here'); } };
const cold = Array.from({ length: 8760 }, () => 0);
const box = {
  outdoor_degC: cold, solar_W: cold, internal_W: 0, floor_m2: 50, thermalClass: 'light', facingArea_m2: 225, opaque_W_K: 40, window_W_K: 20,
  airChange_1_h: 0.5, volume_m3: 120, heatingSetPoint_degC: 20, coolingSetPoint_degC: 26,
};

describe('the kernel dwelling-year', () => {
  test('a steady cold winter takes the steady loss: H_ve, windows through the surfaces and walls behind the mass', () => {
    const year = kernel.run({ ...box, hours: [8759] }, room) as { heating_kWh: number; cooling_kWh: number; hours: { heating_W: number }[]; monthlyHeating_kWh: number[] };
    // From the air: H_ve to outdoors, and H_is in series with (H_w beside H_ms in series with H_em).
    const [Hve, His, Hms, Hw] = [(1200 * 120 * 0.5) / 3600, 3.45 * 225, 9.1 * 125, 20];
    const Hem = 1 / (1 / 40 - 1 / Hms);
    const behind = Hw + (Hms * Hem) / (Hms + Hem);
    const loss_W = 20 * (Hve + (His * behind) / (His + behind));
    expect(year.hours[0]?.heating_W).toBeCloseTo(loss_W, 6);
    expect(year.cooling_kWh).toBe(0);
    expect(year.monthlyHeating_kWh.reduce((a, b) => a + b, 0)).toBeCloseTo(year.heating_kWh, 9);
  });

  test('both limits at 0 let the dwelling float to outdoors', () => {
    const year = kernel.run({ ...box, heatingLimit_W: 0, coolingLimit_W: 0, hours: [8759] }, room) as { heating_kWh: number; freeFloat: { min_degC: number; max_degC: number }; hours: { air_degC: number }[] };
    expect(year.heating_kWh).toBe(0);
    expect(year.hours[0]?.air_degC).toBeCloseTo(0, 6);
    expect(year.freeFloat.min_degC).toBeCloseTo(0, 6);
    expect(year.freeFloat.max_degC).toBeLessThan(20);
  });

  test('a heating set point of 24 hours is the same as its year written out', () => {
    const day = Array.from({ length: 24 }, (_, h) => (h < 7 ? 15 : 20));
    const year = Array.from({ length: 8760 }, (_, h) => day[h % 24] ?? 0);
    const of = (heatingSetPoint_degC: number[]) => (kernel.run({ ...box, heatingSetPoint_degC }, room) as { heating_kWh: number }).heating_kWh;
    expect(of(day)).toBe(of(year));
  });

  test('a limit by the hour holds in its hours alone; null leaves an hour free', () => {
    const free = kernel.run({ ...box, hours: [8000] }, room) as { hours: { heating_W: number }[] };
    const need_W = free.hours[0]?.heating_W ?? 0;
    // The steady loss of the box is the same in every hour: half of it in the last 100 hours, nothing in one, no limit before.
    const heatingLimit_W = Array.from({ length: 8760 }, (_, h) => (h === 8700 ? 0 : h >= 8660 ? need_W / 2 : null));
    const held = kernel.run({ ...box, heatingLimit_W, hours: [8000, 8659, 8660, 8700, 8759] }, room) as { hours: { heating_W: number; air_degC: number }[] };
    expect(held.hours.map((h) => h.heating_W)).toEqual([expect.closeTo(need_W, 6), expect.closeTo(need_W, 6), expect.closeTo(need_W / 2, 6), 0, expect.closeTo(need_W / 2, 6)]);
    expect(held.hours[1]?.air_degC).toBeCloseTo(20, 6);
    expect(held.hours[2]?.air_degC).toBeLessThan(20);
  });

  test('8760 equal limits are the same as that number', () => {
    const of = (coolingLimit_W: number | number[]) => kernel.run({ ...box, internal_W: 3000, coolingLimit_W }, room) as { cooling_kWh: number; hoursOverCoolingSetPoint: number };
    const year = of(500);
    expect(year.hoursOverCoolingSetPoint).toBeGreaterThan(0);
    expect(of(Array.from({ length: 8760 }, () => 500))).toEqual(year);
  });

  test.each([
    [{ heatingSetPoint_degC: 27 }, ''],
    [{ floor_m2: -1 }, '/floor_m2'],
    [{ coolingLimit_W: -5 }, '/coolingLimit_W'],
    [{ coolingLimit_W: [1, 2, 3] }, '/coolingLimit_W'],
    [{ heatingLimit_W: null }, '/heatingLimit_W'],
    [{ outdoor_degC: [1, 2, 3] }, '/outdoor_degC'],
    [{ thermalClass: 'stone' }, '/thermalClass'],
    [{ thermalClass: undefined }, '/capacity_J_K'],
    [{ heating: true }, '/heating'],
    [{ weather: { climate: 'denver' } }, '/weather'],
  ])('refuses %j at %s', (wrong, pointer) => {
    let seen: unknown;
    try {
      kernel.run({ ...box, ...wrong }, room);
    } catch (fault) {
      seen = fault;
    }
    expect(seen).toMatchObject({ pointer });
  });
});
