import { stacked } from './layers.js';
import { filmedMakeUp } from './film-on-glass.js';
import { paneByAngle } from './pane-at-angle.js';
import type { FilmOnClear, GlazingMakeUp } from './pane.js';

/** Weather and room at one instant, as a pane feels them. */
export interface PaneWeather {
  readonly name: string;
  readonly solar_W_m2: number;
  readonly outdoor_degC: number;
  readonly indoor_degC: number;
  readonly outdoorFilm_W_m2K: number;
  readonly indoorFilm_W_m2K: number;
  /** Temperature of the covered edge in its frame. */
  readonly edge_degC: number;
}

/** A glazing as heat flows through it: what each pane takes up of the sun, and the gaps between. */
export interface PaneHeat {
  readonly layerAbsorptance: readonly number[];
  /** One fewer than panes. */
  readonly gaps_m2K_W: readonly number[];
}

/** Temperatures of panes and edge, and the stress their difference puts into an edge. An estimate for screening, no verdict. */
export interface PaneStress {
  readonly weather: string;
  readonly pane_degC: readonly number[];
  readonly edge_degC: number;
  /** Of the hottest pane over the edge. */
  readonly difference_K: number;
  readonly stress_MPa: number;
}

/** Young's modulus 70 GPa × expansion 9e-6 /K. Source: product standards for float glass, from memory. */
const STRESS_MPa_K = 0.63;

/** Summer rating conditions: full sun, the edge half way between outdoors and room. */
export const SUMMER_AFTERNOON: PaneWeather = {
  name: 'summer',
  solar_W_m2: 783,
  outdoor_degC: 32,
  indoor_degC: 24,
  outdoorFilm_W_m2K: 20.3,
  indoorFilm_W_m2K: 8.3,
  edge_degC: 28,
};

/** A clear, cold, calm morning: the frame is still as cold as the air. Usually the worst hour of the year. */
export const COLD_CALM_MORNING: PaneWeather = {
  name: 'cold-sunny-calm',
  solar_W_m2: 900,
  outdoor_degC: -5,
  indoor_degC: 21,
  outdoorFilm_W_m2K: 12,
  indoorFilm_W_m2K: 8,
  edge_degC: -5,
};

/** Summer behind closed drapes that hold the heat at the glass. */
export const HEAT_TRAP: PaneWeather = {
  name: 'heat-trap',
  solar_W_m2: 783,
  outdoor_degC: 32,
  indoor_degC: 40,
  outdoorFilm_W_m2K: 12,
  indoorFilm_W_m2K: 4,
  edge_degC: 36,
};

/**
 * The cold, calm, sunny morning of a site's own climate.
 *
 * @param outdoor_degC coldest clear calm morning of the site
 * @param solar_W_m2 sun on the glass that morning, 0 or more
 * @returns weather with the edge at the outdoor temperature
 * @source conditions as `COLD_CALM_MORNING`
 */
export function coldMorning(outdoor_degC: number, solar_W_m2: number): PaneWeather {
  return { ...COLD_CALM_MORNING, outdoor_degC, solar_W_m2, edge_degC: outdoor_degC };
}

/**
 * What each pane takes up of the sun at normal incidence, bare or filmed.
 *
 * @param makeUp the glass as found
 * @param film sheet figures, or none
 * @returns absorptances, outdoors first, and the gaps
 * @throws RangeError when the sheet breaks a physical limit
 */
export function paneHeat(makeUp: GlazingMakeUp, film: FilmOnClear | null): PaneHeat {
  const filmed = filmedMakeUp(makeUp, film);
  const { layerAbsorptance } = stacked(filmed.panes.map((pane) => paneByAngle(pane)(0)));
  return { layerAbsorptance, gaps_m2K_W: filmed.gaps.map((gap) => gap.resistance_m2K_W) };
}

/**
 * Temperature of each pane in steady sun, each taken as one temperature.
 *
 *   for each pane  A I + Σ (neighbour − T) × conductance = 0     outwards ho, between panes 1/gap, inwards hi
 *
 * @param heat absorptances and gaps
 * @param weather sun, temperatures and surface coefficients above 0
 * @returns °C, outdoors first
 * @throws RangeError when gaps and panes do not fit or a coefficient is not above 0
 * @source heat balance of each sheet; for one pane (A I + ho To + hi Ti)/(ho + hi)
 */
export function paneTemperatures_degC(heat: PaneHeat, weather: PaneWeather): number[] {
  const count = heat.layerAbsorptance.length;
  if (count === 0 || heat.gaps_m2K_W.length !== count - 1) throw new RangeError(`gaps must be one fewer than panes (${String(count)}), got ${String(heat.gaps_m2K_W.length)}`);
  const links = [weather.outdoorFilm_W_m2K, ...heat.gaps_m2K_W.map((r) => 1 / r), weather.indoorFilm_W_m2K];
  for (const link of links) if (!(link > 0 && Number.isFinite(link))) throw new RangeError(`surface coefficients and gaps must be above 0, got ${String(link)}`);
  // Eliminated from outdoors inwards: T_k = own_k + share_k × T_(k+1), the room standing behind the last pane.
  const own: number[] = [];
  const shares: number[] = [];
  for (let k = 0; k < count; k++) {
    const outer = links[k]!;
    const inner = links[k + 1]!;
    const before = k === 0 ? { own: weather.outdoor_degC, share: 0 } : { own: own[k - 1]!, share: shares[k - 1]! };
    const left = outer * (1 - before.share) + inner;
    own.push((heat.layerAbsorptance[k]! * weather.solar_W_m2 + outer * before.own) / left);
    shares.push(inner / left);
  }
  const temperatures: number[] = [];
  let behind = weather.indoor_degC;
  for (let k = count - 1; k >= 0; k--) {
    behind = own[k]! + shares[k]! * behind;
    temperatures.unshift(behind);
  }
  return temperatures;
}

/**
 * Stress the sun puts into the cooler edge of a pane: an estimate to ask by, not to promise by.
 *
 *   k E α (hottest pane − edge), never below 0, k = 1
 *
 * @param heat absorptances and gaps
 * @param weather sun, temperatures, edge
 * @returns temperatures and stress
 * @throws RangeError as `paneTemperatures_degC`
 * @source simple edge-stress estimate, E α = 0.63 MPa/K (from memory)
 */
export function paneStress(heat: PaneHeat, weather: PaneWeather): PaneStress {
  const pane_degC = paneTemperatures_degC(heat, weather);
  const difference_K = Math.max(0, Math.max(...pane_degC) - weather.edge_degC);
  return { weather: weather.name, pane_degC, edge_degC: weather.edge_degC, difference_K, stress_MPa: STRESS_MPa_K * difference_K };
}
