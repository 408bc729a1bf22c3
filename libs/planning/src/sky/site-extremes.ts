import { COLD_CALM_MORNING, coldMorning, type HourlyYear, type PaneWeather, type Site, SUMMER_AFTERNOON, sunPosition, yearExtremes, type YearExtremes } from '#calc';
import type { Catalogue } from '#catalogue';

/**
 * Extremes of a year of weather. A built-in climate brings those of the whole hourly file it was made from; a user's file is looked through by
 * the same rule.
 */
export function siteExtremes(year: HourlyYear, catalogue: Pick<Catalogue, 'climates'>): YearExtremes {
  const { climates } = catalogue;
  const own = climates.list.find((climate) => climates.year(climate.key) === year);
  return own?.extremes ?? yearExtremes(year);
}

/** Sun on a wall turned to the sun: beam, half the sky, and a fifth of the level sun from half the ground. */
export function facingWall_W_m2(of: { readonly directNormal_W_m2: number; readonly diffuseHorizontal_W_m2: number; readonly globalHorizontal_W_m2: number; readonly sunAltitude_deg: number }): number {
  if (of.sunAltitude_deg <= 0) return 0;
  return of.directNormal_W_m2 * Math.cos((of.sunAltitude_deg * Math.PI) / 180) + of.diffuseHorizontal_W_m2 / 2 + (0.2 * of.globalHorizontal_W_m2) / 2;
}

/** True height of the sun at half past an hour of a day of the year 2001. */
export function sunAltitudeOf_deg(site: Site, dayOfYear: number, hour: number): number {
  const utc_ms = Date.UTC(2001, 0, dayOfYear, hour, 30) - site.timeZone_h * 3_600_000;
  return sunPosition(utc_ms, site.latitude_deg, site.longitude_deg).altitude_deg;
}

/** Half of the sun taken up: the pane by which the hardest summer hour is picked. */
const TAKEN_UP = 0.5;

/** The hour of the hottest clear day that drives a pane farthest from its edge, the wall turned to the sun. */
function summerHour(extremes: YearExtremes, site: Site): PaneWeather {
  const { hottestClearDay: day } = extremes;
  const { outdoorFilm_W_m2K: ho, indoorFilm_W_m2K: hi, indoor_degC } = SUMMER_AFTERNOON;
  const hours = day.outdoor_degC.map((outdoor_degC, hour) => {
    const solar_W_m2 = facingWall_W_m2({
      directNormal_W_m2: day.directNormal_W_m2[hour]!,
      diffuseHorizontal_W_m2: day.diffuseHorizontal_W_m2[hour]!,
      globalHorizontal_W_m2: day.globalHorizontal_W_m2[hour]!,
      sunAltitude_deg: sunAltitudeOf_deg(site, day.dayOfYear, hour),
    });
    const edge_degC = (outdoor_degC + indoor_degC) / 2;
    return { weather: { solar_W_m2, outdoor_degC, edge_degC }, rise_K: (TAKEN_UP * solar_W_m2 + ho * outdoor_degC + hi * indoor_degC) / (ho + hi) - edge_degC };
  });
  const worst = hours.reduce((a, b) => (b.rise_K > a.rise_K ? b : a));
  return { ...SUMMER_AFTERNOON, ...worst.weather, name: `${day.day}, hottest clear day` };
}

/**
 * Weather a pane is looked at in: the summer of the ratings, the hardest hour of the site's hottest clear day, and its cold, calm, clear morning.
 *
 * A year without such a morning is looked at in the general one, so that nothing passes for want of weather.
 */
export function paneWeathers(year: HourlyYear, catalogue: Pick<Catalogue, 'climates'>): readonly PaneWeather[] {
  const extremes = siteExtremes(year, catalogue);
  const cold = extremes.coldClearMorning;
  const morning = cold === null ? COLD_CALM_MORNING : { ...coldMorning(cold.outdoor_degC, facingWall_W_m2(cold)), name: `${cold.day}, ${String(cold.hour)} h, coldest clear calm morning` };
  return [SUMMER_AFTERNOON, summerHour(extremes, year.site), morning];
}
