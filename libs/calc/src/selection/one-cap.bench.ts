// Run: npx tsx --conditions=source libs/calc/src/selection/one-cap.bench.ts [seconds an instance may take]
// The published generator classes, and film-like portfolios against what a spreadsheet does.
import { evenNumbers } from './even-numbers.js';
import { select, type SelectionGroup, type SelectionProblem } from './index.js';

type Pair = readonly [weight: number, profit: number];
type Kind = 'uncorrelated' | 'weakly correlated' | 'strongly correlated' | 'subset-sum' | 'monotone';

/** Classes after Pisinger, DIKU report 95/1, section 7.8: exactly one item of each, capacity half way between lightest and heaviest. */
function published(kind: Kind, of: { k: number; n: number; range: number; seed: number }): SelectionProblem {
  const even = evenNumbers(of.seed * 7919 + of.k * 31 + of.range);
  const draw = (low: number, high: number): number => low + Math.floor(even() * (high - low + 1));
  const rising = (count: number): number[] => Array.from({ length: count }, () => draw(1, of.range)).sort((a, b) => a - b);
  const pairs = (): Pair[] => {
    const weights = rising(of.n);
    if (kind === 'uncorrelated') return weights.map((w) => [w, draw(1, of.range)]);
    if (kind === 'weakly correlated') return weights.map((w) => [w, Math.max(1, draw(w - 10, w + 10))]);
    if (kind === 'subset-sum') return weights.map((w) => [w, w]);
    if (kind === 'monotone') {
      const profits = rising(of.n);
      return weights.map((w, j) => [w, profits[j]!]);
    }
    let weight = 0;
    let profit = 0;
    return weights.map((w) => [(weight += w), (profit += w + 10)]);
  };
  const classes = Array.from({ length: of.k }, pairs);
  const capacity = classes.reduce((sum, each) => sum + Math.min(...each.map(([w]) => w)) + Math.max(...each.map(([w]) => w)), 0);
  const groups = classes.map((each, g) => ({ id: String(g).padStart(6, '0'), options: each.map(([cost_cents, value], o) => ({ id: String(o), cost_cents, value })) }));
  return { groups, phases: [{ cap_cents: Math.floor(capacity / 2) }], must: groups.map(({ id }) => id) };
}

/** Dwellings with 6–10 options of 150 to 3,000 dollars, values in cents that do not add up, a cap of 30 % of everything. */
function filmLike(dwellings: number, seed: number): SelectionProblem {
  const even = evenNumbers(seed);
  let everything = 0;
  const groups = Array.from({ length: dwellings }, (_, g): SelectionGroup => {
    const base = 15_000 + even() * 35_000;
    const level = 2 + even() * 10;
    const options = Array.from({ length: 6 + Math.floor(even() * 5) }, (__, o) => {
      const cost_cents = Math.round(base * (0.7 + even() * 3));
      return { id: String(o), cost_cents, value: Math.round((cost_cents / 100) * level * (0.6 + 0.8 * even()) - 20) };
    });
    everything += Math.max(...options.map(({ cost_cents }) => cost_cents));
    return { id: String(g).padStart(6, '0'), options };
  });
  return { groups, phases: [{ cap_cents: Math.round(everything * 0.3) }] };
}

/** What a spreadsheet does: one option a dwelling by a rule, dwellings sorted by payback or by value per dollar, down the list while it fits. */
function spreadsheet(problem: SelectionProblem, of: 'largest option, by payback' | 'best option per dollar'): number {
  const picked = problem.groups.map(({ options }) => [...options].sort((a, b) => (of === 'best option per dollar' ? b.value / b.cost_cents - a.value / a.cost_cents : b.value - a.value))[0]!);
  picked.sort((a, b) => a.cost_cents / a.value - b.cost_cents / b.value);
  let left = problem.phases[0]!.cap_cents;
  let value = 0;
  for (const option of picked) {
    if (option.value <= 0 || option.cost_cents > left) continue;
    left -= option.cost_cents;
    value += option.value;
  }
  return value;
}

const timed = (problem: SelectionProblem, timeLimit_s: number) => {
  const from = performance.now();
  const result = select({ ...problem, timeLimit_s }, { now_s: () => performance.now() / 1000 });
  if (result.value === null) throw new Error(result.why);
  return { ms: performance.now() - from, ...result };
};
const median = (list: number[]): number => list.sort((a, b) => a - b)[list.length >> 1]!;

const limit_s = Number(process.argv[2] ?? 10);
console.log('published classes, 10 options a class, 5 seeds: proved, median ms, largest gap');
for (const kind of ['uncorrelated', 'weakly correlated', 'subset-sum', 'monotone', 'strongly correlated'] as const) {
  for (const range of [1000, 10_000]) {
    for (const k of [10, 100, 1000]) {
      const runs = [1, 2, 3, 4, 5].map((seed) => timed(published(kind, { k, n: 10, range, seed }), limit_s));
      const proved = runs.filter(({ status }) => status === 'optimal').length;
      console.log(`${kind} R=${range} k=${k}: ${proved} of 5, ${median(runs.map(({ ms }) => ms)).toFixed(1)} ms, ${(Math.max(...runs.map(({ gap }) => gap)) * 100).toExponential(1)} %`);
    }
  }
}
console.log('film-like, one cap: ours proved; spreadsheets lose');
for (const dwellings of [100, 1000, 10_000, 100_000]) {
  const problem = filmLike(dwellings, 1);
  const { ms, status, value } = timed(problem, limit_s);
  const lost = (of: Parameters<typeof spreadsheet>[1]): string => `${of} ${((1 - spreadsheet(problem, of) / value) * 100).toFixed(2)} %`;
  console.log(`${dwellings}: ${status} in ${ms.toFixed(0)} ms, peak ${(process.resourceUsage().maxRSS / 1000).toFixed(0)} MB; ${lost('largest option, by payback')}, ${lost('best option per dollar')}`);
}
