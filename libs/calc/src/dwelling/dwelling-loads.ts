import type { DwellingBody } from './body.js';
import { hoursOfYear, type PreparedDrive } from './drive.js';
import { hourResponse, type HourResponse } from './hour-response.js';

/** Heat put in and taken out each hour, sensible and positive, with sums and peaks. The arrays are the caller's buffers when given. */
export interface DwellingLoads {
  readonly heating_W: Float64Array;
  readonly cooling_W: Float64Array;
  readonly heating_kWh: number;
  readonly cooling_kWh: number;
  readonly monthlyHeating_kWh: readonly number[];
  readonly monthlyCooling_kWh: readonly number[];
  readonly peakHeating_W: number;
  readonly peakCooling_W: number;
  /** Hour of the year, from 0; `null` when there is no such load. */
  readonly peakHeatingHour: number | null;
  readonly peakCoolingHour: number | null;
  readonly coolingHours: number;
  readonly heatingHours: number;
  /** Hours in which the plant could not hold the set point. */
  readonly hoursOverCoolingSetPoint: number;
  readonly hoursUnderHeatingSetPoint: number;
}

/** Buffers of 8760 hours to be filled again and again; `massStart_degC` is filled only when given. */
export interface LoadBuffers {
  readonly heating_W: Float64Array;
  readonly cooling_W: Float64Array;
  readonly massStart_degC?: Float64Array;
}

/** First hour of each month of a 365-day year, and the end of the year. */
export const monthStarts: readonly number[] = [0, 744, 1416, 2160, 2880, 3624, 4344, 5088, 5832, 6552, 7296, 8016, 8760];

/** Set points are met to this many kelvin; below it a difference is rounding. */
const held_K = 1e-9;

interface Running {
  mass_degC: number;
  heating_W: number;
  cooling_W: number;
  peakHeating_W: number;
  peakCooling_W: number;
  peakHeatingHour: number;
  peakCoolingHour: number;
  heatingHours: number;
  coolingHours: number;
  over: number;
  under: number;
}

/**
 * Runs a dwelling through the year: the collapsed hour, one air change at a time.
 *
 *   outside the band of the set points, plant = (air − set point) / slope, held to its limit (C.13); the mass follows
 *
 * @param body the dwelling
 * @param drive prepared series; for a film option the same drive with its own `solar_W`
 * @param out buffers to use again; new ones when absent
 * @returns loads in W and kWh, ≥ 0
 * @throws RangeError for a body or an air change out of range
 * @source ISO 13790:2008, annex C; see hour-response for the collapsed form
 */
export function dwellingLoads(body: DwellingBody, drive: PreparedDrive, out?: LoadBuffers): DwellingLoads {
  const buffers = out ?? { heating_W: new Float64Array(hoursOfYear), cooling_W: new Float64Array(hoursOfYear) };
  buffers.heating_W.fill(0);
  buffers.cooling_W.fill(0);
  const run: Running = {
    mass_degC: drive.initialMass_degC, heating_W: 0, cooling_W: 0, peakHeating_W: 0, peakCooling_W: 0,
    peakHeatingHour: -1, peakCoolingHour: -1, heatingHours: 0, coolingHours: 0, over: 0, under: 0,
  };
  const monthlyHeating_kWh: number[] = [];
  const monthlyCooling_kWh: number[] = [];
  let heating_kWh = 0;
  let cooling_kWh = 0;
  const responses = responseBook(body, drive);
  for (let month = 0; month < 12; month++) {
    run.heating_W = 0;
    run.cooling_W = 0;
    for (let from = monthStarts[month]!, end = monthStarts[month + 1]!; from < end; ) {
      const to = sameAirUntil(drive.ventilation_W_K, from, end);
      runHours(responses(from), { drive, buffers, from, to }, run);
      from = to;
    }
    monthlyHeating_kWh.push(run.heating_W / 1000);
    monthlyCooling_kWh.push(run.cooling_W / 1000);
    heating_kWh += run.heating_W / 1000;
    cooling_kWh += run.cooling_W / 1000;
  }
  return {
    heating_W: buffers.heating_W, cooling_W: buffers.cooling_W, heating_kWh, cooling_kWh, monthlyHeating_kWh, monthlyCooling_kWh,
    peakHeating_W: run.peakHeating_W, peakCooling_W: run.peakCooling_W,
    peakHeatingHour: run.peakHeatingHour < 0 ? null : run.peakHeatingHour,
    peakCoolingHour: run.peakCoolingHour < 0 ? null : run.peakCoolingHour,
    heatingHours: run.heatingHours, coolingHours: run.coolingHours, hoursOverCoolingSetPoint: run.over, hoursUnderHeatingSetPoint: run.under,
  };
}

