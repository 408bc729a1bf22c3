import type ExcelJS from 'exceljs';
import type { HyperFormula } from 'hyperformula';
import { readTariff, stepsCost_cents, type Tariff, type TariffText, type TariffTier } from '#calc';
import type { FilmOption, MonthUse, PhaseSpending, Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { paybackReview } from '../../libs/planning/src/review/payback-review.js';
import type { PricedChoice } from '../../libs/planning/src/rolls/price-by-rolls.js';
import { plannedWith } from './planned.js';
import { disagreements, engineOf, formulasOf, valueAt } from './recalculation.js';

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const all = (value: number): number[][] => Array.from({ length: 12 }, () => Array.from({ length: 24 }, () => value));
const afternoons = (): number[][] => Array.from({ length: 12 }, () => Array.from({ length: 24 }, (_, h) => (h >= 14 && h < 20 ? 1 : 0)));

/** Two periods with steps, demand by period and at its greatest, a fixed charge and a least bill: every part a bill can have. */
const RICH: TariffText = {
  label: 'FLAT',
  energyratestructure: [[{ rate: 0.12, max: 250 }, { rate: 0.18, max: 600 }, { rate: 0.25 }], [{ rate: 0.3, max: 120 }, { rate: 0.4 }]],
  energyweekdayschedule: afternoons(),
  energyweekendschedule: all(0),
  demandratestructure: [[{ rate: 2 }], [{ rate: 6, max: 2 }, { rate: 9 }]],
  demandweekdayschedule: afternoons(),
  demandweekendschedule: all(0),
  flatdemandstructure: [[{ rate: 1.5 }]],
  flatdemandmonths: Array.from({ length: 12 }, () => 0),
  fixedchargefirstmeter: 12,
  fixedchargeunits: '$/month',
  mincharge: 80,
  minchargeunits: '$/month',
  clock: 'standard',
};

/** A month's bill by calc's own steps, from the sums the plan keeps. */
function bill_cents(tariff: Tariff, use: MonthUse, month: number): number {
  const days = DAYS[month]!;
  const energy = use.bought_kWh.reduce((sum, kWh, p) => sum + stepsCost_cents(tariff.energy[p]!, kWh, days), 0);
  const demand = use.periodPeak_kW.reduce((sum, kW, p) => sum + stepsCost_cents(tariff.demand!.steps[p]!, kW, days), 0);
  const flat = stepsCost_cents(tariff.flatDemand!.steps[tariff.flatDemand!.months[month]!]!, use.peak_kW, days);
  return Math.max(tariff.minimum_cents, energy + demand + flat + tariff.fixed_cents);
}

/** The plan's lines with what they would save under other prices. */
function billedAgain(plan: Plan, text: TariffText): Plan {
  const tariff = readTariff(text);
  const lines = plan.lines.map((line) => {
    const use = plan.uses.find((u) => u.dwelling === line.dwelling)!;
    const segments = line.option.segments.map((segment, i): FilmOption['segments'][number] => {
      const span = use.spans[i]!;
      const saved = DAYS.reduce((sum, _, m) => sum + bill_cents(tariff, span.asFound[m]!, m) - bill_cents(tariff, span.planned[m]!, m), 0);
      return { ...segment, saving: { ...segment.saving, cooling_cents: saved - span.addedGas_kWh * use.gas_cents_kWh, addedHeating_cents: 0 } };
    });
    return { ...line, option: { ...line.option, segments } };
  });
  return reviewedAgain({ ...plan, lines, tariffs: [text] });
}

/** The payback of the plan's lines by the planning's own review. */
function reviewedAgain(plan: Plan): Plan {
  const phases = plan.phases.map((p, i) => ({ phase: p.phase, spending: p.spending, lines: plan.lines.filter((l) => l.phase === p.phase.id).map((l) => ({ option: l.option, phase: i, value: l.value })) }));
  const priced = { choice: { lines: phases.flatMap((p) => p.lines) }, phases } as unknown as PricedChoice;
  const endYear = new Map(plan.buildings.map((b) => [b.id, b.endYear]));
  const owner = new Map(plan.buildings.map((b) => [b.id, b.ownerEntity]));
  return { ...plan, payback: paybackReview(priced, { terms: plan.terms, ownerOf: (b) => owner.get(b) ?? '', endYearOf: (b) => endYear.get(b) ?? null, rebates: [] }) };
}

function dearerFilm(plan: Plan, times: number): Plan {
  const { materialTaxShare, labourTaxShare, contingencyShare } = plan.terms;
  const spending = (s: PhaseSpending): PhaseSpending => {
    const film_cents = s.film_cents * times;
    const tax_cents = Math.round((film_cents + s.consumables_cents + s.freight_cents) * materialTaxShare) + Math.round((s.labour_cents + s.removal_cents) * labourTaxShare);
    const before = film_cents + s.labour_cents + s.consumables_cents + s.removal_cents + s.visits_cents + s.freight_cents + tax_cents;
    const contingency_cents = Math.round(before * contingencyShare);
    return { ...s, film_cents, tax_cents, contingency_cents, total_cents: before + contingency_cents };
  };
  const cost = (c: FilmOption['cost']): FilmOption['cost'] => {
    const more = c.film_cents * (times - 1);
    return { ...c, film_cents: c.film_cents * times, materialTax_cents: c.materialTax_cents + more * materialTaxShare, total_cents: c.total_cents + more * (1 + materialTaxShare) };
  };
  return reviewedAgain({
    ...plan,
    phases: plan.phases.map((p) => ({ ...p, spending: spending(p.spending) })),
    lines: plan.lines.map((l) => ({ ...l, option: { ...l.option, cost: cost(l.option.cost) } })),
  });
}

/** Sum of the film at the price of the run: typed, and so what it was. */
const RUN_PRICES = /^Payback!D\d+ =SUM/;

const MONEY = ['Payback', 'Payback lines', 'Savings by year', 'Saving by span', 'Bills by month', 'Payers', 'Tariffs', 'Rebates'];

const change = (engine: HyperFormula, sheet: string, of: { readonly address: string; readonly value: number }): void => {
  engine.setCellContents(engine.simpleCellAddressFromString(of.address, engine.getSheetId(sheet)!)!, of.value);
};

/** Cell of a tariff's step: column by the head, row by charge, period and price. */
function stepCell(book: ExcelJS.Workbook, of: { readonly charge: string; readonly period: number; readonly step: number; readonly column: 'F' | 'G' }): string {
  const sheet = book.getWorksheet('Tariffs')!;
  let step = 0;
  for (let row = 1; row <= sheet.rowCount; row++) {
    const [charge, period] = [sheet.getCell(row, 2).value, sheet.getCell(row, 3).value];
    if (charge !== of.charge || period !== of.period) continue;
    if (step === of.step) return `${of.column}${String(row)}`;
    step += 1;
  }
  throw new RangeError(`no such step: ${JSON.stringify(of)}`);
}

const inputCell = (book: ExcelJS.Workbook, name: string): string => book.definedNames.getRanges(name).ranges[0]!.split('!')[1]!.replaceAll('$', '');

const withSteps = (period: number, steps: (tiers: readonly TariffTier[]) => readonly TariffTier[]): TariffText => ({ ...RICH, energyratestructure: RICH.energyratestructure.map((tiers, p) => (p === period ? steps(tiers) : tiers)) });

describe('a changed input of the workbook', () => {
  let plan: Plan;
  let book: ExcelJS.Workbook;
  beforeAll(async () => {
    plan = await plannedWith((p) => ({ ...p, tariffs: [RICH], settings: { ...p.settings, realEscalation: 0.01, labourTaxShare: 0.02 } }));
    book = rolloutWorkbook(plan);
  }, 120_000);

  /** Differences of every money cell from the book of a plan that has the change already. What names the plan's own figures stays as it was. */
  function differences(changed: Plan, edit: (engine: HyperFormula) => void): string[] {
    const engine = engineOf(book);
    edit(engine);
    const own = new Set<string>();
    book.getWorksheet('Payback')!.eachRow((row) => row.eachCell((cell) => cell.formula !== undefined && /^IF\(ABS\(|^IF\(C\d+=E\d+,0,1\)|^SUM\(F\d+:F\d+\)$/.test(cell.formula) && own.add(cell.address)));
    const formulas = formulasOf(rolloutWorkbook(changed)).filter((f) => MONEY.includes(f.sheet) && !(f.sheet === 'Payback' && own.has(f.address)));
    expect(formulas.length).toBeGreaterThan(500);
    return disagreements(formulas, (f) => valueAt(engine, f.sheet, f.address));
  }

  it('of nothing changes nothing: the book and another engine agree to begin with', () => {
    expect(plan.lines.length).toBeGreaterThan(1);
    expect(differences(plan, () => undefined)).toEqual([]);
  });

  it('tariff rate: every bill, saving and payback follows as the program bills it', () => {
    const text = withSteps(1, ([first, ...rest]) => [{ ...first!, rate: 0.37 }, ...rest]);
    expect(differences(billedAgain(plan, text), (engine) => change(engine, 'Tariffs', { address: stepCell(book, { charge: 'energy', period: 2, step: 0, column: 'G' }), value: 0.37 }))).toEqual([]);
  });

  it('step limit: use moves to the next price as the program bills it', () => {
    const text = withSteps(0, ([first, ...rest]) => [{ ...first!, max: 150 }, ...rest]);
    expect(differences(billedAgain(plan, text), (engine) => change(engine, 'Tariffs', { address: stepCell(book, { charge: 'energy', period: 1, step: 0, column: 'F' }), value: 150 }))).toEqual([]);
  });

  it('demand price: the greatest kW of the month costs as the program bills it', () => {
    const text = { ...RICH, demandratestructure: [[{ rate: 2 }], [{ rate: 6, max: 2 }, { rate: 21 }]] };
    expect(differences(billedAgain(plan, text), (engine) => change(engine, 'Tariffs', { address: stepCell(book, { charge: 'demand by period', period: 2, step: 1, column: 'G' }), value: 21 }))).toEqual([]);
  });

  it('discount rate: every present value follows as the planning works it out', () => {
    const changed = reviewedAgain({ ...plan, terms: { ...plan.terms, realDiscountRate: 0.07 } });
    expect(differences(changed, (engine) => change(engine, 'Payback', { address: inputCell(book, 'discount_rate'), value: 0.07 })).filter((d) => !d.includes('re-run'))).toEqual([]);
  });

  it('owner’s share: the owner’s money follows as the planning works it out', () => {
    const rule = plan.lines[0]!.option.payer.id;
    const shared = (l: Plan['lines'][number]) => ({ ...l, option: { ...l.option, payer: l.option.payer.id === rule ? { ...l.option.payer, ownerShare: 0.35 } : l.option.payer } });
    const changed = reviewedAgain({ ...plan, lines: plan.lines.map(shared) });
    const payers = book.getWorksheet('Payers')!;
    let cell = '';
    payers.eachRow((row, n) => {
      if (row.getCell(1).value === rule) cell = `C${String(n)}`;
    });
    expect(differences(changed, (engine) => change(engine, 'Payers', { address: cell, value: 0.35 }))).toEqual([]);
  });

  it('film price: spending and lines follow as the planning works them out', () => {
    expect(differences(dearerFilm(plan, 2), (engine) => change(engine, 'Payback', { address: inputCell(book, 'film_cost_factor'), value: 2 })).filter((d) => !RUN_PRICES.test(d))).toEqual([]);
  });
});
