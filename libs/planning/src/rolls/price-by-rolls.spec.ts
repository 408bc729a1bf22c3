import fc from 'fast-check';
import { filmOption, onePhase, planTermsOf, pricingOf } from '../../../../test/portfolios/film-option.js';
import { chooseUnderCaps, nextCaps, workedCaps } from '../choice/choose-under-caps.js';
import { priceByRolls, spendingOf } from './price-by-rolls.js';
import { workersHere } from '../workers-here.js';

const cents = fc.double({ min: 0, max: 5_000_000, noNaN: true });
const share = fc.double({ min: 0, max: 0.3, noNaN: true });

describe('what is really paid in a phase', () => {
  it('adds up to its total in whole cents, whatever the fractions', () => {
    const cost = fc.record({ film_cents: cents, labour_cents: cents, consumables_cents: cents, removal_cents: cents, materialTax_cents: cents, labourTax_cents: cents, total_cents: cents });
    const shares = fc.record({ contingencyShare: share, materialTaxShare: share, labourTaxShare: share, labourIsCash: fc.boolean() });
    fc.assert(
      fc.property(fc.array(cost, { maxLength: 5 }), shares, cents, (costs, terms, visit) => {
        const pricing = pricingOf({ terms: planTermsOf(terms), visit: () => ({ cents: visit, minutes: 0 }) });
        const lines = costs.map((each) => ({ option: filmOption({ cost: each }), phase: 0, value: { phase: 'O/1', whole_cents: 0, owner_cents: 0 } }));
        const { total_cents, ...parts } = spendingOf(lines, [], { ...pricing, visits: lines.length > 0 ? ['B1'] : [] });
        expect(Object.values(parts).every((part) => Number.isInteger(part) && part >= 0)).toBe(true);
        expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBe(total_cents);
      }),
    );
  });

  it('leaves the own crew\'s time out where it is not cash', () => {
    const line = { option: filmOption(), phase: 0, value: { phase: 'O/1', whole_cents: 0, owner_cents: 0 } };
    expect(spendingOf([line], [], { ...pricingOf({ terms: planTermsOf({ labourIsCash: false }) }), visits: [] })).toMatchObject({ labour_cents: 0, total_cents: 1_000 });
  });
});

describe('whole rolls against the cap', () => {
  // Two dwellings at 100 dollars each, 60 of it film by the square metre, worth 50 and 40. Both are cut from one roll, which costs 150 whole:
  // 200 dollars on paper, 150 + 2 × 40 = 230 really paid.
  const options = [filmOption(), filmOption({ id: 'B1/2|180|A', dwelling: 'B1/2' })];
  const ask = async (cap_cents: number) => {
    const terms = planTermsOf();
    const phases = [onePhase(cap_cents)];
    const pricing = pricingOf({ phases, terms });
    const valueIn = (o: { readonly dwelling: string }) => ({ phase: 'O/1', whole_cents: o.dwelling === 'B1/1' ? 5_000 : 4_000, owner_cents: 0 });
    const at = { phases, terms, buildings: pricing.buildings, locks: [], valueIn, visit: pricing.visit, work: workersHere };
    const first = workedCaps(phases, terms);
    const priced = priceByRolls((await chooseUnderCaps(options, first, at)).choice, pricing);
    const lowered = nextCaps(first, priced, { ...at, round: 1 });
    const again = priceByRolls((await chooseUnderCaps(options, lowered.caps_cents, at)).choice, pricing);
    return { priced, lowered, again };
  };

  it('need no second round where the rolls fit under the cap', async () => {
    const { priced, lowered } = await ask(25_000);
    expect(priced.phases[0]).toMatchObject({ over_cents: 0, spending: { film_cents: 15_000, total_cents: 23_000 } });
    expect(lowered).toEqual({ caps_cents: [25_000], log: [] });
  });

  it('lower the cap by what they took beyond it, and the second choice drops the lesser dwelling', async () => {
    const { priced, lowered, again } = await ask(21_000);
    expect(priced.phases[0]!.over_cents).toBe(2_000);
    expect(lowered.caps_cents).toEqual([19_000]);
    expect(lowered.log).toMatchObject([{ round: 1, kind: 'rolls', subject: 'O/1', text: expect.stringContaining('pass the cap by $20.00') as string }]);
    expect(again.choice.lines.map((l) => l.option.dwelling)).toEqual(['B1/1']);
    expect(again.phases[0]).toMatchObject({ over_cents: 0, spending: { total_cents: 19_000 } });
  });

  it('are cut once for the same panes and stock while choices are tried, and again for others', () => {
    const pricing = pricingOf({ phases: [onePhase(50_000)] });
    const line = (dwelling: string) => ({ option: filmOption({ id: `${dwelling}|180|A`, dwelling }), phase: 0, value: { phase: 'O/1', whole_cents: 0, owner_cents: 0 } });
    const cutOf = (dwellings: readonly string[], of = pricing) => priceByRolls({ lines: dwellings.map(line), proof: null as never }, of).phases[0]!.cuts[0]!;
    const first = cutOf(['B1/1', 'B1/2']);
    expect(cutOf(['B1/1', 'B1/2'])).toBe(first);
    expect(cutOf(['B1/1']).pieces).toHaveLength(1);
    expect(first.pieces).toHaveLength(2);
    expect(cutOf(['B1/1', 'B1/2'], { ...pricing })).not.toBe(first);
    expect(cutOf(['B1/1', 'B1/2'], { ...pricing })).toEqual(first);
  });
});
