import { type Catalogue, placesApart_km } from '#catalogue';
import type { Building, HourlyYear } from '#calc';
import { weatherAndFindings, type WeatherFinding } from '#weather';
import type { PlanFinding } from '../plan/plan-finding.js';

/** A year of weather for every building, with what should be known about the choice. */
export interface BuildingWeather {
  readonly weather: ReadonlyMap<string, HourlyYear>;
  readonly findings: readonly PlanFinding[];
}

export interface ChosenWeather {
  readonly of: { readonly epw: string } | { readonly climate: string };
  readonly finding: PlanFinding | null;
}

/** The weather that stands for a building, as kernels name it: its own file, the climate it names, or the nearest. */
export function chosenFor(building: Building, catalogue: Catalogue, resolve: (file: string) => string): ChosenWeather {
  if (building.weatherFile !== null) return { of: { epw: resolve(building.weatherFile) }, finding: null };
  if (building.climate !== null && catalogue.climates.list.some((c) => c.key === building.climate)) return { of: { climate: building.climate }, finding: null };
  const { latitude_deg, longitude_deg } = building;
  if (latitude_deg === null || longitude_deg === null) throw new RangeError(`building ${building.id} needs a climate, a weather file, or latitude and longitude`);
  const near = catalogue.climates.nearest(latitude_deg, longitude_deg);
  const text = near.warning ?? `the built-in climate ${near.climate.label}, ${near.distance_km.toFixed(0)} km away, stands for its weather`;
  return { of: { climate: near.climate.key }, finding: { severity: near.warning === null ? 'note' : 'warning', subject: building.id, text, whatToDo: 'give a weather file of the place itself to replace it' } };
}

/** What a weather file has to say, at the first building that names it. */
const ofFile = ({ severity, text, row }: WeatherFinding, building: Building): PlanFinding => ({
  severity: severity === 'filled' ? 'note' : 'warning',
  subject: `${building.weatherFile ?? ''}${row === null ? '' : ` row ${String(row)}`} (${building.id})`,
  text,
  whatToDo: severity === 'filled' ? 'nothing, if the gap is small' : 'do not rely on east against west until the file is replaced or put right',
});

/** Farther than this weather is another place's; as for the nearest climate. Common practice, no source. */
const FAR_km = 100;

/** How far the weather that a building names comes from, where both places are known. */
function tooFar(building: Building, year: HourlyYear): PlanFinding[] {
  const { latitude_deg, longitude_deg } = building;
  if (latitude_deg === null || longitude_deg === null || (building.climate === null && building.weatherFile === null)) return [];
  const away_km = placesApart_km(year.site, { latitude_deg, longitude_deg });
  if (away_km < 1) return [];
  return [{ severity: away_km > FAR_km ? 'warning' : 'note', subject: building.id, text: `its weather, ${year.label}, is from ${away_km.toFixed(0)} km away`, whatToDo: away_km > FAR_km ? 'give a weather file of the place itself' : 'nothing' }];
}

/**
 * Chooses and reads the weather of each building: its own file first, then the climate it names, then the nearest built-in one, which
 * says how far it is.
 *
 * @param resolve makes a path of a file name in the inventory
 */
export function buildingWeather(buildings: readonly Building[], catalogue: Catalogue, resolve: (file: string) => string): BuildingWeather {
  const read = new Map<string, ReturnType<typeof weatherAndFindings>>();
  const findings: PlanFinding[] = [];
  const weather = new Map<string, HourlyYear>();
  for (const building of buildings) {
    const { of, finding } = chosenFor(building, catalogue, resolve);
    if (finding !== null) findings.push(finding);
    const key = JSON.stringify(of);
    let found = read.get(key);
    if (found === undefined) {
      read.set(key, (found = weatherAndFindings(of, catalogue)));
      findings.push(...found.findings.map((f) => ofFile(f, building)));
    }
    weather.set(building.id, found.weather);
    findings.push(...tooFar(building, found.weather));
  }
  return { weather, findings };
}
