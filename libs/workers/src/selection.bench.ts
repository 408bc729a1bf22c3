// Run: npx tsx --conditions=source libs/workers/src/selection.bench.ts [counted seconds] [dwellings, or several with commas] [problem.json …]
// Own search against the mixed-integer solver in the same wall time and against two spreadsheets, the same instances, one after the other.
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { checkCertificate, select, type SelectionProblem } from '#calc';
import { selectByMilp } from './milp.js';
import { spreadsheetValue } from './spreadsheet.js';
import { threeYears } from './three-years.js';

const work_s = Number(process.argv[2] ?? 10);
const sizes = (process.argv[3] ?? '40,118,300,1000').split(',').map(Number).filter((n) => n > 0);
/** Above this the solver is not asked: its model alone takes minutes. */
const MOST_FOR_SOLVER = 1000;

const percent = (share: number): string => `${(share * 100).toFixed(4)} %`;

async function line(name: string, problem: SelectionProblem): Promise<string> {
  const from = performance.now();
  const own = select(problem, { work_s });
  const own_s = (performance.now() - from) / 1000;
  if (own.value === null) return `${name}: ${own.why}`;
  const check = checkCertificate(problem, own);
  const shares = (value: number): string => percent((own.bound - value) / own.bound);
  const sheets = (['largest option, by payback', 'best option per dollar'] as const).map((rule) => shares(spreadsheetValue(problem, rule)));
  const solver = problem.groups.length > MOST_FOR_SOLVER ? null : await selectByMilp(problem, { timeLimit_s: Math.max(own_s, work_s) });
  const theirs = solver === null ? 'not asked' : solver.value === null ? 'no plan' : `${shares(solver.value)} (${solver.status})`;
  const against = solver?.value === null || solver?.value === undefined ? '' : own.value > solver.value ? 'above' : own.value === solver.value ? 'equal' : 'BELOW';
  return `| ${[name, problem.groups.length, percent(own.gap), own.status, `${own.effort.endedBy}, ${own_s.toFixed(1)} s`, check.valid ? 'holds' : check.findings.join('; '), theirs, against, ...sheets].join(' | ')} |`;
}

console.log(`own search: ${work_s} counted seconds; the solver has the wall time the own search took, at least ${work_s} s; gaps to the own bound`);
console.log('| instance | dwellings | own gap | status | ended by, wall time | certificate | solver gap | own against solver | payback sheet | per-dollar sheet |\n|---|---|---|---|---|---|---|---|---|---|');
for (const file of process.argv.slice(4)) console.log(await line(basename(file, '.json'), JSON.parse(readFileSync(file, 'utf8')) as SelectionProblem));
for (const dwellings of sizes) {
  for (const visits of [false, true]) console.log(await line(visits ? 'three caps, visits and minutes' : 'three caps', threeYears({ dwellings, visits })));
  if (dwellings <= 1000) console.log(await line('three caps, visits and minutes, visits off the value', threeYears({ dwellings, visits: true, priced: true })));
}
