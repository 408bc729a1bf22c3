import type { Site } from '#calc';

/** Farther than this a climate is another place's: sea breeze, hills and valleys differ well within it. Common practice, no source. */
const FAR_KM = 100;
/** A climate of another kind at up to this many times the distance is as good a guess. Common practice, no source. */
const RIVAL = 1.5;

interface Placed {
  readonly key: string;
  readonly label: string;
  readonly group: string;
  readonly site: Site;
}

/** The nearest of some climates to a place. */
export interface NearestClimate<C extends Placed> {
  readonly climate: C;
  readonly distance_km: number;
  /** Why the choice should be looked at; `null` when the place is near. */
  readonly warning: string | null;
}

/** Great-circle distance by the haversine formula on a sphere of 6371 km. */
export function placesApart_km(a: Pick<Site, 'latitude_deg' | 'longitude_deg'>, b: Pick<Site, 'latitude_deg' | 'longitude_deg'>): number {
  const { latitude_deg, longitude_deg } = b;
  const rad = Math.PI / 180;
  const up = Math.sin(((latitude_deg - a.latitude_deg) * rad) / 2) ** 2;
  const along = Math.sin(((longitude_deg - a.longitude_deg) * rad) / 2) ** 2;
  return 2 * 6371 * Math.asin(Math.min(1, Math.sqrt(up + Math.cos(a.latitude_deg * rad) * Math.cos(latitude_deg * rad) * along)));
}

/**
 * The nearest climate to a place, never silent when it is far or when a climate of another kind is nearly as near.
 *
 * @throws RangeError when the place is not on the earth
 */
export function nearestClimate<C extends Placed>(list: readonly C[], latitude_deg: number, longitude_deg: number): NearestClimate<C> {
  if (!(Math.abs(latitude_deg) <= 90)) throw new RangeError(`latitude_deg must be −90…90, got ${latitude_deg}`);
  if (!(Math.abs(longitude_deg) <= 180)) throw new RangeError(`longitude_deg must be −180…180, got ${longitude_deg}`);
  const byDistance = list
    .map((climate) => ({ climate, distance_km: placesApart_km(climate.site, { latitude_deg, longitude_deg }) }))
    .sort((a, b) => a.distance_km - b.distance_km || (a.climate.key < b.climate.key ? -1 : 1));
  const [nearest] = byDistance;
  if (nearest === undefined) throw new RangeError('climates must not be empty');
  if (nearest.distance_km <= FAR_KM) return { ...nearest, warning: null };
  const { climate } = nearest;
  const rival = byDistance.find((each) => each.climate.group !== climate.group && each.distance_km <= RIVAL * nearest.distance_km);
  const between = rival === undefined ? '' : ` ${rival.climate.label} (${rival.climate.group}) is ${Math.round(rival.distance_km)} km away and of another kind: compare both.`;
  const warning = `The nearest built-in climate, ${climate.label} (${climate.group}), is ${Math.round(nearest.distance_km)} km away, more than ${FAR_KM} km: give a weather file of the place itself.${between}`;
  return { ...nearest, warning };
}
