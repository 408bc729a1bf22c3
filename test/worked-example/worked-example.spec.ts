import { join } from 'node:path';
import { openCatalogue } from '#catalogue';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type Plan, type PlanLine, planPortfolio, workersHere } from '#planning';
import { rolloutWorkbook } from '#workbook';

// Every expected figure stands in steps.md and is worked there by hand.

async function planOfCottage(): Promise<Plan> {
  const portfolio = portfolioOf(await readInventory(join(process.cwd(), 'test/worked-example/inventory')), '2026-07-01');
  const catalogue = openCatalogue();
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  return planPortfolio({ portfolio, catalogue, weather, id: 'W', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] }, workersHere);
}

/** (1 − 1.03⁻¹²) / 0.03, step 7. */
const TWELVE_YEARS = 9.954004;

describe('the worked example, from row to cell', () => {
  let plan: Plan;
  let line: PlanLine;
  beforeAll(async () => {
    plan = await planOfCottage();
    line = plan.lines[0]!;
  });

  it('plans both sides of the one dwelling and names the rows it came from', () => {
    expect(plan.lines).toHaveLength(1);
    expect(line.option.facades).toEqual([90, 270]);
    expect(line.windows.map((w) => [w.window, w.inventoryRow.file, w.inventoryRow.row])).toEqual([
      ['WX/1/W01', 'windows.csv', 2],
      ['WX/1/W02', 'windows.csv', 3],
      ['WX/1/W03', 'windows.csv', 4],
    ]);
  });

  it('step 1: adds an inch to cut and takes an eighth off to finish', () => {
    const panes = plan.workOrders[0]!.panes.map((p) => [p.pane, p.cut, p.finished]).sort();
    expect(panes).toEqual([
      ['WX/1/W01/1', '47 × 47', '45 7/8 × 45 7/8'],
      ['WX/1/W02/1', '47 × 47', '45 7/8 × 45 7/8'],
      ['WX/1/W03/1', '35 1/8 × 59 3/8', '34 × 58 1/4'],
    ]);
  });

  it('step 2: sums glass and pieces', () => {
    expect(line.option.glassArea_m2).toBeCloseTo(4.015506, 6);
    expect(line.option.pieceArea_m2).toBeCloseTo(4.195828, 6);
  });

  it('step 3: buys one whole roll and keeps what is left of it', () => {
    const cut = plan.cuts[0]!;
    expect(plan.films[0]!.waste).toBeCloseTo(0.131998, 6);
    expect(cut.bought.map((b) => [b.roll, b.count, b.cost_cents])).toEqual([['B-48', 1, 60_000]]);
    expect(cut.leftover.map((l) => l.length_mm)).toEqual([26_584.275]);
  });

  it('step 4: takes the minutes of the time model', () => {
    const { low, best, high } = line.option.minutes;
    expect(best).toBeCloseTo(151.141618, 4);
    expect(low).toBeCloseTo(98.24, 2);
    expect(high).toBeCloseTo(204.04, 2);
  });

  it('step 5: adds the installed cost up from its parts', () => {
    const { cost } = line.option;
    expect(cost.film_cents).toBeCloseTo(7668.75, 2);
    expect(cost.labour_cents).toBeCloseTo(7586.83, 2);
    expect(cost.removal_cents).toBeCloseTo(1481.67, 2);
    expect(cost.consumables_cents).toBeCloseTo(629.37, 2);
    expect(cost.materialTax_cents).toBeCloseTo(414.91, 2);
    expect(cost.total_cents).toBeCloseTo(17_781.53, 2);
  });

  it('step 6: pays whole rolls, visit, freight, tax and contingency within the cap', () => {
    expect(plan.phases[0]!.spending).toEqual({
      film_cents: 60_000,
      labour_cents: 7587,
      consumables_cents: 629,
      removal_cents: 1482,
      visits_cents: 9600,
      freight_cents: 4500,
      tax_cents: 3256,
      contingency_cents: 6964,
      total_cents: 94_018,
    });
    expect(plan.phases[0]!.left_cents).toBe(25_982);
  });

  it('step 7: values the saved electricity at the tariff, over twelve years at 3 %', () => {
    const saving = line.option.segments[0]!.saving;
    expect(line.option.segments).toHaveLength(1);
    // Twelve months, each bill rounded to the cent before and after: half a cent each way at the most.
    expect(Math.abs(saving.cooling_cents - saving.addedHeating_cents - 20 * (saving.coolingElectricity_kWh - saving.addedHeating_kWh))).toBeLessThanOrEqual(12);
    const yearly = saving.cooling_cents - saving.addedHeating_cents;
    expect(line.value.whole_cents).toBeCloseTo(TWELVE_YEARS * yearly - 17_781.53, 0);
    expect(line.sir).toBeCloseTo((TWELVE_YEARS * yearly) / 17_781.53, 4);
    expect(line.simplePayback_yr).toBeCloseTo(17_781.53 / yearly, 4);
    expect(line.option.yearlyCooling_cents).toBeCloseTo(saving.cooling_cents, 6);
  });

  it('step 8: shows the plan at what is really paid', () => {
    const yearly = plan.payback.firstYear_cents;
    expect(plan.payback.cost_cents + plan.payback.overhead_cents).toBe(94_018);
    expect(plan.payback.npv_cents).toBeCloseTo(TWELVE_YEARS * yearly - 94_018, -1);
  });

  it('saves no more than the heat of the sun that the film can keep out', () => {
    // All sun on the two sides of a site where level ground gets less than 2000 kWh/m² a year, at a machine's COP above 2:
    // a bound, not an estimate.
    expect(line.option.segments[0]!.saving.coolingElectricity_kWh).toBeLessThan((line.option.glassArea_m2 * 2000) / 2);
    expect(line.option.segments[0]!.saving.coolingElectricity_kWh).toBeGreaterThan(0);
  });

  it('writes the same figures into the cells of the workbook', () => {
    const cells: unknown[] = [];
    for (const name of ['Plan', 'Plan details', 'Work orders', 'Film to buy']) {
      rolloutWorkbook(plan).getWorksheet(name)!.eachRow((row) => { row.eachCell((cell) => { cells.push(cell.value); }); });
    }
    expect(cells).toEqual(expect.arrayContaining(['35 1/8 × 59 3/8', '34 × 58 1/4']));
    expect(cells.some((c) => typeof c === 'string' && /windows\.csv 2\b.*\b3\b.*\b4$/.test(c))).toBe(true);
    const numbers = cells.filter((c) => typeof c === 'number');
    for (const dollars of [177.82, 600]) expect(numbers.some((n) => Math.abs(n - dollars) < 0.006)).toBe(true);
  });
});
