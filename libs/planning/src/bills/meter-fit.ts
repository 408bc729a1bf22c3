import { type HourlyYear, type Missing, useSplit, type UseSplit } from '#calc';
import { typicalMonths } from './day-weather.js';
import { before, type LeftOutPeriod, type MeterBills } from './meter-bills.js';

/** What the bills of a meter say of it before any film: base load, cooling, heating, of a typical year. */
export interface MeterFit {
  readonly meter: string;
  readonly building: string;
  readonly dwellings: number;
  readonly split: UseSplit | Missing;
  readonly weather: string;
  readonly used: readonly { readonly firstDay: string; readonly lastDay: string; readonly use_kWh: number; readonly outdoor_degC: number }[];
  readonly leftOut: readonly LeftOutPeriod[];
  readonly gaps: number;
}

/** Splits a meter's bills from before the film. */
export function meterFit(bills: MeterBills, year: HourlyYear): MeterFit {
  const periods = before(bills);
  const months = typicalMonths(year);
  return {
    meter: bills.meter,
    building: bills.building,
    dwellings: bills.dwellings.length,
    split: periods.length === 0 ? { why: bills.installed === null ? 'no bill can be used' : 'no usable bill ends before the film went on' } : useSplit(periods, { weather: months, weatherError: bills.weatherError }),
    weather:
      bills.weather === 'days of the bills'
        ? `fitted on the temperatures of the days billed, stated for the typical year of ${year.label}`
        : `fitted on the typical year of ${year.label}, since no temperatures of the days billed are known; degree days taken ${(bills.weatherError * 100).toFixed(0)} % uncertain`,
    used: periods.map(({ firstDay, lastDay, use_kWh, outdoor_degC }) => ({ firstDay, lastDay, use_kWh, outdoor_degC })),
    leftOut: bills.leftOut,
    gaps: bills.gaps.length,
  };
}
