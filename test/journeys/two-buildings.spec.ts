import { join } from 'node:path';
import { openCatalogue } from '#catalogue';
import { checkCertificate, type Portfolio, type SelectionProblem, type SelectionResult, type Window } from '#calc';
import { portfolioOf, readInventory } from '#intake';
import { buildingWeather, type DwellingResult, type DwellingTask, type OptionRoom, type Plan, planPortfolio, type Workers, workersHere } from '#planning';

const folder = join(process.cwd(), 'test/inventories/ok/two-buildings');
const catalogue = openCatalogue();
const read = async (): Promise<Portfolio> => portfolioOf(await readInventory(folder), '2026-07-01');

const planWith = (portfolio: Portfolio, work: Workers): Promise<Plan> => {
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  return planPortfolio({ portfolio, catalogue, weather, id: 'P', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] }, work);
};

const sumOf = (hours: Float64Array | null): number => (hours === null ? -1 : hours.reduce((sum, hour) => sum + hour, 0));

/**
 * Workers that keep what does not hang on caps or rolls, so that plans under other caps cost no second year of physics. A result is taken
 * again only where everything the physics sees, in its order, is the same.
 */
function rememberingWorkers(): Workers & { readonly asked: { readonly problem: SelectionProblem; readonly result: SelectionResult }[] } {
  const results = new Map<string, DwellingResult>();
  const loads = new Map<string, Float64Array>();
  const asked: { problem: SelectionProblem; result: SelectionResult }[] = [];
  const at = (task: DwellingTask, room: OptionRoom): string => JSON.stringify([task.key, sumOf(task.others_kWh), [...room.tariffs], room.films]);
  return {
    ...workersHere,
    asked,
    dwellingOptions: async (tasks, room) => {
      const missing = tasks.filter((t) => !results.has(at(t, room)));
      const fresh = await workersHere.dwellingOptions(missing, room);
      missing.forEach((t, i) => results.set(at(t, room), fresh[i]!));
      return tasks.map((t) => results.get(at(t, room))!);
    },
    meterLoads: async (tasks, room) => {
      const key = (t: (typeof tasks)[number]): string => `${at(t.task, room)}|${JSON.stringify(t.set)}`;
      const missing = tasks.filter((t) => !loads.has(key(t)));
      const fresh = await workersHere.meterLoads(missing, room);
      missing.forEach((t, i) => loads.set(key(t), fresh[i]!));
      return tasks.map((t) => loads.get(key(t))!);
    },
    dwellingEnergies: workersHere.dwellingEnergies,
    choose: async (problem) => {
      const result = await workersHere.choose(problem);
      asked.push({ problem, result });
      return result;
    },
  };
}

const withCap = (portfolio: Portfolio, cap_cents: number): Portfolio => ({ ...portfolio, phases: portfolio.phases.map((p) => ({ ...p, cap_cents })) });

/** Film by the square metre sold in short rolls, so that whole rolls do not stand in the way of a small plan. */
const withShortRolls = (portfolio: Portfolio): Portfolio => ({ ...portfolio, rolls: portfolio.rolls.map((r) => ({ ...r, length_mm: r.length_mm / 10, price_cents: (r.price_cents ?? 0) / 10 })) });

const linesOf = (plan: Plan): string[] => plan.lines.map((l) => `${l.option.id}@${l.phase}`).sort();
const lineValue_cents = (plan: Plan): number => plan.lines.reduce((sum, l) => sum + l.value.whole_cents, 0);

jest.setTimeout(60_000);
const work = rememberingWorkers();
let whole: Portfolio;
let portfolio: Portfolio;
let plan: Plan;
beforeAll(async () => {
  whole = await read();
  portfolio = withShortRolls(whole);
  plan = await planWith(portfolio, work);
});

