import { billYear, monthStarts, readTariff, type TariffBill } from '#calc';
import type { Choice } from '../choice/choice.js';
import type { DwellingTask, FacadeSet } from '../dwelling/dwelling-task.js';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionRoom } from '../dwelling/option-room.js';
import type { MeterMonth, MeterResult } from '../plan/plan.js';
import { meterPrices } from './meter-prices.js';
import type { Workers } from '../workers.js';

function monthSums_kWh(use: Float64Array): number[] {
  return Array.from({ length: 12 }, (_, m) => {
    let sum = 0;
    for (let h = monthStarts[m]!; h < monthStarts[m + 1]!; h++) sum += use[h]!;
    return sum;
  });
}

function monthsOf(found: { readonly bill: TariffBill; readonly use: Float64Array }, planned: { readonly bill: TariffBill; readonly use: Float64Array }): MeterMonth[] {
  const [before, after] = [monthSums_kWh(found.use), monthSums_kWh(planned.use)];
  return found.bill.months.map((month, m) => ({
    month: m + 1,
    asFound_cents: month.total_cents,
    planned_cents: planned.bill.months[m]!.total_cents,
    asFound_kWh: before[m]!,
    planned_kWh: after[m]!,
  }));
}

/** What the chosen options of a meter save by its bill when each is valued alone. */
function firstIn_cents(choice: Choice, dwellings: ReadonlySet<string>, heating: ReadonlyMap<string, string>): number {
  return choice.lines
    .filter((l) => dwellings.has(l.option.dwelling))
    .reduce((sum, l) => {
      const saving = l.option.segments[0]?.saving;
      if (saving === undefined) return sum;
      // A meter's bill is worked as modelled; savings that count as found are taken back to that.
      return sum + (saving.cooling_cents - (heating.get(l.option.dwelling) === 'gas' ? 0 : saving.addedHeating_cents)) / (l.option.counted ?? 1);
    }, 0);
}

async function loadSums(tasks: readonly DwellingTask[], of: MeterRequest): Promise<{ readonly found: Float64Array; readonly planned: Float64Array }> {
  const chosen = (t: DwellingTask): FacadeSet | null => of.setOf(t.dwelling.id);
  const keyOf = (t: DwellingTask, set: FacadeSet | null): string => `${t.key}|${JSON.stringify(set)}`;
  const wanted = new Map<string, { readonly task: DwellingTask; readonly set: FacadeSet | null }>();
  for (const task of tasks) for (const set of [null, chosen(task)]) wanted.set(keyOf(task, set), { task, set });
  const keys = [...wanted.keys()];
  const loads = await of.work.meterLoads([...wanted.values()], of.room);
  const byKey = new Map(keys.map((key, i) => [key, loads[i]!]));
  const [found, planned] = [new Float64Array(8760), new Float64Array(8760)];
  for (const task of tasks) {
    const [before, after] = [byKey.get(keyOf(task, null))!, byKey.get(keyOf(task, chosen(task)))!];
    for (let h = 0; h < 8760; h++) {
      found[h] = found[h]! + before[h]!;
      planned[h] = planned[h]! + after[h]!;
    }
  }
  return { found, planned };
}

export interface MeterRequest {
  readonly tasks: readonly DwellingTask[];
  readonly choice: Choice;
  readonly setOf: (dwelling: string) => FacadeSet | null;
  readonly work: Workers;
  readonly room: OptionRoom;
  /** Only meters that serve more than one dwelling: for the loop; all for the plan. */
  readonly sharedOnly: boolean;
}

/** Bills of every meter the plan touches, as found and with all its chosen options together, present plant, first year. */
export async function meterResults(of: MeterRequest): Promise<MeterResult[]> {
  const chosen = new Set(of.choice.lines.map((l) => l.option.dwelling));
  const heating = new Map(of.tasks.map((t) => [t.dwelling.id, t.dwelling.heatingKind]));
  const results: MeterResult[] = [];
  for (const [meter, tasks] of grouped(of.tasks, (t) => t.dwelling.meter.id)) {
    if (!tasks.some((t) => chosen.has(t.dwelling.id)) || (of.sharedOnly && tasks.length < 2)) continue;
    const { found, planned } = await loadSums(tasks, of);
    const known = tasks[0]!.dwelling.meter;
    const tariff = readTariff(known.tariff);
    const [before, after] = [billYear(tariff, found), billYear(tariff, planned)];
    results.push({
      meter,
      building: tasks[0]!.dwelling.building,
      tariff: known.tariff.label,
      payerRule: known.payerRule.id,
      ownerShare: known.payerRule.ownerShare,
      dwellings: tasks.length,
      months: monthsOf({ bill: before, use: found }, { bill: after, use: planned }),
      firstInSaving_cents: firstIn_cents(of.choice, new Set(tasks.map((t) => t.dwelling.id)), heating),
      togetherSaving_cents: before.total_cents - after.total_cents,
      prices: meterPrices({ tariff, found, planned, payer: known.payerRule, saving_cents: before.total_cents - after.total_cents }),
    });
  }
  return sortedBy(results, (r) => r.meter);
}

/** Above this share of the plan's saving, the options of a meter are valued again with the plan in place. */
const WORTH_ANOTHER_ROUND = 0.02;

/** Meters whose options are worth noticeably more or less together than one by one. */
export function unsettledMeters(meters: readonly MeterResult[], planSaving_cents: number): MeterResult[] {
  return meters.filter((m) => Math.abs(m.togetherSaving_cents - m.firstInSaving_cents) > WORTH_ANOTHER_ROUND * Math.max(1, Math.abs(planSaving_cents)));
}
