import type { Site } from '../sun/index.js';
import type { HourlyYear } from './hourly-year.js';
import { relativeHumidityOf, standardPressure_Pa, wetBulb_degC } from './psychrometrics.js';

/** A typical day: 24 means of the hour, index 0 = 00:00–01:00 local standard time, and how many days of the month are like it. */
export interface DayType {
  readonly days: number;
  readonly outdoor_degC: readonly number[];
  readonly dewPoint_degC: readonly number[];
  readonly directNormal_W_m2: readonly number[];
  readonly diffuseHorizontal_W_m2: readonly number[];
  readonly globalHorizontal_W_m2: readonly number[];
  readonly wind_m_s: readonly number[];
}

/** A place in 36 typical days: each month a dull, a middle and a bright one. */
export interface DayTypeClimate {
  readonly key: string;
  readonly label: string;
  readonly source: string;
  readonly site: Site;
  readonly elevation_m: number;
  /** 12 months of 3 day types, dull first. */
  readonly months: readonly (readonly DayType[])[];
}

export const MONTH_DAYS: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

const SERIES = ['outdoor_degC', 'directNormal_W_m2', 'diffuseHorizontal_W_m2', 'globalHorizontal_W_m2', 'wind_m_s'] as const;

/** The day types of a month in the order they are lived: dull, middle, bright, dull, middle, … until each has had its days. */
function dayOrder(types: readonly DayType[]): DayType[] {
  const left = types.map((type) => type.days);
  const order: DayType[] = [];
  while (left.some((days) => days > 0)) {
    types.forEach((type, i) => {
      if ((left[i] ?? 0) <= 0) return;
      left[i] = (left[i] ?? 0) - 1;
      order.push(type);
    });
  }
  return order;
}

/** The climate's days from 1 January to 31 December. */
function daysOfYear(climate: DayTypeClimate): DayType[] {
  if (climate.months.length !== 12) throw new RangeError(`months must be 12, got ${climate.months.length}`);
  return climate.months.flatMap((types, month) => {
    const days = dayOrder(types);
    if (days.length !== MONTH_DAYS[month]) throw new RangeError(`days of month ${month + 1} must be ${MONTH_DAYS[month]}, got ${days.length}`);
    return days;
  });
}

/**
 * A year of 8760 hours from a place's day types.
 *
 *   in every month the days run dull, middle, bright, dull, middle, bright, …; a type that has had its days is passed over.
 *   wet bulb of the hour from its dry bulb, dew point and the standard pressure at the place's height
 *
 * Means and sums of each month are those of the day types; the run of the weather from day to day is not.
 *
 * @param climate 12 months × 3 day types × 24 hours
 * @returns the year in local standard time
 * @throws RangeError when the days of a month do not add up or a day has not 24 hours
 * @source order of days: own rule, stated here; wet bulb as `wetBulb_degC`
 */
export function yearOfDayTypes(climate: DayTypeClimate): HourlyYear {
  const days = daysOfYear(climate);
  const year: HourlyYear = {
    site: climate.site,
    label: climate.label,
    source: climate.source,
    elevation_m: climate.elevation_m,
    outdoor_degC: new Float64Array(8760),
    wetBulb_degC: new Float64Array(8760),
    directNormal_W_m2: new Float64Array(8760),
    diffuseHorizontal_W_m2: new Float64Array(8760),
    globalHorizontal_W_m2: new Float64Array(8760),
    wind_m_s: new Float64Array(8760),
  };
  const pressure_Pa = standardPressure_Pa(climate.elevation_m);
  const wetBulbs = new Map<DayType, Float64Array>();
  days.forEach((day, at) => {
    for (const name of SERIES) {
      if (day[name].length !== 24) throw new RangeError(`${name} of a day type must have 24 hours, got ${day[name].length}`);
      year[name].set(day[name], at * 24);
    }
    let wet = wetBulbs.get(day);
    if (wet === undefined) {
      wet = wetBulbDay(day, pressure_Pa);
      wetBulbs.set(day, wet);
    }
    year.wetBulb_degC.set(wet, at * 24);
  });
  return year;
}

function wetBulbDay(day: DayType, pressure_Pa: number): Float64Array {
  if (day.dewPoint_degC.length !== 24) throw new RangeError(`dewPoint_degC of a day type must have 24 hours, got ${day.dewPoint_degC.length}`);
  return Float64Array.from(day.outdoor_degC, (dry, hour) => wetBulb_degC(dry, relativeHumidityOf(dry, day.dewPoint_degC[hour] ?? dry), pressure_Pa));
}
