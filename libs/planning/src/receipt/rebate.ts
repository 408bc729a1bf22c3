import type { Rebate } from '#calc';
import { rebateIn } from '../options/rebates.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import type { ProjectRebate } from '../review/payback.js';
import { type Figure, part, type ReceiptAt } from './figure.js';
import { digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';

type About = Pick<Figure, 'id' | 'title'>;
const GONE = 'the offer is not among the inputs any more, or was changed since';

const idOf = (r: ProjectRebate): string => `rebate/${part(r.rebate)}/${part(r.building)}/${part(r.phase)}`;

/** Terms of an offer in words, as they are held against the project. */
function stepsOf({ area_m2, cost_cents }: ProjectRebate, offer: Rebate): ReceiptStep[] {
  const byArea = area_m2 * offer.rate_cents_m2;
  const share = offer.costShare ?? 1;
  return [
    { label: 'area × rate', substituted: `${digits(area_m2)} m² × ${dollars(offer.rate_cents_m2)} = ${dollars(byArea)}`, value: byArea, unit: 'cents' },
    ...(offer.cap_cents === null ? [] : [{ label: 'most for one project', substituted: dollars(offer.cap_cents), value: offer.cap_cents, unit: 'cents' }]),
    { label: 'most by cost', substituted: `${percent(share)} × ${dollars(cost_cents)} = ${dollars(share * cost_cents)}`, value: share * cost_cents, unit: 'cents' },
    ...(offer.areaAtLeast_m2 === null ? [] : [{ label: 'least area', substituted: `${digits(area_m2)} m² against ${digits(offer.areaAtLeast_m2)} m²`, value: offer.areaAtLeast_m2, unit: 'm2' }]),
  ];
}

/** Lines of the plan that count on an offer in a project. */
function membersOf(plan: Plan, r: ProjectRebate): { readonly line: PlanLine; readonly area_m2: number }[] {
  const phase = plan.phases.find((p) => p.phase.id === r.phase)?.phase;
  if (phase === undefined) return [];
  return plan.lines.filter((l) => l.phase === r.phase && l.building === r.building).flatMap((line) => {
    const offer = rebateIn(line.option.rebates, phase);
    return offer?.rebate === r.rebate ? [{ line, area_m2: offer.area_m2 }] : [];
  });
}

async function projectReceipt(r: ProjectRebate, at: ReceiptAt, of: About): Promise<Receipt> {
  const offer = (await at.survey()).job.portfolio.rebates.find((o) => o.id === r.rebate);
  const members = membersOf(at.plan, r);
  const cost_cents = members.reduce((sum, m) => sum + m.line.option.cost.total_cents, 0);
  const area_m2 = members.reduce((sum, m) => sum + m.area_m2, 0);
  const terms = offer === undefined ? [] : stepsOf({ ...r, area_m2, cost_cents }, offer);
  const input = offer === undefined ? null : {
    area_m2, cost_cents, rate_cents_m2: offer.rate_cents_m2,
    ...(offer.cap_cents === null ? {} : { cap_cents: offer.cap_cents }),
    ...(offer.costShare === null ? {} : { costShare: offer.costShare }),
    ...(offer.areaAtLeast_m2 === null ? {} : { areaAtLeast_m2: offer.areaAtLeast_m2 }),
  };
  const limits = terms.filter((s) => s.unit === 'cents').map((s) => s.value);
  const tooSmall = offer !== undefined && area_m2 < (offer.areaAtLeast_m2 ?? 0);
  const worked = offer === undefined ? 'not worked' : tooSmall ? 0 : Math.round(Math.min(...limits));
  return {
    figure: of.id, title: of.title, value: r.cents, unit: 'cents',
    formula: 'given to the project = the least of area × rate, cap and share × cost, rounded to the cent; nothing below the least area. Glass counts where its side, its SHGC before and its SHGC with film meet the offer; the letter must be there by the last day of the phase, and the deadline not before it',
    steps: [
      ...members.map((m): ReceiptStep => ({ label: m.line.dwelling, substituted: `${digits(m.area_m2)} m² of glass that counts, cost ${dollars(m.line.option.cost.total_cents)}`, value: m.area_m2, unit: 'm2' })),
      ...terms,
      { label: 'given', substituted: tooSmall ? 'below the least area: $0.00' : `least of ${limits.map(dollars).join(', ')} = ${dollars(Number(worked))}`, value: Number(worked), unit: 'cents' },
    ],
    rows: offer === undefined ? [] : [{ ...offer.inventoryRow, columns: ['rate', 'cap', 'cost_share', 'area_at_least', 'sides', 'shgc_before_at_least', 'shgc_after_at_most', 'pre_approved_on', 'deadline'], of: `offer ${offer.id}` }],
    assumptions: [],
    compute: input === null ? null : { kernel: 'rebate', input, result: [{ pointer: '/cents', times: 1 }], words: 'cents' },
    computeWhy: input === null ? GONE : null,
    worked: workedOut(r.cents, worked, GONE),
    see: members.map((m) => `line/${m.line.dwelling}/cost`),
  };
}

/** What each fund gives towards each project. */
export const rebateFigures = (plan: Plan): Figure[] =>
  plan.payback.rebates.map((r) => {
    const about = { id: idOf(r), title: `What offer ${r.rebate} gives towards ${r.building} in ${r.phase}` };
    return { ...about, receipt: (at) => projectReceipt(r, at, about) };
  });
