import { meterChange, type MeterChange, type Missing, pooledSaving, type PooledSaving } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import { after, before, type BilledPeriod, type MeterBills } from './meter-bills.js';

/** One meter before and after, with the weather taken out. */
export interface VerifiedMeter {
  readonly meter: string;
  readonly building: string;
  readonly group: 'treated' | 'comparison';
  readonly filmedDwellings: number;
  readonly dwellings: number;
  readonly change: Omit<MeterChange, 'fit'>;
  readonly model: MeterChange['fit']['model'];
  readonly cvRmse: number;
  /** Share of the meter's use that the model expects film to save; null where no plan says it. */
  readonly modelledShare: number | null;
  readonly weather: MeterBills['weather'];
}

/** Film by the bills of one building. */
export interface BuildingSaving {
  readonly building: string;
  readonly treated: number;
  readonly comparison: number;
  /** Its own untreated meters where there are three or more, those of all buildings otherwise. */
  readonly against: 'own building' | 'all buildings' | 'nothing';
  readonly saving: PooledSaving | Missing;
}

/** Measured over modelled saving. */
export interface MeasuredRealisation {
  readonly factor: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
}

/** What the bills after the work say, and how sure they are. */
export interface Verification {
  readonly answer: 'use fell' | 'cannot be told from these bills' | 'use rose';
  readonly words: string;
  readonly saving: PooledSaving | Missing;
  /** Of a year of the treated meters, from their adjusted baselines. */
  readonly yearly_kWh: { readonly low: number; readonly middle: number; readonly high: number } | null;
  readonly realisation: MeasuredRealisation | null;
  readonly buildings: readonly BuildingSaving[];
  readonly meters: readonly VerifiedMeter[];
  readonly leftOut: readonly { readonly meter: string; readonly why: string }[];
  readonly cautions: readonly string[];
}

export interface VerificationAt {
  /** Whether a meter may carry electric heating. */
  readonly heats: (meter: MeterBills) => boolean;
  /** Share of the cooling of a meter that the model expects film to save, where a plan says it. */
  readonly modelledShareOfCooling: (meter: MeterBills) => number | null;
  readonly confidence?: number;
}

const BASELINE_DAYS = 380;
const OWN_COMPARISON = 3;
const OPTION_C_SHARE = 0.1;

const dayBefore = (iso: string, days: number): string => new Date(Date.parse(`${iso}T00:00:00Z`) - days * 86_400_000).toISOString().slice(0, 10);
const middleOf = (days: readonly string[]): string => [...days].sort()[Math.floor((days.length - 1) / 2)]!;

interface Split {
  readonly first: string;
  readonly last: string;
}

/** A year of bills before the first film, and all after the last. */
function around(bills: MeterBills, at: Split): { readonly baseline: BilledPeriod[]; readonly reporting: BilledPeriod[] } {
  const from = dayBefore(at.first, BASELINE_DAYS);
  return { baseline: before(bills, at.first).filter((p) => p.firstDay >= from), reporting: after(bills, at.last) };
}

function verifiedMeter(bills: MeterBills, split: Split, at: VerificationAt): VerifiedMeter | Missing {
  const change = meterChange({ ...around(bills, split), heats: at.heats(bills) });
  if ('why' in change) return change;
  const { fit, ...rest } = change;
  const ofCooling = bills.installed === null ? null : at.modelledShareOfCooling(bills);
  return {
    meter: bills.meter,
    building: bills.building,
    group: bills.installed === null ? 'comparison' : 'treated',
    filmedDwellings: bills.filmed,
    dwellings: bills.dwellings.length,
    change: rest,
    model: fit.model,
    cvRmse: fit.cvRmse,
    modelledShare: ofCooling === null ? null : (ofCooling * rest.cooling_kWh) / rest.adjustedBaseline_kWh,
    weather: bills.weather,
  };
}

const asMember = (m: VerifiedMeter) => ({ id: m.meter, share: m.change.share, standardError: Math.max(1e-6, Math.hypot(m.change.standardError, m.weather === 'typical year' ? m.change.standardError : 0)) });
const groupOf = (meters: readonly VerifiedMeter[], group: VerifiedMeter['group']): VerifiedMeter[] => meters.filter((m) => m.group === group);

function byBuilding(meters: readonly VerifiedMeter[], confidence: number | undefined): BuildingSaving[] {
  const all = groupOf(meters, 'comparison');
  return [...grouped(groupOf(meters, 'treated'), (m) => m.building)].map(([building, treated]) => {
    const own = all.filter((m) => m.building === building);
    const comparison = own.length >= OWN_COMPARISON ? own : all;
    const against = comparison.length < 2 ? 'nothing' : comparison === own ? 'own building' : 'all buildings';
    return { building, treated: treated.length, comparison: against === 'nothing' ? 0 : comparison.length, against, saving: pooledSaving({ treated: treated.map(asMember), comparison: comparison.map(asMember) }, confidence) };
  });
}

