import { extraterrestrialNormal_W_m2, facadeSky, sunPosition, type FacadeSky, type HourlyYear, type SunYear, sunYear } from '#calc';
import { readWeatherFile } from '#weather';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { readValues } from './read-values.js';
import { bestest, bestestDays, standard140 } from './sky-published.js';
import { weatherFolder } from './weather-files.js';

const folder = weatherFolder('the published programs’ light on the Standard 140 and BESTEST house');
const FACES = { north: [0, 90], east: [90, 90], south: [180, 90], west: [270, 90], horizontal: [0, 0] } as const;
const at = (sky: FacadeSky, hour: number) => (sky.beam_W_m2[hour] ?? NaN) + (sky.sky_W_m2[hour] ?? NaN) + (sky.ground_W_m2[hour] ?? NaN);
const year_kWh = (sky: FacadeSky) => Array.from({ length: 8760 }, (_, hour) => at(sky, hour)).reduce((a, b) => a + b, 0) / 1000;
const on = (sun: SunYear, weather: HourlyYear, face: keyof typeof FACES) => facadeSky({ sun, weather, azimuth_deg: FACES[face][0], tilt_deg: FACES[face][1], albedo: 0.2 });

/** The older file: solar-time hours, direct in columns 25–28 and corrected global in 55–58, kJ/m². The sun is put at half past solar time. */
function drycold(path: string): { sun: SunYear; weather: HourlyYear } {
  const site = { latitude_deg: 39.76, longitude_deg: -104.86, timeZone_h: -7 };
  const equation_min = readValues<readonly [number, number, number, number]>('sun-extraterrestrial.json').rows.map((row) => row[3]);
  const lines = gunzipSync(readFileSync(path)).toString('latin1').split(/\r?\n/).filter((line) => line.length > 60);
  expect(lines).toHaveLength(8760);
  const zeros = () => new Float64Array(8760);
  const [altitude_deg, azimuth_deg, outside, direct, diffuse, global] = [zeros(), zeros(), zeros(), zeros(), zeros(), zeros()];
  lines.forEach((line, hour) => {
    const day = Math.floor(hour / 24);
    const utc_h = (hour % 24) + 0.5 - site.longitude_deg / 15 - (equation_min[day] ?? NaN) / 60;
    const sun = sunPosition(Date.UTC(2001, 0, 1 + day) + utc_h * 3_600_000, site.latitude_deg, site.longitude_deg);
    const kJ = (from: number) => Number(line.slice(from - 1, from + 3)) / 3.6;
    altitude_deg[hour] = sun.altitude_deg;
    azimuth_deg[hour] = sun.azimuth_deg;
    outside[hour] = extraterrestrialNormal_W_m2(day + 1);
    const dark = line.slice(54, 58) === '9999';
    global[hour] = dark ? 0 : kJ(55);
    direct[hour] = dark || line.slice(24, 28) === '9999' ? 0 : kJ(25);
    diffuse[hour] = Math.max(0, (global[hour] ?? 0) - (direct[hour] ?? 0) * Math.max(0, Math.sin((sun.altitude_deg * Math.PI) / 180)));
  });
  const weather = { site, label: 'DRYCOLD', source: 'DRYCOLD', elevation_m: 1609, outdoor_degC: zeros(), wetBulb_degC: zeros(), directNormal_W_m2: direct, diffuseHorizontal_W_m2: diffuse, globalHorizontal_W_m2: global, wind_m_s: zeros() };
  return { sun: { site, altitude_deg, azimuth_deg, extraterrestrialNormal_W_m2: outside }, weather };
}

it('Standard 140 case 600: a year on four walls and the roof lies inside the six programs', async () => {
  if (folder === null) return;
  const { weather } = await readWeatherFile(join(folder, 'denver-co.epw.gz'));
  if (weather === null) throw new Error('no year');
  const sun = sunYear(weather.site);
  for (const { given, expect: want } of standard140.rows) {
    const got = year_kWh(on(sun, weather, given));
    expect(got).toBeGreaterThanOrEqual(want.least - (standard140.tolerance.abs ?? 0));
    expect(got).toBeLessThanOrEqual(want.most + (standard140.tolerance.abs ?? 0));
  }
});

it('BESTEST case 600: a year inside the seven programs, two days hour by hour', () => {
  if (folder === null) return;
  const { sun, weather } = drycold(join(folder, 'drycold-denver.tmy.gz'));
  for (const { given, expect: want } of bestest.rows) {
    const got = year_kWh(on(sun, weather, given));
    expect(got).toBeGreaterThanOrEqual(want.least - (bestest.tolerance.abs ?? 0));
    expect(got).toBeLessThanOrEqual(want.most + (bestest.tolerance.abs ?? 0));
  }
  const out: string[] = [];
  for (const { given, expect: want, place } of bestestDays.rows) {
    const sky = on(sun, weather, given.face);
    const day = given.day === 'mar5' ? 63 : 207;
    for (let hour = 0; hour < 24; hour++) {
      const got = at(sky, day * 24 + hour);
      const beyond = Math.max((want.least[hour] ?? NaN) - got, got - (want.most[hour] ?? NaN));
      expect(beyond).toBeLessThanOrEqual(bestestDays.tolerance.abs ?? 0);
      if (beyond > 0.5) out.push(`${place}, hour ${hour + 1}`);
    }
  }
  expect(out).toEqual(['jul27, south, hour 18']);
});
