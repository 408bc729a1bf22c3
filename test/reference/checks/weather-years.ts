import { extraterrestrialNormal_W_m2, facadeSky, MONTH_DAYS, skyYear, sunPosition, sunYear, type FacadeSky, type HourlyYear, type SunYear } from '#calc';
import { openCatalogue } from '#catalogue';
import { closureOf, OFFSETS_H } from '#weather';
import type { ReferenceTable } from '../reference-table.js';
import { readValues } from '../read-values.js';
import { facadeYears } from '../sky-facade-year.js';
import { bestest, bestestDays, standard140 } from '../sky-published.js';
import { climateTotals } from '../weather-climates.js';
import { closures } from '../weather-closure.js';
import { check, type Check, type Figure } from './check.js';
import { hourlyFilesAreHere, hourlyYear, textOf } from './hourly-files.js';

const { climates } = openCatalogue();
const isHere = hourlyFilesAreHere;
const total = (values: Float64Array): number => values.reduce((a, b) => a + b, 0) / 1000;
const at = (sky: FacadeSky, hour: number): number => (sky.beam_W_m2[hour] ?? NaN) + (sky.sky_W_m2[hour] ?? NaN) + (sky.ground_W_m2[hour] ?? NaN);
const year_kWh = (sky: FacadeSky): number => total(Float64Array.from({ length: 8760 }, (_, hour) => at(sky, hour)));

function monthly_kWh(sky: FacadeSky): number[] {
  let from = 0;
  return MONTH_DAYS.map((days) => {
    let sum = 0;
    for (let hour = from; hour < from + days * 24; hour++) sum += at(sky, hour);
    from += days * 24;
    return sum / 1000;
  });
}

interface Place { readonly weather: HourlyYear; readonly sun: SunYear; readonly sky: ReturnType<typeof skyYear> }
/** Places by name, so that eight walls share one sun and one sky. */
function placesOf(yearOf: (climate: string) => HourlyYear): (climate: string) => Place {
  const known = new Map<string, Place>();
  return (climate) => {
    const before = known.get(climate);
    if (before !== undefined) return before;
    const weather = yearOf(climate);
    const sun = sunYear(weather.site);
    const place = { weather, sun, sky: skyYear(sun, weather) };
    known.set(climate, place);
    return place;
  };
}
const hourly = placesOf(hourlyYear);
const builtIn = placesOf((key) => climates.year(key));
const wall = ({ weather, sun, sky }: Place, azimuth_deg: number): FacadeSky => facadeSky({ sun, weather, sky, azimuth_deg, tilt_deg: 90, albedo: 0.2 });
const toldWall = ({ climate, azimuth_deg }: { readonly climate: string; readonly azimuth_deg: number }): string => `${climate}, ${azimuth_deg}°`;

const walls: readonly Check[] = [
  check({
    title: 'A year of light on walls, from hourly files',
    table: facadeYears,
    told: toldWall,
    isHere,
    compare: ({ given, expect: want }) => {
      const sky = wall(hourly(given.climate), given.azimuth_deg);
      const parts = [want.beam_kWh_m2, want.sky_kWh_m2, want.ground_kWh_m2];
      const ours = [total(sky.beam_W_m2), total(sky.sky_W_m2), total(sky.ground_W_m2)];
      const peak = Math.max(...Array.from({ length: 8760 }, (_, hour) => at(sky, hour)));
      return [
        { what: 'year, kWh/m²', expected: want.total_kWh_m2, ours: year_kWh(sky) },
        // A part may lean on a few hours only (25 kWh/m² of beam on a north wall): its print and the sun's 0.02° count more there.
        ...parts.map((part, i): Figure => ({ what: `${['beam', 'sky', 'ground'][i] ?? ''}, kWh/m²`, expected: part, ours: ours[i] ?? NaN, limit: 0.06 + 0.0005 * part })),
        ...monthly_kWh(sky).map((sum, month): Figure => ({ what: `month ${month + 1}, kWh/m²`, expected: want.monthly_kWh_m2[month] ?? NaN, ours: sum, limit: 0.005 * (want.monthly_kWh_m2[month] ?? NaN) })),
        { what: 'highest hour, W/m², printed to 1', expected: want.peak_W_m2, ours: peak, limit: 0.75 },
      ];
    },
  }),
  check({
    title: 'A year of light on walls, from the built-in climates',
    table: { ...facadeYears, tolerance: { rel: 0.02, why: '36 day types stand for 365 days; the target set for them is 2 % of the hourly run' } },
    told: toldWall,
    compare: ({ given, expect: want }) => [{ what: 'year, kWh/m²', expected: want.total_kWh_m2, ours: year_kWh(wall(builtIn(given.climate), given.azimuth_deg)) }],
  }),
  check({
    title: 'Sums and means of the built-in climates',
    table: climateTotals,
    compare: ({ given, expect: want }) => {
      const year = climates.year(given);
      const light = (what: string, expected: number, values: Float64Array): Figure => ({ what, expected, ours: total(values), limit: 0.01 * expected });
      const mean = (values: Float64Array): number => (total(values) * 1000) / 8760;
      return [
        light('direct, kWh/m²', want.directNormal_kWh_m2, year.directNormal_W_m2),
        light('diffuse, kWh/m²', want.diffuseHorizontal_kWh_m2, year.diffuseHorizontal_W_m2),
        light('global, kWh/m²', want.globalHorizontal_kWh_m2, year.globalHorizontal_W_m2),
        { what: 'outdoors, °C', expected: want.outdoor_degC, ours: mean(year.outdoor_degC), limit: 0.1 },
        { what: 'wet bulb, °C', expected: want.wetBulb_degC, ours: mean(year.wetBulb_degC), limit: 0.3 },
      ];
    },
  }),
  check({
    title: 'Closure of global, direct and diffuse, and the clock',
    table: closures,
    isHere,
    compare: ({ given, expect: want }) => {
      const { year_W_m2 } = closureOf(hourlyYear(given));
      const of = (offset_h: (typeof OFFSETS_H)[number]): number => year_W_m2[OFFSETS_H.indexOf(offset_h)] ?? NaN;
      const [abs, rel] = [closures.tolerance.abs ?? 0, closures.tolerance.rel ?? 0];
      return [
        { what: 'sun at the start of the hour, W/m²', expected: want.start_W_m2, ours: of(-0.5), limit: rel * want.start_W_m2 },
        { what: 'sun at the middle, W/m²', expected: want.middle_W_m2, ours: of(0), limit: abs },
        { what: 'sun at the end, W/m²', expected: want.end_W_m2, ours: of(0.5), limit: rel * want.end_W_m2 },
      ];
    },
  }),
];

