import { choiceFindings, type SelectionProblem } from './index.js';

/** Two houses of two dwellings, two years, one owner: small enough for every figure to be added up by hand. */
const problem: SelectionProblem = {
  groups: [
    { id: 'A1', building: 'A', options: [{ id: 'grey', cost_cents: 100, value: 10, crewMinutes: 30, family: 'grey' }, { id: 'clear', cost_cents: 250, value: 16, crewMinutes: 45, family: 'clear' }] },
    { id: 'A2', building: 'A', phases: [1], options: [{ id: 'grey', cost_cents: 120, value: 9, crewMinutes: 20, family: 'grey' }] },
    { id: 'B1', building: 'B', options: [{ id: 'grey', cost_cents: 80, value: 7, family: 'grey', phases: [0] }, { id: 'plain', cost_cents: 60, value: 2 }] },
    { id: 'free', options: [{ id: 'grey', cost_cents: 40, value: 5, crewMinutes: 10 }] },
  ],
  phases: [{ cap_cents: 1000, valueFactor: 3 }, { cap_cents: 1000 }],
  buildings: [{ id: 'A', visit_cents: 50, visitMinutes: 15, visitPrice: [4, 1], owner: 'O' }, { id: 'B', visit_cents: 20, visitMinutes: 5, owner: 'O' }],
};
const pick = (group: string, option: string, phase: number) => ({ group, option, phase });
const change = (more: Partial<SelectionProblem>): SelectionProblem => ({ ...problem, ...more });
const building = (more: object) => ({ id: 'A', visit_cents: 50, visitMinutes: 15, ...more });
const findingsOf = (given: SelectionProblem, ...chosen: ReturnType<typeof pick>[]) => choiceFindings(given, chosen).findings;

describe('a choice added up by hand', () => {
  it('options, visits and prices of visits, by year', () => {
    // Year 0: A1 grey and B1 grey, a visit to each; year 1: A2 and the dwelling without a building, a visit to A.
    expect(choiceFindings(problem, [pick('A1', 'grey', 0), pick('B1', 'grey', 0), pick('A2', 'grey', 1), pick('free', 'grey', 1)])).toEqual({
      findings: [], value: 3 * (10 + 7) + 9 + 5 - 4 - 1, cost_cents: [100 + 80 + 50 + 20, 120 + 40 + 50], crewMinutes: [30 + 15 + 5, 20 + 10 + 15],
    });
  });

  it('two dwellings of a house in one year share the visit', () => {
    expect(choiceFindings(problem, [pick('A1', 'clear', 1), pick('A2', 'grey', 1)])).toEqual({ findings: [], value: 16 + 9 - 1, cost_cents: [0, 250 + 120 + 50], crewMinutes: [0, 45 + 20 + 15] });
  });

  it('nothing chosen costs nothing and breaks nothing', () => {
    expect(choiceFindings(problem, [])).toEqual({ findings: [], value: 0, cost_cents: [0, 0], crewMinutes: [0, 0] });
  });

  it('a set not kept together costs its price once, whether a part is left out or done another year', () => {
    const together = change({ keepTogether: [{ groups: ['A1', 'B1', 'free'], price: 6 }] });
    const value = (...chosen: ReturnType<typeof pick>[]) => choiceFindings(together, chosen).value;
    expect(value()).toBe(0);
    expect(value(pick('free', 'grey', 1))).toBe(5 - 6);
    expect(value(pick('A1', 'grey', 1), pick('B1', 'plain', 1), pick('free', 'grey', 1))).toBe(10 + 2 + 5 - 1);
    const later = change({ phases: [...problem.phases, { cap_cents: 1000 }], buildings: [], keepTogether: [{ groups: ['A1', 'free'], price: 6 }] });
    expect(choiceFindings(later, [pick('A1', 'grey', 1), pick('free', 'grey', 2)]).value).toBe(10 + 5 - 6);
    expect(value(pick('A1', 'grey', 1), pick('B1', 'plain', 0), pick('free', 'grey', 1))).toBe(10 + 3 * 2 + 5 - 1 - 6);
  });
});

