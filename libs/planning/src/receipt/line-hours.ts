import { type MonthSums, monthSums } from '#calc';
import { asFound, AS_SURVEYED, dressedWith, dwellingBench, runOf } from '../dwelling/dwelling-run.js';
import type { DwellingTask, FacadeSet } from '../dwelling/dwelling-task.js';
import { useOf } from '../dwelling/meter-bill.js';
import { coolingYear, heatingYear, machinesOf } from '../dwelling/plant-run.js';
import { setOfOption } from '../options/valued-options.js';
import type { PlanLine } from '../plan/plan.js';
import type { LineUse } from '../review/line-uses.js';
import type { SurveyAgain } from './survey-again.js';

/** Hourly use of the meter of a line, first year: as found, and with its film alone. */
export interface LineHours {
  readonly asFound_kWh: Float64Array;
  readonly planned_kWh: Float64Array;
}

function hoursOf(task: DwellingTask, set: FacadeSet, survey: SurveyAgain): LineHours {
  const { bench } = survey;
  const at = dwellingBench(task, bench.room);
  const d = task.dwelling;
  const { firstYear = 0, plant = 'present' } = task.spans[0] ?? {};
  const rest = task.others_kWh === null ? [at.zone.base_kWh] : [at.zone.base_kWh, task.others_kWh];
  const bare = runOf(at, bench, { dressing: asFound, departure: AS_SURVEYED, into: bench.foundLoads });
  const machine = machinesOf(d, { room: bench.room, site: at.zone.site, peakSensible_W: bare.peakCooling_W }).of(plant);
  const found = coolingYear(machine, bare.cooling_W, null);
  const use = (cooling_kWh: Float64Array, heat_kWh: Float64Array | null): Float64Array => useOf([...rest, cooling_kWh, ...(heat_kWh === null ? [] : [heat_kWh])], new Float64Array(8760));
  const asFound_kWh = use(found.electricity_kWh, heatingYear(d, bare.heating_W).electricity_kWh);
  const filmed = runOf(at, bench, { dressing: dressedWith(set, firstYear), departure: AS_SURVEYED });
  return { asFound_kWh, planned_kWh: use(coolingYear(machine, filmed.cooling_W, found).electricity_kWh, heatingYear(d, filmed.heating_W).electricity_kWh) };
}

const CLOSE_kWh = 1e-6;

/** Whether hours add up to the use the plan keeps, month by month and period by period. */
function isUseOf(hours: LineHours, kept: LineUse, clock: Parameters<typeof monthSums>[0]): boolean {
  const same = (sums: MonthSums, months: LineUse['spans'][number]['asFound']): boolean => months.flatMap((m) => m.bought_kWh).every((kWh, i) => Math.abs(kWh - sums.bought_kWh[i]!) < CLOSE_kWh);
  const span = kept.spans[0]!;
  return same(monthSums(clock, hours.asFound_kWh), span.asFound) && same(monthSums(clock, hours.planned_kWh), span.planned);
}

/** The hours behind a line's saving, or why they cannot be worked again. Neighbours on its meter are as found, or where it was valued again, as the plan leaves them. */
export async function lineHours(line: PlanLine, kept: LineUse, survey: SurveyAgain): Promise<LineHours | { readonly why: string }> {
  for (const neighbours of ['as found', 'as planned'] as const) {
    const task = (await survey.tasksOn(kept.meter, neighbours)).find((t) => t.dwelling.id === line.dwelling);
    if (task === undefined) return { why: 'the survey kept now does not hold this dwelling any more' };
    const hours = hoursOf(task, setOfOption(line.option, survey.choices), survey);
    if (isUseOf(hours, kept, survey.bench.clockOf(task.dwelling.meter.tariff.label))) return hours;
  }
  return { why: 'the hours worked again do not add up to the use the plan keeps: the survey was changed since, or the neighbours on the meter were chosen in other rounds' };
}
