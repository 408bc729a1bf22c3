import { payerShares } from '#calc';
import { lessRemoval, optionFlows } from '../options/value.js';
import { rebateIn } from '../options/rebates.js';
import { withPlantYear } from '../uncertainty/drawn-option.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import { type Figure, part } from './figure.js';
import { lineFlows } from './line-flows.js';
import { digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptPart, workedOut } from './receipt.js';
import { dwellingRow } from './survey-rows.js';

type About = Pick<Figure, 'id' | 'title'>;

function ownerReceipt(plan: Plan, line: PlanLine, of: About): Receipt {
  const row = plan.payback.lines.find((l) => l.dwelling === line.dwelling)!;
  const [saving, stated] = [row.yearly_cents[0] ?? 0, row.owner_cents[0] ?? 0];
  const { payer } = line.option;
  const share = payerShares(payer, 1).owner;
  const late = Math.min(1, payer.resetLag_yr);
  return {
    figure: of.id, title: of.title, value: stated, unit: 'cents',
    formula: 'kept by the owner = saving of the year after the work × (vacancy + (1 − vacancy) × (late + (1 − late) × owner’s share)); late = part of the year in which the bill still follows the old use',
    steps: [
      { label: 'owner’s share', substituted: `${percent(payer.vacancyShare)} + (1 − ${percent(payer.vacancyShare)}) × (${digits(late)} + (1 − ${digits(late)}) × ${percent(payer.ownerShare)}) = ${percent(share)}`, value: share, unit: 'share' },
      { label: 'kept', substituted: `${dollars(saving)} × ${percent(share)} = ${dollars(saving * share)}`, value: saving * share, unit: 'cents' },
    ],
    rows: dwellingRow(plan, line.dwelling, []), assumptions: [{ name: 'payer rule', value: payer.id, unit: '', source: 'meters.csv', basis: 'given' }], compute: null, computeWhy: 'a share to be taken by hand',
    worked: workedOut(stated, saving * share, 'savings of this line were weighed anew after it was chosen'), see: [`line/${line.dwelling}/saving`, `line/${line.dwelling}/npv-owner`],
  };
}

function rebateReceipt(plan: Plan, line: PlanLine, of: About): Receipt {
  const phase = plan.phases.find((p) => p.phase.id === line.phase)!.phase;
  const row = plan.payback.lines.find((l) => l.dwelling === line.dwelling)!;
  const offer = rebateIn(line.option.rebates, phase);
  const cents = Math.round(offer?.cents ?? 0);
  return {
    figure: of.id, title: of.title, value: row.rebate_cents, unit: 'cents',
    formula: 'rebate counted on for the line = the best offer it meets whose letter and deadline fit the phase, by the line alone; the project may be given less',
    steps: line.option.rebates.map((r) => ({ label: `offer ${r.rebate}`, substituted: `${digits(r.area_m2)} m² of glass that counts: ${dollars(r.cents)}${r === offer ? '' : r.waits ? ', its letter is not there' : ', not taken'}`, value: r.cents, unit: 'cents' })),
    rows: [], assumptions: [], compute: null, computeWhy: offer === null ? 'no offer counts for this line' : 'the project has a receipt with a kernel',
    worked: workedOut(row.rebate_cents, cents, 'offers and line do not close'), see: plan.payback.rebates.filter((r) => r.building === line.building && r.phase === line.phase).map((r) => `rebate/${part(r.rebate)}/${part(r.building)}/${part(r.phase)}`),
  };
}

