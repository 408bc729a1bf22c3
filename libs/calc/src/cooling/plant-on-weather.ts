import type { HourlyYear } from '../weather/index.js';
import { curveAt } from './curve.js';
import { machineOf, type Machine } from './plant-hour.js';
import type { PlantPerformance, PlantSpeed, PlantState } from './plant.js';

const hours = 8760;

/** A speed of a machine in every hour of a year of weather. */
export interface SpeedYear {
  /** 1 / capacity, 1/W. */
  readonly perCapacity_1_W: Float64Array;
  /** Electricity at full run, W. */
  readonly power_W: Float64Array;
}

/** A machine under a year of weather, worked out once and shared by all loads put on it. */
export interface PlantOnWeather {
  readonly machine: Machine;
  readonly full: SpeedYear;
  readonly slow: SpeedYear | null;
}

/** A speed of a kind of machine in every hour of a year of weather, for one watt of rated capacity and a COP of 1. */
interface SpeedCurves {
  readonly capacity: Float64Array;
  readonly power: Float64Array;
}

/** How machines of one kind stand in a year of weather, whatever their size and efficiency: worked out once for all dwellings of a site. */
export interface PlantCurves {
  readonly indoorWetBulb_degC: number;
  readonly full: SpeedCurves;
  readonly slow: SpeedCurves | null;
}

function speedCurves(performance: PlantPerformance, speed: PlantSpeed, at: { readonly outdoor_degC: Float64Array; readonly indoorWetBulb_degC: number }): SpeedCurves {
  const capacity = new Float64Array(hours);
  const power = new Float64Array(hours);
  const air = { wetBulb_degC: at.indoorWetBulb_degC, outdoor_degC: 0 };
  for (let h = 0; h < hours; h++) {
    air.outdoor_degC = at.outdoor_degC[h]!;
    const share = speed.capacityShare * curveAt(speed.capacity, performance, air);
    capacity[h] = share;
    power[h] = share * curveAt(speed.input, performance, air);
  }
  return { capacity, power };
}

/**
 * The curves of a machine's kind over a year of weather.
 *
 *   capacity share × capacity curve, and that × input curve, at each hour's outdoor temperature
 *
 * @param plant the machine; its kind and indoor wet bulb are used
 * @param weather the year; its outdoor temperature is used
 * @returns curves for any size and efficiency of that kind
 * @throws RangeError for a plant out of range
 * @source NREL/TP-5500-56354
 */
export function plantCurves(plant: PlantState, weather: Pick<HourlyYear, 'outdoor_degC'>): PlantCurves {
  if (weather.outdoor_degC.length !== hours) throw new RangeError(`outdoor_degC must have 8760 hours, got ${String(weather.outdoor_degC.length)}`);
  const { full, slow, indoorWetBulb_degC } = machineOf(plant);
  const at = { outdoor_degC: weather.outdoor_degC, indoorWetBulb_degC };
  return { indoorWetBulb_degC, full: speedCurves(plant.performance, full, at), slow: slow ? speedCurves(plant.performance, slow, at) : null };
}

function speedYear({ plant, cop }: Machine, curves: SpeedCurves): SpeedYear {
  const { capacity, power } = curves;
  const rated_W = plant.ratedCapacity_W;
  const perCapacity_1_W = new Float64Array(hours);
  const power_W = new Float64Array(hours);
  const perRated = 1 / rated_W;
  const ratedPower_W = rated_W / cop;
  for (let h = 0; h < hours; h++) {
    perCapacity_1_W[h] = perRated / capacity[h]!;
    power_W[h] = ratedPower_W * power[h]!;
  }
  return { perCapacity_1_W, power_W };
}

/**
 * A machine under a year of weather: its capacity and full-load power in every hour.
 *
 *   capacity and power by the curves at the hour's outdoor temperature
 *
 * @param plant the machine
 * @param weather the year; its outdoor temperature is used
 * @param curves those of its kind in that weather; worked out when absent
 * @returns series to put loads on
 * @throws RangeError for a plant out of range, or curves at another indoor wet bulb
 * @source NREL/TP-5500-56354
 */
export function plantOnWeather(plant: PlantState, weather: Pick<HourlyYear, 'outdoor_degC'>, curves: PlantCurves = plantCurves(plant, weather)): PlantOnWeather {
  const machine = machineOf(plant);
  if (machine.indoorWetBulb_degC !== curves.indoorWetBulb_degC) throw new RangeError(`curves must be at the machine's indoor wet bulb ${String(machine.indoorWetBulb_degC)}, got ${String(curves.indoorWetBulb_degC)}`);
  return { machine, full: speedYear(machine, curves.full), slow: curves.slow ? speedYear(machine, curves.slow) : null };
}

/**
 * Electricity of one machine over that of another under any load, where the two differ in efficiency alone.
 *
 *   COP of the other / COP of the one
 *
 * @param one the machine asked about
 * @param other the machine that was run
 * @returns the ratio; `null` where size, kind, part load, ducts or moisture differ too, and the load must be run
 * @source power is capacity × input factor / COP in every hour (NREL/TP-5500-56354)
 */
export function electricityRatio(one: PlantOnWeather, other: PlantOnWeather): number | null {
  const [a, b] = [one.machine, other.machine];
  const same =
    a.plant.performance === b.plant.performance && a.plant.ratedCapacity_W === b.plant.ratedCapacity_W && a.degradation === b.degradation &&
    a.sensibleHeatRatio === b.sensibleHeatRatio && a.distributionEfficiency === b.distributionEfficiency && a.indoorWetBulb_degC === b.indoorWetBulb_degC;
  return same ? b.cop / a.cop : null;
}

/**
 * Moisture a machine takes out while it meets a sensible load at its sensible heat ratio. Worked out for the dwelling as found and kept
 * for the filmed one: people and leaks bring in the same moisture behind film.
 *
 *   sensible × (1/SHR − 1)
 *
 * @param on the machine
 * @param sensibleLoad_W 8760 hours, ≥ 0
 * @param out buffer to fill; new when absent
 * @returns W by hour
 * @source definition of the sensible heat ratio
 */
export function latentLoad_W(on: PlantOnWeather, sensibleLoad_W: Float64Array, out: Float64Array = new Float64Array(hours)): Float64Array {
  const perSensible = 1 / on.machine.sensibleHeatRatio - 1;
  for (let h = 0; h < hours; h++) out[h] = sensibleLoad_W[h]! * perSensible;
  return out;
}

/**
 * Most sensible heat the machine can take from the rooms in each hour: the limit to give a dwelling whose plant may be too small.
 *
 *   capacity × SHR × distribution efficiency
 *
 * @param on the machine
 * @param out buffer to fill; new when absent
 * @returns W by hour
 * @source definition of the sensible heat ratio
 */
export function sensibleLimit_W(on: PlantOnWeather, out: Float64Array = new Float64Array(hours)): Float64Array {
  const share = on.machine.sensibleHeatRatio * on.machine.distributionEfficiency;
  for (let h = 0; h < hours; h++) out[h] = share / on.full.perCapacity_1_W[h]!;
  return out;
}
