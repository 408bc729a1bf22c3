import { openCatalogue } from '#catalogue';
import type { Bill, Portfolio } from '#calc';
import { normals } from '../../../../test/portfolios/metered-homes.js';
import { dwelling, twoDwellings } from '../../../../test/portfolios/two-dwellings.js';
import { buildingWeather } from '../job/building-weather.js';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import { planTerms } from '../job/plan-terms.js';
import { handLocks } from '../known/hand-locks.js';
import type { KnownDwelling } from '../known/known-dwelling.js';
import { knownPortfolio } from '../known/known-portfolio.js';
import { filmChoices } from '../options/film-choices.js';
import { skyOnFacades } from '../sky/sky-on-facades.js';
import { workersHere } from '../workers-here.js';
import { calibrated } from './calibrated.js';
import { modelledCooling_kWh, modelledDays_kWh } from './modelled-use.js';

const catalogue = openCatalogue();
const HOMES = 10;
const MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const at = { file: 'made-up.csv', row: 1 };

/** Ten equal homes of one plan type, gas heated, each on a meter of its own; nobody knows their base load. */
const homes: Portfolio = {
  ...twoDwellings,
  bills: [],
  siteRecords: [],
  consents: [],
  locks: [],
  readings: [],
  windows: twoDwellings.windows.slice(0, 1),
  dwellings: Array.from({ length: HOMES }, (_, i) => ({ ...dwelling(`AA/${String(i + 1).padStart(3, '0')}`, i + 2), heating: { kind: 'gas' as const, efficiency: 0.8, fuel_cents_kWh: 5 } })),
  meters: Array.from({ length: HOMES }, (_, i) => ({ ...twoDwellings.meters[0]!, id: `M${String(i + 1).padStart(3, '0')}` })),
  dwellingMeters: Array.from({ length: HOMES }, (_, i) => ({ dwelling: `AA/${String(i + 1).padStart(3, '0')}`, meter: `M${String(i + 1).padStart(3, '0')}`, inventoryRow: at })),
};

function stand(portfolio: Portfolio) {
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (f) => f);
  const job: PlanJob = { portfolio, catalogue, weather, id: 'p', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: '', findings: [] };
  const known = knownPortfolio(portfolio, defaultsOf(catalogue));
  const skies = skyOnFacades(known, weather, 0.2);
  const choices = filmChoices(known, skies, { job, terms: planTerms(portfolio.settings, defaultsOf(catalogue)), locks: handLocks([], known) });
  return { job, known, skies, choices, work: workersHere };
}

/** A year of monthly bills of the homes as they really are. */
async function billsOf(truth: (d: KnownDwelling, i: number) => KnownDwelling, noise: { readonly seed: number; readonly share: number }): Promise<Bill[]> {
  const of = stand(homes);
  const days = await modelledDays_kWh(of.known.dwellings.map(truth), of);
  const normal = normals(noise.seed);
  return of.known.dwellings.flatMap((d) => {
    let first = 0;
    return MONTHS.map((length, m): Bill => {
      const use = days.get(d.id)!.subarray(first, first + length).reduce((a, b) => a + b, 0);
      first += length;
      const month = String(m + 1).padStart(2, '0');
      return { meter: `M${d.id.slice(-3)}`, firstDay: `2025-${month}-01`, lastDay: `2025-${month}-${String(length)}`, use_kWh: use * (1 + noise.share * normal()), peak_kW: null, amount_cents: null, estimated: false, inventoryRow: at };
    });
  });
}

const total = (kWh: ReadonlyMap<string, number>): number => [...kWh.values()].reduce((a, b) => a + b, 0);

describe('a portfolio brought towards its bills', () => {
  it('stays as it was without bills, and says that it is not calibrated', async () => {
    const of = stand(homes);
    const { known, review } = await calibrated(of.known, of);
    expect(known).toBe(of.known);
    expect(review.plan.basis).toBe('model, not calibrated');
    expect(review.calibration.words).toContain('not calibrated');
  });

  it('of ten homes that get less sun and more base load than surveyed comes most of the way, and never past it', async () => {
    const bills = await billsOf((d) => ({ ...d, useFactor: d.useFactor * 0.6, coolingSetPoint_degC: d.coolingSetPoint_degC + 2, baseLoad_kWh_yr: d.baseLoad_kWh_yr * 1.3 }), { seed: 3, share: 0.02 });
    const of = stand({ ...homes, bills });
    const { known, review } = await calibrated(of.known, of);
    const truth = total(await modelledCooling_kWh(of.known.dwellings.map((d) => ({ ...d, useFactor: d.useFactor * 0.6, coolingSetPoint_degC: d.coolingSetPoint_degC + 2, baseLoad_kWh_yr: d.baseLoad_kWh_yr * 1.3 })), of));
    const before = total(await modelledCooling_kWh(of.known.dwellings, of));
    const after = total(await modelledCooling_kWh(known.dwellings, of));
    const way = (before - after) / (before - truth);
    expect(way).toBeGreaterThan(0.6);
    expect(way).toBeLessThan(1.15);
    const [d, from] = [known.dwellings[0]!, of.known.dwellings[0]!];
    expect(d.useFactor).toBeLessThan(from.useFactor);
    expect(d.coolingSetPoint_degC).toBeGreaterThan(from.coolingSetPoint_degC);
    expect(d.baseLoad_kWh_yr / from.baseLoad_kWh_yr).toBeGreaterThan(1.1);
    expect(d.baseLoad_kWh_yr / from.baseLoad_kWh_yr).toBeLessThan(1.4);
    expect(new Set(known.dwellings.map((each) => each.useFactor)).size).toBe(1);
    const [fit] = review.calibration.buildings;
    expect(fit!.after.cvRmse).toBeLessThan(fit!.before.cvRmse);
    expect(Math.abs(fit!.after.nmbe)).toBeLessThan(Math.abs(fit!.before.nmbe));
    expect(review.plan.basis).toBe('calibrated to bills');
    expect(review.plan.high / review.plan.low).toBeLessThan(review.uncalibrated.high / review.uncalibrated.low);
    expect(known.assumed.some((a) => a.source.startsWith('calibrated to bills'))).toBe(true);
  });

  it('of one strange tenant moves his plan type far less than he is away', async () => {
    const all = await billsOf((d, i) => (i === 0 ? { ...d, coolingSetPoint_degC: d.coolingSetPoint_degC + 3 } : d), { seed: 4, share: 0.02 });
    const of = stand({ ...homes, bills: all.filter((b) => b.meter === 'M001') });
    const { known, review } = await calibrated(of.known, of);
    const [group] = review.calibration.groups;
    expect(group!.seenRatio).toBeLessThan(0.75);
    expect(Math.log(group!.pooledRatio)).toBeGreaterThan(0.6 * Math.log(group!.seenRatio!));
    expect(Math.log(group!.pooledRatio)).toBeLessThan(0);
    expect(known.dwellings[0]!.coolingSetPoint_degC).toBe(known.dwellings[9]!.coolingSetPoint_degC);
  });

  it('whose bills are met stays where it is within a few parts in a hundred', async () => {
    const of = stand({ ...homes, bills: await billsOf((d) => d, { seed: 5, share: 0.02 }) });
    const { known } = await calibrated(of.known, of);
    const [before, after] = [total(await modelledCooling_kWh(of.known.dwellings, of)), total(await modelledCooling_kWh(known.dwellings, of))];
    expect(Math.abs(after / before - 1)).toBeLessThan(0.08);
  });
});
