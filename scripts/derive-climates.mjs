// Makes data/climates from whole hourly weather files: day types (dull, middle, bright third of every month), the year's totals to check them by,
// and the extremes, the day named. The files themselves stay where they are.
//   node --import tsx --conditions=source scripts/derive-climates.mjs FOLDER_OF_EPW_FILES
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { MONTH_DAYS, yearExtremes } from '#calc';
import { readWeatherFile } from '#weather';

const PLACES = [
  // key, label, group, station number, data set
  ['miami-fl', 'Miami FL', 'hot-humid', '722020', 'TMY3'],
  ['tampa-fl', 'Tampa FL', 'hot-humid', '722110', 'TMY3'],
  ['houston-tx', 'Houston TX', 'hot-humid', '722430', 'TMY3'],
  ['dallas-tx', 'Dallas TX', 'hot-humid', '722590', 'TMY3'],
  ['phoenix-az', 'Phoenix AZ', 'hot-dry', '722780', 'TMY3'],
  ['las-vegas-nv', 'Las Vegas NV', 'hot-dry', '723860', 'TMY3'],
  ['atlanta-ga', 'Atlanta GA', 'mixed-humid', '722190', 'TMY3'],
  ['charlotte-nc', 'Charlotte NC', 'mixed-humid', '723140', 'TMY3'],
  ['los-angeles-ca', 'Los Angeles CA', 'coastal-mild', '722950', 'TMY3'],
  ['sacramento-ca', 'Sacramento CA', 'hot-dry-summer', '724830', 'CZ2010'],
  ['chicago-il', 'Chicago IL', 'cold-humid', '725300', 'TMY3'],
  ['denver-co', 'Denver CO', 'cold-dry', '725650', 'TMY3'],
  ['new-delhi-in', 'New Delhi IN', 'composite', '421810', 'ISD-TMYx'],
  ['santiago-cl', 'Santiago CL', 'mediterranean', '855740', 'ISD-TMYx'],
];
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const VALUES = [['outdoor_degC', 1], ['dewPoint_degC', 1], ['directNormal_W_m2', 0], ['diffuseHorizontal_W_m2', 0], ['globalHorizontal_W_m2', 0], ['wind_m_s', 1]];

const round = (x, digits) => Math.round(x * 10 ** digits) / 10 ** digits;
const sumOf = (values, from, to) => values.subarray(from, to).reduce((a, b) => a + b, 0);
const dayStart = MONTH_DAYS.map((_, m) => MONTH_DAYS.slice(0, m).reduce((a, b) => a + b, 0));
/** Days of a month cut in three by their direct-normal sum; the dull third takes a day that is left, then the middle. */
function thirds(year, month) {
  const days = Array.from({ length: MONTH_DAYS[month] }, (_, d) => dayStart[month] + d);
  const sums = new Map(days.map((day) => [day, sumOf(year.directNormal_W_m2, day * 24, day * 24 + 24)]));
  days.sort((a, b) => sums.get(a) - sums.get(b) || a - b);
  const [n, left] = [Math.floor(days.length / 3), days.length % 3];
  const dull = n + (left > 0 ? 1 : 0);
  const middle = n + (left > 1 ? 1 : 0);
  return [days.slice(0, dull), days.slice(dull, dull + middle), days.slice(dull + middle)];
}

const dayType = (year, days) => ({
  days: days.length,
  ...Object.fromEntries(VALUES.map(([name, digits]) => [
    name, Array.from({ length: 24 }, (_, hour) => round(days.reduce((sum, day) => sum + year[name][day * 24 + hour], 0) / days.length, digits)),
  ])),
});

