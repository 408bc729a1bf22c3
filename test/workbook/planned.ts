import { join } from 'node:path';
import type { Portfolio } from '#calc';
import { openCatalogue } from '#catalogue';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type Plan, planPortfolio, workersHere } from '#planning';

const catalogue = openCatalogue();

/** Rolls a tenth as long, so that a small plan is not held up by whole rolls. */
const shortRolls = (portfolio: Portfolio): Portfolio => ({ ...portfolio, rolls: portfolio.rolls.map((r) => ({ ...r, length_mm: r.length_mm / 10, price_cents: (r.price_cents ?? 0) / 10 })) });

/** A plan of a small inventory, changed as a test asks. */
export async function plannedWith(change: (portfolio: Portfolio) => Portfolio): Promise<Plan> {
  const inventory = await readInventory(join(process.cwd(), 'test/inventories/ok/two-buildings'));
  const portfolio = change(shortRolls(portfolioOf(inventory, '2026-07-01')));
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  return planPortfolio({ portfolio, catalogue, weather, id: 'P', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] }, workersHere);
}
