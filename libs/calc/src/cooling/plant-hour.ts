import { curveAt } from './curve.js';
import { degradationOf, ratedCop } from './efficiency.js';
import { checkPlant, ratedWetBulb_degC, type PlantSpeed, type PlantState } from './plant.js';

/** One hour of a machine. Without `latentLoad_W` the latent load follows the sensible one at the machine's sensible heat ratio. */
export interface PlantHourGiven {
  readonly outdoor_degC: number;
  readonly indoorWetBulb_degC?: number;
  readonly sensibleLoad_W: number;
  readonly latentLoad_W?: number;
}

export interface PlantHour {
  /** Of the speed the hour is run at; the rated speed when it turns between two. */
  readonly capacityFactor: number;
  readonly inputFactor: number;
  /** Most heat the machine can take up at these temperatures, at its rated speed. */
  readonly availableCapacity_W: number;
  /** Heat asked of the coil: sensible, latent, and what the ducts lose. */
  readonly coilLoad_W: number;
  /** Load met over the capacity of the speed in use, 0…1. */
  readonly partLoadRatio: number;
  readonly partLoadFactor: number;
  /** Share of the hour in which it runs, 0…1. */
  readonly runShare: number;
  readonly electricity_W: number;
  /** Room heat, sensible and latent, that stays because the machine is at its limit. */
  readonly unmet_W: number;
}

/**
 * One hour of a cooling machine.
 *
 *   coil load = (sensible + latent) / distribution efficiency; PLR = load / capacity; PLF = 1 − Cd (1 − PLR); run share = PLR / PLF;
 *   electricity = run share × capacity × input factor / COP
 *
 * @param plant the machine
 * @param hour temperatures and load
 * @returns powers in W, ≥ 0; shares 0…1
 * @throws RangeError for a plant or a load out of range, or a rating that says nothing of this kind
 * @source NREL/TP-5500-56354 (curves, part load); AHRI 210/240 (Cd)
 */
export function coolingPlant(plant: PlantState, hour: PlantHourGiven): PlantHour {
  const machine = machineOf(plant);
  const { sensibleLoad_W, latentLoad_W = sensibleLoad_W * (1 / machine.sensibleHeatRatio - 1) } = hour;
  if (!(sensibleLoad_W >= 0 && sensibleLoad_W < Infinity)) throw new RangeError(`sensibleLoad_W must be 0 or more, got ${String(sensibleLoad_W)}`);
  if (!(latentLoad_W >= 0 && latentLoad_W < Infinity)) throw new RangeError(`latentLoad_W must be 0 or more, got ${String(latentLoad_W)}`);
  const air = { wetBulb_degC: hour.indoorWetBulb_degC ?? machine.indoorWetBulb_degC, outdoor_degC: hour.outdoor_degC };
  const at = (speed: PlantSpeed) => {
    const capacityFactor = curveAt(speed.capacity, plant.performance, air);
    const inputFactor = curveAt(speed.input, plant.performance, air);
    const capacity_W = plant.ratedCapacity_W * speed.capacityShare * capacityFactor;
    return { capacityFactor, inputFactor, capacity_W, power_W: (capacity_W * inputFactor) / machine.cop };
  };
  const full = at(machine.full);
  const coilLoad_W = (sensibleLoad_W + latentLoad_W) / machine.distributionEfficiency;
  const met_W = Math.min(coilLoad_W, full.capacity_W);
  const common = { availableCapacity_W: full.capacity_W, coilLoad_W, unmet_W: (coilLoad_W - met_W) * machine.distributionEfficiency };
  const slow = machine.slow ? at(machine.slow) : full;
  if (met_W > slow.capacity_W) {
    const atFull = (met_W - slow.capacity_W) / (full.capacity_W - slow.capacity_W);
    const { capacityFactor, inputFactor } = full;
    return { capacityFactor, inputFactor, ...common, partLoadRatio: met_W / full.capacity_W, partLoadFactor: 1, runShare: 1, electricity_W: slow.power_W + atFull * (full.power_W - slow.power_W) };
  }
  const partLoadRatio = met_W / slow.capacity_W;
  const partLoadFactor = 1 - machine.degradation * (1 - partLoadRatio);
  const runShare = partLoadRatio / partLoadFactor;
  const { capacityFactor, inputFactor } = slow;
  return { capacityFactor, inputFactor, ...common, partLoadRatio, partLoadFactor, runShare, electricity_W: runShare * slow.power_W };
}

/** A checked machine with its blanks filled. */
export interface Machine {
  readonly plant: PlantState;
  readonly full: PlantSpeed;
  /** The speed below the rated one; `null` for a single speed. */
  readonly slow: PlantSpeed | null;
  /** At the rated point, age taken off. */
  readonly cop: number;
  readonly degradation: number;
  readonly sensibleHeatRatio: number;
  readonly distributionEfficiency: number;
  readonly indoorWetBulb_degC: number;
}

/**
 * Checks a machine and fills what it leaves blank.
 *
 *   COP × (1 − loss)^age where ageing is asked for
 *
 * @param plant the machine
 * @returns its speeds, COP and shares
 * @throws RangeError for a plant out of range, or a rating that says nothing of this kind
 * @source ageing: NREL/TP-550-38238, from memory
 */
export function machineOf(plant: PlantState): Machine {
  checkPlant(plant);
  const cop = ratedCop(plant);
  if (typeof cop !== 'number') throw new RangeError(`efficiency must be in a scale of its kind: ${cop.why}`);
  const { speeds } = plant.performance;
  const full = speeds[speeds.length - 1];
  if (!full || speeds.length > 2) throw new RangeError(`speeds must be one or two, got ${String(speeds.length)}`);
  const { age_yr, loss_1_yr } = plant.ageing ?? { age_yr: 0, loss_1_yr: 0 };
  return {
    plant,
    full,
    slow: speeds.length === 2 ? (speeds[0] ?? null) : null,
    cop: cop * (1 - loss_1_yr) ** age_yr,
    degradation: degradationOf(plant),
    sensibleHeatRatio: plant.sensibleHeatRatio ?? plant.performance.sensibleHeatRatio,
    distributionEfficiency: plant.distributionEfficiency ?? 1,
    indoorWetBulb_degC: plant.indoorWetBulb_degC ?? ratedWetBulb_degC,
  };
}
