import { join } from 'node:path';
import { openCatalogue } from '#catalogue';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather } from '../job/building-weather.js';
import type { PlanJob } from '../job/plan-job.js';
import { workersHere } from '../workers-here.js';
import { bestUseNow, type NowAnswer } from './best-use-now.js';

jest.setTimeout(90_000);

describe('three hours, what is left of the rolls, and two open dwellings', () => {
  let job: PlanJob;
  const dwellings = ['QB/001', 'QB/002'];
  const roll = (length_mm: number) => [{ roll: 'END', film: 'B', width_mm: 1524, length_mm, lot: null }];
  const ask = (hours: number, length_mm: number): Promise<NowAnswer> => bestUseNow(job, workersHere, { hours, dwellings, stock: roll(length_mm) });
  beforeAll(async () => {
    const catalogue = openCatalogue();
    const portfolio = portfolioOf(await readInventory(join(process.cwd(), 'test/inventories/ok/two-buildings')), '2026-07-01');
    const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
    job = { portfolio, catalogue, weather, id: 'now', revision: 1, parent: null, madeOn: '2026-09-01', program: 'test', inputHash: 'none', findings: [] };
  });

  it('does both with time and film enough, cut from the shelf alone', async () => {
    const { uses, why } = await ask(40, 60_000);
    expect(why).toBeNull();
    expect(uses[0]!.options.map((o) => o.dwelling)).toEqual(dwellings);
    expect(uses[0]!.cuts.every((c) => c.bought.length === 0 && c.unplaced.length === 0)).toBe(true);
    expect(uses[0]!.cuts.flatMap((c) => c.pieces)).toHaveLength(uses[0]!.options.reduce((sum, o) => sum + o.panes, 0));
    const values = uses.map((u) => u.value_cents);
    expect(values).toEqual([...values].sort((a, b) => b - a));
  });

  it('keeps within the minutes, and does less with less', async () => {
    const [much, little] = [await ask(40, 60_000), await ask(2, 60_000)];
    for (const use of little.uses) expect(use.minutes).toBeLessThanOrEqual(little.personMinutes);
    expect(little.uses[0]?.value_cents ?? 0).toBeLessThanOrEqual(much.uses[0]!.value_cents);
  });

  it('says why nothing can be done: the end is shorter than any pane, the film is another', async () => {
    expect(await ask(40, 350)).toMatchObject({ uses: [], why: 'nothing fits both the minutes and the film on the shelf' });
    const other = await bestUseNow(job, workersHere, { hours: 40, dwellings, stock: [{ ...roll(60_000)[0]!, film: 'none' }] });
    expect(other.why).toContain('no option of these dwellings');
  });

  it('refuses a dwelling nobody knows', async () => expect(bestUseNow(job, workersHere, { hours: 1, dwellings: ['QB/999'], stock: [] })).rejects.toThrow('QB/999'));
});
