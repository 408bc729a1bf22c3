import { join } from 'node:path';
import { openCatalogue } from '#catalogue';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type Plan, planPortfolio, workersHere } from '#planning';

// Every expected figure stands in steps.md and is worked there by hand.

jest.setTimeout(60_000);
let plan: Plan;
beforeAll(async () => {
  const portfolio = portfolioOf(await readInventory(join(process.cwd(), 'test/worked-example/all-costs/inventory')), '2026-07-01');
  const catalogue = openCatalogue();
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  plan = await planPortfolio({ portfolio, catalogue, weather, id: 'C', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] }, workersHere);
});

const lineOf = (dwelling: string) => plan.lines.find((l) => l.dwelling === dwelling)!;

describe('every cost of a phase, from row to cent', () => {
  it.each([
    ['WX/1', { film_cents: 7668.75, labour_cents: 7586.8305, consumables_cents: 629.3742, removal_cents: 1481.6667, materialTax_cents: 580.8687, labourTax_cents: 272.0549, total_cents: 18_219.545 }],
    ['WY/1', { film_cents: 7668.75, labour_cents: 17_289.0191, consumables_cents: 629.3742, removal_cents: 1481.6667, materialTax_cents: 580.8687, labourTax_cents: 563.1206, total_cents: 28_212.7993 }],
    ['WZ/1', { film_cents: 23_006.25, labour_cents: 7586.8305, consumables_cents: 629.3742, removal_cents: 1481.6667, materialTax_cents: 1654.4937, labourTax_cents: 272.0549, total_cents: 34_630.67 }],
  ] as const)('step 1: the installed cost of %s by its parts', (dwelling, expected) => {
    const { cost } = lineOf(dwelling).option;
    for (const part of Object.keys(expected) as (keyof typeof expected)[]) expect(cost[part]).toBeCloseTo(expected[part], 3);
  });

  it('step 2: whole rolls and film by length, contractor and own crew, smallest orders, both taxes and contingency to the cent', () => {
    expect(plan.phases[0]!.spending).toEqual({
      film_cents: 79_172,
      labour_cents: 32_463,
      consumables_cents: 1888,
      removal_cents: 4445,
      visits_cents: 31_200,
      freight_cents: 52_328,
      tax_cents: 10_444,
      contingency_cents: 16_955,
      total_cents: 228_895,
    });
    expect(plan.cuts.flatMap((c) => c.unplaced)).toEqual([]);
    expect(plan.cuts.find((c) => c.film === 'C')!.bought).toMatchObject([{ roll: 'C by length', width_mm: 1524, length_mm: 153.375 * 25.4, count: 1, cost_cents: 19_172 }]);
  });

  it('step 3: each house is given the best offer it meets, the least of its three terms', () => {
    expect(plan.payback.rebates.map((r) => [r.building, r.rebate, r.cents])).toEqual([['WX', 'R1', 5000], ['WY', 'R1', 5000], ['WZ', 'R2', 6926]]);
    expect(lineOf('WX/1').option.rebates.filter((r) => !r.waits && r.deadline !== '2027-06-29').map((r) => r.rebate)).toEqual(['R1']);
    expect(plan.payback.rebate_cents).toBe(16_926);
  });

  it('step 3: no cap counts on a rebate', () => {
    const { phase, spending, left_cents } = plan.phases[0]!;
    expect(left_cents).toBe(phase.cap_cents - spending.total_cents);
    expect(phase.cap_cents).toBe(300_000);
  });
});
