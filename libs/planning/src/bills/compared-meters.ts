import type { PooledMember, UseSplit } from '#calc';
import { NO_PLAN_TYPE, SEVERAL_TYPES } from './pooled-bills.js';
import type { KnownDwelling } from '../known/known-dwelling.js';
import type { MeterBills } from './meter-bills.js';
import type { MeterFit } from './meter-fit.js';

/** A part of a meter's use by its bills. */
export interface BilledPart {
  readonly kWh: number;
  readonly standardError_kWh: number;
}

/** A meter whose bills can be held against the model of the dwellings it serves. */
export interface ComparedMeter {
  readonly bills: MeterBills;
  readonly split: UseSplit;
  readonly dwellings: readonly KnownDwelling[];
  readonly planType: string;
}

export type PlanTypeOf = (dwelling: string) => string;

export function planTypesOf(dwellings: readonly { readonly id: string; readonly planType: string | null }[]): PlanTypeOf {
  const byId = new Map(dwellings.map((d) => [d.id, d.planType ?? NO_PLAN_TYPE]));
  return (id) => byId.get(id) ?? NO_PLAN_TYPE;
}

/** Meters that can be compared, and why the others cannot. */
export function comparedMeters(fits: readonly { readonly bills: MeterBills; readonly fit: MeterFit }[], of: { readonly known: ReadonlyMap<string, KnownDwelling>; readonly planTypeOf: PlanTypeOf }): { readonly meters: ComparedMeter[]; readonly notCompared: { readonly meter: string; readonly why: string }[] } {
  const meters: ComparedMeter[] = [];
  const notCompared: { meter: string; why: string }[] = [];
  for (const { bills, fit } of fits) {
    const dwellings = bills.dwellings.flatMap((id) => of.known.get(id) ?? []);
    const say = (why: string): void => void notCompared.push({ meter: bills.meter, why });
    if (bills.use === 'heating' || bills.use === 'common') say(`it meters ${bills.use === 'common' ? 'common areas' : 'heating'}`);
    else if ('why' in fit.split) say(fit.split.why);
    else if (dwellings.length === 0) say('it serves no dwelling');
    else if (dwellings.length < bills.dwellings.length) say(`${bills.dwellings.length - dwellings.length} of its ${bills.dwellings.length} dwellings are not computed`);
    else {
      const types = new Set(dwellings.map((d) => of.planTypeOf(d.id)));
      meters.push({ bills, split: fit.split, dwellings, planType: types.size === 1 ? [...types][0]! : SEVERAL_TYPES });
    }
  }
  return { meters, notCompared };
}

/** No comparison is surer than this: equal homes are not quite equal, and the typical year is not quite the weather. */
const LEAST_ERROR = 0.05;
/** A part whose error is half of it says little of its logarithm. */
const MOST_ERROR = 0.5;

/** ln(billed / modelled) of a part of the use, with its error; or why it says nothing. */
function member(meter: ComparedMeter, of: { readonly billed: { readonly kWh: number; readonly standardError_kWh: number }; readonly modelled_kWh: number; readonly part: string }): PooledMember | string {
  const { billed, modelled_kWh, part } = of;
  if (!(modelled_kWh > 0)) return `the model has no ${part} to compare`;
  const error = billed.kWh > 0 ? billed.standardError_kWh / billed.kWh : Infinity;
  if (!(error <= MOST_ERROR)) return `its bills do not tell ${part} from the rest (${billed.kWh.toFixed(0)} ± ${billed.standardError_kWh.toFixed(0)} kWh a year)`;
  return { building: meter.bills.building, planType: meter.planType, value: Math.log(billed.kWh / modelled_kWh), standardError: Math.hypot(error, LEAST_ERROR) };
}

const summed = (dwellings: readonly KnownDwelling[], of: (d: KnownDwelling) => number): number => dwellings.reduce((sum, d) => sum + of(d), 0);

/** Base load of the meters against what was assumed; a base load that was given stays, and a meter for cooling alone has none. */
export function baseMembers(meters: readonly ComparedMeter[], of: { readonly isGiven: (meter: string) => boolean; readonly parts: ReadonlyMap<string, { readonly base: BilledPart }> }): PooledMember[] {
  return meters
    .filter((m) => m.bills.use === 'all' && !of.isGiven(m.bills.meter))
    .map((m) => member(m, { billed: of.parts.get(m.bills.meter)!.base, modelled_kWh: summed(m.dwellings, (d) => d.baseLoad_kWh_yr), part: 'base load' }))
    .filter((m) => typeof m !== 'string');
}

/** Cooling of the meters against the model. */
export function coolingMembers(meters: readonly ComparedMeter[], of: { readonly cooling_kWh: ReadonlyMap<string, number>; readonly parts: ReadonlyMap<string, { readonly cooling: BilledPart }> }): { readonly members: PooledMember[]; readonly notCompared: { readonly meter: string; readonly why: string }[] } {
  const said = meters.map((m) => ({ meter: m.bills.meter, of: member(m, { billed: of.parts.get(m.bills.meter)!.cooling, modelled_kWh: summed(m.dwellings, (d) => of.cooling_kWh.get(d.id) ?? 0), part: 'cooling' }) }));
  return { members: said.flatMap(({ of: each }) => (typeof each === 'string' ? [] : [each])), notCompared: said.flatMap(({ meter, of: each }) => (typeof each === 'string' ? [{ meter, why: each }] : [])) };
}
