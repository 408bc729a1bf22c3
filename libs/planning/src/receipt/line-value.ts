import { isFigure, lifeCycle } from '#calc';
import type { Plan, PlanLine } from '../plan/plan.js';
import { firstYear_cents } from '../review/reasons.js';
import { filledFor, termsUsed } from './assumptions-of.js';
import type { Figure } from './figure.js';
import { type LineFlows, lineFlows } from './line-flows.js';
import { digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';
import { buildingRow, dwellingRow } from './survey-rows.js';

type About = Pick<Figure, 'id' | 'title'>;

/** What all figures of a line's money rest on. */
function shared(plan: Plan, line: PlanLine): Pick<Receipt, 'rows' | 'assumptions' | 'see'> {
  return {
    rows: [...dwellingRow(plan, line.dwelling, ['cooling_replacement_year', 'efficiency_after']), ...buildingRow(plan, line.building, ['end_year'])],
    assumptions: [...termsUsed(plan.terms, ['realDiscountRate', 'realEscalation', 'filmDegradation_1_yr', 'endRemoval_cents_m2']), ...filledFor(plan, line.building, (field) => field.includes('replaced') || field.includes('after replacement'))],
    see: [`line/${line.dwelling}/cost`, `line/${line.dwelling}/saving`],
  };
}

/** One step a year: the flow, brought to the study start. */
function yearSteps(flows_cents: readonly number[], of: { readonly rate: number; readonly said: (year: number) => string }): ReceiptStep[] {
  return flows_cents.flatMap((flow, year): ReceiptStep[] => {
    if (flow === 0) return [];
    const value = flow / (1 + of.rate) ** year;
    return [{ label: of.said(year), substituted: `${dollars(flow)} ÷ (1 + ${percent(of.rate)})^${String(year)} = ${dollars(value)}`, value, unit: 'cents' }];
  });
}

/** What the flow of a year is made of. */
const said = (flows: LineFlows, startYear: number) => (year: number): string => {
  if (year === flows.phaseYear) return `year ${String(year)}, ${String(startYear + year)}: installed cost less rebate`;
  const off = flows.removal_cents[year]!;
  return `year ${String(year)}, by ${String(startYear + year)}: saving${off === 0 ? '' : ` less taking ${digits(flows.filmAtEnd_m2)} m² of film off, ${dollars(off)}`}`;
};
const startOf = (plan: Plan): number => Number(plan.terms.studyStart.slice(0, 4));

function npvReceipt(plan: Plan, line: PlanLine, of: About & { readonly view: 'whole' | 'owner' }): Receipt {
  const flows = lineFlows(plan, line);
  const net = of.view === 'whole' ? flows.net_cents : flows.ownerNet_cents;
  const stated = of.view === 'whole' ? line.value.whole_cents : line.value.owner_cents;
  const steps = yearSteps(net, { rate: plan.terms.realDiscountRate, said: said(flows, startOf(plan)) });
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: 'cents',
    formula: `net present value = Σ flow of year y ÷ (1 + d)^y, real, d = ${percent(plan.terms.realDiscountRate)}; savings net of added heating at year's end, taking film off in its last year, cost at the start of the phase${of.view === 'owner' ? '; savings are the part that stays with the owner' : ''}`,
    steps,
    ...shared(plan, line),
    compute: { kernel: 'life-cycle', input: { flows_cents: net, discountRate: plan.terms.realDiscountRate, basis: 'real' }, result: [{ pointer: '/npv_cents', times: 1 }], words: 'npv_cents' },
    computeWhy: null,
    worked: workedOut(stated, steps.reduce((sum, s) => sum + s.value, 0), 'savings of this line were weighed anew after it was chosen'),
  };
}

function sirReceipt(plan: Plan, line: PlanLine, of: About): Receipt {
  const flows = lineFlows(plan, line);
  const fromWork = flows.net_cents.slice(flows.phaseYear);
  const rate = plan.terms.realDiscountRate;
  const outlay = -fromWork[0]!;
  const saved = fromWork.reduce((sum, flow, year) => (year === 0 ? sum : sum + flow / (1 + rate) ** year), 0);
  return {
    figure: of.id,
    title: of.title,
    value: line.sir,
    unit: 'ratio',
    formula: 'savings-to-investment ratio = present value of the savings, less taking film off at its end, ÷ installed cost less rebate, both at the day of the work',
    steps: [
      { label: 'present value of the savings', substituted: `Σ of ${String(fromWork.length - 1)} years at ${percent(rate)} = ${dollars(saved)}`, value: saved, unit: 'cents' },
      { label: 'ratio', substituted: `${dollars(saved)} ÷ ${dollars(outlay)} = ${digits(saved / outlay)}`, value: saved / outlay, unit: 'ratio' },
    ],
    ...shared(plan, line),
    compute: { kernel: 'life-cycle', input: { flows_cents: fromWork, discountRate: rate, basis: 'real' }, result: [{ pointer: '/sir', times: 1 }], words: 'sir' },
    computeWhy: null,
    worked: workedOut(line.sir, saved / outlay, 'savings of this line were weighed anew after it was chosen'),
    see: [`line/${line.dwelling}/npv`, `line/${line.dwelling}/cost`],
  };
}

