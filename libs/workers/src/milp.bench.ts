// Run: npx tsx --conditions=source libs/workers/src/milp.bench.ts [seconds each]
// Own search against the mixed-integer solver, the same instances, the same time, one after the other.
import { select, type SelectionGroup, type SelectionProblem } from '#calc';
import { selectByMilp } from './milp.js';

function evenNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Dwellings in buildings of 20, 6–10 options, three years worth 10, 9 and 8, caps of 10 % of everything each; visits and minutes or not. */
function threeYears(dwellings: number, visits: boolean): SelectionProblem {
  const even = evenNumbers(dwellings);
  let cost = 0;
  let minutes = 0;
  const groups = Array.from({ length: dwellings }, (_, g): SelectionGroup => {
    const base = 15_000 + even() * 35_000;
    const level = 2 + even() * 10;
    const options = Array.from({ length: 6 + Math.floor(even() * 5) }, (__, o) => {
      const cost_cents = Math.round(base * (0.7 + even() * 3));
      return { id: String(o), cost_cents, value: Math.round((cost_cents / 100) * level * (0.6 + 0.8 * even())), crewMinutes: visits ? Math.round((cost_cents / 500) * (0.6 + 0.8 * even())) : 0 };
    });
    cost += Math.max(...options.map(({ cost_cents }) => cost_cents));
    minutes += Math.max(...options.map(({ crewMinutes }) => crewMinutes));
    return { id: String(g).padStart(5, '0'), building: String(Math.floor(g / 20)).padStart(4, '0'), options };
  });
  return {
    groups,
    phases: [10, 9, 8].map((valueFactor) => ({ cap_cents: Math.round(cost / 10), valueFactor, ...(visits ? { crewMinutes: Math.round(minutes / 10) } : {}) })),
    buildings: Array.from({ length: Math.ceil(dwellings / 20) }, (_, b) => ({ id: String(b).padStart(4, '0'), visit_cents: visits ? 30_000 + Math.round(even() * 120_000) : 0, visitMinutes: visits ? 120 : 0 })),
  };
}

const seconds = Number(process.argv[2] ?? 10);
for (const [dwellings, visits] of [[40, false], [118, false], [40, true], [118, true], [300, true], [1000, true]] as const) {
  const problem = threeYears(dwellings, visits);
  const from = performance.now();
  const own = select({ ...problem, timeLimit_s: seconds }, { now_s: () => performance.now() / 1000 });
  const own_s = (performance.now() - from) / 1000;
  const solver = await selectByMilp(problem, { timeLimit_s: seconds });
  const gap = (value: number | null, bound: number | null): string => (value === null || bound === null ? 'none' : `${(((bound - value) / bound) * 100).toFixed(4)} %`);
  console.log(`${dwellings} dwellings${visits ? ', visits and minutes' : ''}: own ${String(own.value)} (${own.status}, gap ${gap(own.value, own.bound)}, ${own_s.toFixed(1)} s); solver ${String(solver.value)} (${solver.status}, gap ${gap(solver.value, solver.bound)})`);
}
