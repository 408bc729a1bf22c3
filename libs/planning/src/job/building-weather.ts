import type { Catalogue } from '#catalogue';
import type { Building, HourlyYear } from '#calc';
import { weatherOf } from '#weather';
import type { PlanFinding } from '../plan/plan.js';

/** A year of weather for every building, with what should be known about the choice. */
export interface BuildingWeather {
  readonly weather: ReadonlyMap<string, HourlyYear>;
  readonly findings: readonly PlanFinding[];
}

interface Chosen {
  readonly of: { readonly epw: string } | { readonly climate: string };
  readonly finding: PlanFinding | null;
}

function chosenFor(building: Building, catalogue: Catalogue, resolve: (file: string) => string): Chosen {
  if (building.weatherFile !== null) return { of: { epw: resolve(building.weatherFile) }, finding: null };
  if (building.climate !== null && catalogue.climates.list.some((c) => c.key === building.climate)) return { of: { climate: building.climate }, finding: null };
  const { latitude_deg, longitude_deg } = building;
  if (latitude_deg === null || longitude_deg === null) throw new RangeError(`building ${building.id} needs a climate, a weather file, or latitude and longitude`);
  const near = catalogue.climates.nearest(latitude_deg, longitude_deg);
  const text = near.warning ?? `the built-in climate ${near.climate.label}, ${near.distance_km.toFixed(0)} km away, stands for its weather`;
  return { of: { climate: near.climate.key }, finding: { severity: near.warning === null ? 'note' : 'warning', subject: building.id, text, whatToDo: 'give a weather file of the place itself to replace it' } };
}

/**
 * Chooses and reads the weather of each building: its own file first, then the climate it names, then the nearest built-in one, which
 * says how far it is.
 *
 * @param resolve makes a path of a file name in the inventory
 */
export function buildingWeather(buildings: readonly Building[], catalogue: Catalogue, resolve: (file: string) => string): BuildingWeather {
  const read = new Map<string, HourlyYear>();
  const findings: PlanFinding[] = [];
  const weather = new Map<string, HourlyYear>();
  for (const building of buildings) {
    const { of, finding } = chosenFor(building, catalogue, resolve);
    if (finding !== null) findings.push(finding);
    const key = JSON.stringify(of);
    let year = read.get(key);
    if (year === undefined) read.set(key, (year = weatherOf(of, catalogue)));
    weather.set(building.id, year);
  }
  return { weather, findings };
}
