import { checkCertificate, select, type SelectionProblem } from '../../libs/calc/src/selection/index.js';
import { selectionOneCap, type OneCapInstance } from './selection-one-cap.js';
import { selectionSeveralCaps, type SeveralCapsInstance } from './selection-several-caps.js';

const oneCapProblem = (given: OneCapInstance): SelectionProblem => {
  const groups = given.dwellings.map((options, i) => ({
    id: `D${String(i).padStart(3, '0')}`,
    options: options.map(([cost_cents, value], k) => ({ id: `P${k}`, cost_cents, value })),
  }));
  return { groups, phases: [{ cap_cents: given.budget }], must: groups.map(({ id }) => id) };
};

const dwelling = (k: number): string => `D${String(k).padStart(3, '0')}`;

const severalCapsProblem = (given: SeveralCapsInstance): SelectionProblem => ({
  groups: given.dwellings.map(({ building, options }, i) => ({
    id: dwelling(i),
    building: `B${building}`,
    options: options.map(([cost_cents, value, crewMinutes], k) => ({ id: `P${k}`, cost_cents, value, crewMinutes })),
  })),
  phases: given.phaseBudget.map((cap_cents, t) => ({ cap_cents, crewMinutes: given.phaseHours10[t]!, valueFactor: given.phaseFactor[t]! })),
  buildings: given.buildings.map(([visit_cents, visitMinutes, owner, minSpendIfVisited_cents], b) => ({
    id: `B${b}`,
    visit_cents,
    visitMinutes,
    minSpendIfVisited_cents,
    ...(owner < 0 ? {} : { owner: `O${owner}` }),
  })),
  owners: given.ownerCap.map((cap_cents, w) => ({ id: `O${w}`, cap_cents })),
  must: given.mustDo.map(dwelling),
  mustNot: given.mustNot.map(dwelling),
  exclusive: given.exclusivePairs.map(([a, b]) => [dwelling(a), dwelling(b)] as const),
});

describe('selection under one cap', () => {
  it.each(selectionOneCap.rows.map((row) => [row.given.id, row] as const))('%s: the published optimum is found and proved', (_, { given, expect: wanted }) => {
    const problem = oneCapProblem(given);
    const result = select(problem);
    expect(result).toMatchObject({ status: 'optimal', value: wanted.optimum, bound: wanted.optimum, gap: 0 });
    expect(checkCertificate(problem, result).findings).toEqual([]);
  });
});

describe('selection under several caps, with visits, minutes, owners and rules', () => {
  it.each(selectionSeveralCaps.rows.map((row) => [row.given.id, row] as const))('%s: the published answer is found and proved', (_, { given, expect: wanted }) => {
    const problem = severalCapsProblem(given);
    const result = select(problem);
    expect({ status: result.status, value: result.value }).toEqual({ status: wanted.optimum === null ? 'infeasible' : 'optimal', value: wanted.optimum });
    expect(checkCertificate(problem, result).findings).toEqual([]);
  });
});
