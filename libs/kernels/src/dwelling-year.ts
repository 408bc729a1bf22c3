import { dwellingYear, everyHour, facingAreaPerFloor, surfaceConductance_W_m2K, thermalClasses, ventilationOf_W_K, yearUFactor_W_m2K } from '#calc';
import type { DwellingBody, DwellingDrive } from '#calc';
import { z } from 'zod';
import { dwellingSun, opaqueInput, windowInput, type DwellingSun } from './dwelling-sun.js';
import { defineKernel, InputFault, type KernelRoom } from './kernel.js';

const hours = z.array(z.number()).length(8760);
const hourly = z.union([z.number(), z.array(z.number()).length(24), hours]).describe('a number, 24 hours of every day, or 8760 hours');
const positive = z.number().gt(0);
const notNegative = z.number().min(0);
const limit = z.union([notNegative, z.array(notNegative.nullable()).length(8760)]).describe('positive; a number for all hours, or 8760 hours, null where nothing limits; both limits 0 let the dwelling float free');

const input = z.strictObject({
  weather: z.union([z.strictObject({ epw: z.string() }), z.strictObject({ climate: z.string() })]).optional(),
  outdoor_degC: hours.optional(),
  solar_W: hours.optional().describe('sun through all windows, and on opaque parts less their loss to the sky'),
  internal_W: hourly,
  windows: z.array(windowInput).optional(),
  opaque: z.array(opaqueInput).optional(),
  albedo: z.number().min(0).max(1).optional().describe('of the ground; 0.2 when absent'),
  floor_m2: positive,
  thermalClass: z.enum(['very-light', 'light', 'medium', 'heavy', 'very-heavy']).optional(),
  capacity_J_K: positive.optional(),
  massArea_m2: positive.optional(),
  facingArea_m2: positive.optional().describe('4.5 × floor when absent'),
  opaque_W_K: notNegative.optional().describe('sum of the opaque parts when absent'),
  opaqueToMass_W_K: notNegative.optional().describe('takes the place of 1/(1/H_op − 1/H_ms)'),
  window_W_K: notNegative.optional().describe('sum of the windows, U at year-round surface films, when absent'),
  ventilation_W_K: hourly.optional(),
  airChange_1_h: hourly.optional(),
  volume_m3: positive.optional(),
  surfaceConductance_W_m2K: positive.default(surfaceConductance_W_m2K),
  heatingSetPoint_degC: hourly,
  coolingSetPoint_degC: hourly,
  internalConvectiveShare: z.number().min(0).max(1).default(0.5),
  heatingLimit_W: limit.optional(),
  coolingLimit_W: limit.optional(),
  initialMass_degC: z.number().default(20),
  hours: z.array(z.int().min(0).max(8759)).optional().describe('hours of the year, from 0, to show in full'),
});

type Given = z.infer<typeof input>;

function wanted<T>(value: T | undefined, name: string, why: string): T {
  if (value === undefined) throw new InputFault(`/${name}`, `${name} is needed ${why}`);
  return value;
}

function massOf(given: Given): Pick<DwellingBody, 'capacity_J_K' | 'massArea_m2'> {
  const figures = given.thermalClass === undefined ? undefined : thermalClasses[given.thermalClass];
  const capacity_J_K = given.capacity_J_K ?? (figures && figures.capacity_J_m2K * given.floor_m2);
  const massArea_m2 = given.massArea_m2 ?? (figures && figures.massAreaPerFloor * given.floor_m2);
  return { capacity_J_K: wanted(capacity_J_K, 'capacity_J_K', 'without a thermalClass'), massArea_m2: wanted(massArea_m2, 'massArea_m2', 'without a thermalClass') };
}

function ventilationOf(given: Given): Float64Array {
  if (given.ventilation_W_K !== undefined) return everyHour(given.ventilation_W_K, 'ventilation_W_K');
  const volume_m3 = wanted(given.volume_m3, 'volume_m3', 'with airChange_1_h');
  return everyHour(wanted(given.airChange_1_h, 'airChange_1_h', 'without ventilation_W_K'), 'airChange_1_h').map((rate) => ventilationOf_W_K(volume_m3, rate));
}

