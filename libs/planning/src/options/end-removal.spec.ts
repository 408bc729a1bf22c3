import { openCatalogue } from '#catalogue';
import type { Distribution, Phase } from '#calc';
import { filmOption, OWNER_PAYS, planTermsOf } from '../../../../test/portfolios/film-option.js';
import { paybackReview } from '../review/payback-review.js';
import type { PricedChoice } from '../rolls/price-by-rolls.js';
import { breakEvens } from '../uncertainty/break-evens.js';
import { drawOrder } from '../uncertainty/draw-book.js';
import { drawnValue_cents, netValues_cents } from '../uncertainty/drawn-value.js';
import type { FilmOption } from './option.js';
import { optionFlows, phaseValue } from './value.js';

const phaseFrom = (firstDay: string): Phase => ({ id: 'O/1', ownerEntity: 'O', name: '1', firstDay, lastDay: '2099-12-31', cap_cents: 0, crewMinutes: null });
const now = phaseFrom('2026-07-01');
const saving = (cooling_cents: number) => ({ coolingElectricity_kWh: 0, cooling_cents, addedHeating_cents: 0, addedHeating_kWh: 0 });
const segment = (firstYear: number, windowsGone: number, filmGone_m2 = 0) => ({ firstYear, plant: 'present' as const, windowsGone, ...(windowsGone > 0 ? { filmGone_m2 } : {}), saving: saving(3_000) });

// 100 dollars, 30 a year for five years, two square metres of film that come off for 10 dollars each.
const option = filmOption({ filmLife_yr: 5, glassArea_m2: 2, segments: [segment(2026, 0)] });
const terms = planTermsOf({ endRemoval_cents_m2: 1_000 });
const at = { terms, endYear: null };
// 3 %: 1/1.03 … 1/1.03⁵ = 0.970874, 0.942596, 0.915142, 0.888487, 0.862609; their sum 4.579707.
const [YEARS, FIFTH] = [4.579707, 0.862609];

function reviewed(of: FilmOption, endYear: number | null = null) {
  const spending = { total_cents: of.cost.total_cents };
  const lines = [{ option: of, phase: 0, value: phaseValue(of, now, { terms, endYear }) }];
  const priced = { choice: { lines }, phases: [{ phase: now, spending, lines }] } as unknown as PricedChoice;
  return paybackReview(priced, { terms, ownerOf: () => 'O', endYearOf: () => endYear, rebates: [] });
}

