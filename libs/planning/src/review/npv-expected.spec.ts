import type { Plan } from '../plan/plan.js';
import { npvExpected } from './npv-expected.js';

type Of = Parameters<typeof npvExpected>[0];

/** 1,000 dollars paid at the study start and 1,100 a year later, at 10 %: 2,000 today; 300 of it comes back from a fund, so 1,700 net. */
const of = (npv_cents: number, share: { low: number; middle: number; high: number }, setting: 'as-modelled' | 'as-found' = 'as-modelled'): Of =>
  ({
    terms: { realDiscountRate: 0.1, studyStart: '2026-07-01' },
    phases: [['Y1', '2026-07-01', 100_000], ['Y2', '2027-07-01', 110_000]].map(([id, firstDay, total_cents]) => ({ phase: { id, firstDay }, spending: { total_cents } })),
    payback: { npv_cents, lines: [], rebates: [{ phase: 'Y1', cents: 30_000 }] },
    bills: { setting, plan: share },
  }) as unknown as Plan;

describe('the value as expected in bills', () => {
  it('takes a share of the savings and the whole of the cost, each brought to the study start', () => {
    // Savings are worth 850 + 1,700 = 2,550 today. Half of them 1,275, less 1,700: −425. A fifth 510: −1,190. All of them: 850.
    const found = npvExpected(of(85_000, { low: 0.2, middle: 0.5, high: 1 }))!;
    expect(found.low_cents).toBeCloseTo(-119_000, 6);
    expect(found.middle_cents).toBeCloseTo(-42_500, 6);
    expect(found.high_cents).toBeCloseTo(85_000, 6);
  });

  it('takes no share of what taking the film off at its end costs: 121 dollars after two years at 10 % are 100 today', () => {
    // Savings are worth 850 + 1,700 + 100 = 2,650 today. Half of them 1,325, less 1,700 and 100: −475.
    const plan = of(85_000, { low: 0.2, middle: 0.5, high: 1 });
    const lines = [{ phaseYear: 0, life_yr: 2, endRemoval_cents: 12_100 }] as unknown as Plan['payback']['lines'];
    const found = npvExpected({ ...plan, payback: { ...plan.payback, lines } })!;
    expect(found.middle_cents).toBeCloseTo(-47_500, 6);
    expect(found.high_cents).toBeCloseTo(85_000, 6);
  });

  it('is not said twice where savings count as found, nor where no share is known', () => {
    expect(npvExpected(of(85_000, { low: 0.2, middle: 0.5, high: 1 }, 'as-found'))).toBeNull();
    const { terms, phases, payback } = of(85_000, { low: 0.2, middle: 0.5, high: 1 });
    expect(npvExpected({ terms, phases, payback })).toBeNull();
  });
});