function bodyOfGiven(given: Given, sun: DwellingSun | null): DwellingBody {
  const opaque = given.opaque?.reduce((sum, { area_m2, u_W_m2K }) => sum + area_m2 * u_W_m2K, 0);
  const windows = sun?.windows.reduce((sum, window) => sum + window.area_m2 * yearUFactor_W_m2K(window), 0);
  return {
    floor_m2: given.floor_m2,
    ...massOf(given),
    facingArea_m2: given.facingArea_m2 ?? facingAreaPerFloor * given.floor_m2,
    opaque_W_K: given.opaque_W_K ?? wanted(opaque, 'opaque_W_K', 'without opaque parts'),
    window_W_K: given.window_W_K ?? wanted(windows, 'window_W_K', 'without windows'),
    ventilation_W_K: 0,
    surfaceConductance_W_m2K: given.surfaceConductance_W_m2K,
    ...(given.opaqueToMass_W_K === undefined ? {} : { opaqueToMass_W_K: given.opaqueToMass_W_K }),
  };
}

/** JSON has no infinity: an hour without a limit is null. */
const limitOf = (value: z.infer<typeof limit>): number | number[] => (typeof value === 'number' ? value : value.map((most) => most ?? Infinity));

function driveOf(given: Given, room: KernelRoom): { drive: DwellingDrive; sun: DwellingSun | null } {
  const { internal_W, heatingSetPoint_degC, coolingSetPoint_degC, internalConvectiveShare, initialMass_degC, heatingLimit_W, coolingLimit_W } = given;
  const common = {
    internal_W, heatingSetPoint_degC, coolingSetPoint_degC, internalConvectiveShare, initialMass_degC,
    ventilation_W_K: ventilationOf(given),
    ...(heatingLimit_W === undefined ? {} : { heatingLimit_W: limitOf(heatingLimit_W) }),
    ...(coolingLimit_W === undefined ? {} : { coolingLimit_W: limitOf(coolingLimit_W) }),
  };
  if (given.weather === undefined) {
    if (given.windows ?? given.opaque) throw new InputFault('/weather', 'weather is needed with windows or opaque parts');
    const [outdoor_degC, solar_W] = [wanted(given.outdoor_degC, 'outdoor_degC', 'without weather'), wanted(given.solar_W, 'solar_W', 'without weather')];
    return { drive: { ...common, outdoor_degC, solar_W }, sun: null };
  }
  if (given.outdoor_degC ?? given.solar_W) throw new InputFault('/weather', 'weather takes the place of outdoor_degC and solar_W');
  const weather = room.weather(given.weather);
  const sun = dwellingSun(weather, { windows: given.windows ?? [], opaque: given.opaque ?? [], albedo: given.albedo }, room);
  return { drive: { ...common, outdoor_degC: weather.outdoor_degC, solar_W: sun.solar_W, opaqueSolar_W: sun.opaqueSolar_W }, sun };
}

/** A dwelling's year of heating and cooling by the simple hourly method. */
export const kernel = defineKernel({
  name: 'dwelling-year',
  about: 'A dwelling’s year by the simple hourly method: heating, cooling, peaks, months and what it would do without plant.',
  input,
  run: (given, room) => {
    const { drive, sun } = driveOf(given, room);
    const { hour, heating_W, cooling_W, ...year } = dwellingYear(bodyOfGiven(given, sun), drive);
    const solar_W = (at: number) => (drive.solar_W[at] ?? 0) + (drive.opaqueSolar_W?.[at] ?? 0);
    const shown = given.hours?.map((at) => ({ hour: at, outdoor_degC: drive.outdoor_degC[at], solar_W: solar_W(at), heating_W: heating_W[at], cooling_W: cooling_W[at], ...hour(at) }));
    return { ...year, ...(shown === undefined ? {} : { hours: shown }) };
  },
});
