// `npm run big-run`: a generated portfolio through the whole line on this machine's threads, stage by stage: seconds and memory.
// node scripts/big-run.mjs [--dwellings 10000] [--distinct N] [--overhangs 0.33] [--threads 2] [--folder DIR] [--no-workbook] [--profile DIR]
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { writeBigPortfolio } from './big-portfolio.mjs';
import { whereTimeGoes } from './where-time-goes.mjs';
import { install, root, startedHere } from './install.mjs';

const text = (fallback) => ({ type: 'string', ...(fallback === undefined ? {} : { default: fallback }) });
const { values: asked } = parseArgs({
  options: { dwellings: text('10000'), distinct: text(), overhangs: text('0.33'), threads: text('2'), folder: text(), profile: text(), 'no-workbook': { type: 'boolean' }, 'from-source': { type: 'boolean' } },
});

/** Seconds by stage: each mark ends the stage before. */
function stageClock() {
  const stages = new Map();
  const began = performance.now();
  let [stage, since] = ['start', began];
  return {
    stages,
    mark(next) {
      const now = performance.now();
      stages.set(stage, (stages.get(stage) ?? 0) + (now - since) / 1000);
      if (stage !== 'start') console.error(`  ${((now - began) / 1000).toFixed(1).padStart(7)} s  ${stage} done`);
      [stage, since] = [next, now];
    },
  };
}

async function run() {
  const dwellings = Number(asked.dwellings);
  const folder = asked.folder ?? mkdtempSync(join(tmpdir(), 'film-rollout-big-'));
  const size = writeBigPortfolio(folder, { dwellings, overhangs: Number(asked.overhangs), ...(asked.distinct === undefined ? {} : { distinct: Number(asked.distinct) }) });
  console.log(`${dwellings} dwellings, ${asked.distinct ?? dwellings} distinct, ${size.windows} windows; ${asked.threads} threads; machine load before ${loadavg().map((l) => l.toFixed(1)).join(' ')}`);
  const { openCatalogue } = await import('#catalogue');
  const { portfolioOf, readInventory } = await import('#intake');
  const { buildingWeather, planPortfolio } = await import('#planning');
  const { workerPool } = await import('#workers');
  const clock = stageClock();
  clock.mark('reading');
  const portfolio = portfolioOf(await readInventory(folder), '2026-07-01');
  clock.mark('sky, films, tasks');
  const catalogue = openCatalogue();
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  const pool = workerPool(Number(asked.threads));
  let said = 0;
  const progress = (stage, done, of) => {
    if (performance.now() - said < 5000 && done < of) return;
    said = performance.now();
    console.error(`  ${stage} ${done} of ${of}`);
  };
  let computed = 0;
  const work = {
    ...pool,
    drawnDwellings: async (...of) => {
      clock.mark('draws on threads');
      const drawn = await pool.drawnDwellings(...of);
      clock.mark('the rest of the plan');
      return drawn;
    },
    dwellingOptions: async (tasks, ...rest) => {
      clock.mark('options on threads');
      computed += tasks.length;
      const results = await pool.dwellingOptions(tasks, ...rest);
      clock.mark('costs, values');
      return results;
    },
    meterLoads: async (...of) => {
      clock.mark('meter loads on threads');
      const loads = await pool.meterLoads(...of);
      clock.mark('the rest of the plan');
      return loads;
    },
    choose: async (...of) => {
      clock.mark('selection');
      const chosen = await pool.choose(...of);
      clock.mark('cutting, pricing');
      return chosen;
    },
  };
  const plan = await planPortfolio({ portfolio, catalogue, weather, id: 'BIG', revision: 1, parent: null, madeOn: '2026-07-01', program: 'big run', inputHash: 'none', findings: [], timeLimit_s: 3, progress }, work);
  clock.mark('end threads');
  await pool.end();
  if (!asked['no-workbook']) {
    clock.mark('workbook');
    const { writeRolloutWorkbook } = await import('#workbook');
    await writeRolloutWorkbook(plan, join(folder, 'rollout.xlsx'));
  }
  clock.mark('done');
  clock.stages.delete('start');
  console.log(`computed ${computed} distinct dwellings; ranked ${plan.rankedDwellings.length}; planned ${plan.lines.length} lines`);
  let total = 0;
  for (const [stage, seconds] of clock.stages) {
    total += seconds;
    console.log(`${stage.padEnd(26)} ${seconds.toFixed(2).padStart(8)} s`);
  }
  console.log(`${'all'.padEnd(26)} ${total.toFixed(2).padStart(8)} s`);
  console.log(`peak memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB, threads in it; machine load after ${loadavg().map((l) => l.toFixed(1)).join(' ')}`);
  if (asked.folder === undefined) rmSync(folder, { recursive: true, force: true });
}

if (asked.profile !== undefined && startedHere(import.meta.url)) {
  const rest = process.argv.slice(2).filter((arg, i, all) => arg !== '--profile' && all[i - 1] !== '--profile');
  const { status } = spawnSync(process.execPath, [...process.execArgv, '--cpu-prof', `--cpu-prof-dir=${asked.profile}`, join(root, 'scripts', 'big-run.mjs'), ...rest], { stdio: 'inherit', cwd: root });
  console.log(whereTimeGoes(asked.profile));
  process.exitCode = status ?? 1;
} else if (startedHere(import.meta.url)) {
  if (!asked['from-source']) {
    install();
    (await import('./build.mjs')).build();
  }
  await run();
}
