import { billYear, type PlantOnWeather, readTariff, type TariffBill } from '#calc';
import { AS_SURVEYED, asFound, dressedWith, type DwellingBench, dwellingBench, type DwellingRun, type OptionBench, optionBench, runOf } from '../dwelling/dwelling-run.js';
import type { DwellingTask, FacadeSet } from '../dwelling/dwelling-task.js';
import { useOf } from '../dwelling/meter-bill.js';
import { type CoolingYear, coolingYear, type HeatingYear, heatingYear, machinesOf } from '../dwelling/plant-run.js';
import { designSite } from './design-day.js';

/** A dwelling with one of its sets, to be looked at closely. */
export interface EnergyTask {
  readonly task: DwellingTask;
  readonly set: FacadeSet;
}

/** What a set changes, month by month of the first year; positive is less use, or more heating. */
export interface MonthEnergy {
  readonly cooling_kWh: number;
  readonly cooling_cents: number;
  readonly addedHeating_kWh: number;
  readonly addedHeating_cents: number;
}

/** The machine on the design day. */
export interface DesignPeak {
  /** Electricity of the 24 hours, kW. */
  readonly asFound_kW: readonly number[];
  readonly filmed_kW: readonly number[];
  /** Heat the machine takes out in its hardest hour, moisture in it. */
  readonly asFound_W: number;
  readonly filmed_W: number;
}

/** A dwelling with a set, looked at closely; its present machine, first year. */
export interface DwellingEnergy {
  readonly months: readonly MonthEnergy[];
  readonly asFoundCooling_kWh: number;
  readonly runHoursAvoided_h: number;
  /** If the room is let get damper: moisture follows the shorter run. An upper figure, used for nothing else. */
  readonly damper: { readonly cooling_kWh: number; readonly cooling_cents: number };
  readonly peak: DesignPeak;
}

/** Workplaces of the year and of the design day. */
export interface EnergyBench {
  readonly year: OptionBench;
  readonly designDay: OptionBench;
}

/** The design day's room beside that of the year; sites of the same names live their design day. */
export function energyBench(year: OptionBench): EnergyBench {
  const { room } = year;
  const sites = new Map([...room.sites].map(([key, site]) => {
    const day = room.designDays.get(key);
    if (day === undefined) throw new RangeError(`site must have a design day, got none for ${key}`);
    return [key, designSite(site, day, room.albedo)];
  }));
  return { year, designDay: optionBench({ ...room, sites }) };
}

/** Runs copied out of the bench's arrays, since two are held side by side. */
function runsOf(at: DwellingBench, bench: OptionBench, set: FacadeSet): { readonly found: DwellingRun; readonly filmed: DwellingRun } {
  const loads = () => ({ heating_W: new Float64Array(8760), cooling_W: new Float64Array(8760) });
  const first = at.task.spans[0]?.firstYear ?? 0;
  return {
    found: runOf(at, bench, { dressing: asFound, departure: AS_SURVEYED, into: loads() }),
    filmed: runOf(at, bench, { dressing: dressedWith(set, first), departure: AS_SURVEYED, into: loads() }),
  };
}

const MONTH_ENDS = [744, 1416, 2160, 2880, 3624, 4344, 5088, 5832, 6552, 7296, 8016, 8760];

function monthSums(hours: Float64Array): number[] {
  return MONTH_ENDS.map((end, m) => hours.subarray(MONTH_ENDS[m - 1] ?? 0, end).reduce((a, b) => a + b, 0));
}

/** Heat of a month over that of the year: how fuel that is metered by the year falls on months. */
function heatShares(heating_W: Float64Array): number[] {
  const sums = monthSums(heating_W);
  const all = sums.reduce((a, b) => a + b, 0);
  return sums.map((sum) => (all > 0 ? sum / all : 0));
}

interface Priced {
  readonly cooling: CoolingYear;
  readonly heating: HeatingYear;
  readonly run: DwellingRun;
}

type Billed = (cooling: CoolingYear, heating: HeatingYear) => TariffBill;

