import { join } from 'node:path';
import { openCatalogue } from '#catalogue';
import type { SolarReading } from '#calc';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type Plan, planPortfolio, workersHere } from '#planning';

const catalogue = openCatalogue();

/** The cottage of the worked example, its old film taken off, with readings behind its west glass. */
async function planWith(readings: readonly SolarReading[]): Promise<Plan> {
  const found = portfolioOf(await readInventory(join(process.cwd(), 'test/worked-example/inventory')), '2026-07-01');
  const portfolio = { ...found, windows: found.windows.map((w) => ({ ...w, existingFilm: 'none' as const })), readings };
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  return planPortfolio({ portfolio, catalogue, weather, id: 'M', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] }, workersHere);
}

const pair = (bare_W_m2: number, filmed_W_m2: number): SolarReading => ({
  building: 'WX', azimuth_deg: 270, glazing: 'single-clear-3', film: 'B', taken: '2026-06-12', repeat: 1, bare_W_m2, filmed_W_m2, outdoors_W_m2: null, inventoryRow: { file: 'readings.csv', row: 2 },
});
const side = (plan: Plan, azimuth_deg: number) => plan.rankedFacades.find((f) => f.azimuth_deg === azimuth_deg)!;

describe('a pair of readings on the west side', () => {
  let sheet: Plan;
  let measured: Plan;
  beforeAll(async () => {
    sheet = await planWith([]);
    measured = await planWith([pair(600, 240)]);
  });

  it('moves the saving of that side by the ratio of the cuts, and no other side', () => {
    // By hand: τ = 0.4 × 0.834 = 0.334, A = 1 − 0.334 − 0.38 = 0.286, SHGC = 0.334 + 0.291 × 0.286 = 0.417, cut 1 − 0.417/0.86 = 0.515.
    // By the sheet: SHGC = 0.24 + 0.291 × 0.38 = 0.351, cut 0.592.
    const ratio = side(measured, 270).yearlyCooling_cents / side(sheet, 270).yearlyCooling_cents;
    expect(ratio).toBeGreaterThan(0.515 / 0.592 - 0.04);
    expect(ratio).toBeLessThan(0.515 / 0.592 + 0.04);
    expect(side(measured, 90).yearlyCooling_cents).toBeCloseTo(side(sheet, 90).yearlyCooling_cents, 6);
  });

  it('narrows the range of the dwelling and stands among the measured values', () => {
    const width = (plan: Plan): number => side(plan, 270).perDollarHigh / side(plan, 270).perDollarLow;
    expect(width(measured)).toBeLessThan(width(sheet));
    expect(measured.assumed.filter((a) => a.basis === 'measured').map((a) => a.field)).toEqual(['solar heat gain with film', 'cut in heat gain by the film']);
  });

  it('changes nothing when it cannot be true, and says so', async () => {
    const refused = await planWith([pair(1100, 400)]);
    expect(side(refused, 270).yearlyCooling_cents).toBe(side(sheet, 270).yearlyCooling_cents);
    expect(refused.findings.some((f) => f.text.includes('not used') && f.text.includes('implausible'))).toBe(true);
  });
});
