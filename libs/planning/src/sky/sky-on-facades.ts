import { type FacadeSky, facadeSky, type HourlyYear, type Site, skyYear, type SunYear, sunYear } from '#calc';
import type { KnownPortfolio } from '../known/known-portfolio.js';

/** Sun and light of one site: worked out once for all its facades. */
export interface SiteSky {
  readonly site: string;
  readonly weather: HourlyYear;
  readonly sun: SunYear;
  /** By `facadeKey`. */
  readonly facades: ReadonlyMap<string, FacadeSky>;
}

/** Skies by site, and the site of each building. */
export interface SkiesOnFacades {
  readonly sites: ReadonlyMap<string, SiteSky>;
  readonly siteOf: ReadonlyMap<string, string>;
}

export const facadeKey = (azimuth_deg: number, tilt_deg: number): string => `${String(azimuth_deg)}|${String(tilt_deg)}`;

const siteKey = (site: Site, weather: HourlyYear): string => [weather.label, site.latitude_deg, site.longitude_deg, site.timeZone_h].join('|');

/** Bearings and tilts of all windows of each building, and its roof. */
function facadesOf(known: KnownPortfolio): Map<string, Map<string, readonly [number, number]>> {
  const found = new Map<string, Map<string, readonly [number, number]>>();
  for (const dwelling of known.dwellings) {
    let ofBuilding = found.get(dwelling.building);
    if (ofBuilding === undefined) found.set(dwelling.building, (ofBuilding = new Map<string, readonly [number, number]>()));
    if (dwelling.exposedRoof_m2 > 0) ofBuilding.set(facadeKey(0, 0), [0, 0]);
    for (const window of dwelling.windows) {
      const tilt = window.tilt_deg ?? 90;
      ofBuilding.set(facadeKey(window.azimuth_deg, tilt), [window.azimuth_deg, tilt]);
      ofBuilding.set(facadeKey(window.azimuth_deg, 90), [window.azimuth_deg, 90]);
    }
  }
  return found;
}

/**
 * Sun and sky on every facade of the portfolio: once per (site, azimuth, tilt), never per window. Buildings in one place with one
 * weather share a site.
 *
 * @param weather a year for every building
 * @param albedo of the ground before the facades, 0…1
 */
export function skyOnFacades(known: KnownPortfolio, weather: ReadonlyMap<string, HourlyYear>, albedo: number): SkiesOnFacades {
  const sites = new Map<string, { site: string; weather: HourlyYear; sun: SunYear; facades: Map<string, FacadeSky>; sky: ReturnType<typeof skyYear> }>();
  const siteOf = new Map<string, string>();
  for (const [building, facades] of facadesOf(known)) {
    const year = weather.get(building);
    if (year === undefined) throw new RangeError(`weather must hold a year for every building, got none for ${building}`);
    const key = siteKey(year.site, year);
    siteOf.set(building, key);
    let site = sites.get(key);
    if (site === undefined) {
      const sun = sunYear(year.site);
      site = { site: key, weather: year, sun, facades: new Map(), sky: skyYear(sun, year) };
      sites.set(key, site);
    }
    for (const [facade, [azimuth_deg, tilt_deg]] of facades) {
      if (!site.facades.has(facade)) site.facades.set(facade, facadeSky({ sun: site.sun, weather: year, azimuth_deg, tilt_deg, albedo, sky: site.sky }));
    }
  }
  const bare = [...sites.values()].map(({ site, weather: year, sun, facades }): [string, SiteSky] => [site, { site, weather: year, sun, facades }]);
  return { sites: new Map(bare), siteOf };
}