function monthsOf(task: DwellingTask, { found, filmed }: { readonly found: Priced; readonly filmed: Priced }, bill: Billed): MonthEnergy[] {
  const d = task.dwelling;
  const [before, coolingOnly, both] = [bill(found.cooling, found.heating), bill(filmed.cooling, found.heating), bill(filmed.cooling, filmed.heating)];
  const [cold, colder] = [monthSums(found.cooling.electricity_kWh), monthSums(filmed.cooling.electricity_kWh)];
  const heat = (of: Priced): number[] => (of.heating.electricity_kWh === null ? heatShares(of.run.heating_W).map((share) => share * of.heating.total_kWh) : monthSums(of.heating.electricity_kWh));
  const [warm, warmer] = [heat(found), heat(filmed)];
  return MONTH_ENDS.map((_, m): MonthEnergy => {
    const addedHeating_kWh = warmer[m]! - warm[m]!;
    const fuel_cents = d.heatingKind === 'gas' ? addedHeating_kWh * d.heatingFuel_cents_kWh : 0;
    return {
      cooling_kWh: cold[m]! - colder[m]!,
      cooling_cents: before.months[m]!.total_cents - coolingOnly.months[m]!.total_cents,
      addedHeating_kWh,
      addedHeating_cents: both.months[m]!.total_cents - coolingOnly.months[m]!.total_cents + fuel_cents,
    };
  });
}

/** Heat out of the rooms on the design day's date, moisture in it, each of 24 hours. */
function dayOf(series: Float64Array, dayOfYear: number): number[] {
  return [...series.subarray((dayOfYear - 1) * 24, dayOfYear * 24)];
}

function designPeak(of: EnergyTask, bench: EnergyBench, peakSensible_W: number): DesignPeak {
  const { room } = bench.designDay;
  const at = dwellingBench(of.task, room);
  const { found, filmed } = runsOf(at, bench.designDay, of.set);
  const on: PlantOnWeather = machinesOf(of.task.dwelling, { room, site: at.zone.site, peakSensible_W }).of(of.task.spans[0]?.plant ?? 'present');
  const before = coolingYear(on, found.cooling_W, null);
  const after = coolingYear(on, filmed.cooling_W, before);
  const { dayOfYear } = room.designDays.get(of.task.site)!;
  const heat_W = (run: DwellingRun): number => Math.max(...dayOf(run.cooling_W, dayOfYear).map((sensible, hour) => sensible + dayOf(before.latent_W, dayOfYear)[hour]!));
  return { asFound_kW: dayOf(before.electricity_kWh, dayOfYear), filmed_kW: dayOf(after.electricity_kWh, dayOfYear), asFound_W: heat_W(found), filmed_W: heat_W(filmed) };
}

/** One dwelling with one set: the year by months, the figure with a damper room, and the design day. Bare and filmed run the same functions. */
export function dwellingEnergy(of: EnergyTask, bench: EnergyBench): DwellingEnergy {
  const { task, set } = of;
  const at = dwellingBench(task, bench.year.room);
  const { found: foundRun, filmed: filmedRun } = runsOf(at, bench.year, set);
  const on = machinesOf(task.dwelling, { room: bench.year.room, site: at.zone.site, peakSensible_W: foundRun.peakCooling_W }).of(task.spans[0]?.plant ?? 'present');
  const cooling = coolingYear(on, foundRun.cooling_W, null);
  const found: Priced = { cooling, heating: heatingYear(task.dwelling, foundRun.heating_W), run: foundRun };
  const filmed: Priced = { cooling: coolingYear(on, filmedRun.cooling_W, cooling), heating: heatingYear(task.dwelling, filmedRun.heating_W), run: filmedRun };
  const tariff = readTariff(task.dwelling.meter.tariff);
  const bill: Billed = (cool, heat) =>
    billYear(tariff, useOf([at.zone.base_kWh, cool.electricity_kWh, ...(heat.electricity_kWh === null ? [] : [heat.electricity_kWh]), ...(task.others_kWh === null ? [] : [task.others_kWh])], new Float64Array(8760)));
  const drier = coolingYear(on, filmedRun.cooling_W, null);
  return {
    months: monthsOf(task, { found, filmed }, bill),
    asFoundCooling_kWh: cooling.total_kWh,
    runHoursAvoided_h: cooling.runHours_h - filmed.cooling.runHours_h,
    damper: { cooling_kWh: cooling.total_kWh - drier.total_kWh, cooling_cents: bill(cooling, found.heating).total_cents - bill(drier, found.heating).total_cents },
    peak: designPeak(of, bench, foundRun.peakCooling_W),
  };
}