describe('a plan for two buildings, from files to work orders', () => {
  it('ranks every dwelling and gives each a reason of at most 160 characters', () => {
    expect(plan.rankedDwellings).toHaveLength(5);
    for (const row of plan.rankedDwellings) expect(row.reason.length).toBeLessThanOrEqual(160);
    const order = plan.rankedDwellings.map((r) => r.perDollar);
    expect(order).toEqual([...order].sort((a, b) => b - a));
  });

  it('never passes the cap with what is really paid, and its cents add up', () => {
    for (const phase of plan.phases) {
      const { total_cents, ...parts } = phase.spending;
      expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBe(total_cents);
      expect(total_cents).toBeLessThanOrEqual(phase.phase.cap_cents);
      expect(phase.left_cents).toBe(phase.phase.cap_cents - total_cents);
    }
  });

  it('cuts every pane of the plan exactly once and writes it on exactly one work order', () => {
    const panes = plan.lines.flatMap((l) => l.windows.flatMap((w) => Array.from({ length: w.paneCount }, (_, i) => `${w.window}/${String(i + 1)}`))).sort();
    expect(panes.length).toBeGreaterThan(0);
    expect(plan.cuts.flatMap((c) => c.pieces.map((p) => p.piece)).sort()).toEqual(panes);
    expect(plan.workOrders.flatMap((o) => o.panes.map((p) => p.pane)).sort()).toEqual(panes);
  });

  it('gives the same plan when the rows of the inventory come in another order', async () => {
    const turned: Portfolio = { ...portfolio, windows: [...portfolio.windows].reverse(), dwellings: [...portfolio.dwellings].reverse(), dwellingMeters: [...portfolio.dwellingMeters].reverse(), buildings: [...portfolio.buildings].reverse() };
    const other = await planWith(turned, work);
    expect(linesOf(other)).toEqual(linesOf(plan));
    expect(other.rankedDwellings.map((r) => [r.dwelling, r.perDollar])).toEqual(plan.rankedDwellings.map((r) => [r.dwelling, r.perDollar]));
  });

  it('saves cooling on every line', () => {
    for (const line of plan.lines) expect(line.option.segments[0]!.saving.coolingElectricity_kWh).toBeGreaterThan(0);
  });

  it('chooses lines worth no less under a larger cap (proved optimum, where whole rolls lower neither cap)', async () => {
    const less = await planWith(withCap(portfolio, 70_000), work);
    const larger = await planWith(withCap(portfolio, 110_000), work);
    expect(lineValue_cents(larger)).toBeGreaterThanOrEqual(lineValue_cents(less));
    expect(larger.lines.length).toBeGreaterThan(0);
  });

  it('lowers the cap and chooses again when whole rolls pass it: two rounds or more', async () => {
    // A cap that just holds what the lines cost by the square metre; rolls of 100 ft cannot be bought by the square metre.
    const { spending } = plan.phases[0]!;
    const lines_cents = plan.lines.reduce((sum, l) => sum + l.option.cost.total_cents, 0) + spending.visits_cents;
    const cap_cents = Math.ceil(lines_cents * (1 + plan.terms.contingencyShare)) + 2_000;
    const before = work.asked.length;
    const rolls = await planWith(withCap(whole, cap_cents), work);
    const first = rolls.rounds.find((r) => r.kind === 'rolls');
    expect(first?.round).toBe(1);
    expect(first?.text).toMatch(/^whole rolls, freight and tax pass the cap by /);
    const caps = work.asked.slice(before).map((each) => each.problem.phases[0]!.cap_cents);
    expect(caps.length).toBeGreaterThanOrEqual(2);
    expect(caps[1]).toBeLessThan(caps[0]!);
    for (const phase of rolls.phases) expect(phase.spending.total_cents).toBeLessThanOrEqual(phase.phase.cap_cents);
  });

  it('keeps a certificate that a separate one-pass check accepts, and refuses when a cent is added', () => {
    const { problem, result } = work.asked[0]!;
    expect(checkCertificate(problem, result)).toMatchObject({ valid: true });
    expect(result.status).toBe('optimal');
    expect(checkCertificate(problem, { ...result, value: (result.value ?? 0) + 1 } as SelectionResult).valid).toBe(false);
    expect(plan.proof.value_cents).toBeLessThanOrEqual(plan.proof.bound_cents);
  });
});

describe('a shared meter', () => {
  it('values the options again when together they save otherwise than one by one', async () => {
    // July alone reaches a dear step, and hardly: any one dwelling's film gets the meter below it, all three together save there only once.
    const july = plan.meters.find((m) => m.meter === 'QA-M1')!.months[6]!;
    const flat = portfolio.tariffs[0]!;
    const steep = { ...flat, label: 'STEEP', energyratestructure: [[{ rate: 0.19, max: july.asFound_kWh - 15, unit: 'kWh' }, { rate: 4, unit: 'kWh' }]] };
    const dwellings = portfolio.dwellings.filter((d) => d.building === 'QA');
    const shared = withCap({ ...portfolio, dwellings, dwellingMeters: portfolio.dwellingMeters.filter((d) => d.meter === 'QA-M1'), tariffs: [...portfolio.tariffs, steep], meters: portfolio.meters.map((m) => (m.id === 'QA-M1' ? { ...m, tariff: 'STEEP' } : m)) }, 500_000);
    const steepPlan = await planWith(shared, work);
    const meter = steepPlan.meters.find((m) => m.meter === 'QA-M1')!;
    expect(meter.dwellings).toBe(3);
    // The dear step was 15 kWh deep: all that goes by, once, and each kWh more at the low price; billed on the sum of all three.
    const saved_kWh = meter.months.reduce((sum, m) => sum + m.asFound_kWh - m.planned_kWh, 0);
    expect(Math.abs(meter.togetherSaving_cents - (saved_kWh * 19 + 15 * 381))).toBeLessThanOrEqual(12);
    const again = steepPlan.rounds.filter((r) => r.kind === 'shared meter');
    expect(again.length).toBeGreaterThanOrEqual(1);
    expect(again.length).toBeLessThanOrEqual(3);
    expect(again[0]).toMatchObject({ round: 1, subject: 'QA-M1' });
    // With the neighbours' film in place no dwelling is credited with the dear step: each kWh is worth the low price.
    for (const line of steepPlan.lines.filter((l) => l.building === 'QA')) {
      const { saving } = line.option.segments[0]!;
      expect(saving.cooling_cents / saving.coolingElectricity_kWh).toBeCloseTo(19, 1);
    }
  });
});

