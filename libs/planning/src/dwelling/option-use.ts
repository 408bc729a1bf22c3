import { type MonthSums, monthSums } from '#calc';
import { AS_SURVEYED, asFound, dressedWith, dwellingBench, type OptionBench, runOf } from './dwelling-run.js';
import type { DwellingTask, FacadeSet, YearSpan } from './dwelling-task.js';
import { useOf } from './meter-bill.js';
import { type CoolingYear, coolingYear, heatingYear, machinesOf } from './plant-run.js';

/** A dwelling and the set the plan has chosen for it. */
export interface OptionUseTask {
  readonly task: DwellingTask;
  readonly set: FacadeSet;
}

/** What the bill of a meter hangs on in one span of years, as found and with the option: by month and price period. */
export interface SpanUse {
  readonly firstYear: number;
  readonly asFound: MonthSums;
  readonly planned: MonthSums;
  /** Heating by gas that the option adds, kWh of gas a year; 0 where heat comes by wire. */
  readonly addedGas_kWh: number;
}

/**
 * Monthly kWh by price period and greatest kW of the meter of a dwelling, neighbours and base load with it, as found and with its option:
 * the very hours its saving was billed from, so that the bill can be worked again with other prices.
 */
export function optionUse({ task, set }: OptionUseTask, bench: OptionBench): SpanUse[] {
  const at = dwellingBench(task, bench.room);
  const d = task.dwelling;
  const clock = bench.clockOf(d.meter.tariff.label);
  const rest = task.others_kWh === null ? [at.zone.base_kWh] : [at.zone.base_kWh, task.others_kWh];
  const bare = runOf(at, bench, { dressing: asFound, departure: AS_SURVEYED, into: bench.foundLoads });
  const machines = machinesOf(d, { room: bench.room, site: at.zone.site, peakSensible_W: bare.peakCooling_W });
  const warmth = heatingYear(d, bare.heating_W);
  const found = new Map<YearSpan['plant'], CoolingYear>();
  const sums = (cooling: CoolingYear, heat: Float64Array | null): MonthSums => monthSums(clock, useOf([...rest, cooling.electricity_kWh, ...(heat === null ? [] : [heat])], bench.use_kWh));
  return task.spans.map(({ firstYear, plant }): SpanUse => {
    const cooling = found.get(plant) ?? coolingYear(machines.of(plant), bare.cooling_W, null);
    found.set(plant, cooling);
    const run = runOf(at, bench, { dressing: dressedWith(set, firstYear), departure: AS_SURVEYED });
    const filmed = heatingYear(d, run.heating_W);
    return {
      firstYear,
      asFound: sums(cooling, warmth.electricity_kWh),
      planned: sums(coolingYear(machines.of(plant), run.cooling_W, cooling), filmed.electricity_kWh),
      addedGas_kWh: d.heatingKind === 'gas' ? filmed.total_kWh - warmth.total_kWh : 0,
    };
  });
}
