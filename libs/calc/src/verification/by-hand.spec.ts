import type { Bill } from '../portfolio/index.js';
import { drawnOrder, groupMean, type MeteredPeriod, meteredSaving, partialPooling, pooledSaving, usableBills, type UseFit, useSplit } from './index.js';

const DAY = 86_400_000;
const dateOf = (day: number): string => new Date(Date.UTC(2025, 0, 1) + day * DAY).toISOString().slice(0, 10);

/** Bills one after the other of these lengths in days, 10 kWh a day. */
function inTurn(lengths: readonly number[], meter = 'M'): Bill[] {
  let day = 0;
  return lengths.map((days, i) => {
    const first = day;
    day += days;
    return { meter, firstDay: dateOf(first), lastDay: dateOf(day - 1), use_kWh: 10 * days, peak_kW: null, amount_cents: null, estimated: false, inventoryRow: { file: 'bills.csv', row: i + 2 } };
  });
}
const troubles = (lengths: readonly number[]): [number, string][] => {
  const bills = inTurn(lengths);
  return usableBills(bills).leftOut.map((out) => [lengths[bills.indexOf(out.bill)]!, out.troubles.map((t) => t.kind).join()]);
};

describe('how long a bill may be', () => {
  it('two-monthly: 50 to 70 days beside a usual 61', () => {
    expect(troubles([61, 61, 61, 61, 61, 49, 50, 70, 71])).toEqual([[49, 'short'], [71, 'long']]);
  });

  it('two-monthly where the usual is 36 or 70 too, and no more at 35 or 71', () => {
    expect(troubles([36, 36, 36, 50])).toEqual([[36, 'short'], [36, 'short'], [36, 'short']]);
    expect(troubles([70, 70, 70, 56])).toEqual([]);
    expect(troubles([35, 35, 35, 36])).toEqual([[36, 'long']]);
    expect(troubles([71, 71, 71, 56])).toEqual([]); // a fifth less than 71 is 56.8, down to the day 56
    expect(troubles([71, 71, 71, 55])).toEqual([[55, 'short']]);
  });

  it('any other length: a fifth more or less than the usual 90, to the day', () => {
    expect(troubles([90, 90, 90, 90, 90, 71, 72, 108, 109])).toEqual([[71, 'short'], [109, 'long']]);
  });

  it('bills come back by meter and first day, whatever order they were sent in', () => {
    const [a, b] = [inTurn([31, 28, 31], 'A'), inTurn([31, 28, 31], 'B')];
    const found = usableBills([b[2]!, a[1]!, b[0]!, a[2]!, b[1]!, a[0]!]).used;
    expect(found).toEqual([...a, ...b]);
    expect(usableBills([...a, ...b]).used).toEqual(found);
  });
});

describe('a saving over groups, by hand', () => {
  const member = (id: string, share: number) => ({ id, share, standardError: 0.1, weight: 1 });
  const treated = [member('T1', 0.1), member('T2', 0.2)];
  const untreated = [member('C1', 0.02), member('C2', 0.06)];

  it('the mean of 10 and 20 % is 15 %, with the error of how the two differ', () => {
    // weights 1/0.1² = 100 each; Σ w (x − mean)² = 100 × 2 × 0.05² = 0.5, below 1: nothing between; error √(0.5 / (1 × 200)) = 0.05
    expect(groupMean(treated)).toMatchObject({ meters: 2, degrees: 1, betweenMeters: 0 });
    const mean = groupMean(treated) as { share: number; standardError: number };
    expect(mean.share).toBeCloseTo(0.15, 12);
    expect(mean.standardError).toBeCloseTo(0.05, 12);
  });

  it('the comparison is taken off, both errors count, degrees of freedom by Welch', () => {
    // 0.15 − 0.04 = 0.11; √(0.05² + 0.02²) = 0.0538516; (0.0029)² / (0.05⁴ + 0.02⁴) = 8.41e-6 / 6.41e-6 = 1.312012
    const found = pooledSaving({ treated, comparison: untreated }) as { share: number; standardError: number; degrees: number; low: number; high: number };
    expect(found.share).toBeCloseTo(0.11, 12);
    expect(found.standardError).toBeCloseTo(0.0538516, 7);
    expect(found.degrees).toBeCloseTo(1.312012, 6);
    expect((found.low + found.high) / 2).toBeCloseTo(0.11, 12);
  });

  it('without a comparison the change stands alone, 80 % of Student’s t with one degree: 3.0777', () => {
    const found = pooledSaving({ treated, comparison: [] }) as { share: number; low: number };
    expect(found.share).toBeCloseTo(0.15, 12);
    expect(found.low).toBeCloseTo(0.15 - 3.0777 * 0.05, 5); // t table, 0.90 on one side, 1 degree of freedom
  });
});

