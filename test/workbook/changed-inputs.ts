import type ExcelJS from 'exceljs';
import { readTariff, stepsCost_cents, type Tariff, type TariffText, type TariffTier } from '#calc';
import type { FilmOption, MonthUse, PhaseSpending, Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { paybackReview } from '../../libs/planning/src/review/payback-review.js';
import type { PricedChoice } from '../../libs/planning/src/rolls/price-by-rolls.js';
import { formulasOf, type StoredFormula } from './recalculation.js';

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const all = (value: number): number[][] => Array.from({ length: 12 }, () => Array.from({ length: 24 }, () => value));
const afternoons = (): number[][] => Array.from({ length: 12 }, () => Array.from({ length: 24 }, (_, h) => (h >= 14 && h < 20 ? 1 : 0)));

/** Two periods with steps, demand by period and at its greatest, a fixed charge and a least bill: every part a bill can have. */
export const RICH: TariffText = {
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
export function billedAgain(plan: Plan, text: TariffText): Plan {
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

/** What a phase spends when its parts are others: taxes and contingency as the planning takes them. */
function spendingWith(plan: Plan, s: PhaseSpending, parts: Partial<PhaseSpending>): PhaseSpending {
  const { materialTaxShare, labourTaxShare, contingencyShare } = plan.terms;
  const now = { ...s, ...parts };
  const tax_cents = Math.round((now.film_cents + now.consumables_cents + now.freight_cents) * materialTaxShare) + Math.round((now.labour_cents + now.removal_cents) * labourTaxShare);
  const before = now.film_cents + now.labour_cents + now.consumables_cents + now.removal_cents + now.visits_cents + now.freight_cents + tax_cents;
  const contingency_cents = Math.round(before * contingencyShare);
  return { ...now, tax_cents, contingency_cents, total_cents: before + contingency_cents };
}

/** The plan with the rolls of a film, or of all, at other prices. */
export function dearerFilm(plan: Plan, of: { readonly times: number; readonly film?: string }): Plan {
  const isMeant = (film: string): boolean => of.film === undefined || of.film === film;
  const cuts = plan.cuts.map((c) => (isMeant(c.film) ? { ...c, bought: c.bought.map((b) => ({ ...b, price_cents: b.price_cents * of.times })) } : c));
  const filmOf = (phase: string): number => cuts.filter((c) => c.phase === phase).reduce((sum, c) => sum + c.bought.reduce((s, b) => s + b.count * b.price_cents, 0), 0);
  const cost = (c: FilmOption['cost']): FilmOption['cost'] => {
    const more = c.film_cents * (of.times - 1);
    return { ...c, film_cents: c.film_cents * of.times, materialTax_cents: c.materialTax_cents + more * plan.terms.materialTaxShare, total_cents: c.total_cents + more * (1 + plan.terms.materialTaxShare) };
  };
  return reviewedAgain({
    ...plan,
    cuts,
    phases: plan.phases.map((p) => ({ ...p, spending: spendingWith(plan, p.spending, { film_cents: filmOf(p.phase.id) }) })),
    lines: plan.lines.map((l) => (isMeant(l.option.film) ? { ...l, option: { ...l.option, cost: cost(l.option.cost) } } : l)),
  });
}

/** The plan with its own crew's hour at another rate. */
function dearerLabour(plan: Plan, times: number): Plan {
  const cost = (c: FilmOption['cost']): FilmOption['cost'] => {
    const more = (c.labour_cents + c.removal_cents) * (times - 1);
    return { ...c, labour_cents: c.labour_cents * times, removal_cents: c.removal_cents * times, labourTax_cents: c.labourTax_cents * times, total_cents: c.total_cents + more * (1 + plan.terms.labourTaxShare) };
  };
  return reviewedAgain({
    ...plan,
    terms: { ...plan.terms, labour_cents_h: plan.terms.labour_cents_h * times },
    phases: plan.phases.map((p) => ({ ...p, spending: spendingWith(plan, p.spending, { labour_cents: p.spending.labour_cents * times, removal_cents: p.spending.removal_cents * times }) })),
    lines: plan.lines.map((l) => ({ ...l, option: { ...l.option, cost: cost(l.option.cost) } })),
  });
}

function ownerKeeps(plan: Plan, rule: string, ownerShare: number): Plan {
  return reviewedAgain({ ...plan, lines: plan.lines.map((l) => (l.option.payer.id === rule ? { ...l, option: { ...l.option, payer: { ...l.option.payer, ownerShare } } } : l)) });
}

/** The plan with another price of taking film off at the end of its life. */
const takenOffFor = (plan: Plan, endRemoval_cents_m2: number): Plan => reviewedAgain({ ...plan, terms: { ...plan.terms, endRemoval_cents_m2 } });

/** Sheets whose every figure is money or leads to it. */
const MONEY = ['Payback', 'Payback lines', 'Position by year', 'Cash flow', 'Savings by year', 'Saving by span', 'Bills by month', 'Payers', 'Tariffs', 'Rebates'];

/** Cells of the payback sheet that set the present beside the run, and so differ between a changed book and a book made anew. */
const BESIDE_THE_RUN = /^IF\(ABS\(|^IF\(C\d+=E\d+,0,1\)|^SUM\(F\d+:F\d+\)$|^SUM\(C\d+:C\d+\)$|^SUMPRODUCT\(\(|^IF\(E\d+>0,C\d+\/E\d+,1\)|^SUMPRODUCT\(EXACT\('Film to buy'|^IF\(C\d+>0,B\d+\/C\d+,1\)/;

/** Whether a total adds up a column that is typed by the run, as its head says. */
function isRunTotal(book: ExcelJS.Workbook, { sheet, address, formula }: StoredFormula): boolean {
  if (!/^SUM\([A-Z]+\d+:[A-Z]+\d+\)$/.test(formula)) return false;
  const { col, row } = book.getWorksheet(sheet)!.getCell(address) as unknown as { readonly col: number; readonly row: number };
  const heads: string[] = [];
  for (let r = row - 1; r > 0 && heads.length < 2; r--) {
    const { value } = book.getWorksheet(sheet)!.getCell(r, col);
    if (typeof value === 'string') heads.push(value);
  }
  return heads.some((head) => /\brun\b/.test(head));
}

/** Every money cell of the book of a plan, with the result calc has for it. */
export function moneyCells(plan: Plan): StoredFormula[] {
  const book = rolloutWorkbook(plan);
  return formulasOf(book).filter((f) => MONEY.includes(f.sheet) && !(f.sheet === 'Payback' && BESIDE_THE_RUN.test(f.formula)) && !isRunTotal(book, f));
}

/** A cell as a person would change it. */
export interface Edit {
  readonly sheet: string;
  readonly address: string;
  readonly value: number;
}

/** A change of inputs, and the plan as calc has it with the same change. */
export interface Change {
  readonly label: string;
  readonly edits: readonly Edit[];
  readonly plan: Plan;
}

/** Cell of a tariff's step: column by the head, row by charge, period and step. */
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

function rowsWhere(book: ExcelJS.Workbook, sheet: string, of: { readonly column: number; readonly is: string }): number[] {
  const rows: number[] = [];
  book.getWorksheet(sheet)!.eachRow((row, n) => {
    if (row.getCell(of.column).value === of.is) rows.push(n);
  });
  return rows;
}

/** Edits of the price of every roll of a film on the sheet of rolls to buy. */
function rollEdits(book: ExcelJS.Workbook, film: string, times: number): Edit[] {
  const sheet = book.getWorksheet('Film to buy')!;
  const isBought = (row: number): boolean => typeof sheet.getCell(row, 7).value === 'number' && typeof sheet.getCell(row, 10).value === 'number';
  return rowsWhere(book, 'Film to buy', { column: 2, is: film }).filter(isBought).map((row) => ({ sheet: 'Film to buy', address: `G${String(row)}`, value: Number(sheet.getCell(row, 7).value) * times }));
}

const withSteps = (period: number, steps: (tiers: readonly TariffTier[]) => readonly TariffTier[]): TariffText => ({ ...RICH, energyratestructure: RICH.energyratestructure.map((tiers, p) => (p === period ? steps(tiers) : tiers)) });

/** The changes an accountant would try, each with what the program makes of it. The plan must be billed by `RICH`. */
export function changes(plan: Plan, book: ExcelJS.Workbook): Change[] {
  const named = (name: string, value: number): Edit => ({ sheet: 'Payback', address: book.definedNames.getRanges(name).ranges[0]!.split('!')[1]!.replaceAll('$', ''), value });
  const step = (of: Parameters<typeof stepCell>[1], value: number): Edit => ({ sheet: 'Tariffs', address: stepCell(book, of), value });
  const [film, rule] = [plan.cuts[0]!.film, plan.lines[0]!.option.payer.id];
  const share = rowsWhere(book, 'Payers', { column: 1, is: rule }).map((row): Edit => ({ sheet: 'Payers', address: `C${String(row)}`, value: 0.35 }));
  const discounted = reviewedAgain({ ...plan, terms: { ...plan.terms, realDiscountRate: 0.07 } });
  return [
    { label: 'tariff rate', edits: [step({ charge: 'energy', period: 2, step: 0, column: 'G' }, 0.37)], plan: billedAgain(plan, withSteps(1, ([first, ...rest]) => [{ ...first!, rate: 0.37 }, ...rest])) },
    { label: 'step limit', edits: [step({ charge: 'energy', period: 1, step: 0, column: 'F' }, 150)], plan: billedAgain(plan, withSteps(0, ([first, ...rest]) => [{ ...first!, max: 150 }, ...rest])) },
    { label: 'demand price', edits: [step({ charge: 'demand by period', period: 2, step: 1, column: 'G' }, 21)], plan: billedAgain(plan, { ...RICH, demandratestructure: [[{ rate: 2 }], [{ rate: 6, max: 2 }, { rate: 21 }]] }) },
    { label: 'discount rate', edits: [named('discount_rate', 0.07)], plan: discounted },
    { label: 'owner’s share', edits: share, plan: ownerKeeps(plan, rule, 0.35) },
    { label: 'film price', edits: [named('film_cost_factor', 2)], plan: dearerFilm(plan, { times: 2 }) },
    { label: 'price of a film’s rolls', edits: rollEdits(book, film, 2), plan: dearerFilm(plan, { times: 2, film }) },
    { label: 'labour rate', edits: [named('labour_rate', (plan.terms.labour_cents_h * 2) / 100)], plan: dearerLabour(plan, 2) },
    { label: 'taking film off at its end', edits: [named('end_removal_price', 27.5)], plan: takenOffFor(plan, 2_750) },
  ];
}

/** All of these changes at once, so that a slow spreadsheet program is asked only once. */
export function allChanges(plan: Plan, book: ExcelJS.Workbook): Change {
  const each = changes(plan, book);
  const tiers = (steps: readonly TariffTier[], first: Partial<TariffTier>): readonly TariffTier[] => [{ ...steps[0]!, ...first }, ...steps.slice(1)];
  const [early, late] = RICH.energyratestructure;
  const billed = billedAgain(plan, { ...RICH, energyratestructure: [tiers(early!, { max: 150 }), tiers(late!, { rate: 0.37 })], demandratestructure: [[{ rate: 2 }], [{ rate: 6, max: 2 }, { rate: 21 }]] });
  const [film, rule] = [plan.cuts[0]!.film, plan.lines[0]!.option.payer.id];
  const discounted = { ...billed, terms: { ...billed.terms, realDiscountRate: 0.07 } };
  const dearer = dearerFilm(dearerFilm(ownerKeeps(discounted, rule, 0.35), { times: 2 }), { times: 2, film });
  return { label: each.map((c) => c.label).join(', '), edits: each.flatMap((c) => c.edits), plan: takenOffFor(dearerLabour(dearer, 2), 2_750) };
}
