import type { Efficiency } from '../portfolio/index.js';
import { Btu_hOf_W, tonOf_W } from '../units/index.js';
import { curveAt } from './curve.js';
import type { PlantPerformance, PlantState } from './plant.js';

/** Why a rating cannot be read as an efficiency of this machine. */
export interface Why {
  readonly why: string;
}

/**
 * COP of an EER: both are heat over electricity, in other units.
 *
 *   EER / 3.412141633
 *
 * @param eer Btu/Wh, > 0
 * @returns heat over electricity
 * @source unit definitions
 */
export function copOf_eer(eer: number): number {
  return eer / Btu_hOf_W(1);
}

/**
 * COP of a plant rated in kW per ton.
 *
 *   3.51685 / (kW/ton), which is 12 / EER read backwards
 *
 * @param rate_kW_ton electricity per ton of cooling, > 0
 * @returns heat over electricity
 * @source unit definitions
 */
export function copOf_kW_ton(rate_kW_ton: number): number {
  return 1 / (1000 * tonOf_W(1) * rate_kW_ton);
}

/** The steps from a seasonal rating to the steady ratings behind it. */
export interface SeasonalChain {
  /** Net, 82 °F outdoors. */
  readonly eerAt82degF: number;
  /** Net, 95 °F outdoors. */
  readonly eerAt95degF: number;
  /** Compressor and outdoor unit alone, without the indoor fan, 95 °F. */
  readonly grossCop: number;
}

/**
 * The steady ratings behind the SEER of a single-speed machine.
 *
 *   EER_82 = SEER / (1 − 0.5 Cd); indoor fan taken out; EIR_95 = EIR_82 / curve(67 °F, 82 °F); fan put back
 *
 * The constants 0.03333, 400/12000 and 3.412 belong to the published table this chain reproduces.
 *
 * @param seer Btu/Wh over the season, > 0
 * @param performance curve and fan power of the kind
 * @param degradation Cd, 0…1
 * @returns net EER at 82 and 95 °F, gross COP at 95 °F
 * @source AHRI 210/240 (SEER of single-speed machines); NREL/TP-5500-56354, Table 8, as carried in public residential models
 */
export function seasonalChain(seer: number, performance: PlantPerformance, degradation: number): SeasonalChain {
  const fan_W_cfm = seer < 16 ? performance.seerFan_W_cfm.underSeer16 : performance.seerFan_W_cfm.seer16AndOver;
  const speed = performance.speeds[performance.speeds.length - 1];
  if (!speed) throw new RangeError('speeds must hold at least one speed, got none');
  const fan82 = 0.03333 * fan_W_cfm;
  const fan95 = (400 / 12000) * fan_W_cfm;
  const eerAt82degF = seer / (1 - 0.5 * degradation);
  const eir82 = 3.412 * ((1 - 3.412 * fan82) / eerAt82degF - fan82);
  const atBin = { wetBulb_degC: (67 - 32) / 1.8, outdoor_degC: (82 - 32) / 1.8 };
  const eir95 = eir82 / curveAt(speed.input, performance, atBin);
  const eerAt95degF = (1 - 3.412 * fan95) / (eir95 / 3.412 + fan95);
  return { eerAt82degF, eerAt95degF, grossCop: 1 / (3.412 * ((1 - 3.412 * fan82) / eerAt95degF - fan82)) };
}

/**
 * Loss at part load of a machine.
 *
 *   as stated; else 0.20 under SEER 13 and for ratings without a SEER, 0.07 from SEER 13 on; by kind where the kind has its own
 *
 * @param plant the machine
 * @returns Cd, 0…1
 * @source NREL/TP-5500-56354; 0.22 for room units, Winkler et al. (NREL, 2013)
 */
