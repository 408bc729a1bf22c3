import { installMinutes, labour_cents, type PaneWork, type Reach, type TimeModel } from '#calc';
import { contractorPrice_cents_m2 } from '../options/installed-cost.js';
import type { OptionWindow, PricedFilm } from '../options/option.js';
import type { PlanLine } from '../plan/plan.js';
import { pieceOf } from '../rolls/cut-list.js';
import { builtIn, termsUsed } from './assumptions-of.js';
import type { Figure, ReceiptAt } from './figure.js';
import { part } from './figure.js';
import { added, digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptAssumption, type ReceiptStep, workedOut } from './receipt.js';
import { buildingRow, rollRows, windowRows } from './survey-rows.js';

/** Below this a pane of several is a small lite, as the cost of the option has it. Common practice, no source. */
const SMALL_LITE_m2 = 0.3;

const OTHER_MINUTES = 'the plan was made with other minutes than those of the built-in time model: they were learned from work already done';

/** Figures of the time model in trade words. */
const MINUTES: Partial<Record<keyof TimeModel, string>> = {
  perDwelling_min: 'minutes of a dwelling', perPane_min: 'minutes of a pane', perArea_min_m2: 'minutes of glass by area', ladderFactor: 'factor of work from a ladder', oldFilm_min: 'old film, minutes of a pane', oldFilm_min_m2: 'old film, minutes by area',
};

const paneWork = (w: OptionWindow): PaneWork => {
  const area_m2 = (w.width_mm * w.height_mm) / 1e6;
  return { count: w.paneCount, area_m2, reach: w.reach as Reach, isDividedLite: w.paneCount > 1 && area_m2 < SMALL_LITE_m2, hasOldFilm: w.existingFilm };
};

/** Film of one window: pieces × size × price × waste. */
function filmStep(w: OptionWindow, { plan }: ReceiptAt, priced: PricedFilm): ReceiptStep {
  const piece = pieceOf(w, plan.terms);
  const piece_m2 = (w.paneCount * piece.width_mm * piece.length_mm) / 1e6;
  const value = piece_m2 * priced.price_cents_m2 * (1 + priced.waste);
  return {
    label: `film of ${w.window}`,
    substituted: `${String(w.paneCount)} × ${digits(piece.width_mm / 1000)} m × ${digits(piece.length_mm / 1000)} m × ${dollars(priced.price_cents_m2)} × (1 + ${digits(priced.waste)}) = ${dollars(value)}`,
    value,
    unit: 'cents',
  };
}

const reachOf = (reach: string, model: TimeModel): number => (reach === 'ladder' ? model.ladderFactor : reach === 'over-furniture' ? model.overFurnitureFactor : 1);

/** Minutes of one window by the time model, with its old film where there is some. */
function minuteSteps(w: OptionWindow, model: TimeModel): ReceiptStep[] {
  const pane = paneWork(w);
  const factor = pane.count * reachOf(pane.reach, model);
  const each = pane.isDividedLite === true ? model.perLite_min : model.perPane_min;
  const film = factor * (each + model.perArea_min_m2 * pane.area_m2);
  const words = (first: number, perArea: number): string => `${String(pane.count)} × ${digits(reachOf(pane.reach, model))} × (${digits(first)} + ${digits(perArea)} × ${digits(pane.area_m2)} m²)`;
  const step: ReceiptStep = { label: `minutes at ${w.window}`, substituted: `${words(each, model.perArea_min_m2)} = ${digits(film)} min`, value: film, unit: 'min' };
  if (pane.hasOldFilm !== true) return [step];
  const removal = factor * (model.oldFilm_min + model.oldFilm_min_m2 * pane.area_m2);
  return [step, { label: `old film off ${w.window}`, substituted: `${words(model.oldFilm_min, model.oldFilm_min_m2)} = ${digits(removal)} min`, value: removal, unit: 'min' }];
}

function labourSteps(line: PlanLine, { plan, catalogue }: ReceiptAt): { readonly steps: ReceiptStep[]; readonly labour: number; readonly removal: number; readonly minutes: number; readonly assumed: ReceiptAssumption[] } {
  const { windows, option } = line;
  const model = catalogue.timeModel;
  const rate = plan.terms.labour_cents_h;
  const work = installMinutes({ panes: windows.map(paneWork) }, model);
  const minutes = work.best - work.removal;
  const contractor = contractorPrice_cents_m2(plan.buildings.find((b) => b.id === line.building));
  const removal = labour_cents(work.removal, rate);
  const labour = contractor === null ? labour_cents(minutes, rate) : option.glassArea_m2 * contractor;
  const perHour = (min: number, cents: number): string => `${digits(min)} min ÷ 60 × ${dollars(rate)} = ${dollars(cents)}`;
  const steps: ReceiptStep[] = [
    { label: 'minutes of the dwelling itself', substituted: `${digits(model.perDwelling_min)} min`, value: model.perDwelling_min, unit: 'min' },
    ...windows.flatMap((w) => minuteSteps(w, model)),
    { label: 'labour', substituted: contractor === null ? perHour(minutes, labour) : `${digits(option.glassArea_m2)} m² of glass × ${dollars(contractor)} of the contractor = ${dollars(labour)}`, value: labour, unit: 'cents' },
    ...(work.removal === 0 ? [] : [{ label: 'old film off', substituted: perHour(work.removal, removal), value: removal, unit: 'cents' }]),
  ];
  const sources = model.sources;
  const used: readonly (keyof TimeModel)[] = ['perDwelling_min', 'perPane_min', 'perArea_min_m2', ...(windows.some((w) => w.reach === 'ladder') ? (['ladderFactor'] as const) : []), ...(work.removal > 0 ? (['oldFilm_min', 'oldFilm_min_m2'] as const) : [])];
  return { steps, labour, removal, minutes: work.best, assumed: used.map((key) => builtIn(MINUTES[key] ?? key, sources[key])) };
}

