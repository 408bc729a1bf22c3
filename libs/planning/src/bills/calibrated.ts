import type { AssumedValue, ParameterMove } from '#calc';
import { grouped } from '../grouped.js';
import type { DefaultOf } from '../job/assumption-book.js';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import type { KnownDwelling } from '../known/known-dwelling.js';
import type { KnownPortfolio } from '../known/known-portfolio.js';
import { baseMembers, type ComparedMeter, comparedMeters, coolingMembers, planTypesOf, type PlanTypeOf } from './compared-meters.js';
import { billedParts } from './billed-parts.js';
import { fitnessByBuilding, meterDays } from './building-fitness.js';
import { typicalDays, typicalMonths } from './day-weather.js';
import { billsOf } from './fit-bills.js';
import { meterFit } from './meter-fit.js';
import { modelledCooling_kWh, modelledDays_kWh, type RunsAt } from './modelled-use.js';
import { MOVABLE, movedDwelling, movedWords, movesFor, withBase } from './moved-dwelling.js';
import { type GroupValue, type PooledBills, pooledBills, poolingSpreads } from './pooled-bills.js';
import { billsReview } from './realised.js';
import type { BillsReview, CalibratedGroup, CalibrationReview } from './review.js';

/** The portfolio brought towards its bills, and what that says of the savings. */
export interface CalibratedPortfolio {
  readonly known: KnownPortfolio;
  readonly review: BillsReview;
}

/** What the stage needs beside the portfolio. */
export interface CalibrationAt extends Omit<RunsAt, 'known'> {
  readonly job: PlanJob;
}

interface Group {
  readonly building: string;
  readonly planType: string;
  readonly dwellings: readonly KnownDwelling[];
  readonly target: GroupValue;
}

interface MovedGroup extends Group {
  readonly moves: readonly ParameterMove[];
  readonly after: readonly KnownDwelling[];
  readonly open: number;
}

const sumOf = (dwellings: readonly KnownDwelling[], kWh: ReadonlyMap<string, number>): number => dwellings.reduce((sum, d) => sum + (kWh.get(d.id) ?? 0), 0);

function groupsOf(dwellings: readonly KnownDwelling[], of: { readonly planTypeOf: PlanTypeOf; readonly pooled: PooledBills }): Group[] {
  return [...grouped(dwellings, (d) => `${d.building}|${of.planTypeOf(d.id)}`).values()].flatMap((same): Group[] => {
    const [building, planType] = [same[0]!.building, of.planTypeOf(same[0]!.id)];
    const target = of.pooled.of(building, planType);
    return target === null ? [] : [{ building, planType, dwellings: same, target }];
  });
}

const givenBases = (known: KnownPortfolio): ReadonlySet<string> => new Set(known.portfolio.meters.filter((m) => m.baseLoad_kWh_yr !== null).map((m) => m.id));

type BilledMeters = ReadonlyMap<string, ReturnType<typeof billedParts>>;

/** Cooling and base load of every meter by its bills, with the model as surveyed put through the same fit. */
async function billedMeters(meters: readonly ComparedMeter[], at: RunsAt & { readonly job: PlanJob }): Promise<BilledMeters> {
  const dwellings = [...new Map(meters.flatMap((m) => m.dwellings.map((d) => [d.id, d] as const))).values()];
  const [days, cooling] = await Promise.all([modelledDays_kWh(dwellings, at), modelledCooling_kWh(dwellings, at)]);
  const given = givenBases(at.known);
  return new Map(meters.map((m) => {
    const year = at.job.weather.get(m.bills.building)!;
    const givenBase_kWh = given.has(m.bills.meter) ? m.dwellings.reduce((sum, d) => sum + d.baseLoad_kWh_yr, 0) : null;
    return [m.bills.meter, billedParts(m, { days: meterDays(m, days), cooling_kWh: sumOf(m.dwellings, cooling), givenBase_kWh, typical: typicalDays(year), months: typicalMonths(year) })];
  }));
}