/** Share of today's price of electricity at which the line is worth nothing. */
function breakEvenReceipt(plan: Plan, line: PlanLine, of: About): Receipt {
  const stated = plan.outlook!.lines.find((l) => l.dwelling === line.dwelling)!.breakEvens.priceShare;
  const flows = lineFlows(plan, line);
  const rate = plan.terms.realDiscountRate;
  const saved = plan.terms.view === 'owner' ? flows.owner_cents : flows.whole_cents;
  const net = flows.cost_cents.map((cost, year) => cost - flows.rebate_cents[year]! + flows.removal_cents[year]!);
  const now = (cents: readonly number[]): number => cents.reduce((sum, flow, year) => sum + flow / (1 + rate) ** year, 0);
  const [saving, cost] = [now(saved), now(net)];
  const worked = saving > 0 ? cost / saving : 'none';
  const npv = (i: number): ReceiptPart => ({ pointer: `/${String(i)}/npv_cents`, times: 1 });
  return {
    figure: of.id, title: of.title, value: stated ?? 'none', unit: stated === null ? '' : 'share',
    formula: 'the line is worth nothing at this share of the price of electricity = (installed cost − rebate + taking film off at its end) ÷ savings of the film’s life, both worth today; every charge of the tariff moves alike',
    steps: saving > 0 ? [{ label: 'share', substituted: `${dollars(cost)} ÷ ${dollars(saving)} = ${digits(cost / saving, 6)}`, value: cost / saving, unit: 'share' }] : [],
    rows: [], assumptions: [], compute: saving > 0 ? { kernel: 'life-cycle', input: [net, [...saved]].map((flows_cents) => ({ flows_cents, discountRate: rate, basis: 'real' })), result: [npv(0)], over: [npv(1)], words: 'npv_cents of the first over npv_cents of the second' } : null,
    computeWhy: saving > 0 ? null : 'the line saves nothing in this view',
    worked: workedOut(stated ?? 'none', worked, 'savings of this line were weighed anew after it was chosen'), see: [`line/${line.dwelling}/npv`],
  };
}

/** Value of the line with its plant replaced in a year, at the plan's own figures. */
function plantYearReceipt(plan: Plan, line: PlanLine, of: About): Receipt {
  const stated = plan.outlook!.lines.find((l) => l.dwelling === line.dwelling)!.breakEvens.plantReplacedBy!;
  const { segments } = line.option;
  const change = segments.findIndex((s, i) => i > 0 && s.plant !== segments[i - 1]!.plant);
  const phase = plan.phases.find((p) => p.phase.id === line.phase)!.phase;
  const at = { terms: plan.terms, endYear: plan.buildings.find((b) => b.id === line.building)?.endYear ?? null };
  const rate = plan.terms.realDiscountRate;
  const flowsIn = (year: number): number[] => {
    const flows = optionFlows({ ...line.option, segments: withPlantYear(segments, year - segments[change]!.firstYear) }, phase, at);
    return lessRemoval(plan.terms.view === 'owner' ? flows.owner_cents : flows.whole_cents, flows).map((flow, y) => flow - flows.cost_cents[y]! + flows.rebate_cents[y]!);
  };
  const value = (year: number): number => flowsIn(year).reduce((sum, flow, y) => sum + flow / (1 + rate) ** y, 0);
  const steps = [stated, ...(stated + 1 <= segments[change]!.firstYear ? [stated + 1] : [])].map((year) => ({ label: `plant replaced in ${String(year)}`, substituted: `value ${dollars(value(year))}`, value: value(year), unit: 'cents' }));
  return {
    figure: of.id, title: of.title, value: stated, unit: 'calendar year',
    formula: 'latest year of replacement, up to the expected one, in which the net present value of the line is below zero: a better plant leaves less to save',
    steps, rows: dwellingRow(plan, line.dwelling, ['cooling_replacement_year', 'efficiency_after']), assumptions: [], compute: null,
    computeWhy: 'a search over years; `life-cycle` gives the value of each from its flows',
    worked: workedOut(stated, value(stated) < 0 && (steps[1] === undefined || steps[1].value >= 0) ? stated : 'another year', 'savings of this line were weighed anew after it was chosen'), see: [`line/${line.dwelling}/npv`],
  };
}

/** What the owner keeps of a line, what a fund gives, and where the line is worth nothing. */
export function lineOwner(plan: Plan, line: PlanLine): Figure[] {
  const figure = (name: string, title: string, receipt: (plan: Plan, line: PlanLine, of: About) => Receipt): Figure => {
    const about = { id: `line/${line.dwelling}/${name}`, title: `${title} of ${line.dwelling}` };
    return { ...about, receipt: ({ plan: of }) => receipt(of, line, about) };
  };
  const breaks = plan.outlook?.lines.find((l) => l.dwelling === line.dwelling)?.breakEvens;
  return [
    figure('saving-owner', 'First-year saving the owner keeps', ownerReceipt),
    figure('rebate', 'Rebate counted on', rebateReceipt),
    ...(breaks === undefined ? [] : [figure('break-even-price', 'Break-even price of electricity', breakEvenReceipt)]),
    ...(breaks?.plantReplacedBy == null ? [] : [figure('break-even-plant', 'Break-even year of a new plant', plantYearReceipt)]),
  ];
}
