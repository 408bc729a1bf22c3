// `npm run workbook-size`: a plan of many dwellings, made of copies of a small one, streamed out as a workbook: seconds and memory.
// node --import tsx --conditions=source scripts/workbook-size.mjs [--dwellings 10000] [--lines 3000] [--plan FILE] [--out FILE] [--in-memory]
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const text = (fallback) => ({ type: 'string', ...(fallback === undefined ? {} : { default: fallback }) });
const { values: asked } = parseArgs({ options: { dwellings: text('10000'), lines: text('3000'), plan: text(), out: text(), make: text(), 'in-memory': { type: 'boolean' } } });

const MB = 1e6;
const script = fileURLToPath(import.meta.url);
const LIMIT_MB = 512;

async function makePlan(file) {
  const { plannedWith } = await import('../test/workbook/planned.ts');
  writeFileSync(file, JSON.stringify(await plannedWith((p) => p)));
}

async function measure(file, out) {
  const { replicatedPlan } = await import('../test/workbook/replicated-plan.ts');
  const { rolloutWorkbook, streamRolloutWorkbook } = await import('#workbook');
  const began = process.memoryUsage();
  const plan = replicatedPlan(JSON.parse(readFileSync(file, 'utf8')), { dwellings: Number(asked.dwellings), lines: Number(asked.lines) });
  globalThis.gc?.();
  const held = process.memoryUsage();
  const start = performance.now();
  if (asked['in-memory']) await rolloutWorkbook(plan).xlsx.writeFile(out);
  else await streamRolloutWorkbook(plan, out);
  const seconds = (performance.now() - start) / 1000;
  const peak_MB = (process.resourceUsage().maxRSS * 1024) / MB;
  console.log(`${plan.dwellings.length} dwellings, ${plan.lines.length} lines, ${asked['in-memory'] ? 'in memory' : 'streamed'}: ${seconds.toFixed(1)} s, ${(statSync(out).size / MB).toFixed(1)} MB of file`);
  console.log(`memory: program ${(began.rss / MB).toFixed(0)} MB, plan ${((held.heapUsed - began.heapUsed) / MB).toFixed(0)} MB of heap, peak ${peak_MB.toFixed(0)} MB (limit ${LIMIT_MB} MB; the engine is given no limit of its own)`);
  if (!asked['in-memory'] && peak_MB > LIMIT_MB) process.exitCode = 1;
}

if (asked.make !== undefined) await makePlan(asked.make);
else if (process.env.WORKBOOK_SIZE_CHILD === '1') await measure(asked.plan, asked.out);
else {
  // The plan is made in a process of its own, so that its memory does not count.
  const folder = mkdtempSync(join(tmpdir(), 'workbook-size-'));
  const plan = asked.plan ?? join(folder, 'plan.json');
  const run = (args, env = {}) => spawnSync(process.execPath, ['--import', 'tsx', '--conditions=source', '--expose-gc', script, ...args], { stdio: 'inherit', env: { ...process.env, ...env } }).status ?? 1;
  const made = asked.plan === undefined ? run(['--make', plan]) : 0;
  process.exitCode = made !== 0 ? made : run(['--dwellings', asked.dwellings, '--lines', asked.lines, '--plan', plan, '--out', asked.out ?? join(folder, 'rollout.xlsx'), ...(asked['in-memory'] ? ['--in-memory'] : [])], { WORKBOOK_SIZE_CHILD: '1' });
  rmSync(folder, { recursive: true, force: true });
}