/** Base loads brought towards the bills by plan type and building, each within its limit. */
function withBases(known: KnownPortfolio, of: { readonly meters: readonly ComparedMeter[]; readonly parts: BilledMeters; readonly planTypeOf: PlanTypeOf; readonly defaultOf: DefaultOf }): KnownDwelling[] {
  const given = givenBases(known);
  const pooled = pooledBills(baseMembers(of.meters, { isGiven: (meter) => given.has(meter), parts: of.parts }), poolingSpreads(of.defaultOf));
  const limit = of.defaultOf<number>('calibration.base.limit').value;
  return known.dwellings.map((d) => {
    const value = given.has(d.meter.id) ? null : pooled.of(d.building, of.planTypeOf(d.id));
    return value === null ? d : withBase(d, Math.exp(Math.max(-limit, Math.min(limit, value.mean))));
  });
}

/** Change of ln(cooling) of each group for one unit of each parameter, by full runs. */
async function sensitivities(groups: readonly Group[], cooling: ReadonlyMap<string, number>, at: RunsAt): Promise<number[][]> {
  const all = groups.flatMap((g) => g.dwellings);
  const stepped = await Promise.all(MOVABLE.map((m) => modelledCooling_kWh(all.map((d) => m.moved(d, m.step)), at)));
  return groups.map((g) => stepped.map((kWh, i) => (sumOf(g.dwellings, cooling) > 0 ? Math.log(sumOf(g.dwellings, kWh) / sumOf(g.dwellings, cooling)) / MOVABLE[i]!.step : 0)));
}

/** Moves each group to its target: once by its sensitivities, once more by what the first move really did. */
async function movedGroups(groups: readonly Group[], cooling: ReadonlyMap<string, number>, at: RunsAt & { readonly defaultOf: DefaultOf }): Promise<MovedGroup[]> {
  const sensitivity = await sensitivities(groups, cooling, at);
  const tried = (aims: readonly number[]): MovedGroup[] =>
    groups.map((g, i) => {
      const { moves, open } = movesFor(sensitivity[i]!.map((s) => (Number.isFinite(s) ? s : 0)), aims[i]!, { defaultOf: at.defaultOf, useFactor: Math.max(...g.dwellings.map((d) => d.useFactor)) });
      return { ...g, moves, open, after: g.dwellings.map((d) => movedDwelling(d, moves.map((m) => m.move))) };
    });
  const first = tried(groups.map((g) => g.target.mean));
  const reached = await modelledCooling_kWh(first.flatMap((g) => g.after), at);
  return tried(first.map((g) => {
    const went = Math.log(sumOf(g.after, reached) / sumOf(g.dwellings, cooling));
    return g.target.mean === 0 || went * g.target.mean <= 0 ? g.target.mean : g.target.mean * Math.min(1.5, Math.max(0.67, (g.target.mean - g.open) / went));
  }));
}

function groupRow(g: MovedGroup, of: { readonly before: ReadonlyMap<string, KnownDwelling>; readonly cooling: readonly ReadonlyMap<string, number>[]; readonly pooled: PooledBills }): CalibratedGroup {
  const seen = of.pooled.seen(g.building, g.planType);
  const stopped = g.moves.filter((m) => m.atLimit);
  return {
    building: g.building,
    planType: g.planType,
    dwellings: g.dwellings.length,
    meters: seen.length,
    seenRatio: seen.length === 0 ? null : Math.exp(seen.reduce((sum, m) => sum + m.value, 0) / seen.length),
    pooledRatio: Math.exp(g.target.mean),
    weight: g.target.weight,
    moved: movedWords(of.before.get(g.dwellings[0]!.id)!, g.after[0]!, g.moves),
    modelledBefore_kWh: sumOf(g.dwellings, of.cooling[0]!),
    modelledAfter_kWh: sumOf(g.dwellings, of.cooling[1]!),
    why: g.open === 0 ? null : `${stopped.map((m) => m.key).join(' and ')} reached the limit: ${((Math.exp(g.open) - 1) * 100).toFixed(0)} % of the cooling stays unexplained; look at the survey again`,
  };
}

const noted = (groups: readonly CalibratedGroup[]): AssumedValue[] =>
  groups.flatMap((g) =>
    g.moved.map((m): AssumedValue => ({
      subject: `${g.building} ${g.planType} (${String(g.dwellings)} times)`,
      field: m.field,
      value: m.after,
      unit: m.unit,
      source: `calibrated to bills: ${m.before} before; ${g.meters === 0 ? 'meters of other plan types in the building' : `${String(g.meters)} meters`}, the rest drawn towards building and portfolio`,
      basis: 'measured',
    })),
  );

