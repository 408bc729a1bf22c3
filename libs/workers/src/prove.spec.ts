import { checkCertificate, select } from '#calc';
import { joined, proveChoice } from './prove.js';
import { threeYears } from './three-years.js';

const problem = threeYears({ dwellings: 40, visits: true, priced: true });
const least = (): ReturnType<typeof select> => select(problem, { work_s: 0.001 });

describe('a choice gone on with until it is proved', () => {
  it('takes the better of both plans and the lower bound, and the check still holds', () => {
    const own = least();
    const best = select(problem);
    if (own.value === null || best.value === null || own.value >= best.value) throw new Error('the short search is expected to stop below the proved one');
    const together = joined(problem, own, { status: 'optimal', chosen: best.chosen, value: best.value, bound: best.value + 0.2 });
    expect(together).toMatchObject({ status: 'optimal', value: best.value, bound: best.value, gap: 0 });
    expect(checkCertificate(problem, together).findings).toEqual([]);
  });

  it('keeps its own plan where the solver has none or a lesser one', () => {
    const own = least();
    expect(joined(problem, own, { status: 'bounded', chosen: null, value: null, bound: null })).toEqual(own);
  });

  it('ends as soon as one of both has the proof, and tells better plans with their bound', async () => {
    const told: number[] = [];
    const answer = await proveChoice(problem, { seconds: 120, better: ({ value }) => told.push(value) });
    expect(answer.status).toBe('optimal');
    expect(answer.value).toBe(select(problem).value);
    expect(told.at(-1)).toBe(answer.value);
    expect([...told].sort((a, b) => a - b)).toEqual(told);
  }, 150_000);
});
