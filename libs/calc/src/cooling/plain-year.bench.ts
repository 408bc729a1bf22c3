import type { DwellingBody, HourlyValue } from '../dwelling/index.js';
import { coolingPlant } from './plant-hour.js';
import type { PlantState } from './plant.js';

/** A dwelling as the twin takes it: the same figures as the fast line, one facade after the other. */
export interface PlainGiven {
  readonly body: DwellingBody;
  readonly facades: readonly { readonly glass_m2: number; readonly gain_W_m2: ArrayLike<number> }[];
  readonly outdoor_degC: ArrayLike<number>;
  readonly internal_W: HourlyValue;
  readonly heatingSetPoint_degC: HourlyValue;
  readonly coolingSetPoint_degC: HourlyValue;
  readonly coolingLimit_W?: number;
  readonly heatingLimit_W?: number;
  readonly plant: PlantState;
}

export interface PlainYear {
  readonly heating_W: number[];
  readonly cooling_W: number[];
  readonly electricity_W: number[];
  readonly cooling_kWh: number;
  readonly heating_kWh: number;
  readonly electricity_kWh: number;
  readonly peakCooling_W: number;
  readonly runHours_h: number;
}

const at = (value: HourlyValue, h: number): number => (typeof value === 'number' ? value : (value[h % value.length] ?? NaN));

/**
 * The plain twin of the fast line: the standard's equations C.1 to C.13 as they are printed, solved by a trial without plant and one with
 * 10 W/m², hour after hour; then the machine, hour after hour. Written to be read, not to be quick.
 */
export function plainYear(given: PlainGiven): PlainYear {
  const { body } = given;
  const [His, Hms, Hw, Hve] = [body.surfaceConductance_W_m2K * body.facingArea_m2, 9.1 * body.massArea_m2, body.window_W_K, body.ventilation_W_K];
  const Hem = 1 / (1 / body.opaque_W_K - 1 / Hms);
  const H1 = 1 / (1 / Hve + 1 / His);
  const H2 = H1 + Hw;
  const H3 = 1 / (1 / H2 + 1 / Hms);
  const massShare = body.massArea_m2 / body.facingArea_m2;
  const hourOf = (mass: number, h: number, plant_W: number) => {
    const outdoor = given.outdoor_degC[h] ?? NaN;
    const internal = at(given.internal_W, h);
    const solar = given.facades.reduce((sum, { glass_m2, gain_W_m2 }) => sum + glass_m2 * (gain_W_m2[h] ?? NaN), 0);
    const phiIa = 0.5 * internal; // C.1
    const phiM = massShare * (0.5 * internal + solar); // C.2
    const phiSt = (1 - massShare - Hw / (9.1 * body.facingArea_m2)) * (0.5 * internal + solar); // C.3
    const phiTotal = phiM + Hem * outdoor + (H3 * (phiSt + Hw * outdoor + H1 * ((phiIa + plant_W) / Hve + outdoor))) / H2; // C.5
    const next = (mass * (body.capacity_J_K / 3600 - 0.5 * (H3 + Hem)) + phiTotal) / (body.capacity_J_K / 3600 + 0.5 * (H3 + Hem)); // C.4
    const mean = (mass + next) / 2; // C.9
    const surface = (Hms * mean + phiSt + Hw * outdoor + H1 * (outdoor + (phiIa + plant_W) / Hve)) / (Hms + Hw + H1); // C.10
    return { next, air: (His * surface + Hve * outdoor + phiIa + plant_W) / (His + Hve) }; // C.11
  };
  const year = { heating_W: [] as number[], cooling_W: [] as number[], electricity_W: [] as number[] };
  let [mass, runHours_h] = [20, 0];
  for (let h = 0; h < 8760; h++) {
    const free = hourOf(mass, h, 0);
    const [least, most] = [at(given.heatingSetPoint_degC, h), at(given.coolingSetPoint_degC, h)];
    const wanted = free.air > most ? most : free.air < least ? least : free.air;
    const trial_W = (wanted < free.air ? -10 : 10) * body.floor_m2;
    const need_W = wanted === free.air ? 0 : (trial_W * (wanted - free.air)) / (hourOf(mass, h, trial_W).air - free.air); // C.13
    const plant_W = Math.max(-(given.coolingLimit_W ?? Infinity), Math.min(given.heatingLimit_W ?? Infinity, need_W));
    mass = hourOf(mass, h, plant_W).next;
    const cooling_W = Math.max(0, -plant_W);
    const machine = coolingPlant(given.plant, { outdoor_degC: given.outdoor_degC[h] ?? NaN, sensibleLoad_W: cooling_W });
    year.heating_W.push(Math.max(0, plant_W));
    year.cooling_W.push(cooling_W);
    year.electricity_W.push(machine.electricity_W);
    runHours_h += machine.runShare;
  }
  const kWh = (series: readonly number[]) => series.reduce((sum, W) => sum + W, 0) / 1000;
  return { ...year, cooling_kWh: kWh(year.cooling_W), heating_kWh: kWh(year.heating_W), electricity_kWh: kWh(year.electricity_W), peakCooling_W: Math.max(...year.cooling_W), runHours_h };
}