describe('pooling one meter, by hand', () => {
  const spreads = { portfolio: 0.3, building: 0.15, planType: 0.1, tenant: 0.35 };

  it('a value of 1 is drawn towards nothing by all that may lie between it and the portfolio', () => {
    // variance on the way: 0.1² + 0.35² + 0.1² + 0.15² = 0.165 against 0.3² = 0.09: mean 0.09 / (0.09 + 0.165) = 0.352941, variance 0.09 × 0.165 / 0.255
    const found = partialPooling([{ building: 'B', planType: 'P', value: 1, standardError: 0.1 }], spreads);
    expect(found.portfolio.mean).toBeCloseTo(0.352941, 6);
    expect(found.portfolio.standardDeviation).toBeCloseTo(Math.sqrt((0.09 * 0.165) / 0.255), 9);
    expect(found.spreads).toEqual(spreads); // nothing to compare: the spreads stay as expected
    // the plan type itself: its own variance before any bill 0.09 + 0.0225 + 0.01 = 0.1225, against 0.1325 of tenant and error
    expect(found.planTypes.get('B|P')!.mean).toBeCloseTo(0.1225 / (0.1225 + 0.1325), 6);
  });

  it('refuses spreads of nothing', () => expect(() => partialPooling([{ building: 'B', planType: 'P', value: 1, standardError: 0.1 }], { ...spreads, building: 0 })).toThrow('building must be above 0'));
});

describe('neighbouring residuals, by hand', () => {
  const flat: UseFit = { model: '3PC', base_kWh_day: 10, cooling_kWh_dayK: 0, heating_kWh_dayK: 0, coolingBalance_degC: null, heatingBalance_degC: null, n: 4, p: 1, r2: 0, r2Adjusted: 0, cvRmse: 0, nmbe: 0, residualSum: 10 };
  const day = (use_kWh: number): MeteredPeriod => ({ use_kWh, days: 1, outdoor_degC: 20 });
  const saving = meteredSaving(flat, { baseline: [11, 9, 12, 8].map(day), reporting: [9, 9, 9].map(day) });

  it('of 1, −1, 2, −2 the correlation with the next is −57 / √(42 × 78)', () => {
    // pairs (1, −1), (−1, 2), (2, −2); means 2/3 and −1/3; sums of products in ninths: −57, 42, 78
    expect(saving.lag1).toBeCloseTo(-57 / Math.sqrt(42 * 78), 9);
    expect(saving.effectivePeriods).toBeCloseTo((4 * (1 - saving.lag1)) / (1 + saving.lag1), 9);
  });

  it('three days of 9 against a model of 10 save 3 kWh, a tenth', () => {
    expect(saving).toMatchObject({ adjustedBaseline_kWh: 30, observed_kWh: 27, saving_kWh: 3, reportingPeriods: 3 });
    expect(saving.savingShare).toBeCloseTo(0.1, 12);
    expect(saving.cvRmseTotals).toBeCloseTo(Math.sqrt(10 / 3) / 10, 12); // (1 + 1 + 4 + 4) / (4 − 1), over a mean of 10
  });
});

describe('what a split needs', () => {
  /** Bills of 60 days: 5 kWh a day, and half a kWh for each K above 20 °C. */
  const bills = (count: number): MeteredPeriod[] => Array.from({ length: count }, (_, i) => {
    const outdoor_degC = [10, 16, 24, 30, 22, 12, 14][i % 7]!;
    return { days: 60, outdoor_degC, use_kWh: 60 * (5 + 0.5 * Math.max(0, outdoor_degC - 20)) };
  });
  const whyOf = (model: string, count: number): string | null => {
    const found = useSplit(bills(count));
    if ('why' in found) return found.why;
    const tried = found.tried.find((t) => t.model === model)!;
    return 'why' in tried ? ((tried as { why: string | null }).why ?? null) : null;
  };

  it('five change points and slopes take more than five bills, daily temperatures a degree-day model', () => {
    expect(whyOf('5P', 5)).toBe('too few bills');
    expect(whyOf('5P', 6)).not.toBe('too few bills');
    expect(whyOf('degree-day', 6)).toBe('no daily temperatures');
  });

  it('gives base load and slope back where use is exactly that', () => {
    const found = useSplit(bills(6)) as { base: { kWh: number }; tellsCooling: boolean };
    expect(found.base.kWh).toBeCloseTo(5 * 365, 0);
    expect(found.tellsCooling).toBe(true);
  });
});

describe('who goes first', () => {
  it('does not hang on the order in which a band is named', () => {
    const ids = ['EC/3', 'EC/1', 'EC/5', 'EC/2', 'EC/4'];
    expect(drawnOrder([ids], 7)).toEqual(drawnOrder([[...ids].reverse()], 7));
    expect([...drawnOrder([ids], 7)].sort()).toEqual([...ids].sort());
  });
});