describe('taking film off at the end of its life', () => {
  it('is paid in its last year, beside cost and saving: −100 + 30 × 4.579707 − 20 × 0.862609', () => {
    const flows = optionFlows(option, now, at);
    expect(flows.removal_cents).toEqual([0, 0, 0, 0, 0, 2_000]);
    expect(flows.cost_cents).toEqual([10_000, 0, 0, 0, 0, 0]);
    expect(flows.whole_cents).toEqual([0, 3_000, 3_000, 3_000, 3_000, 3_000]);
    expect(phaseValue(option, now, at).whole_cents).toBeCloseTo(-10_000 + 3_000 * YEARS - 2_000 * FIFTH, 1);
  });

  it('counts against the savings in SIR, for line and plan, and not in the simple payback', () => {
    const sir = (3_000 * YEARS - 2_000 * FIFTH) / 10_000;
    const plan = reviewed(option);
    expect(plan.lines[0]).toMatchObject({ filmAtEnd_m2: 2, endRemoval_cents: 2_000, cost_cents: 10_000 });
    expect(plan.lines[0]!.sir).toBeCloseTo(sir, 5);
    expect(plan.sir).toBeCloseTo(sir, 5);
    expect(plan.npv_cents).toBeCloseTo(10_000 * sir - 10_000, 1);
    expect(plan).toMatchObject({ endRemoval_cents: 2_000, cost_cents: 10_000, overhead_cents: 0 });
    expect(plan.simplePayback_yr).toBeCloseTo(10_000 / 3_000, 9);
  });

  it('takes away a discounted payback that only the last year would give: 130 stand against 111.51 after four years and 120.14 after five', () => {
    const dear = { ...option, cost: { ...option.cost, total_cents: 13_000 } };
    expect(reviewed(dear).lines[0]).toMatchObject({ discountedPayback_yr: null });
    // Without it: 4 + (130 − 111.513) / 25.878.
    expect(reviewed({ ...dear, glassArea_m2: 0 }).lines[0]!.discountedPayback_yr).toBeCloseTo(4.7144, 3);
  });

  it('is the owner’s, whoever pays the bill', () => {
    const value = phaseValue({ ...option, payer: { ...OWNER_PAYS, kind: 'tenant', ownerShare: 0 } }, now, at);
    expect(value.owner_cents).toBeCloseTo(-10_000 - 2_000 * FIFTH, 1);
  });

  it('keeps its price of the study start while energy rises, and falls later where the work is later', () => {
    const flows = optionFlows(option, phaseFrom('2027-07-01'), { terms: { ...terms, realEscalation: 0.05 }, endYear: null });
    expect(flows.removal_cents).toEqual([0, 0, 0, 0, 0, 0, 2_000]);
  });

  it('leaves out windows replaced before, by their glass', () => {
    const half = { ...option, segments: [segment(2026, 0), segment(2028, 1, 0.5)] };
    expect(optionFlows(half, now, at).removal_cents[5]).toBe(1_500);
    const all = { ...option, segments: [segment(2026, 0), segment(2028, 2, 2)] };
    expect(optionFlows(all, now, at).removal_cents).toEqual([0, 0, 0, 0, 0, 0]);
    // Replaced after the film's life: it comes off them all.
    expect(optionFlows({ ...option, segments: [segment(2026, 0), segment(2031, 2, 2)] }, now, at).removal_cents[5]).toBe(2_000);
  });

  it('is not paid where the building is sold or refurbished in the last year of the film or before', () => {
    for (const endYear of [2028, 2030]) {
      const flows = optionFlows(option, now, { terms, endYear });
      expect(flows).toMatchObject({ filmAtEnd_m2: 0, removal_cents: [0, 0, 0, 0, 0, 0] });
    }
    expect(optionFlows(option, now, { terms, endYear: 2031 }).filmAtEnd_m2).toBe(2);
    expect(reviewed(option, 2028).endRemoval_cents).toBe(0);
  });

  it('changes nothing where no price is set, as in plans kept before', () => {
    const flows = optionFlows(option, now, { terms: planTermsOf(), endYear: null });
    expect(flows.removal_cents).toEqual([0, 0, 0, 0, 0, 0]);
    expect(phaseValue(option, now, { terms: planTermsOf(), endYear: null }).whole_cents).toBeCloseTo(-10_000 + 3_000 * YEARS, 1);
  });

  it('is the same in every draw, and no share of a saving found in bills takes from it', () => {
    const draws = 3;
    // Inputs that depart from nothing.
    const certain = openCatalogue().uncertainInputs.map((input) => ({ ...input, spread: (): Distribution => ({ kind: 'listed', values: [{ value: input.unit.startsWith('factor') ? 1 : 0, chance: 1 }] }) }));
    const order = drawOrder(certain, { founded: { films: [], glazings: [] }, seed: 1, draws });
    const drawn = drawnValue_cents({ option, savings_cents: Float64Array.from([3_000, 2_000, 0]) }, now, { order, terms, endYear: null });
    const found = netValues_cents(drawn, Float64Array.from([0.5, 1, 1]));
    [1_500, 2_000, 0].forEach((counted, d) => expect(found[d]).toBeCloseTo(counted * YEARS - 10_000 - 2_000 * FIFTH, 1));
    expect([...drawn.plainCost_cents]).toEqual([12_000, 12_000, 12_000]);
  });

  it('stands with the cost in the price at which the line drops out', () => {
    expect(breakEvens(option, now, at).priceShare).toBeCloseTo((10_000 + 2_000 * FIFTH) / (3_000 * YEARS), 5);
  });
});
