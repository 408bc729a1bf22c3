import type { HourlyYear } from '../weather/index.js';
import { plantOnWeather, type PlantOnWeather } from './plant-on-weather.js';
import type { PlantState } from './plant.js';

const hours = 8760;

/** A machine's year. */
export interface PlantYear {
  readonly electricity_kWh: Float64Array;
  readonly electricity_total_kWh: number;
  /** Sum of the run shares of the hours. */
  readonly runHours_h: number;
  /** Room heat, sensible and latent, left because the machine was at its limit. */
  readonly unmet_kWh: number;
  readonly unmetHours: number;
  /** Largest electricity of an hour. */
  readonly peak_kW: number;
  readonly peakHour: number | null;
}

/** Loads on a machine; without `latentLoad_W` moisture follows the sensible load at the machine's sensible heat ratio. */
export interface PlantLoads {
  readonly sensibleLoad_W: Float64Array;
  readonly latentLoad_W?: Float64Array;
}

/**
 * A year of loads put on a machine.
 *
 *   each hour as `coolingPlant`; beyond capacity the machine runs through and the rest is left as heat, not as electricity
 *
 * @param on the machine under the year's weather
 * @param loads sensible, and latent where it is kept from another run
 * @param out buffer for the electricity; new when absent
 * @returns kWh by hour and in total, run hours, heat left, peak
 * @throws RangeError when a load does not hold 8760 hours
 * @source NREL/TP-5500-56354; AHRI 210/240
 */
export function runPlant(on: PlantOnWeather, loads: PlantLoads, out: Float64Array = new Float64Array(hours)): PlantYear {
  checkYear('sensibleLoad_W', loads.sensibleLoad_W);
  if (loads.latentLoad_W) checkYear('latentLoad_W', loads.latentLoad_W);
  const { machine } = on;
  const tally = { total_W: 0, run_h: 0, unmet_W: 0, unmetHours: 0, peak_W: 0, peakHour: -1 };
  const perDuct = 1 / machine.distributionEfficiency;
  if (loads.latentLoad_W) runCoil(on, { coil: loads.sensibleLoad_W, more: loads.latentLoad_W, scale: perDuct, out }, tally);
  else runCoil(on, { coil: loads.sensibleLoad_W, more: null, scale: perDuct / machine.sensibleHeatRatio, out }, tally);
  return {
    electricity_kWh: out, electricity_total_kWh: tally.total_W / 1000, runHours_h: tally.run_h, unmet_kWh: tally.unmet_W / 1000, unmetHours: tally.unmetHours,
    peak_kW: tally.peak_W / 1000, peakHour: tally.peakHour < 0 ? null : tally.peakHour,
  };
}

function checkYear(name: string, series: Float64Array): void {
  if (series.length !== hours) throw new RangeError(`${name} must have 8760 hours, got ${series.length}`);
}

interface Tally {
  total_W: number;
  run_h: number;
  unmet_W: number;
  unmetHours: number;
  peak_W: number;
  peakHour: number;
}

/** The hour loop: load on the coil = scale × (coil + more). `out` may be one of the two: an hour is read before it is written. */
function runCoil(on: PlantOnWeather, of: { readonly coil: Float64Array; readonly more: Float64Array | null; readonly scale: number; readonly out: Float64Array }, tally: Tally): void {
  const { coil, more, scale, out } = of;
  const { perCapacity_1_W, power_W } = on.slow ?? on.full;
  const { degradation } = on.machine;
  const kept = 1 - degradation;
  // Plain lets: numbers out of a destructured array are kept boxed and cost three times the loop.
  let total = 0;
  let run = 0;
  let peak = 0;
  let peakHour = -1;
  for (let h = 0; h < hours; h++) {
    const load = more === null ? coil[h]! : coil[h]! + more[h]!;
    if (load <= 0) {
      out[h] = 0;
      continue;
    }
    const ratio = load * scale * perCapacity_1_W[h]!;
    let power: number;
    if (ratio <= 1) {
      const share = ratio / (kept + degradation * ratio);
      run += share;
      power = share * power_W[h]!;
    } else {
      run += 1;
      power = beyond(on, { h, coil_W: load * scale }, tally);
    }
    total += power;
    out[h] = power * 0.001;
    if (power > peak) {
      peak = power;
      peakHour = h;
    }
  }
  Object.assign(tally, { total_W: total, run_h: run, peak_W: peak, peakHour });
}

/** Power in an hour whose load passes the speed it begins with: between two speeds, or at the limit with the rest left as heat. */
function beyond(on: PlantOnWeather, hour: { readonly h: number; readonly coil_W: number }, tally: Tally): number {
  const { h, coil_W } = hour;
  const capacity = 1 / on.full.perCapacity_1_W[h]!;
  if (coil_W <= capacity) return betweenSpeeds(on, h, coil_W);
  tally.unmet_W += (coil_W - capacity) * on.machine.distributionEfficiency;
  tally.unmetHours++;
  return on.full.power_W[h]!;
}

/** Power of a two-speed machine whose load lies between its speeds. */
function betweenSpeeds(on: PlantOnWeather, h: number, coil_W: number): number {
  const slow = on.slow ?? on.full;
  const low = 1 / slow.perCapacity_1_W[h]!;
  const high = 1 / on.full.perCapacity_1_W[h]!;
  const share = high > low ? (coil_W - low) / (high - low) : 1;
  return slow.power_W[h]! + share * (on.full.power_W[h]! - slow.power_W[h]!);
}

/**
 * A year of sensible loads put on a machine, moisture following at its sensible heat ratio.
 *
 *   `plantOnWeather`, then `runPlant`
 *
 * @param plant the machine
 * @param sensibleLoad_W 8760 hours, ≥ 0
 * @param weather the year
 * @returns kWh by hour and in total, run hours, heat left, peak
 * @throws RangeError for a plant or a series out of range
 * @source NREL/TP-5500-56354; AHRI 210/240
 */
export function plantYear(plant: PlantState, sensibleLoad_W: Float64Array, weather: Pick<HourlyYear, 'outdoor_degC'>): PlantYear {
  return runPlant(plantOnWeather(plant, weather), { sensibleLoad_W });
}