/** The response of each air change, worked out once: a day with a fan has two. */
function responseBook(body: DwellingBody, drive: PreparedDrive): (hour: number) => HourResponse {
  const air = drive.ventilation_W_K;
  if (air === null) {
    const response = hourResponse(body, body.ventilation_W_K, drive.internalConvectiveShare);
    return () => response;
  }
  const book = new Map<number, HourResponse>();
  return (hour) => {
    const rate = air[hour]!;
    const known = book.get(rate);
    if (known) return known;
    const response = hourResponse(body, rate, drive.internalConvectiveShare);
    book.set(rate, response);
    return response;
  };
}

function sameAirUntil(air: Float64Array | null, from: number, end: number): number {
  if (air === null) return end;
  let to = from + 1;
  while (to < end && air[to] === air[from]) to++;
  return to;
}

/**
 * The hour loop. Where a set point is held, plant and mass are one line: mass' = held × mass + (u ± …), so that only one multiply and add wait
 * for the hour before; where the plant is at its limit the two are taken apart again.
 */
function runHours(response: HourResponse, at: { drive: PreparedDrive; buffers: LoadBuffers; from: number; to: number }, run: Running): void {
  const { outdoor_degC, solar_W, internal_W, heatingSetPoint_degC, coolingSetPoint_degC } = at.drive;
  const { most_W: coolingLimit_W, least_W: leastCooling_W } = at.drive.coolingLimit;
  const { most_W: heatingLimit_W, least_W: leastHeating_W } = at.drive.heatingLimit;
  const { heating_W, cooling_W } = at.buffers;
  const massStart_degC = at.buffers.massStart_degC ?? null;
  const { massKept, massOutdoor, massSolar_K_W, massInternal_K_W, massPerPlant_K_W, airMass, airOutdoor, airSolar_K_W, airInternal_K_W } = response;
  const perSlope = 1 / response.airPerPlant_K_W;
  const massPerAir = massPerPlant_K_W * perSlope;
  const massHeld = massKept - massPerAir * airMass;
  let mass = run.mass_degC;
  let heat = 0, cool = 0;
  let peakHeat = run.peakHeating_W, peakCool = run.peakCooling_W;
  let { peakHeatingHour, peakCoolingHour, heatingHours, coolingHours } = run;
  for (let h = at.from; h < at.to; h++) {
    const outdoor = outdoor_degC[h]!, solar = solar_W[h]!, internal = internal_W[h]!;
    const fixedMass = massOutdoor * outdoor + massSolar_K_W * solar + massInternal_K_W * internal;
    const fixedAir = airOutdoor * outdoor + airSolar_K_W * solar + airInternal_K_W * internal;
    const most = coolingSetPoint_degC[h]!, least = heatingSetPoint_degC[h]!;
    const air = airMass * mass + fixedAir;
    if (massStart_degC !== null) massStart_degC[h] = mass;
    if (air > most) {
      let power = (air - most) * perSlope;
      if (power > leastCooling_W && power > coolingLimit_W[h]!) {
        power = coolingLimit_W[h]!;
        if (air - power * response.airPerPlant_K_W - most > held_K) run.over++;
        mass = massKept * mass + fixedMass - massPerPlant_K_W * power;
      } else mass = massHeld * mass + (fixedMass + massPerAir * (most - fixedAir));
      cooling_W[h] = power;
      cool += power;
      if (power > 0) coolingHours++;
      if (power > peakCool) { peakCool = power; peakCoolingHour = h; }
    } else if (air < least) {
      let power = (least - air) * perSlope;
      if (power > leastHeating_W && power > heatingLimit_W[h]!) {
        power = heatingLimit_W[h]!;
        if (least - air - power * response.airPerPlant_K_W > held_K) run.under++;
        mass = massKept * mass + fixedMass + massPerPlant_K_W * power;
      } else mass = massHeld * mass + (fixedMass + massPerAir * (least - fixedAir));
      heating_W[h] = power;
      heat += power;
      if (power > 0) heatingHours++;
      if (power > peakHeat) { peakHeat = power; peakHeatingHour = h; }
    } else mass = massKept * mass + fixedMass;
  }
  Object.assign(run, {
    mass_degC: mass, heating_W: run.heating_W + heat, cooling_W: run.cooling_W + cool, peakHeating_W: peakHeat, peakCooling_W: peakCool,
    peakHeatingHour, peakCoolingHour, heatingHours, coolingHours,
  });
}
