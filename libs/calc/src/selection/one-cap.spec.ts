import fc from 'fast-check';
import { select, type SelectionProblem } from './index.js';

/** Plain twin: best profit for every weight up to the capacity, class by class; null when nothing fits. */
function byEveryWeight(problem: SelectionProblem): number | null {
  const cap = problem.phases[0]!.cap_cents;
  let best = new Float64Array(cap + 1).fill(-Infinity);
  best[0] = 0;
  for (const { options } of problem.groups) {
    const next = new Float64Array(cap + 1).fill(-Infinity);
    for (const { cost_cents, value } of options) for (let w = cost_cents; w <= cap; w++) next[w] = Math.max(next[w]!, best[w - cost_cents]! + value);
    best = next;
  }
  const most = best.reduce((a, b) => Math.max(a, b), -Infinity);
  return most === -Infinity ? null : most;
}

/** Hard classes of the published generator: profits near, equal to, or rising with the weights. */
const hardClass = (kind: number) =>
  fc.array(fc.tuple(fc.integer({ min: 1, max: 100 }), fc.integer({ min: -10, max: 10 })), { minLength: 2, maxLength: 8 }).map((draws) => {
    let weight = 0;
    let profit = 0;
    return [...draws].sort((a, b) => a[0] - b[0]).map(([w, more], o) => {
      if (kind === 2) return { id: String(o), cost_cents: (weight += w), value: (profit += w + 10) };
      return { id: String(o), cost_cents: w, value: kind === 0 ? Math.max(1, w + more) : w };
    });
  });

const hardProblem = fc.integer({ min: 0, max: 2 }).chain((kind) =>
  fc.tuple(fc.array(hardClass(kind), { minLength: 2, maxLength: 25 }), fc.double({ min: 0.1, max: 0.9, noNaN: true })).map(([classes, share]): SelectionProblem => {
    const sum = (of: (costs: number[]) => number): number => classes.reduce((total, options) => total + of(options.map(({ cost_cents }) => cost_cents)), 0);
    const low = sum((costs) => Math.min(...costs));
    const groups = classes.map((options, g) => ({ id: String(g), options }));
    return { groups, phases: [{ cap_cents: Math.floor(low + share * (sum((costs) => Math.max(...costs)) - low)) }], must: groups.map(({ id }) => id) };
  }),
);

describe('one cap', () => {
  it('agrees with looking at every weight, on weakly and strongly correlated and subset-sum classes', () => {
    fc.assert(
      fc.property(hardProblem, (problem) => {
        const result = select(problem);
        expect(result.value).toBe(byEveryWeight(problem));
        expect(result.status).toBe('optimal');
      }),
      { numRuns: 300 },
    );
  });

  it('says why nothing fits', () => {
    const result = select({ groups: [{ id: 'G', options: [{ id: 'o', cost_cents: 6, value: 1 }, { id: 'p', cost_cents: 7, value: 1 }] }, { id: 'H', options: [{ id: 'o', cost_cents: 6, value: 1 }] }], phases: [{ cap_cents: 10 }], must: ['G', 'H'] });
    expect(result).toMatchObject({ status: 'infeasible', why: 'the cheapest options of what must be taken cost more than the cap of phase 0' });
  });

  it('takes nothing that is not worth anything', () => {
    expect(select({ groups: [{ id: 'G', options: [{ id: 'o', cost_cents: 0, value: -5 }, { id: 'p', cost_cents: 3, value: 0 }] }], phases: [{ cap_cents: 10 }] })).toMatchObject({ status: 'optimal', chosen: [], value: 0 });
  });

  it('refuses what is not a whole number, by name', () => {
    expect(() => select({ groups: [{ id: 'G', options: [{ id: 'o', cost_cents: 1.5, value: 1 }] }], phases: [{ cap_cents: 10 }] })).toThrow('cost_cents of G o must be a whole number ≥ 0, got 1.5');
  });
});
