import type { BillFitness, HourlyYear } from '#calc';
import { grouped } from '../grouped.js';
import type { KnownDwelling } from '../known/known-dwelling.js';
import { type BilledMonth, billedMonths, monthsFitness } from './bill-months.js';
import type { ComparedMeter } from './compared-meters.js';
import { typicalDays } from './day-weather.js';
import { before as billsBefore } from './meter-bills.js';
import { modelledDays_kWh, type RunsAt } from './modelled-use.js';
import type { BuildingFitness, CalibrationReview } from './review.js';

export interface FitnessAt extends RunsAt {
  readonly before: ReadonlyMap<string, KnownDwelling>;
  readonly after: ReadonlyMap<string, KnownDwelling>;
  readonly limits: CalibrationReview['limits'];
  readonly weather: ReadonlyMap<string, HourlyYear>;
}

/** Modelled use of a meter by day, its dwellings summed. */
export function meterDays(meter: ComparedMeter, days: ReadonlyMap<string, Float64Array>): Float64Array {
  const total = new Float64Array(365);
  for (const { id } of meter.dwellings) {
    const own = days.get(id);
    if (own !== undefined) for (let day = 0; day < 365; day++) total[day] = total[day]! + own[day]!;
  }
  return total;
}

const isWithin = (fit: BillFitness, limits: CalibrationReview['limits']): boolean => fit.cvRmse <= limits.cvRmse && Math.abs(fit.nmbe) <= limits.nmbe;

/** How close the model comes to the bills of each building before and after it was moved; only meters for all use, since others hold a part. */
export async function fitnessByBuilding(meters: readonly ComparedMeter[], at: FitnessAt): Promise<BuildingFitness[]> {
  const whole = meters.filter((m) => m.bills.use === 'all');
  const dwellings = [...new Set(whole.flatMap((m) => m.dwellings.map((d) => d.id)))];
  const runs = await Promise.all([at.before, at.after].map((state) => modelledDays_kWh(dwellings.map((id) => state.get(id)!), at)));
  return [...grouped(whole, (m) => m.bills.building)].flatMap(([building, ofBuilding]): BuildingFitness[] => {
    const typical = typicalDays(at.weather.get(building)!);
    const months = (days: ReadonlyMap<string, Float64Array>): BilledMonth[] => ofBuilding.flatMap((m) => billedMonths(billsBefore(m.bills), { split: m.split, typical, days: meterDays(m, days) }));
    const [before, after] = runs.map((days) => monthsFitness(months(days)));
    return before == null || after == null ? [] : [{ building, meters: ofBuilding.length, before, after, isWithinLimits: isWithin(after, at.limits) }];
  });
}
