import { filmOption, onePhase, planTermsOf, pricingOf } from '../../../../test/portfolios/film-option.js';
import { priceByRolls, type RollPricing } from './price-by-rolls.js';
import { heldWithinCaps } from './within-caps.js';

const proof = { status: 'optimal' as const, value_cents: 0, bound_cents: 0, gap: 0, certificate: null, why: null };
const line = (dwelling: string, worth_cents: number) => ({ option: filmOption({ id: `${dwelling}|180|A`, dwelling }), phase: 0, value: { phase: 'O/1', whole_cents: worth_cents, owner_cents: 0 } });
const held = (cap_cents: number, of: { readonly lockedIn?: string[]; readonly pricing?: Partial<RollPricing>; readonly spare?: ReturnType<typeof line>[] } = {}) => {
  const pricing = pricingOf({ phases: [onePhase(cap_cents)], terms: planTermsOf(), ...of.pricing });
  const { priced, log } = heldWithinCaps(priceByRolls({ lines: [line('B1/1', 5_000), line('B1/2', 4_000)], proof }, pricing), { of: pricing, lockedIn: new Set(of.lockedIn ?? []), spare: of.spare ?? [] });
  return { dwellings: priced.choice.lines.map((l) => l.option.dwelling), spent_cents: priced.phases[0]!.spending.total_cents, log };
};

describe('the last word of the cap', () => {
  // Both dwellings cost 80 dollars of labour and consumables and one roll of 150.
  it('changes nothing that fits', () => expect(held(23_000)).toEqual({ dwellings: ['B1/1', 'B1/2'], spent_cents: 23_000, log: [] }));

  it('drops the line worth least per dollar, and says so', () => {
    const result = held(22_999);
    expect(result.dwellings).toEqual(['B1/1']);
    expect(result.spent_cents).toBe(19_000);
    expect(result.log).toMatchObject([{ kind: 'rolls', subject: 'B1/2' }]);
  });

  // A third dwelling for 39 dollars of labour and consumables fits the 39.99 that dropping the second leaves beside 40 and the roll.
  const small = (dwelling: string, cost: Partial<ReturnType<typeof filmOption>['cost']> = {}) => {
    const option = filmOption({ id: `${dwelling}|180|A`, dwelling });
    return { ...line(dwelling, 1_000), option: { ...option, cost: { ...option.cost, labour_cents: 2_900, total_cents: 3_900, film_cents: 0, ...cost } } };
  };

  it('fills the room a dropped line opens with what fits', () => {
    const result = held(22_999, { spare: [small('B1/3')] });
    expect(result.dwellings).toEqual(['B1/1', 'B1/3']);
    expect(result.spent_cents).toBe(22_900);
    expect(result.log).toMatchObject([{ subject: 'B1/2' }, { subject: 'B1/3' }]);
  });

  it('does not put a line back that was dropped, nor one that passes the cap', () => {
    expect(held(22_999, { spare: [line('B1/2', 4_000), small('B1/4', { labour_cents: 3_000, total_cents: 4_000 })] }).dwellings).toEqual(['B1/1']);
  });

  it('does not fill beyond the minutes of the crew', () => {
    const phases = [{ ...onePhase(22_999), crewMinutes: 59 }];
    expect(held(22_999, { spare: [small('B1/3')], pricing: { phases } }).dwellings).toEqual(['B1/1']);
  });

  it('drops a dwelling locked in by hand last', () => expect(held(22_999, { lockedIn: ['B1/2'] }).dwellings).toEqual(['B1/2']));

  it('never ends above the cap: with less than one roll nothing is left', () => expect(held(10_000)).toMatchObject({ dwellings: [], spent_cents: 0 }));

  it('drops a visit that costs more than its lines are worth', () => {
    const result = held(1_000_000, { pricing: { visit: () => ({ cents: 9_001, minutes: 0 }) } });
    expect(result.dwellings).toEqual([]);
    expect(result.log).toHaveLength(2);
  });

  it('keeps a visit that is worth it to the cent', () => expect(held(1_000_000, { pricing: { visit: () => ({ cents: 9_000, minutes: 0 }) } }).dwellings).toHaveLength(2));
});
