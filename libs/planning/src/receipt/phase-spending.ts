import type { Building } from '#calc';
import { defaultsOf } from '../job/plan-job.js';
import { visitCost } from '../job/visit-cost.js';
import type { PhaseResult, PhaseSpending, Plan } from '../plan/plan.js';
import { orderExtra_cents } from '../rolls/price-by-rolls.js';
import { builtIn, termsUsed } from './assumptions-of.js';
import type { Figure, ReceiptAt } from './figure.js';
import { part } from './figure.js';
import { added, digits, dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';
import { buildingRow } from './survey-rows.js';

type About = Pick<Figure, 'id' | 'title'>;

const buildingOf = (plan: Plan, id: string): Building => plan.buildings.find((b) => b.id === id)!;

/** One step a building visited. */
function visitSteps({ phase, visits }: PhaseResult, { plan, catalogue }: ReceiptAt): ReceiptStep[] {
  const { terms } = plan;
  const defaultOf = defaultsOf(catalogue);
  return visits.map((id): ReceiptStep => {
    const building = buildingOf(plan, id);
    const { cents, minutes } = visitCost(building, { terms, defaultOf });
    const own = terms.labourIsCash && minutes > 0 ? ` + ${digits(minutes)} min ÷ 60 × ${dollars(terms.labour_cents_h)}` : '';
    const fixed = terms.labourIsCash ? cents - (minutes / 60) * terms.labour_cents_h : cents;
    return { label: `visit to ${id} in ${phase.name}`, substituted: `${dollars(fixed)}${own} = ${dollars(cents)}`, value: cents, unit: 'cents' };
  });
}

/** The parts of a phase, each rounded on its own, as they are really paid. */
function partsOf(result: PhaseResult, at: ReceiptAt): { readonly steps: ReceiptStep[]; readonly total: number } {
  const { plan } = at;
  const { terms } = plan;
  const lines = plan.lines.filter((l) => l.phase === result.phase.id);
  const cuts = plan.cuts.filter((c) => c.phase === result.phase.id);
  const paid = lines.filter((l) => terms.labourIsCash || l.option.crew === 'contractor');
  const step = (label: string, words: string, value: number): ReceiptStep => ({ label, substituted: `${words} = ${dollars(value)}`, value, unit: 'cents' });
  const sumOf = (label: string, of: typeof lines, cost: (l: (typeof lines)[number]) => number): ReceiptStep => step(label, `Σ of ${String(of.length)} lines, rounded to the cent`, Math.round(of.reduce((sum, l) => sum + cost(l), 0)));
  const film = step('film', added(cuts.flatMap((c) => c.bought.map((b) => `${String(b.count)} × ${dollars(b.price_cents)} ${b.roll}`))) || 'from stock', cuts.reduce((sum, c) => sum + c.cost_cents, 0));
  const labour = sumOf('labour', paid, (l) => l.option.cost.labour_cents);
  const consumables = sumOf('consumables', lines, (l) => l.option.cost.consumables_cents);
  const removal = sumOf('old film off', paid, (l) => l.option.cost.removal_cents);
  const visitParts = visitSteps(result, at);
  const visits = step('visits', added(visitParts.map((v) => dollars(v.value))) || 'none', Math.round(visitParts.reduce((sum, v) => sum + v.value, 0)));
  const ordered = cuts.filter((c) => c.bought.length > 0).map((c) => orderExtra_cents(c, plan.films.find((f) => f.film.id === c.film)?.film));
  const freight = step('freight', added(ordered.map(dollars)) || 'nothing ordered', ordered.reduce((sum, each) => sum + each, 0));
  const [material, work] = [film.value + consumables.value + freight.value, labour.value + removal.value];
  const tax = step('tax', `${dollars(material)} × ${percent(terms.materialTaxShare)} + ${dollars(work)} × ${percent(terms.labourTaxShare)}, each rounded`, Math.round(material * terms.materialTaxShare) + Math.round(work * terms.labourTaxShare));
  const before = [film, labour, consumables, removal, visits, freight, tax];
  const sum = before.reduce((total, s) => total + s.value, 0);
  const contingency = step('contingency', `${dollars(sum)} × ${percent(terms.contingencyShare)}`, Math.round(sum * terms.contingencyShare));
  const total = sum + contingency.value;
  return { steps: [...visitParts, ...before, contingency, step('spending', added([...before, contingency].map((s) => dollars(s.value))), total)], total };
}

/** What a receipt of a phase is asked for: all, what is left, or one part. */
type Asked = 'spending' | 'left' | Exclude<keyof PhaseSpending, 'total_cents'>;

/** Parts as the steps name them. */
const STEP_OF: Readonly<Record<Exclude<Asked, 'left'>, string>> = {
  spending: 'spending', film_cents: 'film', labour_cents: 'labour', consumables_cents: 'consumables', removal_cents: 'old film off', visits_cents: 'visits', freight_cents: 'freight', tax_cents: 'tax', contingency_cents: 'contingency',
};

function spendingReceipt(result: PhaseResult, at: ReceiptAt, of: About & { readonly asked: Asked }): Receipt {
  const { plan } = at;
  const { steps, total } = partsOf(result, at);
  const { phase, spending, left_cents } = result;
  const left: ReceiptStep = { label: 'left of the cap', substituted: `${dollars(phase.cap_cents)} − ${dollars(total)} = ${dollars(phase.cap_cents - total)}`, value: phase.cap_cents - total, unit: 'cents' };
  const stated = of.asked === 'left' ? left_cents : of.asked === 'spending' ? spending.total_cents : spending[of.asked];
  const worked = of.asked === 'left' ? left.value : steps.find((s) => s.label === STEP_OF[of.asked as Exclude<Asked, 'left'>])!.value;
  const sources = at.catalogue.assumptions;
  const gaps = result.visits.some((id) => buildingOf(plan, id).visit_cents === null || buildingOf(plan, id).visitMinutes === null);
  return {
    figure: of.id,
    title: of.title,
    value: stated,
    unit: 'cents',
    formula: 'spending = rolls bought + labour + consumables + old film off + visits + freight + tax, and contingency on all of it; whole rolls, rebates not counted',
    steps: of.asked === 'left' ? [...steps, left] : steps,
    rows: [{ file: 'plan.json', row: 1, columns: ['phases'], of: `cap of ${phase.id}` }, ...result.visits.flatMap((id) => buildingRow(plan, id, ['visit_cost', 'visit_minutes', 'crew']))],
    assumptions: [...termsUsed(plan.terms, ['labour_cents_h', 'contingencyShare', 'materialTaxShare', 'labourTaxShare']), ...(gaps ? [builtIn('cost of a visit', sources.value('visit_cents')), builtIn('minutes of a visit', sources.value('visitMinutes'))] : [])],
    compute: null,
    computeWhy: 'a sum to be added by hand; the rolls have a receipt with a kernel',
    worked: workedOut(stated, worked, 'the phase was priced with film, work or money that is not in its lines any more'),
    see: [...plan.cuts.filter((c) => c.phase === phase.id).map((c) => `rolls/${part(phase.id)}/${part(c.film)}/cost`), ...plan.lines.filter((l) => l.phase === phase.id).slice(0, 3).map((l) => `line/${l.dwelling}/cost`)],
  };
}

/** What is really paid in a phase, what is left of its cap, and each part of the spending. */
export function phaseFigures(result: PhaseResult): Figure[] {
  const figure = (asked: Asked, title: string): Figure => {
    const about = { id: `phase/${part(result.phase.id)}/${asked === 'left' ? asked : STEP_OF[asked].replaceAll(' ', '-')}`, title: `${title} ${result.phase.id}` };
    return { ...about, receipt: (at) => spendingReceipt(result, at, { ...about, asked }) };
  };
  const parts = (Object.keys(STEP_OF) as (keyof typeof STEP_OF)[]).filter((asked) => asked !== 'spending');
  return [figure('spending', 'Spending of'), figure('left', 'Left of the cap of'), ...parts.map((asked) => figure(asked, `${STEP_OF[asked][0]!.toUpperCase()}${STEP_OF[asked].slice(1)}, paid in`))];
}
