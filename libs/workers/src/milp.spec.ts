import { select } from '#calc';
import { selectionSeveralCaps, type SeveralCapsInstance } from '../../../test/reference/selection-several-caps.js';
import type { SelectionProblem } from '#calc';
import { openSolveLp, selectByMilp } from './milp.js';

const problemOf = (given: SeveralCapsInstance): SelectionProblem => ({
  groups: given.dwellings.map(({ building, options }, i) => ({
    id: String(i),
    building: String(building),
    options: options.map(([cost_cents, value, crewMinutes], k) => ({ id: String(k), cost_cents, value, crewMinutes })),
  })),
  phases: given.phaseBudget.map((cap_cents, t) => ({ cap_cents, crewMinutes: given.phaseHours10[t]!, valueFactor: given.phaseFactor[t]! })),
  buildings: given.buildings.map(([visit_cents, visitMinutes, owner, minSpendIfVisited_cents], b) => ({
    id: String(b), visit_cents, visitMinutes, minSpendIfVisited_cents, ...(owner < 0 ? {} : { owner: String(owner) }),
  })),
  owners: given.ownerCap.map((cap_cents, w) => ({ id: String(w), cap_cents })),
  must: given.mustDo.map(String),
  mustNot: given.mustNot.map(String),
  exclusive: given.exclusivePairs.map(([a, b]) => [String(a), String(b)] as const),
});
const instance = (id: string) => selectionSeveralCaps.rows.find((row) => row.given.id === id)!;

describe('the mixed-integer solver in its own thread', () => {
  it('finds the published optimum and posts choices on the way, each better than the one before', async () => {
    const { given, expect: wanted } = instance('side-10-2ph');
    const heard: number[] = [];
    const answer = await selectByMilp(problemOf(given), { timeLimit_s: 25, better: ({ value }) => heard.push(value!) });
    expect(answer).toMatchObject({ status: 'optimal', value: wanted.optimum });
    expect(heard.length).toBeGreaterThan(0);
    expect(heard).toEqual([...heard].sort((a, b) => a - b));
  });

  it('says so when no choice keeps the rules', async () => {
    const answer = await selectByMilp(problemOf(instance('side-12-2ph').given), { timeLimit_s: 25 });
    expect(answer).toMatchObject({ status: 'infeasible', chosen: null, value: null });
  });

  it('is ended when the time is up', async () => {
    const started = Date.now();
    const answer = await selectByMilp(problemOf(instance('side-30-3ph').given), { timeLimit_s: 1 });
    expect(Date.now() - started).toBeLessThan(10_000);
    expect(answer.status).toBe('bounded');
  });

  it('solves the linear programs of calc: the selection with it gives the published optimum too', async () => {
    const { given, expect: wanted } = instance('side-16-3ph');
    const result = select(problemOf(given), { solveLp: await openSolveLp() });
    expect(result).toMatchObject({ status: 'optimal', value: wanted.optimum });
  });
});
