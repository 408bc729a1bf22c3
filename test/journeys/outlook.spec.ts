import { join } from 'node:path';
import { openCatalogue, type UncertainInput } from '#catalogue';
import { type Distribution, drawnShare, normalQuantile, type Portfolio, readTariff, stepsCost_cents } from '#calc';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type LineOutlook, type Plan, planPortfolio, workersHere } from '#planning';

const folder = join(process.cwd(), 'test/inventories/ok/two-buildings');
const catalogue = openCatalogue();

/** What a draw that departs from nothing takes. */
const NOTHING: Record<string, Distribution> = Object.fromEntries(
  catalogue.uncertainInputs.map(({ key, unit }): [string, Distribution] => [key, { kind: 'listed', values: [{ value: unit.startsWith('factor') ? 1 : 0, chance: 1 }] }]),
);

/** The inputs with all but some of them certain. */
const only = (...keys: readonly string[]): UncertainInput[] => catalogue.uncertainInputs.map((input) => (keys.includes(input.key) ? input : { ...input, spread: () => NOTHING[input.key]! }));

const planWith = (portfolio: Portfolio, of: { readonly inputs: readonly UncertainInput[]; readonly draws: number; readonly selections: number; readonly aim?: Plan['aim'] }): Promise<Plan> => {
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  const job = { portfolio, weather, id: 'P', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] };
  return planPortfolio({ ...job, catalogue: { ...catalogue, assumptions: catalogue.assumptions, uncertainInputs: of.inputs }, outlook: { seed: 11, draws: of.draws, selections: of.selections }, ...(of.aim === undefined ? {} : { aim: of.aim }) }, workersHere);
};

jest.setTimeout(90_000);
let portfolio: Portfolio;
let certain: Plan;
let drawn: Plan;
beforeAll(async () => {
  portfolio = portfolioOf(await readInventory(folder), '2026-07-01');
  certain = await planWith(portfolio, { inputs: only(), draws: 2, selections: 1 });
  drawn = await planWith(portfolio, { inputs: catalogue.uncertainInputs, draws: 12, selections: 4 });
});

const lineOf = (plan: Plan, line: LineOutlook) => plan.lines.find((l) => l.dwelling === line.dwelling)!;

describe('an outlook where nothing is uncertain', () => {
  it('gives the plan its own figures back, line by line: draws and plan run the same functions', () => {
    expect(certain.outlook!.lines).toHaveLength(certain.lines.length);
    for (const line of certain.outlook!.lines) {
      const planned = lineOf(certain, line);
      expect(line.asModelled.value_cents.middle).toBeCloseTo(planned.value.whole_cents, 4);
      expect(line.asModelled.value_cents.nineInTenAtLeast).toBeCloseTo(line.asModelled.value_cents.oneInTenMoreThan, 6);
    }
  });

  it('gives the plan its net present value back, visits and film beyond the pieces taken off', () => {
    expect(Math.abs(certain.outlook!.asModelled.value_cents.middle - certain.payback.npv_cents)).toBeLessThan(100);
  });

  it('finds every line in the plan again', () => {
    for (const line of certain.outlook!.lines) expect(line.inPlanShare).toBe(1);
  });
});

