import { facadeSky, type HourlyYear, skyYear, type SunYear, type YearExtremes } from '#calc';
import type { SiteSky } from '../sky/sky-on-facades.js';

/** The day a machine is sized for: the hottest clear day of the year, moved so that its highest hour is the dry bulb exceeded in 0.4 % of the hours. */
export interface DesignDay {
  readonly name: string;
  readonly dayOfYear: number;
  readonly outdoor_degC: readonly number[];
  readonly directNormal_W_m2: readonly number[];
  readonly diffuseHorizontal_W_m2: readonly number[];
  readonly globalHorizontal_W_m2: readonly number[];
  /** Of the hottest hour, and the wet bulb that goes with it. */
  readonly dryBulb_degC: number;
  readonly wetBulb_degC: number;
}

export function designDayOf({ hottestClearDay: day, exceeded_0_4 }: YearExtremes): DesignDay {
  const moved = exceeded_0_4.outdoor_degC - Math.max(...day.outdoor_degC);
  return {
    name: `hottest clear day (${day.day}), highest hour at the 0.4 % dry bulb`,
    dayOfYear: day.dayOfYear,
    outdoor_degC: day.outdoor_degC.map((t) => t + moved),
    directNormal_W_m2: day.directNormal_W_m2,
    diffuseHorizontal_W_m2: day.diffuseHorizontal_W_m2,
    globalHorizontal_W_m2: day.globalHorizontal_W_m2,
    dryBulb_degC: exceeded_0_4.outdoor_degC,
    wetBulb_degC: exceeded_0_4.wetBulb_degC,
  };
}

const everyDay = (hours: ArrayLike<number>): Float64Array => Float64Array.from({ length: 8760 }, (_, h) => hours[h % 24]!);

/** A site that lives its design day 365 times: the same functions run on it, and by its own date every mass has settled. */
export function designSite(site: SiteSky, day: DesignDay, albedo: number): SiteSky {
  const from = (day.dayOfYear - 1) * 24;
  const ofDay = (series: Float64Array): Float64Array => everyDay(series.subarray(from, from + 24));
  const sun: SunYear = { site: site.sun.site, altitude_deg: ofDay(site.sun.altitude_deg), azimuth_deg: ofDay(site.sun.azimuth_deg), extraterrestrialNormal_W_m2: ofDay(site.sun.extraterrestrialNormal_W_m2) };
  const weather: HourlyYear = {
    ...site.weather,
    label: `${site.weather.label}, ${day.name}`,
    outdoor_degC: everyDay(day.outdoor_degC),
    directNormal_W_m2: everyDay(day.directNormal_W_m2),
    diffuseHorizontal_W_m2: everyDay(day.diffuseHorizontal_W_m2),
    globalHorizontal_W_m2: everyDay(day.globalHorizontal_W_m2),
  };
  const sky = skyYear(sun, weather);
  const facades = new Map([...site.facades].map(([key, { azimuth_deg, tilt_deg }]) => [key, facadeSky({ sun, weather, azimuth_deg, tilt_deg, albedo, sky })]));
  return { site: `${site.site}|design day`, weather, sun, facades };
}
