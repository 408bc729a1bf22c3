import type { Phase } from '#calc';
import { filmOption, OWNER_PAYS, planTermsOf } from '../../../../test/portfolios/film-option.js';
import { phaseValue, phaseYear, simplePayback } from './value.js';

const phaseFrom = (firstDay: string): Phase => ({ id: 'O/1', ownerEntity: 'O', name: '1', firstDay, lastDay: '2099-12-31', cap_cents: 0, crewMinutes: null });
const now = phaseFrom('2026-07-01');
const at = { terms: planTermsOf(), endYear: null };
const segment = (firstYear: number, cooling_cents: number, addedHeating_cents = 0) => ({ firstYear, plant: 'present' as const, windowsGone: 0, saving: { coolingElectricity_kWh: 0, cooling_cents, addedHeating_cents, addedHeating_kWh: 0 } });

// Three per cent: 1/1.03 = 0.970874, 1/1.03² = 0.942596, 1/1.03³ = 0.915142.
describe('the value of an option in a phase', () => {
  it('pays now and saves at the end of each year: −10,000 + 3,000 × 2.828611', () => {
    expect(phaseValue(filmOption(), now, at).whole_cents).toBeCloseTo(-1_514.17, 1);
  });

  it('takes added heating off each year: −10,000 + 2,500 × 2.828611', () => {
    expect(phaseValue(filmOption({ segments: [segment(2026, 3_000, 500)] }), now, at).whole_cents).toBeCloseTo(-2_928.47, 1);
  });

  it('falls to the new plant in its year: 3,000 for two years, then 2,000', () => {
    // 3,000 × (0.970874 + 0.942596) + 2,000 × 0.915142 − 10,000
    expect(phaseValue(filmOption({ segments: [segment(2026, 3_000), segment(2028, 2_000)] }), now, at).whole_cents).toBeCloseTo(-2_429.31, 1);
  });

  it('discounts cost and saving of a phase a year later, and runs the same years of film', () => {
    expect(phaseValue(filmOption(), phaseFrom('2027-07-01'), at).whole_cents).toBeCloseTo(-1_514.17 * 0.970874, 1);
  });

  it('meets the new plant a year sooner in the life of a film put on a year later', () => {
    // year 2: 3,000 × 0.942596; years 3 and 4: 2,000 × (0.915142 + 0.888487); cost 10,000 × 0.970874
    const option = filmOption({ segments: [segment(2026, 3_000), segment(2028, 2_000)] });
    expect(phaseValue(option, phaseFrom('2027-07-01'), at).whole_cents).toBeCloseTo(2_827.79 + 3_607.26 - 9_708.74, 0);
  });

  it('ends with the building: one year of saving when it is sold in the next', () => {
    expect(phaseValue(filmOption(), now, { ...at, endYear: 2027 }).whole_cents).toBeCloseTo(-10_000 + 2_912.62, 1);
  });

  it('gives the owner the first year of a ratio bill whole, then the owner\'s share, and the whole cost', () => {
    // 3,000 × 0.970874 + 3,000 × 0.25 × (0.942596 + 0.915142) − 10,000
    const payer = { ...OWNER_PAYS, kind: 'ratio' as const, ownerShare: 0.25, resetLag_yr: 1 };
    const value = phaseValue(filmOption({ payer }), now, at);
    expect(value.owner_cents).toBeCloseTo(-5_694.07, 1);
    expect(value.whole_cents).toBeCloseTo(-1_514.17, 1);
  });

  it('is the same in both views where the owner pays the bill', () => {
    const value = phaseValue(filmOption(), now, at);
    expect(value.owner_cents).toBe(value.whole_cents);
  });
});

describe('the year of a phase', () => {
  it.each([
    ['2026-07-01', 0],
    ['2027-06-01', 0],
    ['2027-07-01', 1],
    ['2025-01-01', 0],
  ])('%s is year %d of a study from July 2026', (firstDay, year) => expect(phaseYear({ firstDay }, '2026-07-01')).toBe(year));
});

describe('simple payback', () => {
  it('is cost over the first year', () => expect(simplePayback(10_000, 2_500)).toEqual({ years: 4, why: null }));
  it('does not exist where the first year saves nothing, and says why', () => {
    expect(simplePayback(10_000, 0)).toEqual({ years: null, why: expect.stringContaining('saves nothing') as string });
  });
});