describe('a mirrored plan type', () => {
  it('gives the same options as the same windows written out', async () => {
    const dwelling = portfolio.dwellings.find((d) => d.id === 'QB/001')!;
    const own = portfolio.windows.filter((w) => w.dwelling === dwelling.id);
    const front = 200;
    const planType = { id: 'PT', building: 'QB', name: 'PT', floorArea_m2: dwelling.floorArea_m2, ceilingHeight_m: dwelling.ceilingHeight_m, exposedWall_m2: dwelling.exposedWall_m2, inventoryRow: dwelling.inventoryRow };
    // Mirrored: true bearing = front − own bearing, so own bearing = front − true bearing.
    const placed = own.map((w): Window => ({ ...w, id: `PT/${w.mark}`, dwelling: null, planType: 'PT', azimuth_deg: (((front - (w.azimuth_deg ?? 0)) % 360) + 360) % 360 }));
    const typed: Portfolio = {
      ...portfolio,
      planTypes: [planType],
      dwellings: portfolio.dwellings.map((d) => (d.id === dwelling.id ? { ...d, planType: 'PT', frontAzimuth_deg: front, mirrored: true } : d)),
      windows: [...portfolio.windows.filter((w) => w.dwelling !== dwelling.id), ...placed],
    };
    const laid = await planWith(typed, work);
    const figures = (of: Plan) => of.rankedDwellings.filter((r) => r.dwelling === dwelling.id).map((r) => [r.option, r.perDollar, r.cost_cents]);
    expect(figures(laid)).toHaveLength(1);
    expect(figures(laid)).toEqual(figures(plan));
  });
});

describe('films mixed in a dwelling', () => {
  it('are computed and cut side by side: a copy of a film on one side and the film on the other are the film on both', async () => {
    const b = portfolio.films.find((f) => f.id === 'B')!;
    const sideOf = new Map(portfolio.windows.filter((w) => w.dwelling === 'QB/002').map((w) => [w.id, w.azimuth_deg!]));
    const [first] = [...new Set(sideOf.values())].sort((x, y) => x - y);
    const refused = (window: string, film: string) => ({ id: `${window} ${film}`, building: 'QB', kind: 'owner', glazing: null, film, window, state: 'refused' as const, date: null, reference: null, inventoryRow: { file: 'consents.csv', row: 2 } });
    const onlyOne = [...sideOf].map(([window, side]) => refused(window, side === first ? 'B' : 'C'));
    const mixed: Portfolio = {
      ...withCap(portfolio, 500_000),
      settings: { ...portfolio.settings, mixedFilm: true },
      films: [b, { ...b, id: 'C', name: 'copy of B' }],
      rolls: [...portfolio.rolls, ...portfolio.rolls.map((r) => ({ ...r, id: `C${r.id}`, film: 'C' }))],
      consents: onlyOne,
    };
    const line = (await planWith(mixed, work)).lines.find((l) => l.dwelling === 'QB/002')!;
    const both = (await planWith(withCap(portfolio, 500_000), work)).lines.find((l) => l.dwelling === 'QB/002')!;
    expect(both.option.facades).toEqual(line.option.facades);
    expect(line.option.films).toEqual(line.option.facades.map((side) => (side === first ? 'C' : 'B')));
    expect(line.option.segments[0]!.saving.cooling_cents).toBeCloseTo(both.option.segments[0]!.saving.cooling_cents, 6);
    expect(line.option.minutes).toEqual(both.option.minutes);
    for (const w of line.windows) expect(w.film).toBe(sideOf.get(w.window) === first ? 'C' : 'B');
  });
});