describe('a broken rule is named', () => {
  it.each([
    ['a dwelling that is not there', [pick('Z', 'grey', 0)], ['Z grey in phase 0 does not exist']],
    ['a film that is not there', [pick('A1', 'red', 0)], ['A1 red in phase 0 does not exist']],
    ['a year that is not there', [pick('A1', 'grey', 2)], ['A1 grey in phase 2 does not exist']],
    ['a dwelling done twice', [pick('free', 'grey', 0), pick('free', 'grey', 1)], ['free is taken twice']],
    ['a year the dwelling is not open in', [pick('A2', 'grey', 0)], ['A2 grey may not be taken in phase 0']],
    ['a year the film is not allowed in', [pick('B1', 'grey', 1)], ['B1 grey may not be taken in phase 1']],
  ])('%s', (_, chosen, findings) => {
    expect(findingsOf(problem, ...chosen)).toEqual(findings);
  });

  it('what must be, must not be, and excludes each other', () => {
    const given = change({ must: ['A1'], mustNot: ['B1'], exclusive: [['A1', 'free']] });
    expect(findingsOf(given)).toEqual(['A1 must be taken and is not']);
    expect(findingsOf(given, pick('A1', 'grey', 0))).toEqual([]);
    expect(findingsOf(given, pick('A1', 'grey', 0), pick('B1', 'plain', 0))).toEqual(['B1 must not be taken and is']);
    expect(findingsOf(given, pick('A1', 'grey', 0), pick('free', 'grey', 0))).toEqual(['A1 and free exclude each other']);
    expect(findingsOf(change({ exclusive: [['A1', 'free']] }), pick('free', 'grey', 0))).toEqual([]);
  });

  it('caps of a year, a house and an owner bind one cent below what is spent', () => {
    const chosen = [pick('A1', 'grey', 0), pick('A2', 'grey', 1), pick('B1', 'grey', 0)];
    // A: 100 + 120 + two visits of 50 = 320; B: 80 + 20 = 100; year 0: 100 + 80 + 50 + 20 = 250.
    const phases = (cap_cents: number, crewMinutes?: number) => [{ cap_cents, ...(crewMinutes === undefined ? {} : { crewMinutes }) }, { cap_cents: 1000 }];
    expect(findingsOf(change({ phases: phases(250, 50) }), ...chosen)).toEqual([]);
    expect(findingsOf(change({ phases: phases(249) }), ...chosen)).toEqual(['phase 0 costs 250 cents, over its cap of 249']);
    expect(findingsOf(change({ phases: phases(250, 49) }), ...chosen)).toEqual(['phase 0 takes 50 crew minutes, over its 49']);
    expect(findingsOf(change({ buildings: [building({ cap_cents: 320 })] }), ...chosen)).toEqual([]);
    expect(findingsOf(change({ buildings: [building({ cap_cents: 319 })] }), ...chosen)).toEqual(['A costs 320 cents, over its cap']);
    expect(findingsOf(change({ owners: [{ id: 'O', cap_cents: 420 }] }), ...chosen)).toEqual([]);
    expect(findingsOf(change({ owners: [{ id: 'O', cap_cents: 419 }] }), ...chosen)).toEqual(['owner O spends 420 cents, over the cap']);
    expect(findingsOf(change({ owners: [{ id: 'P', cap_cents: 0 }] }), ...chosen)).toEqual([]);
  });

  it('a house is visited for its least spend or not at all, visits apart', () => {
    const least = (minSpendIfVisited_cents: number) => change({ buildings: [building({ minSpendIfVisited_cents })] });
    expect(findingsOf(least(100), pick('A1', 'grey', 0))).toEqual([]);
    expect(findingsOf(least(101), pick('A1', 'grey', 0))).toEqual(['A is visited in phase 0 for 100 cents, below its least spend']);
    expect(findingsOf(least(101))).toEqual([]);
  });

  it('one family in a house where that is asked, and a film without family goes with any', () => {
    const one = change({ buildings: [building({ oneFamily: true }), { id: 'B', visit_cents: 0, visitMinutes: 0, oneFamily: true }] });
    expect(findingsOf(one, pick('A1', 'clear', 1), pick('A2', 'grey', 1))).toEqual(['A mixes clear, grey']);
    expect(findingsOf(one, pick('A1', 'grey', 1), pick('A2', 'grey', 1), pick('B1', 'plain', 0))).toEqual([]);
    expect(findingsOf(change({ buildings: [building({ oneFamily: false })] }), pick('A1', 'clear', 1), pick('A2', 'grey', 1))).toEqual([]);
  });
});