const nothing = (known: KnownPortfolio, at: CalibrationAt, rest: Partial<CalibrationReview>): CalibratedPortfolio => {
  const defaultOf = defaultsOf(at.job.catalogue);
  const review: CalibrationReview = { meters: [], notCompared: [], groups: [], buildings: [], limits: limitsOf(defaultOf), words: 'Model, not calibrated: no bills can be compared.', ...rest };
  return { known, review: billsReview(known, { calibration: review, weightOf: () => null, job: at.job }) };
};

const limitsOf = (defaultOf: DefaultOf): CalibrationReview['limits'] => ({ cvRmse: defaultOf<number>('bills.limit.cvRmse').value, nmbe: defaultOf<number>('bills.limit.nmbe').value });

/**
 * Brings modelled base load and cooling towards the bills from before any film, by plan type and building with partial pooling; marks what
 * was moved. A dwelling in a building without usable bills stays as it is; without any bills nothing changes at all.
 */
export async function calibrated(known: KnownPortfolio, at: CalibrationAt): Promise<CalibratedPortfolio> {
  const { job } = at;
  const defaultOf = defaultsOf(job.catalogue);
  const fits = billsOf(job).map((bills) => ({ bills, fit: meterFit(bills, job.weather.get(bills.building)!) }));
  const planTypeOf = planTypesOf(job.portfolio.dwellings);
  const byId = new Map(known.dwellings.map((d) => [d.id, d]));
  const { meters, notCompared } = comparedMeters(fits, { known: byId, planTypeOf });
  if (meters.length === 0) return nothing(known, at, { meters: fits.map((f) => f.fit), notCompared });
  const parts = await billedMeters(meters, { ...at, known });
  const based = withBases(known, { meters, parts, planTypeOf, defaultOf });
  const buildings = new Set(meters.map((m) => m.bills.building));
  const concerned = based.filter((d) => buildings.has(d.building));
  const runs = { ...at, known, defaultOf };
  const cooling = await modelledCooling_kWh(concerned, runs);
  const said = coolingMembers(meters, { cooling_kWh: cooling, parts });
  const pooled = pooledBills(said.members, poolingSpreads(defaultOf));
  const moved = await movedGroups(groupsOf(concerned, { planTypeOf, pooled }), cooling, runs);
  const after = new Map([...based, ...moved.flatMap((g) => g.after)].map((d) => [d.id, d]));
  const reached = await modelledCooling_kWh(moved.flatMap((g) => g.after), runs);
  const asFound = await modelledCooling_kWh(moved.flatMap((g) => g.dwellings.map((d) => byId.get(d.id)!)), runs);
  const rows = moved.map((g) => groupRow(g, { before: byId, cooling: [asFound, reached], pooled }));
  const limits = limitsOf(defaultOf);
  const fitness = await fitnessByBuilding(meters, { ...runs, before: byId, after, limits, weather: job.weather });
  const calibration: CalibrationReview = { meters: fits.map((f) => f.fit), notCompared: [...notCompared, ...said.notCompared], groups: rows, buildings: fitness, limits, words: wordsOf(rows, said.members.length, fitness) };
  const tuned = { ...known, dwellings: known.dwellings.map((d) => after.get(d.id)!), assumed: [...known.assumed, ...noted(rows)] };
  return { known: tuned, review: billsReview(tuned, { calibration, weightOf: (building, planType) => pooled.of(building, planType)?.weight ?? null, job }) };
}

function wordsOf(groups: readonly CalibratedGroup[], meters: number, buildings: CalibrationReview['buildings']): string {
  if (meters === 0) return 'Model, not calibrated: the bills do not tell cooling from the rest.';
  const within = buildings.filter((b) => b.isWithinLimits).length;
  return `Calibrated to the bills of ${String(meters)} meters in ${String(buildings.length)} buildings (${String(groups.reduce((sum, g) => sum + g.dwellings, 0))} dwellings); ${String(within)} of ${String(buildings.length)} buildings are within the published limits afterwards.`;
}
