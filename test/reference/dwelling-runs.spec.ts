import { dwellingYear, ventilationOf_W_K } from '#calc';
import { dwellingRuns, type RunGiven } from './dwelling-runs.js';

function weatherOf(given: RunGiven) {
  const hours = Array.from({ length: 8760 }, (_, h) => ({ h, ofDay: h % 24, day: Math.floor(h / 24) }));
  const season = (day: number) => 0.75 - 0.25 * Math.cos((2 * Math.PI * (day - 10)) / 365);
  return {
    outdoor_degC: hours.map(({ h, ofDay }) => 15 - 12 * Math.cos((2 * Math.PI * (h - 480)) / 8760) + 6 * Math.sin((2 * Math.PI * (ofDay - 9)) / 24)),
    solar_W: hours.map(({ ofDay, day }) => {
      const height = ofDay >= 6 && ofDay <= 18 ? Math.max(0, Math.sin((Math.PI * (ofDay - 6)) / 12)) : 0;
      return given.windowArea_m2 * given.solarHeatGain * 600 * height * season(day);
    }),
    internal_W: hours.map(({ ofDay }) => 200 + (ofDay >= 18 || ofDay < 8 ? 150 : 0)),
  };
}

function yearOf(given: RunGiven) {
  const body = {
    floor_m2: given.floor_m2,
    capacity_J_K: given.capacity_J_m2K * given.floor_m2,
    massArea_m2: 2.5 * given.floor_m2,
    facingArea_m2: given.facingArea_m2,
    opaque_W_K: given.opaqueToMass_W_K,
    opaqueToMass_W_K: given.opaqueToMass_W_K,
    window_W_K: given.windowArea_m2 * given.windowU_W_m2K,
    ventilation_W_K: ventilationOf_W_K(given.volume_m3, given.airChange_1_h),
    surfaceConductance_W_m2K: 3.45,
  };
  const { heatingSetPoint_degC, coolingSetPoint_degC, heatingLimit_W } = given;
  return dwellingYear(body, { ...weatherOf(given), heatingSetPoint_degC, coolingSetPoint_degC, ...(heatingLimit_W === undefined ? {} : { heatingLimit_W }) });
}

const { rel = 0, abs = 0 } = dwellingRuns.tolerance;
const near = (got: number, wanted: number) => { expect(Math.abs(got - wanted)).toBeLessThanOrEqual(abs + rel * Math.abs(wanted)); };

describe(`${dwellingRuns.of} against ${dwellingRuns.source}`, () => {
  for (const { given, expect: wanted, place } of dwellingRuns.rows) {
    const year = yearOf(given);

    test(`${place}: the year's sums, peaks and months`, () => {
      near(year.heating_kWh, wanted.heating_kWh);
      near(year.cooling_kWh, wanted.cooling_kWh);
      near(year.peakHeating_W, wanted.peakHeating_W);
      near(year.peakCooling_W, wanted.peakCooling_W);
      expect(year.coolingHours).toBe(wanted.coolingHours);
      wanted.monthlyCooling_kWh.forEach((kWh, month) => { near(year.monthlyCooling_kWh[month] ?? NaN, kWh); });
      near(year.hour(8759).massEnd_degC, wanted.finalMass_degC);
    });

    test(`${place}: temperatures and loads of single hours`, () => {
      for (const hour of wanted.hours) {
        const got = year.hour(hour.hour);
        near(got.air_degC, hour.air_degC);
        near(got.surface_degC, hour.surface_degC);
        near(got.mass_degC, hour.mass_degC);
        near(got.massEnd_degC, hour.massEnd_degC);
        near(year.heating_W[hour.hour] ?? NaN, hour.heating_W);
        near(year.cooling_W[hour.hour] ?? NaN, hour.cooling_W);
      }
    });
  }
});
