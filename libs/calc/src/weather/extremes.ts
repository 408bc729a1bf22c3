import { sunYear } from '../sun/index.js';
import { MONTH_DAYS } from './day-types.js';
import type { HourlyYear } from './hourly-year.js';

/** The coldest clear, calm morning hour of a year: the hour that tests glass most. */
export interface ColdClearMorning {
  readonly day: string;
  readonly hour: number;
  readonly outdoor_degC: number;
  readonly wind_m_s: number;
  readonly directNormal_W_m2: number;
  readonly diffuseHorizontal_W_m2: number;
  readonly globalHorizontal_W_m2: number;
  readonly sunAltitude_deg: number;
  readonly sunAzimuth_deg: number;
}

/** A dry bulb that a share of the hours exceeds, with the wet bulb that goes with it. */
export interface ExceededTemperature {
  readonly outdoor_degC: number;
  readonly wetBulb_degC: number;
  /** Hours within half a degree, over which the wet bulb is the mean. */
  readonly hours: number;
  readonly day: string;
}

/** The hottest of the bright days, hour by hour. */
export interface HottestClearDay {
  readonly day: string;
  readonly dayOfYear: number;
  readonly outdoor_degC: readonly number[];
  readonly wetBulb_degC: readonly number[];
  readonly directNormal_W_m2: readonly number[];
  readonly diffuseHorizontal_W_m2: readonly number[];
  readonly globalHorizontal_W_m2: readonly number[];
  readonly wind_m_s: readonly number[];
}

/** Extremes of one year of weather, the days named. */
export interface YearExtremes {
  /** Null where no morning of the year is clear and calm. */
  readonly coldClearMorning: ColdClearMorning | null;
  readonly exceeded_0_4: ExceededTemperature;
  readonly exceeded_99_6: ExceededTemperature;
  readonly hottestClearDay: HottestClearDay;
}

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const DAY_STARTS = MONTH_DAYS.map((_, m) => MONTH_DAYS.slice(0, m).reduce((a, b) => a + b, 0));

function dayName(day: number): string {
  const month = DAY_STARTS.findLastIndex((start) => start <= day);
  return `${String(day - DAY_STARTS[month]! + 1)} ${MONTHS[month]!}`;
}

function exceeded(year: HourlyYear, share: number): ExceededTemperature {
  const dry = Float64Array.from(year.outdoor_degC).sort().reverse()[Math.round(share * 8760)]!;
  const off = (i: number): number => Math.abs(year.outdoor_degC[i]! - dry);
  const near = Array.from(year.outdoor_degC.keys()).filter((i) => off(i) <= 0.5);
  const nearest = near.reduce((a, b) => (off(b) < off(a) ? b : a));
  return { outdoor_degC: dry, wetBulb_degC: near.reduce((sum, i) => sum + year.wetBulb_degC[i]!, 0) / near.length, hours: near.length, day: dayName(Math.floor(nearest / 24)) };
}

/** Clear: direct sun of 400 W/m² or more; calm: wind of 3 m/s or less; morning: from 5 to 12 o'clock with the sun above 5°. */
function coldClearMorning(year: HourlyYear): ColdClearMorning | null {
  const sun = sunYear(year.site);
  let coldest = -1;
  for (let i = 0; i < 8760; i++) {
    const isMorning = i % 24 >= 5 && i % 24 < 12 && sun.altitude_deg[i]! > 5;
    if (!isMorning || year.directNormal_W_m2[i]! < 400 || year.wind_m_s[i]! > 3) continue;
    if (coldest < 0 || year.outdoor_degC[i]! < year.outdoor_degC[coldest]!) coldest = i;
  }
  if (coldest < 0) return null;
  return {
    day: dayName(Math.floor(coldest / 24)),
    hour: coldest % 24,
    outdoor_degC: year.outdoor_degC[coldest]!,
    wind_m_s: year.wind_m_s[coldest]!,
    directNormal_W_m2: year.directNormal_W_m2[coldest]!,
    diffuseHorizontal_W_m2: year.diffuseHorizontal_W_m2[coldest]!,
    globalHorizontal_W_m2: year.globalHorizontal_W_m2[coldest]!,
    sunAltitude_deg: sun.altitude_deg[coldest]!,
    sunAzimuth_deg: sun.azimuth_deg[coldest]!,
  };
}

/** Days of a month in the bright third by their direct-normal sum; the dull third takes a day that is left over, then the middle. */
function brightDays(year: HourlyYear, month: number): number[] {
  const days = Array.from({ length: MONTH_DAYS[month]! }, (_, d) => DAY_STARTS[month]! + d);
  const sums = new Map(days.map((day) => [day, year.directNormal_W_m2.subarray(day * 24, day * 24 + 24).reduce((a, b) => a + b, 0)]));
  days.sort((a, b) => sums.get(a)! - sums.get(b)! || a - b);
  const third = Math.floor(days.length / 3);
  return days.slice(days.length - third);
}

function hottestClearDay(year: HourlyYear): HottestClearDay {
  const top = (day: number): number => year.outdoor_degC.subarray(day * 24, day * 24 + 24).reduce((a, b) => Math.max(a, b));
  const day = MONTHS.flatMap((_, month) => brightDays(year, month)).reduce((a, b) => (top(b) > top(a) ? b : a));
  const hours = (values: Float64Array): number[] => [...values.subarray(day * 24, day * 24 + 24)];
  return {
    day: dayName(day),
    dayOfYear: day + 1,
    outdoor_degC: hours(year.outdoor_degC),
    wetBulb_degC: hours(year.wetBulb_degC),
    directNormal_W_m2: hours(year.directNormal_W_m2),
    diffuseHorizontal_W_m2: hours(year.diffuseHorizontal_W_m2),
    globalHorizontal_W_m2: hours(year.globalHorizontal_W_m2),
    wind_m_s: hours(year.wind_m_s),
  };
}

/**
 * Extremes of a year of weather: the coldest clear calm morning hour, the dry bulbs exceeded in 0.4 % and 99.6 % of the hours with their
 * coincident wet bulb, and the hottest of the bright days.
 *
 *   exceeded: value at rank share × 8760 of the hours from hot to cold; wet bulb: mean of the hours within 0.5 K
 *
 * Of this one year, not of many: a typical year is milder than the record.
 *
 * @param year 8760 hours of a real or typical year; day types know no single days
 * @returns extremes with the day named
 * @source own rule after the design conditions of handbooks (0.4 % dry bulb with mean coincident wet bulb)
 */
export function yearExtremes(year: HourlyYear): YearExtremes {
  return { coldClearMorning: coldClearMorning(year), exceeded_0_4: exceeded(year, 0.004), exceeded_99_6: exceeded(year, 0.996), hottestClearDay: hottestClearDay(year) };
}
