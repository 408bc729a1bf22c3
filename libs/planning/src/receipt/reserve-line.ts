import { explain } from '#calc';
import type { ReserveLine } from '../choice/explanations.js';
import { lessRemoval, optionFlows } from '../options/value.js';
import type { Plan } from '../plan/plan.js';
import { termsUsed } from './assumptions-of.js';
import { type Figure, part, type ReceiptAt } from './figure.js';
import { dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptCompute, type ReceiptStep, workedOut } from './receipt.js';
import { dwellingRow } from './survey-rows.js';

interface ReserveFigure extends Pick<Figure, 'id' | 'title'> {
  readonly row: ReserveLine;
  readonly asked: 'value' | 'behind';
}

interface Worked {
  readonly value: number | string;
  readonly steps: readonly ReceiptStep[];
  readonly compute: ReceiptCompute | null;
}

const NONE: Worked = { value: 'not worked', steps: [], compute: null };

/** Value by the flows of the option, worked out again from the survey. */
async function valueOf(row: ReserveLine, at: ReceiptAt): Promise<Worked> {
  const { plan } = at;
  const survey = await at.survey();
  const phase = plan.phases.find((p) => p.phase.id === row.phase)?.phase;
  // A meter valued again after the choice counts its neighbours as planned; one that was not counts them as found.
  for (const neighbours of ['as found', 'as planned'] as const) {
    const option = (await survey.optionsOf(new Set([row.dwelling]), neighbours)).find((o) => o.id === row.option);
    if (option === undefined || phase === undefined) return NONE;
    const flows = optionFlows(option, phase, { terms: plan.terms, endYear: plan.buildings.find((b) => b.id === row.building)?.endYear ?? null });
    const saved = plan.terms.view === 'owner' ? flows.owner_cents : flows.whole_cents;
    const net = lessRemoval(saved, flows).map((flow, year) => flow - flows.cost_cents[year]! + flows.rebate_cents[year]!);
    const rate = plan.terms.realDiscountRate;
    const steps = net.flatMap((flow, year): ReceiptStep[] => (flow === 0 ? [] : [{ label: `year ${String(year)}`, substituted: `${dollars(flow)} ÷ (1 + ${percent(rate)})^${String(year)} = ${dollars(flow / (1 + rate) ** year)}`, value: flow / (1 + rate) ** year, unit: 'cents' }]));
    const exact = steps.reduce((sum, s) => sum + s.value, 0);
    const found: Worked = { value: Math.round(exact), steps: [...steps, { label: 'value', substituted: `sum, rounded to the cent = ${dollars(Math.round(exact))}`, value: Math.round(exact), unit: 'cents' }], compute: { kernel: 'life-cycle', input: { flows_cents: net, discountRate: rate, basis: 'real' }, result: [{ pointer: '/npv_cents', times: 1 }], isRounded: true, words: 'npv_cents, rounded to the cent' } };
    if (found.value === row.value_cents || neighbours === 'as planned') return found;
  }
  return NONE;
}

/** How far the value stays behind the price of what the line uses, by the certificate of the choice. */
function behindOf(row: ReserveLine, plan: Plan): Worked {
  const { record } = plan.proof;
  if (record === undefined || record.result.value === null) return NONE;
  const reason = explain(record.problem, record.result).options.find((o) => o.option === `${row.option}@${row.phase}`);
  if (reason === undefined) return NONE;
  const option = record.problem.groups.flatMap((g) => g.options).find((o) => o.id === reason.option)!;
  const { cap, crewMinutes } = record.result.certificate.multipliers;
  const used = (cap[reason.phase] ?? 0) * option.cost_cents + (crewMinutes[reason.phase] ?? 0) * (option.crewMinutes ?? 0);
  const rest = option.value - used - reason.reducedValue;
  return {
    value: Math.round(-reason.reducedValue),
    compute: null,
    steps: [
      { label: 'price of its money and minutes', substituted: `${dollars(option.cost_cents)} × ${String(cap[reason.phase] ?? 0)} + ${String(option.crewMinutes ?? 0)} min × ${String(crewMinutes[reason.phase] ?? 0)} = ${dollars(used)}`, value: used, unit: 'cents' },
      ...(Math.abs(rest) < 1e-6 ? [] : [{ label: 'price of a visit and of what buildings and owners are bound to', substituted: dollars(rest), value: rest, unit: 'cents' }]),
      { label: 'behind', substituted: `${dollars(used)}${Math.abs(rest) < 1e-6 ? '' : ` + ${dollars(rest)}`} − ${dollars(option.value)} = ${dollars(-reason.reducedValue)}, rounded`, value: -reason.reducedValue, unit: 'cents' },
    ],
  };
}

async function reserveReceipt(of: ReserveFigure, at: ReceiptAt): Promise<Receipt> {
  const { plan } = at;
  const { row } = of;
  const isValue = of.asked === 'value';
  const worked = isValue ? await valueOf(row, at) : behindOf(row, plan);
  const stated = isValue ? row.value_cents : row.behind_cents;
  return {
    figure: of.id, title: of.title, value: stated, unit: 'cents',
    formula: isValue ? 'value = net present value of the option in its phase, in the view of the plan, rounded to the cent' : 'behind = price of the money, minutes and visits the line would use, at the prices of the certificate, − its value; 0 where it is as good as what was taken but does not fit as a whole',
    steps: worked.steps,
    rows: dwellingRow(plan, row.dwelling, ['floor_area', 'cooling_set_point', 'cooling_efficiency']),
    assumptions: isValue ? termsUsed(plan.terms, ['realDiscountRate', 'realEscalation', 'filmDegradation_1_yr', 'endRemoval_cents_m2']) : [],
    compute: worked.compute,
    computeWhy: worked.compute !== null ? null : isValue ? 'the survey kept now has no such option any more' : 'a difference to be taken by hand; the prices have receipts of their own',
    worked: workedOut(stated, worked.value, 'the survey was changed since the plan was made, or neighbours on the meter were chosen in other rounds'),
    see: isValue ? [`reserve/${row.dwelling}/behind`] : [`reserve/${row.dwelling}/value`, `limit/${part(row.phase)}/next-dollar`],
  };
}

/** Lines that come next if one drops out. */
export const reserveFigures = (plan: Plan): Figure[] =>
  (plan.explanations?.reserve ?? []).flatMap((row) =>
    (['value', 'behind'] as const).map((asked): Figure => {
      const about = { id: `reserve/${row.dwelling}/${asked}`, title: `${asked === 'value' ? 'Value' : 'How far behind'} of ${row.dwelling} in the reserve` };
      return { ...about, receipt: (at) => reserveReceipt({ ...about, row, asked }, at) };
    }),
  );
