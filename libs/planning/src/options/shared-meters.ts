import type { DwellingTask, FacadeSet } from '../dwelling/dwelling-task.js';
import { grouped } from '../grouped.js';
import type { OptionRoom } from '../dwelling/option-room.js';
import type { Workers } from '../workers.js';

/** Dwellings of a meter that serves more than one, in order of id. */
export interface SharedMeter {
  readonly meter: string;
  readonly tasks: readonly DwellingTask[];
}

export function sharedMetersOf(tasks: readonly DwellingTask[]): SharedMeter[] {
  return [...grouped(tasks, (t) => t.dwelling.meter.id)].filter(([, ofMeter]) => ofMeter.length > 1).map(([meter, ofMeter]) => ({ meter, tasks: ofMeter }));
}

/** Set chosen for a dwelling, if any. */
export type ChosenSet = (dwelling: string) => FacadeSet | null;

function plus(total: Float64Array, load: Float64Array): void {
  for (let h = 0; h < 8760; h++) total[h] = total[h]! + load[h]!;
}

/** Hourly use on a shared meter by dwelling: with the chosen sets, equal dwellings computed once. */
async function loadsOf(meter: SharedMeter, of: { readonly chosen: ChosenSet; readonly work: Workers; readonly room: OptionRoom }): Promise<Float64Array[]> {
  const keyOf = (task: DwellingTask): string => `${task.key}|${JSON.stringify(of.chosen(task.dwelling.id))}`;
  const distinct = [...grouped(meter.tasks, keyOf)].map(([key, same]) => ({ key, task: same[0]!, set: of.chosen(same[0]!.dwelling.id) }));
  const loads = await of.work.meterLoads(distinct, of.room);
  const byKey = new Map(distinct.map((d, i) => [d.key, loads[i]!]));
  return meter.tasks.map((task) => byKey.get(keyOf(task))!);
}

/**
 * The tasks with the hourly use of their neighbours on a shared meter put in: as found at first; in a later round with what the plan has
 * chosen for them. The sum runs in order of id, so it is the same in every order of rows.
 */
export async function withNeighbours(tasks: readonly DwellingTask[], of: { readonly chosen: ChosenSet; readonly work: Workers; readonly room: OptionRoom; readonly only?: ReadonlySet<string> }): Promise<DwellingTask[]> {
  const others = new Map<string, Float64Array>();
  for (const meter of sharedMetersOf(tasks)) {
    if (of.only !== undefined && !of.only.has(meter.meter)) continue;
    const loads = await loadsOf(meter, of);
    const total = new Float64Array(8760);
    for (const load of loads) plus(total, load);
    meter.tasks.forEach((task, i) => {
      const own = loads[i]!;
      others.set(task.dwelling.id, total.map((sum, h) => Math.max(0, sum - own[h]!)));
    });
  }
  return tasks.map((task) => {
    const others_kWh = others.get(task.dwelling.id);
    return others_kWh === undefined ? task : { ...task, others_kWh, key: neighbourKey(task, of.chosen) };
  });
}

/** Equal dwellings on one meter stay equal unless the plan has chosen differently for them. */
const neighbourKey = (task: DwellingTask, chosen: ChosenSet): string => `${task.key}|own ${JSON.stringify(chosen(task.dwelling.id))}`;