function paybackReceipt(plan: Plan, line: PlanLine, of: About): Receipt {
  const flows = lineFlows(plan, line);
  const rebate = flows.rebate_cents[flows.phaseYear]!;
  const { total_cents } = line.option.cost;
  const saving = firstYear_cents(line.option);
  const pays = line.simplePayback_yr !== null;
  const input = { cost_cents: total_cents, rebate_cents: rebate, firstYearSaving_cents: saving, life_years: line.option.filmLife_yr, discountRate: plan.terms.realDiscountRate, basis: 'real' };
  return {
    figure: of.id,
    title: of.title,
    value: line.simplePayback_yr ?? `none: ${line.paybackWhy ?? ''}`,
    unit: pays ? 'years' : '',
    formula: 'simple payback = (installed cost − rebate) ÷ first-year saving net of added heating, prices of the study start',
    steps: pays ? [{ label: 'payback', substituted: `(${dollars(total_cents)} − ${dollars(rebate)}) ÷ ${dollars(saving)} = ${digits((total_cents - rebate) / saving)} years`, value: (total_cents - rebate) / saving, unit: 'years' }] : [],
    rows: [],
    assumptions: [], // neither prices of later years nor the discount rate enter it
    see: shared(plan, line).see,
    compute: pays ? { kernel: 'life-cycle', input, result: [{ pointer: '/simplePayback_years', times: 1 }], words: 'simplePayback_years' } : null,
    computeWhy: pays ? null : 'the kernel gives null with the same reason',
    worked: pays ? workedOut(line.simplePayback_yr, (total_cents - rebate) / saving, 'savings of this line were weighed anew after it was chosen') : { value: 'none', agrees: saving <= 0, why: null },
  };
}

function discountedReceipt(plan: Plan, line: PlanLine, of: About): Receipt {
  const flows = lineFlows(plan, line);
  const fromWork = flows.net_cents.slice(flows.phaseYear);
  const rate = plan.terms.realDiscountRate;
  const stated = plan.payback.lines.find((l) => l.dwelling === line.dwelling)?.discountedPayback_yr ?? null;
  const found = lifeCycle(fromWork, { discountRate: rate, basis: 'real' }).discountedPayback_years;
  let sum = 0;
  const steps = fromWork.map((flow, year): ReceiptStep => {
    sum += flow / (1 + rate) ** year;
    return { label: `year ${String(year)} after the work`, substituted: `running sum with ${dollars(flow)} ÷ (1 + ${percent(rate)})^${String(year)}: ${dollars(sum)}`, value: sum, unit: 'cents' };
  });
  return {
    figure: of.id,
    title: of.title,
    value: stated ?? 'none within the life of the film',
    unit: stated === null ? '' : 'years',
    formula: 'discounted payback = the year in which the running sum of the discounted flows reaches 0, straight between the years',
    steps,
    ...shared(plan, line),
    compute: stated === null ? null : { kernel: 'life-cycle', input: { flows_cents: fromWork, discountRate: rate, basis: 'real' }, result: [{ pointer: '/discountedPayback_years', times: 1 }], words: 'discountedPayback_years' },
    computeWhy: stated === null ? 'the kernel gives null with the reason' : null,
    worked: workedOut(stated ?? 'none', isFigure(found) ? found : 'none', 'savings of this line were weighed anew after it was chosen'),
  };
}

/** Yearly cooling cost cut, mean over the film's life: what a dwelling is ranked by. */
function coolingCutReceipt(plan: Plan, line: PlanLine, of: About): Receipt {
  const { segments, filmLife_yr, yearlyCooling_cents } = line.option;
  const first = segments[0]?.firstYear ?? 0;
  const steps = segments.map((segment, i): ReceiptStep => {
    const until = Math.min(segments[i + 1]?.firstYear ?? Infinity, first + filmLife_yr);
    const years = Math.max(0, until - segment.firstYear);
    const value = years * segment.saving.cooling_cents;
    return { label: `from ${String(segment.firstYear)}, plant ${segment.plant}`, substituted: `${String(years)} years × ${dollars(segment.saving.cooling_cents)} = ${dollars(value)}`, value, unit: 'cents' };
  });
  const worked = steps.reduce((sum, s) => sum + s.value, 0) / filmLife_yr;
  return {
    figure: of.id,
    title: of.title,
    value: yearlyCooling_cents,
    unit: 'cents',
    formula: 'yearly cooling cost cut = mean over the film’s life from the study start, all payers, before added heating',
    steps: [...steps, { label: 'mean', substituted: `sum ÷ ${String(filmLife_yr)} years = ${dollars(worked)}`, value: worked, unit: 'cents' }],
    ...shared(plan, line),
    compute: null,
    computeWhy: 'a mean of the spans above; the first span has a receipt with a kernel',
    worked: workedOut(yearlyCooling_cents, worked, 'savings of this line were weighed anew after it was chosen'),
    see: [`line/${line.dwelling}/saving`, `line/${line.dwelling}/rank`],
  };
}

/** Value and paybacks of a line. */
export function lineValue(line: PlanLine): Figure[] {
  const figure = (name: string, title: string, receipt: (plan: Plan, of: About) => Receipt): Figure => {
    const about = { id: `line/${line.dwelling}/${name}`, title: `${title} of ${line.dwelling}` };
    return { ...about, receipt: ({ plan }) => receipt(plan, about) };
  };
  return [
    figure('cooling-cut', 'Yearly cooling cost cut', (plan, of) => coolingCutReceipt(plan, line, of)),
    figure('npv', 'Net present value, all payers,', (plan, of) => npvReceipt(plan, line, { ...of, view: 'whole' })),
    figure('npv-owner', 'Net present value for the owner', (plan, of) => npvReceipt(plan, line, { ...of, view: 'owner' })),
    figure('sir', 'Savings-to-investment ratio', (plan, of) => sirReceipt(plan, line, of)),
    figure('payback', 'Simple payback', (plan, of) => paybackReceipt(plan, line, of)),
    figure('discounted-payback', 'Discounted payback', (plan, of) => discountedReceipt(plan, line, of)),
  ];
}
