import { phaseYear } from '../options/value.js';
import type { Plan } from '../plan/plan.js';
import { termsUsed } from './assumptions-of.js';
import { type Figure, part } from './figure.js';
import { planFlows } from './plan-figures.js';
import { digits, dollars, percent } from './receipt-numbers.js';
import { BY_HAND, type Receipt, type ReceiptStep, workedOut } from './receipt.js';

type About = Pick<Figure, 'id' | 'title'>;

/** A sum over the lines or phases of the plan. */
interface Summed extends About {
  readonly stated: number;
  readonly unit: string;
  readonly formula: string;
  readonly steps: readonly ReceiptStep[];
  readonly see: readonly string[];
}

const sumOf = (steps: readonly ReceiptStep[]): number => steps.reduce((sum, s) => sum + s.value, 0);

const summed = (of: Summed): Receipt => ({
  figure: of.id, title: of.title, value: of.stated, unit: of.unit, formula: of.formula, steps: of.steps, rows: [], assumptions: [], compute: null, computeWhy: BY_HAND,
  worked: workedOut(of.stated, sumOf(of.steps), 'lines and totals do not close'), see: of.see,
});

/** What is spent in each year of the study less what funds give, one flow a year. */
function netSpending(plan: Plan): number[] {
  const net = Array<number>(planFlows(plan, 'whole').net.length).fill(0);
  const yearOf = new Map(plan.phases.map(({ phase }) => [phase.id, phaseYear(phase, plan.terms.studyStart)]));
  for (const { phase, spending } of plan.phases) net[yearOf.get(phase.id)!] = net[yearOf.get(phase.id)!]! + spending.total_cents;
  for (const r of plan.payback.rebates) net[yearOf.get(r.phase) ?? 0] = net[yearOf.get(r.phase) ?? 0]! - r.cents;
  return net;
}

function sirReceipt(plan: Plan, of: About): Receipt {
  const rate = plan.terms.realDiscountRate;
  const now = (flows: readonly number[]): number => flows.reduce((sum, flow, year) => sum + flow / (1 + rate) ** year, 0);
  const flows = planFlows(plan, 'whole').net;
  const spent = netSpending(plan);
  const [npv, net] = [now(flows), now(spent)];
  const worked = net > 0 ? (npv + net) / net : 0;
  const terms = { discountRate: rate, basis: 'real' };
  return {
    figure: of.id, title: of.title, value: plan.payback.sir, unit: 'ratio',
    formula: 'savings-to-investment ratio of the plan = (net present value + what is spent) ÷ what is spent, both at the study start; spent = all that is paid less rebates',
    steps: [
      ...spent.flatMap((cents, year): ReceiptStep[] => (cents === 0 ? [] : [{ label: `spent in year ${String(year)}`, substituted: `${dollars(cents)} ÷ (1 + ${percent(rate)})^${String(year)} = ${dollars(cents / (1 + rate) ** year)}`, value: cents / (1 + rate) ** year, unit: 'cents' }])),
      { label: 'ratio', substituted: `(${dollars(npv)} + ${dollars(net)}) ÷ ${dollars(net)} = ${digits(worked)}`, value: worked, unit: 'ratio' },
    ],
    rows: [], assumptions: termsUsed(plan.terms, ['realDiscountRate']),
    compute: net > 0 ? { kernel: 'life-cycle', input: [{ flows_cents: flows, ...terms }, { flows_cents: spent, ...terms }], result: [{ pointer: '/0/npv_cents', times: 1 }, { pointer: '/1/npv_cents', times: 1 }], over: [{ pointer: '/1/npv_cents', times: 1 }], words: '(npv_cents of the first + npv_cents of the second) ÷ npv_cents of the second' } : null,
    computeWhy: net > 0 ? null : 'nothing is spent',
    worked: workedOut(plan.payback.sir, worked, 'cost and saving do not close'),
    see: ['plan/npv', 'plan/cost', 'plan/rebates'],
  };
}

const ownerReceipt = (plan: Plan, of: About): Receipt =>
  summed({
    ...of, stated: plan.payback.firstYearOwner_cents, unit: 'cents',
    formula: 'first-year saving of the owner = Σ lines of the saving in the year after the work × the owner’s share in that year',
    steps: plan.payback.lines.map((l) => ({ label: l.dwelling, substituted: `${dollars(l.yearly_cents[0] ?? 0)}, of which the owner keeps ${dollars(l.owner_cents[0] ?? 0)}`, value: l.owner_cents[0] ?? 0, unit: 'cents' })),
    see: plan.lines.map((l) => `line/${l.dwelling}/saving-owner`),
  });

const electricityReceipt = (plan: Plan, of: About): Receipt =>
  summed({
    ...of, stated: plan.payback.firstYear_kWh, unit: 'kWh',
    formula: 'electricity no longer used for cooling in the first year = Σ lines, each alone in its dwelling',
    steps: plan.lines.map((l) => ({ label: l.dwelling, substituted: `${digits(l.option.segments[0]?.saving.coolingElectricity_kWh ?? 0, 2)} kWh`, value: l.option.segments[0]?.saving.coolingElectricity_kWh ?? 0, unit: 'kWh' })),
    see: plan.lines.map((l) => `cooling/${l.dwelling}/electricity`),
  });

const beyondReceipt = (plan: Plan, of: About): Receipt =>
  summed({
    ...of, stated: plan.payback.overhead_cents, unit: 'cents',
    formula: 'paid beyond the lines = Σ phases (spending − installed cost of its lines): visits, freight, film beyond the pieces and contingency, less own labour that is not paid',
    steps: plan.phases.filter((p) => p.spending.total_cents !== 0).map(({ phase, spending }): ReceiptStep => {
      const lines = plan.lines.filter((l) => l.phase === phase.id).reduce((sum, l) => sum + Math.round(l.option.cost.total_cents), 0);
      return { label: phase.id, substituted: `${dollars(spending.total_cents)} − ${dollars(lines)} = ${dollars(spending.total_cents - lines)}`, value: spending.total_cents - lines, unit: 'cents' };
    }),
    see: plan.phases.map((p) => `phase/${part(p.phase.id)}/spending`),
  });

const rebatesReceipt = (plan: Plan, of: About): Receipt =>
  summed({
    ...of, stated: plan.payback.rebate_cents, unit: 'cents',
    formula: 'rebates of the plan = Σ projects (offer × building × phase) of what the fund gives',
    steps: plan.payback.rebates.map((r) => ({ label: `${r.rebate}, ${r.building}, ${r.phase}`, substituted: dollars(r.cents), value: r.cents, unit: 'cents' })),
    see: plan.payback.rebates.map((r) => `rebate/${part(r.rebate)}/${part(r.building)}/${part(r.phase)}`),
  });

/** Totals of the plan beside its headline figures. */
export function planTotals(): Figure[] {
  const figure = (id: string, title: string, receipt: (plan: Plan, of: About) => Receipt): Figure => ({ id, title, receipt: ({ plan }) => receipt(plan, { id, title }) });
  return [
    figure('plan/saving-owner', 'First-year saving the owner keeps', ownerReceipt),
    figure('plan/electricity', 'Electricity saved in the first year', electricityReceipt),
    figure('plan/beyond-lines', 'Paid beyond the lines of the plan', beyondReceipt),
    figure('plan/rebates', 'Rebates of the plan', rebatesReceipt),
    figure('plan/sir', 'Savings-to-investment ratio of the plan', sirReceipt),
  ];
}
