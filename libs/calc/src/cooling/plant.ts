import type { Efficiency, EfficiencyScale, PlantKind } from '../portfolio/index.js';

/** Six coefficients a…f of a + b·w + c·w² + d·t + e·t² + f·w·t. */
export type Biquadratic = readonly [number, number, number, number, number, number];

/** One speed of a machine: capacity as a share of the rated one, and how temperatures change capacity and input. */
export interface PlantSpeed {
  readonly capacityShare: number;
  readonly capacity: Biquadratic;
  /** Energy input ratio: electricity per heat, relative to the rated point. */
  readonly input: Biquadratic;
}

/** How machines of one kind behave; the figures come from the catalogue. */
export interface PlantPerformance {
  readonly kind: PlantKind;
  /** Unit of both temperatures of the curves. */
  readonly temperature: 'degF' | 'degC';
  /** Lowest speed first; the last is the rated one. */
  readonly speeds: readonly PlantSpeed[];
  /** Share of full-load efficiency lost as the load goes to zero, by SEER class. */
  readonly degradation: { readonly under13Seer: number; readonly seer13AndOver: number };
  readonly seer2OverSeer: number;
  readonly seerFan_W_cfm: { readonly underSeer16: number; readonly seer16AndOver: number };
  readonly sensibleHeatRatio: number;
  /** Scales in which a rating of this kind means something. */
  readonly scales: readonly EfficiencyScale[];
  readonly wetBulbRange_degC: readonly [number, number];
  readonly outdoorRange_degC: readonly [number, number];
}

/** A machine in one state of its life: now, or after its replacement. */
export interface PlantState {
  readonly kind: PlantKind;
  readonly performance: PlantPerformance;
  /** Total (sensible and latent) capacity at the rated point. */
  readonly ratedCapacity_W: number;
  readonly efficiency: Efficiency;
  /** Entering wet bulb indoors; 19.44 °C (67 °F, the rated point) when absent. */
  readonly indoorWetBulb_degC?: number;
  /** Sensible share of the heat removed; the kind's own when absent. */
  readonly sensibleHeatRatio?: number;
  /** Takes the place of the kind's own loss at part load. */
  readonly degradationCoefficient?: number;
  /** Share of the cooling that reaches the rooms; 1 when absent. */
  readonly distributionEfficiency?: number;
  /** Loss of efficiency with age; none when absent. */
  readonly ageing?: { readonly age_yr: number; readonly loss_1_yr: number };
}

/** 67 °F, the entering wet bulb at which capacity and EER are rated. */
export const ratedWetBulb_degC = (67 - 32) / 1.8;
/** 95 °F, the outdoor temperature at which capacity and EER are rated. */
export const ratedOutdoor_degC = 35;

/**
 * Refuses a plant out of range.
 *
 *   0 < capacity, 0 < efficiency, shares 0…1
 *
 * @param plant the machine
 * @throws RangeError naming the field, its range and the value
 * @source common practice, no source
 */
export function checkPlant(plant: PlantState): void {
  if (plant.kind !== plant.performance.kind) throw new RangeError(`performance must be that of ${plant.kind}, got ${plant.performance.kind}`);
  if (!(plant.ratedCapacity_W > 0 && plant.ratedCapacity_W < Infinity)) throw new RangeError(`ratedCapacity_W must be above 0, got ${String(plant.ratedCapacity_W)}`);
  if (!(plant.efficiency.value > 0 && plant.efficiency.value < Infinity)) throw new RangeError(`${plant.efficiency.scale} must be above 0, got ${String(plant.efficiency.value)}`);
  const shares = { sensibleHeatRatio: plant.sensibleHeatRatio, distributionEfficiency: plant.distributionEfficiency };
  for (const [name, value] of Object.entries(shares)) {
    if (value !== undefined && !(value > 0 && value <= 1)) throw new RangeError(`${name} must be above 0 and at most 1, got ${String(value)}`);
  }
  const cd = plant.degradationCoefficient ?? 0;
  if (!(cd >= 0 && cd < 1)) throw new RangeError(`degradationCoefficient must be 0…1 (1 not included), got ${String(cd)}`);
  const { age_yr, loss_1_yr } = plant.ageing ?? { age_yr: 0, loss_1_yr: 0 };
  if (!(age_yr >= 0 && age_yr < 100)) throw new RangeError(`age_yr must be 0…100, got ${String(age_yr)}`);
  if (!(loss_1_yr >= 0 && loss_1_yr < 1)) throw new RangeError(`loss_1_yr must be 0…1, got ${String(loss_1_yr)}`);
}
