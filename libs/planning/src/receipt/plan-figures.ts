import type { Plan } from '../plan/plan.js';
import { phaseYear } from '../options/value.js';
import { termsUsed } from './assumptions-of.js';
import type { Figure } from './figure.js';
import { part } from './figure.js';
import { lineFlows } from './line-flows.js';
import { digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';

type About = Pick<Figure, 'id' | 'title'>;

/** Money of the whole plan by year: lines, what belongs to the plan and not to its lines, and what funds do not give after all. */
export function planFlows(plan: Plan, view: 'whole' | 'owner'): { readonly lines: number[]; readonly overhead: number[]; readonly notGiven: number[]; readonly net: number[] } {
  const flows = plan.lines.map((line) => lineFlows(plan, line));
  const yearOf = new Map(plan.phases.map(({ phase }) => [phase.id, phaseYear(phase, plan.terms.studyStart)]));
  const years = Math.max(2, ...flows.map((f) => f.net_cents.length), ...[...yearOf.values()].map((y) => y + 1));
  const zeros = (): number[] => Array<number>(years).fill(0);
  const [lines, overhead, notGiven] = [zeros(), zeros(), zeros()];
  for (const flow of flows) (view === 'whole' ? flow.net_cents : flow.ownerNet_cents).forEach((cents, year) => (lines[year] = lines[year]! + cents));
  for (const { phase, spending } of plan.phases) {
    const year = yearOf.get(phase.id)!;
    const byLine = plan.lines.filter((l) => l.phase === phase.id).reduce((sum, l) => sum + Math.round(l.option.cost.total_cents), 0);
    overhead[year] = overhead[year]! + spending.total_cents - byLine;
  }
  for (const r of plan.payback.rebates) {
    const year = yearOf.get(r.phase) ?? 0;
    notGiven[year] = notGiven[year]! + r.byLine_cents - r.cents;
  }
  return { lines, overhead, notGiven, net: lines.map((cents, year) => cents - overhead[year]! - notGiven[year]!) };
}

function npvReceipt(plan: Plan, of: About & { readonly view: 'whole' | 'owner' }): Receipt {
  const stated = of.view === 'whole' ? plan.payback.npv_cents : plan.payback.npvOwner_cents;
  const flows = planFlows(plan, of.view);
  const rate = plan.terms.realDiscountRate;
  const steps = flows.net.flatMap((flow, year): ReceiptStep[] => {
    if (flow === 0) return [];
    const value = flow / (1 + rate) ** year;
    const over = flows.overhead[year]!;
    return [{ label: `year ${String(year)}`, substituted: `(lines ${dollars(flows.lines[year]!)}${over === 0 ? '' : ` − paid beyond the lines ${dollars(over)}`}${flows.notGiven[year] === 0 ? '' : ` − rebates not given ${dollars(flows.notGiven[year]!)}`}) ÷ (1 + ${percent(rate)})^${String(year)} = ${dollars(value)}`, value, unit: 'cents' }];
  });
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: 'cents',
    formula: 'net present value of the plan = Σ flow of year y ÷ (1 + d)^y, where flow = savings − taking film off at its end − installed cost + rebates of all lines − what is paid beyond the lines (visits, freight, whole rolls, contingency)',
    steps,
    rows: [],
    assumptions: termsUsed(plan.terms, ['realDiscountRate', 'realEscalation', 'filmDegradation_1_yr', 'endRemoval_cents_m2', 'contingencyShare']),
    compute: { kernel: 'life-cycle', input: { flows_cents: flows.net, discountRate: rate, basis: 'real' }, result: [{ pointer: '/npv_cents', times: 1 }], words: 'npv_cents' },
    computeWhy: null,
    worked: workedOut(stated, steps.reduce((sum, s) => sum + s.value, 0), 'savings were weighed anew after the plan was chosen'),
    see: [...plan.phases.map((p) => `phase/${part(p.phase.id)}/spending`), ...plan.lines.slice(0, 3).map((l) => `line/${l.dwelling}/npv`)],
  };
}

/** The kernel searches less long than a plan may; only a closed gap is the same on every machine. */
const OPEN_GAP = 'the plan searched longer than the kernel does, so the kernel may reach less and bound it less tightly; the certificate in the plan can be checked in one pass';

function choiceReceipt(plan: Plan, of: About & { readonly field: 'value' | 'bound' }): Receipt {
  const { proof } = plan;
  const { record } = proof;
  const stated = of.field === 'value' ? proof.value_cents : proof.bound_cents;
  const kept = record?.result[of.field] ?? null;
  const lines = record?.result.chosen.length ?? 0;
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: 'cents',
    formula: of.field === 'value' ? 'value of the choice = Σ value of the chosen options in their phase − visits, under the worked caps of the last round' : 'bound = a value no choice of these options can pass under the worked caps; gap = (bound − value) ÷ bound',
    steps: [
      { label: 'chosen', substituted: `${String(lines)} of ${String(record?.problem.groups.length ?? 0)} groups, worth ${dollars(proof.value_cents)}`, value: proof.value_cents, unit: 'cents' },
      { label: 'bound', substituted: dollars(proof.bound_cents), value: proof.bound_cents, unit: 'cents' },
      { label: 'gap', substituted: `(${dollars(proof.bound_cents)} − ${dollars(proof.value_cents)}) ÷ ${dollars(proof.bound_cents)} = ${percent(proof.gap)}`, value: proof.gap, unit: 'share' },
    ],
    rows: [],
    assumptions: termsUsed(plan.terms, ['contingencyShare']),
    compute: record === undefined ? null : { kernel: 'select', input: record.problem, result: [{ pointer: `/${of.field}`, times: 1 }], words: of.field },
    computeWhy: record === undefined ? 'the plan was kept before its question was recorded' : proof.status === 'optimal' ? null : OPEN_GAP,
    worked: workedOut(stated, kept ?? 'not kept', 'the plan was kept before its question was recorded'),
    see: ['plan/npv'],
  };
}

