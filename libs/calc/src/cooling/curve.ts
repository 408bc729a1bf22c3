import { degFOf_degC } from '../units/index.js';
import type { Biquadratic, PlantPerformance } from './plant.js';

/** Where a machine stands in an hour. */
export interface PlantAir {
  /** Wet bulb of the air entering the coil. */
  readonly wetBulb_degC: number;
  /** Dry bulb outdoors. */
  readonly outdoor_degC: number;
}

/**
 * A curve of a machine at one pair of temperatures.
 *
 *   a + b·w + c·w² + d·t + e·t² + f·w·t       w wet bulb indoors, t dry bulb outdoors, in the curve's own unit
 *
 * Temperatures outside the range of the curves are held at its ends.
 *
 * @param curve six coefficients
 * @param performance unit and range of the curves
 * @param air temperatures in °C
 * @returns factor on the rated value, about 0.4…1.6
 * @source NREL/TP-5500-56354, equation form of Tables 7–13
 */
export function curveAt(curve: Biquadratic, performance: Pick<PlantPerformance, 'temperature' | 'wetBulbRange_degC' | 'outdoorRange_degC'>, air: PlantAir): number {
  const [wetLow, wetHigh] = performance.wetBulbRange_degC;
  const [dryLow, dryHigh] = performance.outdoorRange_degC;
  let wet = Math.min(Math.max(air.wetBulb_degC, wetLow), wetHigh);
  let dry = Math.min(Math.max(air.outdoor_degC, dryLow), dryHigh);
  if (performance.temperature === 'degF') {
    wet = degFOf_degC(wet);
    dry = degFOf_degC(dry);
  }
  return curve[0] + curve[1] * wet + curve[2] * wet * wet + curve[3] * dry + curve[4] * dry * dry + curve[5] * wet * dry;
}