function costReceipt(line: PlanLine, at: ReceiptAt, of: Pick<Figure, 'id' | 'title'>): Receipt {
  const { plan } = at;
  const { terms } = plan;
  const { option, windows } = line;
  const filmOf = (id: string): PricedFilm => plan.films.find((f) => f.film.id === id)!;
  const films = windows.map((w) => filmStep(w, at, filmOf(w.film)));
  const film = films.reduce((sum, s) => sum + s.value, 0);
  const { steps: labourWorked, labour, removal, assumed } = labourSteps(line, at);
  const consumables = option.pieceArea_m2 * terms.consumables_cents_m2;
  const materialTax = (film + consumables) * terms.materialTaxShare;
  const labourTax = (labour + removal) * terms.labourTaxShare;
  const total = film + labour + consumables + removal + materialTax + labourTax;
  const step = (label: string, words: string, value: number): ReceiptStep => ({ label, substituted: `${words} = ${dollars(value)}`, value, unit: 'cents' });
  return {
    figure: of.id,
    title: of.title,
    value: option.cost.total_cents,
    unit: 'cents',
    formula: 'installed cost = pieces m² × price × (1 + waste) + minutes ÷ 60 × rate + consumables + old film off + taxes; visits, freight, whole rolls and contingency belong to the phase',
    steps: [
      ...films,
      ...labourWorked,
      step('consumables', `${digits(option.pieceArea_m2)} m² × ${dollars(terms.consumables_cents_m2)}`, consumables),
      step('tax on material', `(${dollars(film)} + ${dollars(consumables)}) × ${percent(terms.materialTaxShare)}`, materialTax),
      step('tax on labour', `(${dollars(labour)} + ${dollars(removal)}) × ${percent(terms.labourTaxShare)}`, labourTax),
      step('installed cost', added([film, labour, consumables, removal, materialTax, labourTax].map(dollars)), total),
    ],
    rows: [...windowRows(windows, ['width', 'height', 'lite_rows', 'lite_columns', 'reach', 'existing_film']), ...[...new Set(windows.map((w) => w.film))].flatMap((id) => rollRows(plan, id)), ...buildingRow(plan, line.building, ['crew'])],
    assumptions: [...termsUsed(terms, ['trimPerEdge_mm', 'labour_cents_h', 'consumables_cents_m2', 'materialTaxShare', 'labourTaxShare']), ...assumed],
    compute: null,
    computeWhy: 'a sum to be added by hand: every number of it stands above; the price and waste of the film have receipts of their own with a kernel',
    worked: workedOut(option.cost.total_cents, total, OTHER_MINUTES),
    see: [...new Set(windows.map((w) => w.film))].flatMap((id) => [`film/${part(id)}/price`, `film/${part(id)}/waste`]),
  };
}

function minutesReceipt(line: PlanLine, at: ReceiptAt, of: Pick<Figure, 'id' | 'title'>): Receipt {
  const { steps, minutes, assumed } = labourSteps(line, at);
  const { best } = line.option.minutes;
  return {
    figure: of.id,
    title: of.title,
    value: best,
    unit: 'min',
    formula: 'person-minutes = dwelling + Σ panes × reach × (per pane + per area × glass), and the same for old film; visits are extra',
    steps: steps.filter((s) => s.unit === 'min'),
    rows: windowRows(line.windows, ['width', 'height', 'lite_rows', 'lite_columns', 'reach', 'existing_film']),
    assumptions: assumed,
    compute: null,
    computeWhy: 'a sum to be added by hand: every number of it stands above',
    worked: workedOut(best, minutes, OTHER_MINUTES),
    see: [`line/${line.dwelling}/cost`],
  };
}

/** What it costs to put the film of a line on, and the person-minutes it takes. */
export function lineCost(line: PlanLine): Figure[] {
  const sides = line.option.facades.length === 1 ? 'one side' : `${String(line.option.facades.length)} sides`;
  const cost = { id: `line/${line.dwelling}/cost`, title: `Installed cost of ${line.dwelling}, ${sides}` };
  const minutes = { id: `line/${line.dwelling}/minutes`, title: `Person-minutes at ${line.dwelling}` };
  return [{ ...cost, receipt: (at) => costReceipt(line, at, cost) }, { ...minutes, receipt: (at) => minutesReceipt(line, at, minutes) }];
}
