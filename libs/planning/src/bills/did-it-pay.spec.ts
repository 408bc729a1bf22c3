import type { MeterBills } from './meter-bills.js';
import { meteredHomes, type HomeTerms } from '../../../../test/portfolios/metered-homes.js';
import { didItPay, type VerificationAt } from './did-it-pay.js';

const TERMS: HomeTerms = { seed: 11, treated: 20, untreated: 20, effect: 0.25, billNoise: 0.03, homeDrift: 0.04, commonDrift: 0.05 };
const AT: VerificationAt = { heats: () => false, modelledShareOfCooling: () => 0.5 };

/** Twelve months of 2025, work in the first week of January 2026, twelve months after it. */
function billsOf(terms: HomeTerms): MeterBills[] {
  const dated = (year: number) => (p: ReturnType<typeof meteredHomes>[number]['baseline'][number], m: number) => ({ ...p, firstDay: `${String(year)}-${String(m + 1).padStart(2, '0')}-${m === 0 && year === 2026 ? '08' : '01'}`, lastDay: `${String(year)}-${String(m + 1).padStart(2, '0')}-28` });
  return meteredHomes(terms).map((home, i): MeterBills => ({
    meter: home.id, building: i % 2 === 0 ? 'A' : 'B', use: 'all', dwellings: [home.id], leftOut: [], gaps: [], weather: 'days of the bills', weatherError: 0,
    periods: [...home.baseline.map(dated(2025)), ...home.reporting.map(dated(2026))],
    installed: home.treated ? { first: '2026-01-03', last: '2026-01-06' } : null,
    filmed: home.treated ? 1 : 0,
  }));
}

describe('did it pay', () => {
  it('finds a clear effect with its interval, its kWh and how much of the model it is', () => {
    const found = didItPay(billsOf(TERMS), AT);
    expect(found.answer).toBe('use fell');
    expect(found.words).toContain('80 % interval');
    expect(found.leftOut).toEqual([]);
    // Half the cooling was modelled, a quarter was taken away.
    expect(found.realisation!.low).toBeLessThan(0.5);
    expect(found.realisation!.high).toBeGreaterThan(0.5);
    expect(found.yearly_kWh!.low).toBeGreaterThan(0);
    expect(found.buildings.map((b) => b.against)).toEqual(['own building', 'own building']);
  });

  it('says that nothing can be told where nothing was done to the homes', () => {
    const found = didItPay(billsOf({ ...TERMS, effect: 0, seed: 12 }), AT);
    expect(found.answer).toBe('cannot be told from these bills');
    expect(found.words).toContain('nothing is in it');
  });

  it('warns where no untreated meter stands beside', () => {
    const found = didItPay(billsOf({ ...TERMS, untreated: 0 }), AT);
    expect(found.cautions.join(' ')).toContain('no comparison group');
  });

  it('without any record of work says so', () => {
    const found = didItPay(billsOf(TERMS).map((b) => ({ ...b, installed: null, filmed: 0 })), AT);
    expect(found).toMatchObject({ answer: 'cannot be told from these bills', yearly_kWh: null, meters: [] });
    expect(found.words).toContain('no record');
  });

  it('leaves meters with too few bills out, by name', () => {
    const bills = billsOf(TERMS);
    const found = didItPay([{ ...bills[0]!, periods: bills[0]!.periods.slice(0, 14) }, ...bills.slice(1)], AT);
    expect(found.leftOut).toEqual([{ meter: bills[0]!.meter, why: expect.stringContaining('after the work') as string }]);
  });
});
