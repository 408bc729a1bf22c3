import { join } from 'node:path';
import type { Portfolio } from '#calc';
import { openCatalogue } from '#catalogue';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, workersHere } from '#planning';
import { handLocks } from '../known/hand-locks.js';
import { knownPortfolio } from '../known/known-portfolio.js';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import { planTerms } from '../job/plan-terms.js';
import { skyOnFacades } from '../sky/sky-on-facades.js';
import { filmChoices } from './film-choices.js';
import { foundTasks, valuedOptions } from './valued-options.js';

const catalogue = openCatalogue();

/** First-year kWh that film B saves on both sides of the cottage, changed as a test asks. */
async function savedBy(change: (portfolio: Portfolio) => Portfolio = (p) => p): Promise<number> {
  const portfolio = change(portfolioOf(await readInventory(join(process.cwd(), 'test/worked-example/inventory')), '2026-07-01'));
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  const job = { portfolio, catalogue, weather } as PlanJob;
  const known = knownPortfolio(portfolio, defaultsOf(catalogue));
  const skies = skyOnFacades(known, weather, 0.2);
  const choices = filmChoices(known, skies, { job, terms: planTerms(portfolio.settings, defaultsOf(catalogue)), locks: handLocks([], known) });
  const tasks = await foundTasks(known, { skies, choices, work: workersHere, mixed: false, years: [2026, 2038] });
  const { options } = await valuedOptions(tasks, { choices, work: workersHere });
  return options.find((o) => o.facades.length === 2)!.segments[0]!.saving.coolingElectricity_kWh;
}

const windows = (p: Portfolio, change: Partial<Portfolio['windows'][number]>): Portfolio => ({ ...p, windows: p.windows.map((w) => ({ ...w, ...change })) });
const dwellings = (p: Portfolio, change: Partial<Portfolio['dwellings'][number]>): Portfolio => ({ ...p, dwellings: p.dwellings.map((d) => ({ ...d, ...change })) });

describe('what a survey says changes what film saves', () => {
  let usual: number;
  beforeAll(async () => {
    usual = await savedBy();
  });

  it('less behind a solar screen than behind an insect screen: about by what the screens let by', async () => {
    const insect = await savedBy((p) => windows(p, { insectScreenShare: 1 }));
    const solar = await savedBy((p) => windows(p, { insectScreenShare: 1, screenKind: 'solar' }));
    expect(insect / usual).toBeGreaterThan(0.55);
    expect(insect / usual).toBeLessThan(0.72);
    expect(solar / usual).toBeGreaterThan(0.13);
    expect(solar / usual).toBeLessThan(0.25);
  });

  it('more where ducts lose a fifth: the load over 0.8, less what a machine near its full load gains in part-load losses', async () => {
    const ducts = await savedBy((p) => ({ ...p, dwellings: p.dwellings.map((d) => ({ ...d, plant: { ...d.plant, ductEfficiency: 0.8 } })) }));
    expect(ducts / usual).toBeGreaterThan(1.15);
    expect(ducts / usual).toBeLessThan(1.3);
  });

  it('less where the thermostat is let up by day', async () => {
    const away = await savedBy((p) => dwellings(p, { setbacks: { cooling: { setPoint_degC: 29, hours: [8, 9, 10, 11, 12, 13, 14, 15, 16] }, heating: null } }));
    expect(away).toBeLessThan(usual);
    expect(away).toBeGreaterThan(0);
  });

  it('less behind trees, and more again where they lose their leaf in winter', async () => {
    const tree = (passesBare: number) => savedBy((p) => ({ ...p, buildings: p.buildings.map((b) => ({ ...b, horizons: [{ azimuth_deg: 270, points: [{ azimuth_deg: 270, altitude_deg: 60, passes: 0.2, passesBare }] }] })) }));
    const [evergreen, bare] = [await tree(0.2), await tree(0.65)];
    expect(evergreen).toBeLessThan(usual);
    expect(bare).toBeGreaterThan(evergreen);
    expect(bare).toBeLessThan(usual);
  });
});
