import { filmOption } from '../../../../test/portfolios/film-option.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import { earnedInBillsWords } from './earned-in-bills.js';
import { rankedLists } from './ranked-lists.js';
import { spokenForWords, unspentWords } from './what-is-left.js';

const option = (id: string, of: Parameters<typeof filmOption>[0] = {}) => filmOption({ id: `B1/1|${id}`, dwelling: 'B1/1', ...of });
const rows = (options: ReturnType<typeof option>[], worth: Readonly<Record<string, number>>, taken?: ReturnType<typeof option>) =>
  rankedLists({ options, lines: taken === undefined ? [] : [{ dwelling: 'B1/1', phase: 'O/1', option: taken } as PlanLine], glassOf: () => 'glass', valueOf: (o) => worth[o.id] ?? 0 });

describe('a dwelling in the ranked list', () => {
  const [one, two] = [option('270|A', { facades: [270], yearlyCooling_cents: 2_000 }), option('90+270|A', { facades: [90, 270], yearlyCooling_cents: 3_000 })];

  it('is in the plan by whichever option it is planned with; a side left out of it is not', () => {
    const { dwellings, facades } = rows([one, two, option('90|A', { facades: [90], yearlyCooling_cents: 1_000 })], {}, one);
    expect(dwellings[0]).toMatchObject({ option: two.id, inPlan: 'O/1' });
    expect(dwellings[0]?.differs).toContain('west with film A');
    expect(facades.map((f) => [f.azimuth_deg, f.inPlan])).toEqual([[270, 'O/1'], [90, 'this side is not in the plan']]);
  });

  it('does not wait for a letter that would not make it pay', () => {
    const waits = option('270|B', { waitsFor: ['B1: glass maker'] });
    expect(rows([waits], { [waits.id]: -1 }).dwellings[0]?.inPlan).toBe('does not pay in this view, and a letter would be needed');
    expect(rows([waits], { [waits.id]: 1 }).dwellings[0]?.inPlan).toBe('waits for B1: glass maker');
    expect(rows([one], { [one.id]: 1 }).dwellings[0]?.inPlan).toBe('in reserve: the caps end before it');
  });

  it('waits where only an option behind a letter pays, though the best per dollar does not', () => {
    const waits = option('90|A', { facades: [90], waitsFor: ['B1: glass maker'], yearlyCooling_cents: 100 });
    expect(rows([one, waits], { [one.id]: -1, [waits.id]: 5 }).dwellings[0]).toMatchObject({ option: one.id, inPlan: 'waits for B1: glass maker' });
  });
});

const phase = (id: string, left_cents: number, nothingLeftThatPays = true) => ({ phase: { id, ownerEntity: id.slice(0, 2) }, left_cents, nothingLeftThatPays }) as Plan['phases'][number];
const plan = {
  buildings: [{ id: 'B1', ownerEntity: 'O1' }, { id: 'B2', ownerEntity: 'O2' }],
  rankedDwellings: [{ building: 'B2', inPlan: 'waits for B2: listing' }, { building: 'B2', inPlan: 'does not pay in this view' }, { building: 'B1', inPlan: 'O1/a' }],
  phases: [phase('O1/a', 100_00), phase('O2/a', 200_00), phase('O2/b', 300_00), phase('O2/c', 400_00, false)],
} as unknown as Plan;

describe('money that stays unspent', () => {
  it('is said by owner with the dwellings that would pay if their letters came', () => {
    expect(unspentWords(plan)).toEqual([
      'Unspent: $100 of O1/a: nothing more that may go ahead in that year pays.',
      'Unspent: $200 of O2/a and $300 of O2/b: nothing more that may go ahead in those years pays; 1 more dwelling waits for a letter or test and would pay.',
    ]);
  });

  it('is less what the ledger takes off the cap, which is said', () => {
    const ledger = { phases: [{ phase: 'O2/a', cap_cents: 400_00, remaining_cents: 364_00 }, { phase: 'O1/a', cap_cents: 1, remaining_cents: 1 }] } as unknown as NonNullable<Plan['ledger']>;
    expect(spokenForWords({ ledger })).toEqual(['The ledger takes off $36 of the $400 of O2/a: ordered or paid already.']);
    expect(spokenForWords({})).toEqual([]);
  });
});

describe('what bills are expected to show', () => {
  // SIR 1.25: savings over costs; at 1 / 1.25 = 80 % of the savings they are equal.
  const of = (middle: number, setting = 'as-modelled') => ({ payback: { sir: 1.25 }, lines: [{}], bills: { setting, plan: { low: 0.2, middle, high: 0.9 } } }) as unknown as Plan;

  it('is held against the share at which the plan earns its cost', () => {
    expect(earnedInBillsWords(of(0.41))[0]).toMatch(/when 80 % of the modelled savings are found; 41 % are expected .* does not earn its cost back/);
    expect(earnedInBillsWords(of(0.8))[0]).toMatch(/as expected it does earn its cost back/);
  });

  it('is not counted twice where savings count as found', () => {
    expect(earnedInBillsWords(of(0.41, 'as-found'))).toEqual(['The plan earns its cost back, for all payers together, when 80 % of the savings counted here are found.']);
  });
});