/** The extremes of a year, rounded as a file shows them. */
function extremesOf(year) {
  const { coldClearMorning: cold, hottestClearDay: hot, exceeded_0_4, exceeded_99_6 } = yearExtremes(year);
  const exceeded = (of) => ({ ...of, outdoor_degC: round(of.outdoor_degC, 1), wetBulb_degC: round(of.wetBulb_degC, 1) });
  const hours = (name, digits) => hot[name].map((x) => round(x, digits));
  return {
    coldClearMorning: {
      ...cold, outdoor_degC: round(cold.outdoor_degC, 1), wind_m_s: round(cold.wind_m_s, 1), directNormal_W_m2: Math.round(cold.directNormal_W_m2), diffuseHorizontal_W_m2: Math.round(cold.diffuseHorizontal_W_m2),
      globalHorizontal_W_m2: Math.round(cold.globalHorizontal_W_m2), sunAltitude_deg: round(cold.sunAltitude_deg, 1), sunAzimuth_deg: round(cold.sunAzimuth_deg, 1),
    },
    exceeded_0_4: exceeded(exceeded_0_4),
    exceeded_99_6: exceeded(exceeded_99_6),
    hottestClearDay: {
      ...hot, outdoor_degC: hours('outdoor_degC', 1), wetBulb_degC: hours('wetBulb_degC', 1), directNormal_W_m2: hours('directNormal_W_m2', 0),
      diffuseHorizontal_W_m2: hours('diffuseHorizontal_W_m2', 0), globalHorizontal_W_m2: hours('globalHorizontal_W_m2', 0), wind_m_s: hours('wind_m_s', 1),
    },
  };
}

const folder = process.argv[2];
if (folder === undefined) throw new Error('name the folder that holds the hourly files (KEY.epw.gz)');
for (const [key, label, group, station, set] of PLACES) {
  const { weather, dewPoint_degC, findings } = await readWeatherFile(join(folder, `${key}.epw.gz`));
  if (weather === null) throw new Error(`${key}: ${findings.map((each) => each.text).join(' ')}`);
  for (const each of findings) console.warn(`${key}: ${each.text}`);
  const year = { ...weather, dewPoint_degC };
  const total = (name) => Math.round(sumOf(year[name], 0, 8760) / 100) / 10;
  const file = {
    key, label, group, ...weather.site, elevation_m: weather.elevation_m,
    validFrom: '2008-01-01', basis: 'derived from a published typical year',
    source: `typical year ${set} of station ${station}, ${weather.label}`,
    how: "Days of a month sorted by their direct-normal sum and cut in three: dull, middle, bright; hourly means of each, local standard time, hour 0 = 00:00-01:00.",
    hourlyFile: {
      how: 'sums and means of the 8760 hours, to check the day types by',
      directNormal_kWh_m2: total('directNormal_W_m2'), diffuseHorizontal_kWh_m2: total('diffuseHorizontal_W_m2'), globalHorizontal_kWh_m2: total('globalHorizontal_W_m2'),
      outdoor_degC: round(sumOf(year.outdoor_degC, 0, 8760) / 8760, 2), wetBulb_degC: round(sumOf(year.wetBulb_degC, 0, 8760) / 8760, 2),
    },
    extremes: {
      how: 'Of this one typical year, not of many years. coldClearMorning: coldest hour from 05 to 12 h with direct sun of 400 W/m2 or more, the sun above 5 degrees and wind of 3 m/s or less. exceeded: dry bulb exceeded in 0.4 % and 99.6 % of the hours with the mean wet bulb of the hours within 0.5 K and a day on which it stood. hottestClearDay: of the bright third of every month the day with the highest hour.',
      ...extremesOf(weather),
    },
    months: MONTHS.map((_, month) => thirds(year, month).map((days) => dayType(year, days))),
  };
  // One line per list of hours keeps the file readable and its changes reviewable.
  const text = JSON.stringify(file, null, 1).replace(/\[\s+(-?[\d.][^\][{}"]*?)\s+\]/g, (_, inner) => `[${inner.replace(/\s+/g, ' ')}]`);
  writeFileSync(join('data', 'climates', `${key}.json`), `${text}\n`);
}
