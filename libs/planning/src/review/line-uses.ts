import type { MonthSums } from '#calc';
import type { OptionRoom } from '../dwelling/option-room.js';
import type { Candidate } from '../choice/candidate.js';
import type { DwellingTask, FacadeSet } from '../dwelling/dwelling-task.js';
import type { Workers } from '../workers.js';

/** A month's use of a meter, as its bill needs it. */
export interface MonthUse {
  /** kWh bought and sent out, by energy period. */
  readonly bought_kWh: readonly number[];
  readonly sold_kWh: readonly number[];
  /** Greatest kW, by demand period; empty where the tariff has none. */
  readonly periodPeak_kW: readonly number[];
  readonly peak_kW: number;
}

/** Twelve months in one span of years. */
export interface LineUseSpan {
  readonly firstYear: number;
  readonly asFound: readonly MonthUse[];
  readonly planned: readonly MonthUse[];
  readonly addedGas_kWh: number;
}

/** The use behind a line's saving: its meter as found and with this line, neighbours as they were when the line was valued. */
export interface LineUse {
  readonly dwelling: string;
  readonly meter: string;
  readonly tariff: string;
  readonly gas_cents_kWh: number;
  readonly spans: readonly LineUseSpan[];
}

function monthsOf(sums: MonthSums): MonthUse[] {
  const part = (all: Float64Array, month: number): number[] => Array.from(all.subarray((month * all.length) / 12, ((month + 1) * all.length) / 12));
  return Array.from({ length: 12 }, (_, m) => ({ bought_kWh: part(sums.bought_kWh, m), sold_kWh: part(sums.sold_kWh, m), periodPeak_kW: part(sums.periodPeak_kW, m), peak_kW: sums.peak_kW[m]! }));
}

/** The monthly use of every line of the plan. */
export async function lineUses(lines: readonly Candidate[], of: { readonly tasks: readonly DwellingTask[]; readonly setOf: (dwelling: string) => FacadeSet | null; readonly work: Workers; readonly room: OptionRoom }): Promise<LineUse[]> {
  const taskOf = new Map(of.tasks.map((t) => [t.dwelling.id, t]));
  const tasks = lines.map((line) => ({ task: taskOf.get(line.option.dwelling)!, set: of.setOf(line.option.dwelling)! }));
  const uses = await of.work.optionUses(tasks, of.room);
  return tasks.map(({ task }, i): LineUse => ({
    dwelling: task.dwelling.id,
    meter: task.dwelling.meter.id,
    tariff: task.dwelling.meter.tariff.label,
    gas_cents_kWh: task.dwelling.heatingFuel_cents_kWh,
    spans: uses[i]!.map((span) => ({ firstYear: span.firstYear, asFound: monthsOf(span.asFound), planned: monthsOf(span.planned), addedGas_kWh: span.addedGas_kWh })),
  }));
}
