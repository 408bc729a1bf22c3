import { facadeSun_W } from '#calc';
import { asFound, dressedWith, type Dressing, dwellingBench, runOf, AS_SURVEYED, type DwellingBench, type DwellingRun } from '../dwelling/dwelling-run.js';
import type { DwellingTask } from '../dwelling/dwelling-task.js';
import { machinesOf } from '../dwelling/plant-run.js';
import { sideSun } from '../dwelling/side-sun.js';
import { zoneBody } from '../dwelling/zone.js';
import { setOfOption } from '../options/valued-options.js';
import type { PlanLine } from '../plan/plan.js';
import type { SurveyAgain } from './survey-again.js';

/** A dwelling of a line run through its year again, as found or with its film. */
export interface LoadAgain {
  readonly task: DwellingTask;
  readonly at: DwellingBench;
  readonly run: DwellingRun;
  /** Input of the kernel `dwelling-year`. */
  readonly input: object;
  readonly solar_W: Float64Array;
}

/** A plant's limit as the kernel takes it: nothing where it never holds, one number for all hours, or the hours, null where nothing limits. */
function limitOf({ most_W }: DwellingBench['drive']['coolingLimit'], load_W: Float64Array): number | (number | null)[] | undefined {
  if (most_W.every((most, h) => most === Infinity || load_W[h]! < most)) return undefined;
  if (most_W.every((most) => most === most_W[0])) return most_W[0];
  return Array.from(most_W, (most) => (most === Infinity ? null : most));
}

const noon = (hours: Float64Array): number | number[] => (hours.every((value) => value === hours[0]) ? hours[0]! : [...hours]);

function kernelInput(at: DwellingBench, of: { readonly run: DwellingRun; readonly dressing: Dressing; readonly solar_W: Float64Array; readonly survey: SurveyAgain }): object {
  const { drive, task, zone } = at;
  const cooling = limitOf(drive.coolingLimit, of.run.cooling_W);
  const heating = limitOf(drive.heatingLimit, of.run.heating_W);
  const windows = sideSun(at, of.survey.bench).sides(of.dressing).flatMap((side) => side.windows);
  return {
    ...zoneBody(task, zone, windows),
    outdoor_degC: [...drive.outdoor_degC],
    solar_W: [...of.solar_W],
    internal_W: noon(drive.internal_W),
    heatingSetPoint_degC: noon(drive.heatingSetPoint_degC),
    coolingSetPoint_degC: noon(drive.coolingSetPoint_degC),
    internalConvectiveShare: drive.internalConvectiveShare,
    initialMass_degC: drive.initialMass_degC,
    ...(cooling === undefined ? {} : { coolingLimit_W: cooling }),
    ...(heating === undefined ? {} : { heatingLimit_W: heating }),
  };
}

/** The task of a line's dwelling, neighbours on its meter as found; null where the survey kept now does not hold it any more. */
export async function taskOfLine(line: PlanLine, survey: SurveyAgain): Promise<DwellingTask | null> {
  const known = survey.known.dwellings.find((d) => d.id === line.dwelling);
  if (known === undefined) return null;
  return (await survey.tasksOn(known.meter.id, 'as found')).find((t) => t.dwelling.id === line.dwelling) ?? null;
}

/** Runs the dwelling of a line through its year again; its arrays are its own. */
export async function loadAgain(line: PlanLine, state: 'as-found' | 'filmed', survey: SurveyAgain): Promise<LoadAgain | null> {
  const task = await taskOfLine(line, survey);
  if (task === null) return null;
  const at = dwellingBench(task, survey.choices.room);
  const dressing = state === 'as-found' ? asFound : dressedWith(setOfOption(line.option, survey.choices), task.spans[0]?.firstYear ?? 0);
  const run = runOf(at, survey.bench, { dressing, departure: AS_SURVEYED, into: { heating_W: new Float64Array(8760), cooling_W: new Float64Array(8760) } });
  const sides = sideSun(at, survey.bench).sides(dressing);
  const solar_W = facadeSun_W(sides.map(({ sun_W }) => ({ glass_m2: 1, gain_W_m2: sun_W })), new Float64Array(8760), at.zone.opaque_W);
  return { task, at, run, solar_W, input: kernelInput(at, { run, dressing, solar_W, survey }) };
}

/** The present machine of a dwelling under its weather. */
export const machineAgain = ({ task, at, run }: LoadAgain, survey: SurveyAgain): ReturnType<ReturnType<typeof machinesOf>['of']> =>
  machinesOf(task.dwelling, { room: survey.choices.room, site: at.zone.site, peakSensible_W: run.peakCooling_W }).of(task.spans[0]?.plant ?? 'present');
