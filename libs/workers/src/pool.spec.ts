import { join } from 'node:path';
import { openCatalogue } from '#catalogue';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type Plan, planPortfolio, type Workers, workersHere } from '#planning';
import { workerPool } from './pool.js';

const catalogue = openCatalogue();

/** The plan of the example's first building: three dwellings on one meter, so options, loads and choice all go through the threads. */
async function planBy(work: Workers, progress?: (stage: string, done: number, of: number) => void): Promise<Plan> {
  const whole = portfolioOf(await readInventory(join(process.cwd(), 'test/inventories/ok/two-buildings')), '2026-07-01');
  const dwellings = whole.dwellings.filter((d) => d.building === 'QA');
  const portfolio = { ...whole, dwellings, dwellingMeters: whole.dwellingMeters.filter((m) => m.dwelling.startsWith('QA/')) };
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  return planPortfolio({ portfolio, catalogue, weather, id: 'P', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [], ...(progress === undefined ? {} : { progress }) }, work);
}

describe('a pool of threads', () => {
  it('makes the plan of one thread, to the last digit, and reports how far it is', async () => {
    const pool = workerPool(2);
    try {
      const done: number[] = [];
      const byThreads = await planBy(pool, (_, n) => done.push(n));
      expect(byThreads.lines.length).toBeGreaterThan(0);
      expect(done.at(-1)).toBe(3);
      expect(JSON.stringify(byThreads)).toBe(JSON.stringify(await planBy(workersHere)));
    } finally {
      await pool.end();
    }
  }, 60_000);
});
