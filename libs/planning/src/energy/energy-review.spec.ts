import { join } from 'node:path';
import { openCatalogue } from '#catalogue';
import { type Portfolio, WOf_ton } from '#calc';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type Plan, planPortfolio, workersHere } from '#planning';
import { failureBreakEven } from './failure-break-even.js';

const catalogue = openCatalogue();

async function planOf(change: (portfolio: Portfolio) => Portfolio): Promise<Plan> {
  const portfolio = change(portfolioOf(await readInventory(join(process.cwd(), 'test/worked-example/inventory')), '2026-07-01'));
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  return planPortfolio({ portfolio, catalogue, weather, id: 'E', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] }, workersHere);
}

describe('an option looked at closely', () => {
  let plan: Plan;
  const line = () => plan.energy.options.find((o) => o.phase !== null)!;
  beforeAll(async () => {
    // Double glass west with the makers' leave, a price for a broken pane.
    plan = await planOf((p) => ({
      ...p,
      buildings: p.buildings.map((b) => ({ ...b, paneReplacement_cents: 25_000 })),
      consents: [{ id: 'C', building: 'WX', kind: 'glass maker', glazing: null, film: null, window: null, state: 'not-needed' as const, date: null, reference: null, inventoryRow: { file: 'consents.csv', row: 2 } }],
      windows: p.windows.map((w) => (w.azimuth_deg === 270 ? { ...w, glazing: 'double-bronze-clear-6', existingFilm: 'none' as const } : w)),
    }));
  });

  it('has seasons that sum to the first year of the option', () => {
    const { summer, winter } = line();
    const saving = plan.lines[0]!.option.segments[0]!.saving;
    expect(summer.cooling_kWh + winter.cooling_kWh).toBeCloseTo(saving.coolingElectricity_kWh, 6);
    expect(summer.addedHeating_kWh + winter.addedHeating_kWh).toBeCloseTo(saving.addedHeating_kWh, 6);
    // Months are rounded to the cent: at most half a cent for each of two bills of twelve months.
    expect(Math.abs(summer.cooling_cents + winter.cooling_cents - saving.cooling_cents)).toBeLessThan(12);
  });

  it('gives the run hours the two runs differ by', () => {
    const { runHours_h } = plan.lines[0]!.option;
    expect(line().runHoursAvoided_h).toBeCloseTo(runHours_h.asFound - runHours_h.filmed, 6);
  });

  it('saves about the load over SHR when moisture is let follow the shorter run: the upper figure', () => {
    const { damper, summer, winter } = line();
    const { sensibleHeatRatio } = catalogue.plants.performance('single-speed');
    const ratio = damper.cooling_kWh / (summer.cooling_kWh + winter.cooling_kWh);
    expect(ratio).toBeGreaterThan(0.95 / sensibleHeatRatio);
    expect(ratio).toBeLessThan(1.05 / sensibleHeatRatio);
  });

  it('peaks in the afternoon of the design day within the machine, and less behind film', () => {
    const { peak } = line();
    expect(peak.hour).toBeGreaterThanOrEqual(13);
    expect(peak.filmedThen_kW).toBeLessThan(peak.asFound_kW);
    expect(WOf_ton(peak.asFound_tons)).toBeLessThanOrEqual(WOf_ton(2));
    expect(plan.energy.buildings).toMatchObject([{ building: 'WX', dwellings: 1, dryBulb_degC: 33.3, isHumid: true }]);
    expect(plan.energy.buildings[0]!.asFound_kW).toBeCloseTo(peak.asFound_kW, 9);
  });

  // Computed with an illustrative film of T .24, Rf .38, e .75: share of bare gain removed 60 % on single clear, 34 % on double 6 mm bronze and clear.
  it('says what survives of the sheet on double bronze glass', () => {
    const glass = plan.energy.glass.find((g) => g.option === line().option && g.glazing.startsWith('Double'))!;
    expect(glass.cut).toBeCloseTo(0.34, 1);
    expect(glass.survives).toBeGreaterThan(0.5);
    expect(glass.survives).toBeLessThan(0.65);
    expect(glass.misleads).toBe(true);
  });

  it('shows the humid warning beside the plan', () => {
    expect(plan.findings.some((f) => f.subject === 'WX' && f.text.startsWith('humid climate'))).toBe(true);
  });
});

describe('the break-even failure share', () => {
  // By hand: 300.00 over 5 panes of 100.00 for 2 years at no interest = 300 / (5 × 100 × 2) = 0.3 a year.
  it('is the value over what failing panes would cost', () => {
    expect(failureBreakEven({ value_cents: 30_000, panes: 5, paneReplacement_cents: 10_000, years: 2, realDiscountRate: 0 }).share_1_yr).toBeCloseTo(0.3, 12);
  });
  it('does not exist without a price, or without value', () => {
    expect(failureBreakEven({ value_cents: 1, panes: 1, paneReplacement_cents: null, years: 1, realDiscountRate: 0 })).toMatchObject({ share_1_yr: null });
    expect(failureBreakEven({ value_cents: -1, panes: 1, paneReplacement_cents: 1, years: 1, realDiscountRate: 0 }).why).toContain('not worth');
  });
});
