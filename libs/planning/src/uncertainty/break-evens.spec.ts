import type { Phase } from '#calc';
import { filmOption, planTermsOf } from '../../../../test/portfolios/film-option.js';
import { breakEvens } from './break-evens.js';
import { withPlantYear } from './drawn-option.js';

const phase: Phase = { id: 'O/1', ownerEntity: 'O', name: '1', firstDay: '2026-07-01', lastDay: '2027-06-30', cap_cents: 0, crewMinutes: null };
const at = { terms: planTermsOf(), endYear: null };
const segment = (firstYear: number, plant: 'present' | 'after replacement', cooling_cents: number) => ({ firstYear, plant, windowsGone: 0, saving: { coolingElectricity_kWh: 0, cooling_cents, addedHeating_cents: 0, addedHeating_kWh: 0 } });

// 3 %, end of year: 0.970874, 0.942596, 0.915142, 0.888487, 0.862609. The film costs 10,000 and lasts five years.
describe('when a line drops out', () => {
  const option = filmOption({ filmLife_yr: 5, paneCount: 4, segments: [segment(2026, 'present', 4_000), segment(2030, 'after replacement', 1_000)] });

  it('by the price: cost over savings, 10,000 / (4,000 × 3.717099 + 1,000 × 0.862609)', () => {
    const found = breakEvens(option, phase, at);
    expect(found.priceShare).toBeCloseTo(10_000 / 15_731.0, 5);
    expect(found.words[0]).toBe('drops out if electricity costs less than 64 % of the tariff');
  });

  it('by the year of the plant: replaced in 2028 it saves 4,000 twice and 1,000 three times, 10,320; in 2027 once, 7,492', () => {
    expect(breakEvens(option, phase, at)).toMatchObject({ plantReplacedBy: 2027, words: expect.arrayContaining(['drops out if the plant is replaced by 2027']) as string[] });
    expect(withPlantYear(option.segments, -3).map((s) => s.firstYear)).toEqual([2026, 2027]);
  });

  it('does not claim a year that was not worked out', () => {
    const same = breakEvens(filmOption({ filmLife_yr: 5, segments: [segment(2026, 'present', 4_000)] }), phase, at);
    expect(same.plantReplacedBy).toBeNull();
    expect(same.words[1]).toContain('not worked out');
  });

  it('by pane failures: 5,731 of value over 4 panes at 20,000 and 4.579707 discounted years', () => {
    const found = breakEvens(option, phase, { ...at, paneReplacement_cents: 20_000 });
    expect(found.paneFailures_1_yr).toBeCloseTo(5_731.0 / (4 * 20_000 * 4.579707), 5);
    expect(found.words[2]).toBe('drops out if more than 1.6 % of its filmed panes have to be replaced a year');
    expect(breakEvens(option, phase, at).words[2]).toBe('pane failures: no price of a replaced pane is given for the building');
  });

  it('says of a line that does not pay at which price it enters', () => {
    const poor = breakEvens(filmOption({ filmLife_yr: 5, segments: [segment(2026, 'present', 2_000)] }), phase, { ...at, paneReplacement_cents: 20_000 });
    // 10,000 / (2,000 × 4.579707)
    expect(poor.words[0]).toBe('enters if electricity costs more than 110 % of the tariff');
    expect(poor.words[2]).toBe('pane failures: not worth its cost even if no pane fails');
  });
});
