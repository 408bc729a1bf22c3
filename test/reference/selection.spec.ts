import { checkCertificate, select, type SelectionProblem } from '../../libs/calc/src/selection/index.js';
import { selectionOneCap, type OneCapInstance } from './selection-one-cap.js';

const oneCapProblem = (given: OneCapInstance): SelectionProblem => {
  const groups = given.dwellings.map((options, i) => ({
    id: `D${String(i).padStart(3, '0')}`,
    options: options.map(([cost_cents, value], k) => ({ id: `P${k}`, cost_cents, value })),
  }));
  return { groups, phases: [{ cap_cents: given.budget }], must: groups.map(({ id }) => id) };
};

describe('selection under one cap', () => {
  it.each(selectionOneCap.rows.map((row) => [row.given.id, row] as const))('%s: the published optimum is found and proved', (_, { given, expect: wanted }) => {
    const problem = oneCapProblem(given);
    const result = select(problem);
    expect(result).toMatchObject({ status: 'optimal', value: wanted.optimum, bound: wanted.optimum, gap: 0 });
    expect(checkCertificate(problem, result).findings).toEqual([]);
  });
});
