import { coolingPlant, curveAt, degCOf_degF, dwellingYear, installMinutes, seasonalChain, ventilationOf_W_K, type DwellingYear } from '#calc';
import { openCatalogue } from '#catalogue';
import { openCooling } from '../../../libs/catalogue/src/cooling.js';
import { ownDataFolder } from '../../../libs/catalogue/src/data-folder.js';
import { plantCurves, plantHours, publishedGrossCops, seerChain } from '../cooling-plant.js';
import { dwellingRuns, type RunGiven } from '../dwelling-runs.js';
import { installMinutesByHand } from '../labour.js';
import { byName, check, type Check, type Figure } from './check.js';

function weatherOf(given: RunGiven): { outdoor_degC: number[]; solar_W: number[]; internal_W: number[] } {
  const hours = Array.from({ length: 8760 }, (_, h) => ({ h, ofDay: h % 24, day: Math.floor(h / 24) }));
  const season = (day: number): number => 0.75 - 0.25 * Math.cos((2 * Math.PI * (day - 10)) / 365);
  return {
    outdoor_degC: hours.map(({ h, ofDay }) => 15 - 12 * Math.cos((2 * Math.PI * (h - 480)) / 8760) + 6 * Math.sin((2 * Math.PI * (ofDay - 9)) / 24)),
    solar_W: hours.map(({ ofDay, day }) => {
      const height = ofDay >= 6 && ofDay <= 18 ? Math.max(0, Math.sin((Math.PI * (ofDay - 6)) / 12)) : 0;
      return given.windowArea_m2 * given.solarHeatGain * 600 * height * season(day);
    }),
    internal_W: hours.map(({ ofDay }) => 200 + (ofDay >= 18 || ofDay < 8 ? 150 : 0)),
  };
}

function yearOf(given: RunGiven): DwellingYear {
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

const plants = openCooling(ownDataFolder());
const { timeModel } = openCatalogue();

export const dwelling: readonly Check[] = [
  check({
    title: 'A dwelling over a year, hour by hour',
    table: dwellingRuns,
    compare: ({ given, expect: wanted }) => {
      const { hours, monthlyCooling_kWh, finalMass_degC, coolingHours, ...sums } = wanted;
      const year = yearOf(given);
      return [
        ...byName(sums, year),
        { what: 'coolingHours', expected: coolingHours, ours: year.coolingHours, limit: 0 },
        { what: 'finalMass_degC', expected: finalMass_degC, ours: year.hour(8759).massEnd_degC },
        ...monthlyCooling_kWh.map((expected, month): Figure => ({ what: `cooling of month ${month + 1}, kWh`, expected, ours: year.monthlyCooling_kWh[month] ?? NaN })),
        ...hours.flatMap(({ hour, air_degC, surface_degC, mass_degC, massEnd_degC, heating_W, cooling_W }) =>
          byName({ air_degC, surface_degC, mass_degC, massEnd_degC, heating_W, cooling_W }, { ...year.hour(hour), heating_W: year.heating_W[hour], cooling_W: year.cooling_W[hour] }).map((figure) => ({
            ...figure,
            what: `hour ${hour}, ${figure.what}`,
          })),
        ),
      ];
    },
  }),
];

export const cooling: readonly Check[] = [
  check({
    title: 'Curves of cooling machines',
    table: plantCurves,
    compare: ({ given, expect: wanted }) => {
      const performance = plants.performance(given.kind);
      const degC = given.unit === 'degF' ? degCOf_degF : (t: number) => t;
      const air = { wetBulb_degC: degC(given.wetBulb), outdoor_degC: degC(given.outdoor) };
      const speed = performance.speeds[0];
      return byName(wanted, { capacityFactor: speed && curveAt(speed.capacity, performance, air), inputFactor: speed && curveAt(speed.input, performance, air) });
    },
  }),
  check({
    title: 'Hours of a cooling machine',
    table: plantHours,
    compare: ({ given, expect: wanted }) => {
      const { eer, outdoor_degF, indoorWetBulb_degF, sensibleLoad_W, ...plant } = given;
      const state = { ...plant, kind: 'single-speed', performance: plants.performance('single-speed'), efficiency: { scale: 'eer', value: eer } } as const;
      return byName(wanted, coolingPlant(state, { outdoor_degC: degCOf_degF(outdoor_degF), indoorWetBulb_degC: degCOf_degF(indoorWetBulb_degF), sensibleLoad_W }));
    },
  }),
  check({
    title: 'From SEER to gross COP',
    table: seerChain,
    compare: ({ given, expect: wanted }) => byName(wanted, seasonalChain(given.seer, plants.performance('single-speed'), given.degradation)),
  }),
  check({
    title: 'Gross COP as printed',
    table: publishedGrossCops,
    compare: ({ given, expect: wanted }) => byName(wanted, seasonalChain(given.seer, plants.performance('single-speed'), given.degradation)),
  }),
];

export const labour: readonly Check[] = [
  check({
    title: 'Person-minutes worked by hand',
    table: installMinutesByHand,
    told: ({ panes }) => panes.map(({ count, area_m2, reach }) => `${count} × ${area_m2.toFixed(2)} m², ${reach}`).join('; '),
    compare: ({ given, expect: byHand }) => byName(byHand, installMinutes(given, timeModel)),
  }),
];