export function degradationOf(plant: PlantState): number {
  if (plant.degradationCoefficient !== undefined) return plant.degradationCoefficient;
  const { scale, value } = plant.efficiency;
  const { degradation, seer2OverSeer } = plant.performance;
  const seer = scale === 'seer' ? value : scale === 'seer2' ? value / seer2OverSeer : 0;
  return seer >= 13 ? degradation.seer13AndOver : degradation.under13Seer;
}

/**
 * COP at the rated point (95 °F outdoors, 67 °F wet bulb indoors) that a rating stands for.
 *
 *   COP, EER and kW/ton by definition; SEER of single-speed machines by the seasonal chain, of two-speed machines by the season's bins;
 *   SEER2 by the ratio of the two test procedures; a mini-split's SEER2 as it stands, over the whole season
 *
 * @param plant the machine
 * @returns heat over electricity, > 0; or why this scale says nothing of this kind
 * @source AHRI 210/240; NREL/TP-5500-56354; the ratio SEER2/SEER from the US minimum ratings
 */
export function ratedCop(plant: PlantState): number | Why {
  const { kind, performance } = plant;
  const { scale, value } = plant.efficiency;
  if (!performance.scales.includes(scale)) return { why: `a ${kind} is not rated in ${scale}; state one of ${performance.scales.join(', ')}` };
  if (scale === 'cop') return value;
  if (scale === 'eer') return copOf_eer(value);
  if (scale === 'kW_ton') return copOf_kW_ton(value);
  const seer: Efficiency = { scale: 'seer', value: scale === 'seer2' ? value / performance.seer2OverSeer : value };
  if (kind === 'mini-split') return copOf_eer(scale === 'seer2' ? value : value * performance.seer2OverSeer);
  if (performance.speeds.length > 1) return copOf_eer(seer.value / seasonOverRated(performance, degradationOf(plant)));
  return copOf_eer(seasonalChain(seer.value, performance, degradationOf(plant)).eerAt95degF);
}

/** Outdoor temperature of each bin of the cooling season (°F) and its share of the hours. AHRI 210/240, from memory. */
const seasonBins = [[67, 0.214], [72, 0.231], [77, 0.216], [82, 0.161], [87, 0.104], [92, 0.052], [97, 0.018], [102, 0.004]] as const;

/**
 * SEER of a machine of several speeds over its EER at the rated point.
 *
 *   Σ hours × load / Σ hours × input; load = (T − 65)/(95 − 65) × capacity at 95 °F / 1.1; cycling at the low speed,
 *   turns between speeds above it, full speed beyond
 *
 * @param performance curves by speed; both speeds taken at the same rated input ratio
 * @param degradation Cd, 0…1
 * @returns SEER / EER, about 1.1…1.3
 * @source AHRI 210/240, bin method for two-speed machines, from memory
 */
export function seasonOverRated(performance: PlantPerformance, degradation: number): number {
  const low = performance.speeds[0];
  const high = performance.speeds[performance.speeds.length - 1];
  if (!low || !high) throw new RangeError('speeds must hold at least one speed, got none');
  const wetBulb_degC = (67 - 32) / 1.8;
  const at = (speed: typeof low, degF: number) => {
    const hour = { wetBulb_degC, outdoor_degC: (degF - 32) / 1.8 };
    const capacity = speed.capacityShare * curveAt(speed.capacity, performance, hour);
    return { capacity, power: capacity * curveAt(speed.input, performance, hour) };
  };
  const sizing = at(high, 95).capacity / 1.1;
  let [heat, input] = [0, 0];
  for (const [degF, share] of seasonBins) {
    const load = ((degF - 65) / 30) * sizing;
    const [slow, full] = [at(low, degF), at(high, degF)];
    const met = Math.min(load, full.capacity);
    heat += share * met;
    if (met <= slow.capacity) input += (share * slow.power * (met / slow.capacity)) / (1 - degradation * (1 - met / slow.capacity));
    else input += share * (slow.power + ((full.power - slow.power) * (met - slow.capacity)) / (full.capacity - slow.capacity));
  }
  return heat / input;
}
