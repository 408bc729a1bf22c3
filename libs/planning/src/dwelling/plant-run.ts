import { heatingUse, latentLoad_W, plantCurves, type PlantCurves, plantOnWeather, type PlantOnWeather, type PlantState, runPlant, sensibleLimit_W } from '#calc';
import type { YearSpan } from './dwelling-task.js';
import type { KnownDwelling } from '../known/known-dwelling.js';
import type { OptionRoom } from './option-room.js';
import type { SiteSky } from '../sky/sky-on-facades.js';

/** A dwelling's machine in each state of its life, under its weather. */
export interface Machines {
  readonly of: (plant: YearSpan['plant']) => PlantOnWeather;
}

/** Electricity of a year of cooling, with the moisture that was taken out. */
export interface CoolingYear {
  readonly electricity_kWh: Float64Array;
  readonly total_kWh: number;
  readonly latent_W: Float64Array;
  readonly runHours_h: number;
  readonly peak_kW: number;
  readonly unmetHours: number;
}

/** A machine of unknown size is taken this much larger than the largest hour. Source: oversizing of 25 to 50 % is usual, field studies. */
const OVERSIZING = 1.25;
/** Smallest machine of the trade, half a ton. */
const SMALLEST_W = 1758;

function stateOf(d: KnownDwelling, room: OptionRoom, of: { readonly plant: YearSpan['plant']; readonly capacity_W: number }): PlantState {
  const performance = room.plants[d.plantKind];
  if (performance === undefined) throw new RangeError(`plant kind must be known, got ${d.plantKind}`);
  return {
    kind: d.plantKind,
    performance,
    ratedCapacity_W: of.capacity_W,
    efficiency: of.plant === 'present' ? d.plantNow : d.plantAfter,
    distributionEfficiency: d.ductEfficiency,
    ...(of.plant === 'present' && d.plantAgeing !== null ? { ageing: d.plantAgeing } : {}),
  };
}

/** Curves by weather and kind: all dwellings of a site share them. They go when their weather goes. */
const curvesOfWeather = new WeakMap<Float64Array, Map<string, PlantCurves>>();

function curvesOf(state: PlantState, weather: SiteSky['weather']): PlantCurves {
  let ofKind = curvesOfWeather.get(weather.outdoor_degC);
  if (ofKind === undefined) curvesOfWeather.set(weather.outdoor_degC, (ofKind = new Map<string, PlantCurves>()));
  let curves = ofKind.get(state.kind);
  if (curves === undefined) ofKind.set(state.kind, (curves = plantCurves(state, weather)));
  return curves;
}

/**
 * The machines of a dwelling; a size that is not known follows from the largest sensible load as found, with the usual oversizing.
 *
 * @param peakSensible_W largest load as found without any limit; used only where the capacity is not known
 */
export function machinesOf(d: KnownDwelling, at: { readonly room: OptionRoom; readonly site: SiteSky; readonly peakSensible_W: number }): Machines {
  const kept = new Map<YearSpan['plant'], PlantOnWeather>();
  const ratio = at.room.plants[d.plantKind]?.sensibleHeatRatio ?? 0.73;
  const capacity_W = d.plantCapacity_W ?? Math.max(SMALLEST_W, (OVERSIZING * at.peakSensible_W) / ratio);
  return {
    of: (plant) => {
      let on = kept.get(plant);
      if (on === undefined) {
        const state = stateOf(d, at.room, { plant, capacity_W });
        kept.set(plant, (on = plantOnWeather(state, at.site.weather, curvesOf(state, at.site.weather))));
      }
      return on;
    },
  };
}

/** Most sensible heat the present machine takes out each hour, where its size is known; a plant at its limit gives comfort first. */
export function plantLimit_W(d: KnownDwelling, at: { readonly room: OptionRoom; readonly site: SiteSky }): Float64Array | null {
  return d.plantCapacity_W === null ? null : sensibleLimit_W(machinesOf(d, { ...at, peakSensible_W: 0 }).of('present'));
}

/** Cooling electricity of a load; behind film the moisture of the dwelling as found is kept. Its arrays are its own. */
export function coolingYear(on: PlantOnWeather, cooling_W: Float64Array, asFound: CoolingYear | null): CoolingYear {
  const latent_W = asFound === null ? latentLoad_W(on, cooling_W) : asFound.latent_W;
  return coolingWith(on, { cooling_W, latent_W }, new Float64Array(8760));
}

/** Cooling electricity of a sensible and a latent load, into `out`. */
export function coolingWith(on: PlantOnWeather, loads: { readonly cooling_W: Float64Array; readonly latent_W: Float64Array }, out: Float64Array): CoolingYear {
  const year = runPlant(on, { sensibleLoad_W: loads.cooling_W, latentLoad_W: loads.latent_W }, out);
  return { electricity_kWh: out, total_kWh: year.electricity_total_kWh, latent_W: loads.latent_W, runHours_h: year.runHours_h, peak_kW: year.peak_kW, unmetHours: year.unmetHours };
}

/** Heating as it shows on the meter and as fuel. */
export interface HeatingYear {
  /** Null where the heat does not come by wire. */
  readonly electricity_kWh: Float64Array | null;
  readonly total_kWh: number;
}

export function heatingYear(d: KnownDwelling, heating_W: Float64Array, out: Float64Array = new Float64Array(8760)): HeatingYear {
  if (d.heatingKind === 'none') return { electricity_kWh: null, total_kWh: 0 };
  const use = heatingUse({ kind: d.heatingKind, efficiency: d.heatingEfficiency }, heating_W, out);
  return d.heatingKind === 'gas' ? { electricity_kWh: null, total_kWh: use.gas_total_kWh } : { electricity_kWh: use.electricity_kWh, total_kWh: use.electricity_total_kWh };
}