const FACES = { north: [0, 90], east: [90, 90], south: [180, 90], west: [270, 90], horizontal: [0, 0] } as const;
type Face = keyof typeof FACES;
const on = ({ sun, weather }: Pick<Place, 'sun' | 'weather'>, face: Face): FacadeSky => facadeSky({ sun, weather, azimuth_deg: FACES[face][0], tilt_deg: FACES[face][1], albedo: 0.2 });

let oldYear: Pick<Place, 'sun' | 'weather'> | null = null;
/** The older file: solar-time hours, direct in columns 25–28 and corrected global in 55–58, kJ/m². The sun is put at half past solar time. */
function drycold(): Pick<Place, 'sun' | 'weather'> {
  if (oldYear !== null) return oldYear;
  const site = { latitude_deg: 39.76, longitude_deg: -104.86, timeZone_h: -7 };
  const equation_min = readValues<readonly [number, number, number, number]>('sun-extraterrestrial.json').rows.map((row) => row[3]);
  const lines = textOf('drycold-denver.tmy.gz').split(/\r?\n/).filter((line) => line.length > 60);
  if (lines.length !== 8760) throw new Error(`the older Denver file has ${lines.length} hours`);
  const zeros = (): Float64Array => new Float64Array(8760);
  const [altitude_deg, azimuth_deg, outside, direct, diffuse, global] = [zeros(), zeros(), zeros(), zeros(), zeros(), zeros()];
  lines.forEach((line, hour) => {
    const day = Math.floor(hour / 24);
    const utc_h = (hour % 24) + 0.5 - site.longitude_deg / 15 - (equation_min[day] ?? NaN) / 60;
    const sun = sunPosition(Date.UTC(2001, 0, 1 + day) + utc_h * 3_600_000, site.latitude_deg, site.longitude_deg);
    const kJ = (from: number): number => Number(line.slice(from - 1, from + 3)) / 3.6;
    altitude_deg[hour] = sun.altitude_deg;
    azimuth_deg[hour] = sun.azimuth_deg;
    outside[hour] = extraterrestrialNormal_W_m2(day + 1);
    const dark = line.slice(54, 58) === '9999';
    global[hour] = dark ? 0 : kJ(55);
    direct[hour] = dark || line.slice(24, 28) === '9999' ? 0 : kJ(25);
    diffuse[hour] = Math.max(0, (global[hour] ?? 0) - (direct[hour] ?? 0) * Math.max(0, Math.sin((sun.altitude_deg * Math.PI) / 180)));
  });
  const weather = { site, label: 'DRYCOLD', source: 'DRYCOLD', elevation_m: 1609, outdoor_degC: zeros(), wetBulb_degC: zeros(), directNormal_W_m2: direct, diffuseHorizontal_W_m2: diffuse, globalHorizontal_W_m2: global, wind_m_s: zeros() };
  oldYear = { sun: { site, altitude_deg, azimuth_deg, extraterrestrialNormal_W_m2: outside }, weather };
  return oldYear;
}

type FaceTable = ReferenceTable<Face, { readonly least: number; readonly most: number }>;
const faces = (title: string, table: FaceTable, place: () => Pick<Place, 'sun' | 'weather'>): Check =>
  check({ title, table, isHere, compare: ({ given, expect: { least, most } }) => [{ what: 'kWh/m² a year', expected: [least, most], ours: year_kWh(on(place(), given)) }] });

const CLOSE_Wh = 0.5;
const published: readonly Check[] = [
  faces('Light on the Standard 140 house, six programs', standard140, () => hourly('denver-co')),
  faces('Light on the BESTEST house, seven programs', bestest, drycold),
  check({
    title: 'Light on the BESTEST house, two days hour by hour',
    table: bestestDays,
    isHere,
    compare: ({ given, expect: { least, most } }) => {
      const sky = on(drycold(), given.face);
      const day = given.day === 'mar5' ? 63 : 207;
      // All hours but the one the tolerance is for are held to half a watt-hour.
      const isOdd = (hour: number): boolean => given.day === 'jul27' && given.face === 'south' && hour === 17;
      return least.map((low, hour) => ({ what: `hour ${hour + 1}, Wh/m²`, expected: [low, most[hour] ?? NaN] as const, ours: at(sky, day * 24 + hour), ...(isOdd(hour) ? {} : { limit: CLOSE_Wh }) }));
    },
  }),
];

export const weatherYears: readonly Check[] = [...walls, ...published];
