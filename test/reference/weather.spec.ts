import { facadeSky, MONTH_DAYS, skyYear, sunYear, type FacadeSky, type HourlyYear } from '#calc';
import { openCatalogue } from '#catalogue';
import { closureOf, OFFSETS_H, readWeatherFile } from '#weather';
import { join } from 'node:path';
import { facadeYears } from './sky-facade-year.js';
import { closures } from './weather-closure.js';
import { weatherFolder } from './weather-files.js';

const folder = weatherFolder('facade totals, closure and clock checks on the real hourly files');
const climates = openCatalogue().climates;
const places = [...new Set(facadeYears.rows.map((row) => row.given.climate))];

const total = (values: Float64Array) => values.reduce((a, b) => a + b, 0) / 1000;
function monthly(sky: FacadeSky): number[] {
  let from = 0;
  return MONTH_DAYS.map((days) => {
    let sum = 0;
    for (let i = from; i < from + days * 24; i++) sum += (sky.beam_W_m2[i] ?? NaN) + (sky.sky_W_m2[i] ?? NaN) + (sky.ground_W_m2[i] ?? NaN);
    from += days * 24;
    return sum / 1000;
  });
}
function skies(weather: HourlyYear, place: string) {
  const sun = sunYear(weather.site);
  const sky = skyYear(sun, weather);
  return facadeYears.rows.filter((row) => row.given.climate === place).map((row) => ({ row, got: facadeSky({ sun, weather, sky, azimuth_deg: row.given.azimuth_deg, tilt_deg: 90, albedo: 0.2 }) }));
}

describe('a year of light on walls, from hourly files', () => {
  it.each(places)('%s: 8 walls, the year within 0.05 %%, every month within 0.5 %%', async (place) => {
    if (folder === null) return;
    const { weather, findings } = await readWeatherFile(join(folder, `${place}.epw.gz`));
    expect(findings).toEqual([]);
    if (weather === null) throw new Error('no year');
    const all = skies(weather, place);
    expect(all).toHaveLength(8);
    for (const { row: { expect: want }, got } of all) {
      const parts = [total(got.beam_W_m2), total(got.sky_W_m2), total(got.ground_W_m2)];
      const sum = parts.reduce((a, b) => a + b, 0);
      expect(Math.abs(sum / want.total_kWh_m2 - 1)).toBeLessThanOrEqual(facadeYears.tolerance.rel ?? 0);
      // A part may lean on a few hours only (25 kWh/m² of beam on a north wall): its print and the sun's 0.02° count more there.
      [want.beam_kWh_m2, want.sky_kWh_m2, want.ground_kWh_m2].forEach((part, i) => expect(Math.abs((parts[i] ?? NaN) - part)).toBeLessThanOrEqual(0.06 + 0.0005 * part));
      monthly(got).forEach((sum_kWh, month) => expect(Math.abs(sum_kWh - (want.monthly_kWh_m2[month] ?? NaN))).toBeLessThanOrEqual(0.005 * (want.monthly_kWh_m2[month] ?? 0)));
      const peak = Math.max(...got.beam_W_m2.map((beam, i) => beam + (got.sky_W_m2[i] ?? NaN) + (got.ground_W_m2[i] ?? NaN)));
      expect(Math.abs(peak - want.peak_W_m2)).toBeLessThan(0.75); // printed to 1 W/m²
    }
  });

  it.each(closures.rows.map((row) => [row.given, row] as const))('%s: the three radiations close as published', async (file, { expect: want }) => {
    if (folder === null) return;
    const { weather } = await readWeatherFile(join(folder, `${file}.epw.gz`));
    if (weather === null) throw new Error('no year');
    const { year_W_m2 } = closureOf(weather);
    const at = (offset_h: (typeof OFFSETS_H)[number]) => year_W_m2[OFFSETS_H.indexOf(offset_h)] ?? NaN;
    const got = [at(-0.5), at(0), at(0.5)];
    const limits = [(closures.tolerance.rel ?? 0) * want.start_W_m2, closures.tolerance.abs ?? 0, (closures.tolerance.rel ?? 0) * want.end_W_m2];
    [want.start_W_m2, want.middle_W_m2, want.end_W_m2].forEach((rms, i) => expect(Math.abs((got[i] ?? NaN) - rms)).toBeLessThanOrEqual(limits[i] ?? 0));
  });
});

describe('files with a wrong clock are named', () => {
  it('a file half an hour off in all months', async () => {
    if (folder === null) return;
    const { weather, findings } = await readWeatherFile(join(folder, 'odd-timing-granada-es.epw.gz'));
    expect(weather).not.toBeNull();
    const clock = findings.filter((each) => each.about === 'clock');
    expect(clock.map((each) => each.text.split(' off')[0])).toEqual([
      expect.stringMatching(/^Clock shift of half an hour: in all months .* half an hour later than the time stamps say/),
    ]);
  });

  it('a file that mixes two clocks, one hour apart: nine months named, night sun counted', async () => {
    if (folder === null) return;
    const { findings } = await readWeatherFile(join(folder, 'odd-timing-honolulu-hi.epw.gz'));
    const clock = findings.filter((each) => each.about === 'clock');
    expect(clock).toHaveLength(1);
    expect(clock[0]?.text).toMatch(/^Clock shift of one hour: in January, April, May, June, July, August, October, November, December .* one hour later .*mixes two/);
    expect(findings.find((each) => each.about === 'night-sun')?.text).toMatch(/^22[789] hours/); // 228 by the full sun algorithm, give or take an hour that stands at the limit
  });
});

describe('built-in climates', () => {
  it('are the fourteen places', () => {
    expect(climates.list.map((each) => each.key).sort()).toEqual([...places].sort());
  });

  it.each(places)('%s: sums and means of its year within 1 %% and 0.1 K of the hourly file', (place) => {
    const { hourlyFile } = climates.byKey(place);
    const year = climates.year(place);
    for (const [got, want] of [[year.directNormal_W_m2, hourlyFile.directNormal_kWh_m2], [year.diffuseHorizontal_W_m2, hourlyFile.diffuseHorizontal_kWh_m2], [year.globalHorizontal_W_m2, hourlyFile.globalHorizontal_kWh_m2]] as const) {
      expect(Math.abs(total(got) / want - 1)).toBeLessThan(0.01);
    }
    expect(Math.abs((total(year.outdoor_degC) * 1000) / 8760 - hourlyFile.outdoor_degC)).toBeLessThan(0.1);
    expect(Math.abs((total(year.wetBulb_degC) * 1000) / 8760 - hourlyFile.wetBulb_degC)).toBeLessThan(0.3);
  });

  it.each(places)('%s: light on 8 walls within 2 %% a year of the hourly run', (place) => {
    const off = skies(climates.year(place), place).map(({ row, got }) => (total(got.beam_W_m2) + total(got.sky_W_m2) + total(got.ground_W_m2)) / row.expect.total_kWh_m2 - 1);
    expect(off.filter((each) => !(Math.abs(each) <= 0.02))).toEqual([]);
  });
});