/** Measured over modelled, with the weights the meters have in the pooled saving. */
function measuredRealisation(saving: PooledSaving, treated: readonly VerifiedMeter[]): MeasuredRealisation | null {
  let [modelled, weight] = [0, 0];
  for (const m of treated) {
    if (m.modelledShare === null) continue;
    const w = saving.treated.weights.get(m.meter) ?? 0;
    modelled += w * m.modelledShare;
    weight += w;
  }
  if (!(weight > 0.5 && modelled > 0)) return null;
  const expected = modelled / weight;
  return { factor: saving.share / expected, standardError: saving.standardError / expected, low: saving.low / expected, high: saving.high / expected };
}

function cautions(meters: readonly VerifiedMeter[], saving: PooledSaving | Missing): string[] {
  const said: string[] = [];
  const [treated, comparison] = [groupOf(meters, 'treated'), groupOf(meters, 'comparison')];
  if (!('why' in saving) && saving.comparison === null) said.push('no comparison group: whatever the years changed for everybody is counted as film');
  else if (!treated.some((t) => comparison.some((c) => c.building === t.building))) said.push('the comparison meters stand in other buildings than the treated ones: what changed in one building alone is counted as film');
  if (meters.some((m) => m.weather === 'typical year')) said.push('no temperatures of the days billed: a warmer or cooler year is taken out only by the comparison group');
  if (!('why' in saving) && Math.abs(saving.share) < OPTION_C_SHARE) said.push('whole-meter bills are usually asked to show savings above a tenth of the meter before a single one is believed; only the pooled figure counts here');
  if (treated.some((m) => m.change.reportingPeriods < 9)) said.push('less than a year of bills after the work: the months still missing may save more or less');
  return said;
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

function wordsOf(saving: PooledSaving | Missing, yearly: Verification['yearly_kWh']): Pick<Verification, 'answer' | 'words'> {
  if ('why' in saving) return { answer: 'cannot be told from these bills', words: `Cannot be told from these bills: ${saving.why}.` };
  const against = saving.comparison === null ? 'without any meter to compare with' : `against ${String(saving.comparison.meters)} not filmed`;
  const range = `${(saving.confidence * 100).toFixed(0)} % interval ${percent(saving.low)} to ${percent(saving.high)}`;
  const kWh = yearly === null ? '' : `, about ${Math.round(yearly.middle).toLocaleString('en-US')} kWh a year (${Math.round(yearly.low).toLocaleString('en-US')} to ${Math.round(yearly.high).toLocaleString('en-US')})`;
  if (saving.outcome === 'cannot be told') return { answer: 'cannot be told from these bills', words: `Cannot be told from these bills: on ${String(saving.treated.meters)} filmed meters ${against} the change is ${percent(saving.share)} of use, ${range}; nothing is in it.` };
  const verb = saving.outcome === 'use fell' ? 'Use fell' : 'Use rose';
  const sign = saving.outcome === 'use fell' ? 1 : -1;
  return { answer: saving.outcome, words: `${verb} by ${percent(sign * saving.share)} on ${String(saving.treated.meters)} filmed meters ${against}; ${range} of use saved${kWh}.` };
}

/**
 * What film saved by the bills: filmed meters before and after, less meters that were not filmed over the same time. A meter counts with
 * a year of bills before its first film and all after its last; those that were not filmed are split at the middle day of the others.
 */
export function didItPay(all: readonly MeterBills[], at: VerificationAt): Verification {
  const bills = all.filter((b) => b.use !== 'heating' && b.use !== 'common');
  const filmed = bills.flatMap((b) => b.installed ?? []);
  const middle = filmed.length === 0 ? null : { first: middleOf(filmed.map((f) => f.first)), last: middleOf(filmed.map((f) => f.last)) };
  const leftOut: { meter: string; why: string }[] = [];
  const meters = middle === null ? [] : bills.flatMap((b): VerifiedMeter[] => {
    const meter = verifiedMeter(b, b.installed ?? middle, at);
    if (!('why' in meter)) return [meter];
    leftOut.push({ meter: b.meter, why: meter.why });
    return [];
  });
  const treated = groupOf(meters, 'treated');
  const saving: PooledSaving | Missing = middle === null ? { why: 'no record says that film went on a dwelling with a meter and bills' } : pooledSaving({ treated: treated.map(asMember), comparison: groupOf(meters, 'comparison').map(asMember) }, at.confidence);
  const yearOf = (m: VerifiedMeter): number => (m.change.adjustedBaseline_kWh / reportingDays(bills, m.meter)) * 365;
  const base = treated.reduce((sum, m) => sum + yearOf(m), 0);
  const yearly_kWh = 'why' in saving ? null : { low: base * saving.low, middle: base * saving.share, high: base * saving.high };
  return {
    ...wordsOf(saving, yearly_kWh),
    saving,
    yearly_kWh,
    realisation: 'why' in saving ? null : measuredRealisation(saving, treated),
    buildings: sortedBy(byBuilding(meters, at.confidence), (b) => b.building),
    meters,
    leftOut,
    cautions: cautions(meters, saving),
  };
}

function reportingDays(bills: readonly MeterBills[], meter: string): number {
  const of = bills.find((b) => b.meter === meter)!;
  return after(of).reduce((sum, p) => sum + p.days, 0);
}