function costReceipt(plan: Plan, of: About): Receipt {
  const stated = plan.payback.cost_cents + plan.payback.overhead_cents;
  const steps = plan.phases.filter((p) => p.spending.total_cents !== 0).map(({ phase, spending }): ReceiptStep => ({ label: phase.id, substituted: `${dollars(spending.total_cents)} of a cap of ${dollars(phase.cap_cents)}`, value: spending.total_cents, unit: 'cents' }));
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: 'cents',
    formula: 'cost of the plan = Σ spending of its phases',
    steps,
    rows: [],
    assumptions: [],
    compute: null,
    computeWhy: 'a sum to be added by hand',
    worked: workedOut(stated, steps.reduce((sum, s) => sum + s.value, 0), 'phases and payback do not close'),
    see: plan.phases.map((p) => `phase/${part(p.phase.id)}/spending`),
  };
}

function savingReceipt(plan: Plan, of: About): Receipt {
  const steps = plan.lines.map((line): ReceiptStep => {
    const { cooling_cents = 0, addedHeating_cents = 0 } = line.option.segments[0]?.saving ?? {};
    return { label: line.dwelling, substituted: `${dollars(cooling_cents)} − ${dollars(addedHeating_cents)} of added heating`, value: cooling_cents - addedHeating_cents, unit: 'cents' };
  });
  return {
    figure: of.id,
    title: of.title,
    value: plan.payback.firstYear_cents,
    unit: 'cents',
    formula: 'first-year saving of the plan = Σ of its lines, each valued alone on its meter',
    steps,
    rows: [],
    assumptions: [],
    compute: null,
    computeWhy: 'a sum to be added by hand; each line has a receipt with a kernel',
    worked: workedOut(plan.payback.firstYear_cents, steps.reduce((sum, s) => sum + s.value, 0), 'lines and payback do not close'),
    see: plan.lines.map((l) => `line/${l.dwelling}/saving`),
  };
}

function paybackReceipt(plan: Plan, of: About): Receipt {
  const { cost_cents, overhead_cents, rebate_cents, firstYear_cents, simplePayback_yr } = plan.payback;
  const years = (cost_cents + overhead_cents - rebate_cents) / firstYear_cents;
  return {
    figure: of.id,
    title: of.title,
    value: simplePayback_yr ?? 'none',
    unit: simplePayback_yr === null ? '' : 'years',
    formula: 'simple payback of the plan = (all that is paid − rebates) ÷ first-year saving',
    steps: [{ label: 'payback', substituted: `(${dollars(cost_cents + overhead_cents)} − ${dollars(rebate_cents)}) ÷ ${dollars(firstYear_cents)} = ${digits(years)} years`, value: years, unit: 'years' }],
    rows: [],
    assumptions: [],
    compute: simplePayback_yr === null ? null : { kernel: 'life-cycle', input: { cost_cents: cost_cents + overhead_cents, rebate_cents, firstYearSaving_cents: firstYear_cents, life_years: Math.max(...plan.lines.map((l) => l.option.filmLife_yr)), discountRate: plan.terms.realDiscountRate, basis: 'real' }, result: [{ pointer: '/simplePayback_years', times: 1 }], words: 'simplePayback_years' },
    computeWhy: null,
    worked: workedOut(simplePayback_yr ?? 'none', simplePayback_yr === null ? 'none' : years, 'cost and saving do not close'),
    see: ['plan/cost', 'plan/saving'],
  };
}

/** Headline figures of a plan. */
export function planFigures(): Figure[] {
  const figure = (id: string, title: string, receipt: (plan: Plan, of: About) => Receipt): Figure => ({ id, title, receipt: ({ plan }) => receipt(plan, { id, title }) });
  return [
    figure('plan/cost', 'What the plan costs', costReceipt),
    figure('plan/saving', 'First-year saving of the plan', savingReceipt),
    figure('plan/payback', 'Simple payback of the plan', paybackReceipt),
    figure('plan/npv', 'Net present value of the plan, all payers', (plan, of) => npvReceipt(plan, { ...of, view: 'whole' })),
    figure('plan/npv-owner', 'Net present value of the plan for the owner', (plan, of) => npvReceipt(plan, { ...of, view: 'owner' })),
    figure('plan/value', 'Value of the choice', (plan, of) => choiceReceipt(plan, { ...of, field: 'value' })),
    figure('plan/bound', 'Bound on any choice', (plan, of) => choiceReceipt(plan, { ...of, field: 'bound' })),
  ];
}
