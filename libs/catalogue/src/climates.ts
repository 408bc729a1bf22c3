import { yearOfDayTypes, type DayTypeClimate, type HourlyYear, type Site } from '#calc';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { readData } from './data-folder.js';
import { nearestClimate, type NearestClimate } from './nearest-climate.js';

const hours = z.array(z.number()).length(24);
const dayType = z.strictObject({
  days: z.int().min(1), outdoor_degC: hours, dewPoint_degC: hours, directNormal_W_m2: hours, diffuseHorizontal_W_m2: hours, globalHorizontal_W_m2: hours, wind_m_s: hours,
});
const exceeded = z.strictObject({ outdoor_degC: z.number(), wetBulb_degC: z.number(), hours: z.int(), day: z.string() });
const extremes = z.strictObject({
  how: z.string(),
  /** Coldest clear calm morning hour: the hour that tests glass most. */
  coldClearMorning: z.strictObject({
    day: z.string(), hour: z.int(), outdoor_degC: z.number(), wind_m_s: z.number(), directNormal_W_m2: z.number(), diffuseHorizontal_W_m2: z.number(),
    globalHorizontal_W_m2: z.number(), sunAltitude_deg: z.number(), sunAzimuth_deg: z.number(),
  }),
  exceeded_0_4: exceeded,
  exceeded_99_6: exceeded,
  /** 24 hours of the hottest of the bright days. */
  hottestClearDay: z.strictObject({
    day: z.string(), dayOfYear: z.int(), outdoor_degC: hours, wetBulb_degC: hours, directNormal_W_m2: hours, diffuseHorizontal_W_m2: hours, globalHorizontal_W_m2: hours, wind_m_s: hours,
  }),
});
const climateFile = z.strictObject({
  key: z.string(), label: z.string(), group: z.string(), latitude_deg: z.number().min(-90).max(90), longitude_deg: z.number().min(-180).max(180),
  timeZone_h: z.number().min(-12).max(14), elevation_m: z.number(), validFrom: z.string(), basis: z.string(), source: z.string(), how: z.string(),
  hourlyFile: z.strictObject({
    how: z.string(), directNormal_kWh_m2: z.number(), diffuseHorizontal_kWh_m2: z.number(), globalHorizontal_kWh_m2: z.number(), outdoor_degC: z.number(), wetBulb_degC: z.number(),
  }),
  extremes,
  months: z.array(z.array(dayType).length(3)).length(12),
});

export type ClimateExtremes = z.infer<typeof extremes>;

/** A built-in climate: 36 typical days, the extremes of its year, and where they come from. */
export interface Climate {
  readonly key: string;
  readonly label: string;
  /** Kind of climate in words, for example `hot-humid`. */
  readonly group: string;
  readonly site: Site;
  readonly elevation_m: number;
  readonly source: string;
  readonly basis: string;
  readonly validFrom: string;
  /** Sums and means of the hourly file the day types were made from. */
  readonly hourlyFile: z.infer<typeof climateFile>['hourlyFile'];
  readonly extremes: ClimateExtremes;
  readonly dayTypes: DayTypeClimate;
}

/** The built-in climates. */
export interface ClimateCatalogue {
  /** By key. */
  readonly list: readonly Climate[];
  /** @throws RangeError when there is no climate of this KEY; the text lists those there are */
  readonly byKey: (key: string) => Climate;
  /** The climate's 8760 hours; made once and shared, not to be changed. @throws RangeError as `byKey` */
  readonly year: (key: string) => HourlyYear;
  /** The nearest climate, its distance, and a warning when it should not be trusted. */
  readonly nearest: (latitude_deg: number, longitude_deg: number) => NearestClimate<Climate>;
}

function climateOf(folder: string, file: string): Climate {
  const parsed = climateFile.safeParse(readData(folder, join('climates', file)));
  if (!parsed.success) throw new Error(`climates/${file}: ${z.prettifyError(parsed.error)}`);
  const { key, label, group, latitude_deg, longitude_deg, timeZone_h, elevation_m, source, basis, validFrom, hourlyFile, extremes: extreme, months } = parsed.data;
  if (`${key}.json` !== file) throw new Error(`climates/${file}: its key is ${key}`);
  const site = { latitude_deg, longitude_deg, timeZone_h };
  return {
    key, label, group, site, elevation_m, source, basis, validFrom, hourlyFile, extremes: extreme,
    dayTypes: { key, label, source: `${source}, as day types`, site, elevation_m, months },
  };
}

/** Opens data/climates and checks every file. */
export function openClimates(folder: string): ClimateCatalogue {
  const files = readdirSync(join(folder, 'climates')).filter((name) => name.endsWith('.json')).sort();
  const list = files.map((file) => climateOf(folder, file));
  const byKey = (key: string): Climate => {
    const climate = list.find((each) => each.key === key);
    if (climate === undefined) throw new RangeError(`climate must be one of ${list.map((each) => each.key).join(', ')}, got ${key}`);
    return climate;
  };
  const years = new Map<string, HourlyYear>();
  const year = (key: string): HourlyYear => {
    const made = years.get(key) ?? yearOfDayTypes(byKey(key).dayTypes);
    years.set(key, made);
    return made;
  };
  return { list, byKey, year, nearest: (latitude_deg, longitude_deg) => nearestClimate(list, latitude_deg, longitude_deg) };
}
