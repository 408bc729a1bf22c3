import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { readWeatherText } from '#weather';
import { asInTheProgram, Standard140 } from './dwelling-standard-140-cases.js';
import { freeFloatCases, incidentSun, stepCases, thermalCases, type Range } from './dwelling-standard-140.js';
import { weatherFolder } from './weather-files.js';

const folder = weatherFolder('Standard 140-2020, all shared cases on the Denver file');
const inside = (value: number, ...ranges: readonly Range[]) => ranges.some(([least, most]) => value >= least && value <= most);

/** Where the method falls outside the programs' own range, inside the acceptance limits all the same where there are any; why and by how much: decision 0010. */
const knownMisses: readonly string[] = [
  '640 heating', '910 peak cooling', '660 heating', '950FF max_degC', '650 − 600 cooling', '670 − 600 heating', '900 − 600 heating',
];

(folder ? describe : describe.skip)(`${thermalCases.of} against ${thermalCases.source}`, () => {
  const text = folder ? gunzipSync(readFileSync(join(folder, 'denver-co.epw.gz'))).toString('latin1') : '';
  const reading = folder ? readWeatherText(text, 'denver-co.epw') : null;
  const building = reading?.weather ? new Standard140(reading.weather) : null;
  const runs = new Map<string, ReturnType<Standard140['run']>>();
  const run = (id: string) => {
    if (!building) throw new Error('the Denver file could not be read');
    const known = runs.get(id) ?? building.run(id, asInTheProgram);
    runs.set(id, known);
    return known;
  };

  test.each(thermalCases.rows)('$place: annual cooling and heating', ({ given, expect: wanted }) => {
    const year = run(given.case);
    expect(inside(year.cooling_kWh / 1000, wanted.cooling_MWh, wanted.coolingAcceptance_MWh)).toBe(true);
    expect(inside(year.heating_kWh / 1000, wanted.heating_MWh, wanted.heatingAcceptance_MWh)).toBe(true);
  });

  test('what lies outside the programs’ own range is what the table of misses says', () => {
    const misses: string[] = [];
    for (const { given, expect: wanted } of thermalCases.rows) {
      const year = run(given.case);
      if (!inside(year.cooling_kWh / 1000, wanted.cooling_MWh)) misses.push(`${given.case} cooling`);
      if (!inside(year.heating_kWh / 1000, wanted.heating_MWh)) misses.push(`${given.case} heating`);
      if (!inside(year.peakCooling_W / 1000, wanted.peakCooling_kW)) misses.push(`${given.case} peak cooling`);
      if (!inside(year.peakHeating_W / 1000, wanted.peakHeating_kW)) misses.push(`${given.case} peak heating`);
    }
    for (const { given, expect: wanted } of freeFloatCases.rows) {
      const { freeFloat } = run(given.case);
      for (const name of ['max_degC', 'min_degC', 'mean_degC'] as const) if (!inside(freeFloat[name], wanted[name])) misses.push(`${given.case} ${name}`);
    }
    for (const { given, expect: wanted, place } of stepCases.rows) {
      const [to, from] = [run(given.case), run(given.from)];
      if (!inside((to.cooling_kWh - from.cooling_kWh) / 1000, wanted.cooling_MWh)) misses.push(`${place} cooling`);
      if (wanted.heating_MWh && !inside((to.heating_kWh - from.heating_kWh) / 1000, wanted.heating_MWh)) misses.push(`${place} heating`);
    }
    expect(misses).toEqual(knownMisses);
  });

  test.each(incidentSun.rows)('sun on $place', ({ given, expect: wanted }) => {
    const sky = building?.sky(given.azimuth_deg, given.tilt_deg);
    const total = sky ? [sky.beam_W_m2, sky.sky_W_m2, sky.ground_W_m2].reduce((sum, part) => sum + part.reduce((a, b) => a + b, 0), 0) / 1000 : NaN;
    const [least, most] = wanted.total_kWh_m2;
    const rounding = 0.5 + 0.001 * most;
    expect(inside(total, [least - rounding, most + rounding])).toBe(true);
  });
});