describe('an outlook under draws', () => {
  it('puts the nine-in-ten value below the middle and the one-in-ten value above it', () => {
    for (const line of drawn.outlook!.lines) {
      expect(line.asModelled.value_cents.nineInTenAtLeast).toBeLessThan(line.asModelled.value_cents.middle);
      expect(line.asModelled.value_cents.middle).toBeLessThan(line.asModelled.value_cents.oneInTenMoreThan);
      expect(line.asModelled.paysBackShare).toBeGreaterThanOrEqual(0);
      expect(line.asModelled.paysBackShare).toBeLessThanOrEqual(1);
    }
  });

  it('is narrower for the plan than for its lines taken together: dwellings do not all err the same way', () => {
    const width = (s: { readonly nineInTenAtLeast: number; readonly oneInTenMoreThan: number }): number => s.oneInTenMoreThan - s.nineInTenAtLeast;
    const lines = drawn.outlook!.lines.reduce((sum, l) => sum + width(l.asModelled.value_cents), 0);
    expect(width(drawn.outlook!.asModelled.value_cents)).toBeLessThan(lines);
  });

  it('is the same with the same seed, and does not hang on the order of the records', async () => {
    const turned = { ...portfolio, dwellings: [...portfolio.dwellings].reverse(), windows: [...portfolio.windows].reverse(), films: [...portfolio.films].reverse() };
    const again = await planWith(turned, { inputs: catalogue.uncertainInputs, draws: 12, selections: 0 });
    const figures = (plan: Plan) => plan.outlook!.lines.map(({ dwelling, asModelled, inBills }) => ({ dwelling, asModelled, inBills }));
    expect(figures(again)).toEqual(figures(drawn));
  });

  it('is lower and wider with the share that bills show than as modelled', () => {
    for (const { asModelled, inBills } of drawn.outlook!.lines) {
      expect(inBills.yearly_cents.middle).toBeLessThan(asModelled.yearly_cents.middle);
      const relative = (s: { readonly nineInTenAtLeast: number; readonly oneInTenMoreThan: number }): number => s.oneInTenMoreThan / s.nineInTenAtLeast;
      expect(relative(inBills.yearly_cents)).toBeGreaterThan(relative(asModelled.yearly_cents));
    }
  });

  it('names every input once among what moves the plan, strongest first', () => {
    const moved = drawn.outlook!.influences;
    expect(new Set(moved.map((i) => i.parameter)).size).toBe(catalogue.uncertainInputs.length + 1);
    const strength = moved.map((i) => Math.abs(i.rankCorrelation));
    expect([...strength].sort((a, b) => b - a)).toEqual(strength);
  });

  it('a price that alone is uncertain moves a saving in proportion and nothing else', async () => {
    const priced = await planWith(portfolio, { inputs: only('price'), draws: 8, selections: 0 });
    const shares = priced.outlook!.lines.map((l) => l.asModelled.yearly_cents.nineInTenAtLeast / certain.outlook!.lines.find((c) => c.dwelling === l.dwelling)!.asModelled.yearly_cents.middle);
    for (const share of shares) expect(share).toBeCloseTo(shares[0]!, 9);
    // By hand from the raw draws: of eight in rising order the tenth lies 0.7 of the way from the first to the second.
    const [first, second] = Array.from({ length: 8 }, (_, d) => 1.05 ** normalQuantile(drawnShare({ seed: 11, parameter: 'price', scope: '*' }, d))).sort((a, b) => a - b);
    expect(shares[0]).toBeCloseTo(first! + 0.7 * (second! - first!), 9);
  });
});

describe('a choice that aims at nine in ten', () => {
  it('makes a plan of which nine draws in ten reach at least what they reach of the usual plan, on the same draws', async () => {
    const careful = await planWith(portfolio, { inputs: catalogue.uncertainInputs, draws: 12, selections: 0, aim: 'nine-in-ten' });
    expect(careful.aim).toBe('nine-in-ten');
    expect(careful.lines.length).toBeGreaterThan(0);
    const reached = (plan: Plan): number => plan.outlook!.asModelled.value_cents.nineInTenAtLeast;
    expect(reached(careful)).toBeGreaterThanOrEqual(reached(drawn) - 0.01);
  });
});

describe('break-evens', () => {
  it('at the price share of its break-even a line is worth nothing', () => {
    for (const line of certain.outlook!.lines) {
      const planned = lineOf(certain, line);
      const cost = planned.option.cost.total_cents / (1 + certain.terms.realDiscountRate) ** certain.payback.lines.find((l) => l.dwelling === line.dwelling)!.phaseYear;
      // Value = share × savings − cost, both at the study start.
      expect(line.breakEvens.priceShare! * (planned.value.whole_cents + cost)).toBeCloseTo(cost, 4);
    }
  });
});

describe('the monthly use behind a line', () => {
  const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

  it('bills to the saving the line was valued with, span by span, when it is put through the tariff again', () => {
    expect(certain.uses).toHaveLength(certain.lines.length);
    for (const use of certain.uses) {
      const line = certain.lines.find((l) => l.dwelling === use.dwelling)!;
      const tariff = readTariff(portfolio.tariffs.find((t) => t.label === use.tariff)!);
      const bill = (months: (typeof use.spans)[number]['asFound']): number =>
        months.reduce((sum, month, m) => {
          const energy = month.bought_kWh.reduce((total, kWh, p) => total + stepsCost_cents(tariff.energy[p]!, kWh, DAYS[m]!), 0);
          const demand = month.periodPeak_kW.reduce((total, kW, p) => total + stepsCost_cents(tariff.demand!.steps[p]!, kW, DAYS[m]!), 0);
          const flat = tariff.flatDemand === null ? 0 : stepsCost_cents(tariff.flatDemand.steps[tariff.flatDemand.months[m]!]!, month.peak_kW, DAYS[m]!);
          const charges = energy + demand + flat + (tariff.fixedPer === 'month' ? tariff.fixed_cents : tariff.fixed_cents * DAYS[m]!);
          return sum + Math.max(charges, tariff.minimumPer === 'month' ? tariff.minimum_cents : tariff.minimum_cents * DAYS[m]!);
        }, 0);
      use.spans.forEach((span, i) => {
        const { saving } = line.option.segments[i]!;
        expect(bill(span.asFound) - bill(span.planned) - span.addedGas_kWh * use.gas_cents_kWh).toBeCloseTo(saving.cooling_cents - saving.addedHeating_cents, 4);
      });
    }
  });
});
