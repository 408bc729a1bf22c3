import type { HeatingKind } from '../portfolio/index.js';

/** A dwelling's heating, blanks filled. */
export interface HeatingState {
  readonly kind: HeatingKind;
  /** Useful heat over delivered energy, > 0. */
  readonly efficiency: number;
}

/** What heating uses in a year, by fuel. */
export interface HeatingUse {
  /** Electricity by hour; all zero for gas or none. */
  readonly electricity_kWh: Float64Array;
  readonly electricity_total_kWh: number;
  readonly monthlyGas_kWh: readonly number[];
  readonly gas_total_kWh: number;
}

const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/**
 * Energy that heating takes to deliver a year of heat. Film keeps winter sun out too: the added heating is the difference of two such years.
 *
 *   heat / efficiency, as electricity or as gas; a dwelling without heating uses none
 *
 * @param heating kind and efficiency
 * @param heat_W heat put into the rooms by hour, ≥ 0
 * @param out buffer for the electricity; new when absent
 * @returns kWh by fuel
 * @throws RangeError when the efficiency is not above 0 or the series is not 8760 hours
 * @source definition of efficiency
 */
export function heatingUse(heating: HeatingState, heat_W: Float64Array, out: Float64Array = new Float64Array(8760)): HeatingUse {
  if (heat_W.length !== 8760) throw new RangeError(`heat_W must have 8760 hours, got ${String(heat_W.length)}`);
  if (!(heating.efficiency > 0 && heating.efficiency < 20)) throw new RangeError(`efficiency must be above 0 and under 20, got ${String(heating.efficiency)}`);
  const perHeat = heating.kind === 'none' ? 0 : 1 / (1000 * heating.efficiency);
  const electric = heating.kind === 'electric-resistance' || heating.kind === 'heat-pump';
  const monthlyGas_kWh: number[] = [];
  let [electricity, gas, h] = [0, 0, 0];
  for (const days of monthDays) {
    let month = 0;
    for (const end = h + days * 24; h < end; h++) {
      const used = heat_W[h]! * perHeat;
      month += used;
      out[h] = electric ? used : 0;
    }
    if (electric) electricity += month;
    else gas += month;
    monthlyGas_kWh.push(electric ? 0 : month);
  }
  return { electricity_kWh: out, electricity_total_kWh: electricity, monthlyGas_kWh, gas_total_kWh: gas };
}
