import type { DwellingBody } from './body.js';
import { conductancesOf } from './conductances.js';
import { hoursOfYear, plantLimit, prepareDrive, type DwellingDrive, type PreparedDrive } from './drive.js';
import { dwellingLoads, type DwellingLoads, type LoadBuffers } from './dwelling-loads.js';
import { hourBalance, type HourBalance } from './hour-balance.js';

/** Air temperature without any heating or cooling. */
export interface FreeFloat {
  readonly min_degC: number;
  readonly mean_degC: number;
  readonly max_degC: number;
}

/** A dwelling's year: loads, comfort, and what it would do without plant. */
export interface DwellingYear extends DwellingLoads {
  readonly freeFloat: FreeFloat;
  /** The network's temperatures in one hour of this run, 0…8759. */
  readonly hour: (hour: number) => HourBalance;
}

/**
 * A dwelling's year from its body and what drives it.
 *
 *   loads by the hourly method; free float = the same year with both plants off
 *
 * @param body the dwelling
 * @param drive weather, gains, set points, limits
 * @param out buffers to use again; the loads of the run stand in them
 * @returns loads in W and kWh ≥ 0, peaks with hour, free-float temperatures
 * @throws RangeError for a body or a series out of range
 * @source ISO 13790:2008, annex C
 */
export function dwellingYear(body: DwellingBody, drive: DwellingDrive, out?: LoadBuffers): DwellingYear {
  const prepared = prepareDrive(drive);
  const massStart_degC = out?.massStart_degC ?? new Float64Array(hoursOfYear);
  const loads = dwellingLoads(body, prepared, {
    heating_W: out?.heating_W ?? new Float64Array(hoursOfYear),
    cooling_W: out?.cooling_W ?? new Float64Array(hoursOfYear),
    massStart_degC,
  });
  return { ...loads, freeFloat: freeFloat(body, prepared), hour: (at) => hourOf({ body, drive: prepared, loads, massStart_degC }, at) };
}

function hourOf(run: { body: DwellingBody; drive: PreparedDrive; loads: DwellingLoads; massStart_degC: Float64Array }, hour: number): HourBalance {
  const { body, drive, loads } = run;
  if (!(Number.isInteger(hour) && hour >= 0 && hour < hoursOfYear)) throw new RangeError(`hour must be 0…8759, got ${String(hour)}`);
  const given = {
    massStart_degC: run.massStart_degC[hour]!,
    outdoor_degC: drive.outdoor_degC[hour]!,
    solar_W: drive.solar_W[hour]!,
    internal_W: drive.internal_W[hour]!,
    convectiveShare: drive.internalConvectiveShare,
    plant_W: loads.heating_W[hour]! - loads.cooling_W[hour]!,
  };
  return hourBalance(body, given, conductancesOf(body, drive.ventilation_W_K?.[hour] ?? body.ventilation_W_K));
}

/**
 * What a dwelling does without plant.
 *
 *   the year run with both limits at 0; mean over 8760 hours of the air temperature
 *
 * @param body the dwelling
 * @param drive prepared series
 * @returns coldest, mean and hottest air temperature
 * @throws RangeError for a body out of range
 * @source ISO 13790:2008, annex C.4.2 (temperature without heating and cooling)
 */
export function freeFloat(body: DwellingBody, drive: PreparedDrive): FreeFloat {
  const off = plantLimit(0);
  const massStart_degC = new Float64Array(hoursOfYear);
  const floating = { ...drive, heatingLimit: off, coolingLimit: off };
  const loads = dwellingLoads(body, floating, { heating_W: new Float64Array(hoursOfYear), cooling_W: new Float64Array(hoursOfYear), massStart_degC });
  let [min, sum, max] = [Infinity, 0, -Infinity];
  for (let h = 0; h < hoursOfYear; h++) {
    const { air_degC } = hourOf({ body, drive: floating, loads, massStart_degC }, h);
    min = Math.min(min, air_degC);
    max = Math.max(max, air_degC);
    sum += air_degC;
  }
  return { min_degC: min, mean_degC: sum / hoursOfYear, max_degC: max };
}
