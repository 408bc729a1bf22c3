import type { Film, TimeModel } from '#calc';
import { planTermsOf } from '../../../../test/portfolios/film-option.js';
import { type FilmedWork, installedCost } from './installed-cost.js';

/** 30 minutes a dwelling, 12 a pane, 10 a square metre; nothing else. */
const timeModel: TimeModel = { perDwelling_min: 30, perPane_min: 12, perArea_min_m2: 10, perLite_min: 6, ladderFactor: 1, overFurnitureFactor: 1, woodOrPuttyFactor: 1, oldFilm_min: 10, oldFilm_min_m2: 0, seam_min: 0, firstDayFactor: 1, lowFactor: 0.5, highFactor: 2 };
const film = (id: string, price_cents_m2: number, waste: number) => ({ film: { id } as Film, price_cents_m2, waste, boughtArea_m2: 0, pieceArea_m2: 0, priceBasis: '' });
const work = (of: ReturnType<typeof film>, hasOldFilm = false): FilmedWork => ({ pane: { count: 2, area_m2: 1, reach: 'floor', hasOldFilm }, panes: 2, glass_m2: 2, piece_m2: 2.2, film: of });
const terms = planTermsOf({ labour_cents_h: 3_000, consumables_cents_m2: 100, materialTaxShare: 0.1, labourTaxShare: 0.2 });

describe('the installed cost of a set', () => {
  it('is film with its waste, minutes at the rate, consumables and taxes, by hand', () => {
    // Film 2.2 × 1,000 × 1.05 = 2,310; minutes 30 + 2 × (12 + 10) = 74, at 50 a minute 3,700; consumables 220; tax 253 and 740.
    const { cost, minutes } = installedCost([work(film('A', 1_000, 0.05))], { terms, timeModel, contractor_cents_m2: null });
    expect(minutes).toEqual({ low: 37, best: 74, high: 148 });
    expect(cost.film_cents).toBeCloseTo(2_310, 9);
    expect(cost.labour_cents).toBeCloseTo(3_700, 9);
    expect(cost.materialTax_cents).toBeCloseTo(253, 9);
    expect(cost.labourTax_cents).toBeCloseTo(740, 9);
    expect(cost.total_cents).toBeCloseTo(2_310 + 3_700 + 220 + 253 + 740, 9);
  });

  it('prices each side by its own film', () => {
    const { cost, minutes } = installedCost([work(film('A', 1_000, 0)), work(film('B', 2_000, 0))], { terms, timeModel, contractor_cents_m2: null });
    expect(cost.film_cents).toBeCloseTo(2.2 * 1_000 + 2.2 * 2_000, 9);
    expect(minutes.best).toBeCloseTo(30 + 2 * 44, 9);
  });

  it('shows taking old film off on its own', () => {
    // Two panes of old film: 20 minutes, 1,000 cents.
    expect(installedCost([work(film('A', 1_000, 0), true)], { terms, timeModel, contractor_cents_m2: null }).cost).toMatchObject({ removal_cents: 1_000, labour_cents: 3_700 });
  });

  it('a contractor asks by the area of glass in place of the minutes of putting film on', () => {
    const own = installedCost([work(film('A', 1_000, 0))], { terms, timeModel, contractor_cents_m2: null });
    const contract = installedCost([work(film('A', 1_000, 0))], { terms, timeModel, contractor_cents_m2: 2_000 });
    expect(contract.cost.labour_cents).toBeCloseTo(2_000 * contract.glassArea_m2, 9);
    expect(contract.cost.film_cents).toBe(own.cost.film_cents);
    expect(contract.minutes).toEqual(own.minutes);
  });
});
