import type { SelectionProblem } from '#calc';
import type { CapCurve, CapCurvePoint } from '../choice/explanations.js';
import type { Plan } from '../plan/plan.js';
import { termsUsed } from './assumptions-of.js';
import { type Figure, part, type ReceiptAt } from './figure.js';
import { numberedPhases } from './limit-price.js';
import { dollars, percent } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';

interface PointFigure extends Pick<Figure, 'id' | 'title'> {
  readonly curve: CapCurve;
  readonly point: CapCurvePoint;
}

/** The question of a point: the phases of the curve at its cap, all others shut. Null where several caps share it and their parts are not told. */
function problemAt({ curve, point }: PointFigure, plan: Plan): SelectionProblem | null {
  const { record } = plan.proof;
  if (record === undefined) return null;
  const share = 1 + plan.terms.contingencyShare;
  const own = new Set(numberedPhases(plan).flatMap((id, t) => (curve.phases.includes(id) ? [t] : [])));
  const caps = record.problem.phases.map((p, t) => (own.has(t) ? p.cap_cents : 0));
  const all = caps.reduce((sum, cap) => sum + cap, 0);
  // All caps of a curve are raised and lowered by one multiple, of which the point states the sum with contingency.
  const multiple = all === 0 ? 0 : Math.round((point.cap_cents / share / all) * 1000) / 1000;
  const at = own.size === 1 ? [point.cap_cents / share] : caps.map((cap) => Math.floor(cap * multiple));
  const phases = record.problem.phases.map((p, t) => ({ ...p, cap_cents: !own.has(t) ? 0 : own.size === 1 ? Math.floor(at[0]!) : at[t]! }));
  const groups = record.problem.groups.flatMap((group) => {
    const options = group.options.flatMap((o) => { const kept = (o.phases ?? []).filter((t) => own.has(t)); return kept.length === 0 ? [] : [{ ...o, phases: kept }]; });
    return options.length === 0 ? [] : [{ ...group, options }];
  });
  const ids = new Set(groups.map((g) => g.id));
  const used = new Set(groups.map((g) => g.building));
  return { ...record.problem, phases, groups, buildings: (record.problem.buildings ?? []).filter((b) => used.has(b.id)), must: (record.problem.must ?? []).filter((id) => ids.has(id)) };
}

function pointReceipt(of: PointFigure, { plan }: ReceiptAt): Receipt {
  const { curve, point } = of;
  const problem = problemAt(of, plan);
  const place = curve.points.indexOf(point);
  const before = curve.points[place - 1];
  const share = 1 + plan.terms.contingencyShare;
  const isExact = point.bound_cents === point.value_cents;
  const steps: ReceiptStep[] = [
    { label: 'cap without contingency', substituted: `${dollars(point.cap_cents)} ÷ (1 + ${percent(plan.terms.contingencyShare)}) = ${dollars(point.cap_cents / share)}`, value: point.cap_cents / share, unit: 'cents' },
    { label: 'no plan passes', substituted: dollars(point.bound_cents), value: point.bound_cents, unit: 'cents' },
    { label: 'value', substituted: dollars(point.value_cents), value: point.value_cents, unit: 'cents' },
    ...(before === undefined ? [] : [{ label: 'for each further dollar', substituted: `(${dollars(point.value_cents)} − ${dollars(before.value_cents)}) ÷ (${dollars(point.cap_cents)} − ${dollars(before.cap_cents)}) = ${((point.value_cents - before.value_cents) / Math.max(1, point.cap_cents - before.cap_cents)).toFixed(4)}`, value: (point.value_cents - before.value_cents) / Math.max(1, point.cap_cents - before.cap_cents), unit: 'ratio' }]),
  ];
  return {
    figure: of.id, title: of.title, value: point.value_cents, unit: 'cents', formula: `value at a cap = Σ value of the chosen options − visits, ${curve.why}`,
    steps, rows: [{ file: 'plan.json', row: 1, columns: ['phases'], of: `caps of ${curve.of}` }], assumptions: termsUsed(plan.terms, ['contingencyShare']),
    compute: problem === null || !isExact || curve.basis !== 'solved again at other caps' ? null : { kernel: 'select', input: problem, result: [{ pointer: '/value', times: 1 }], words: 'value' },
    computeWhy: problem === null ? 'the plan was kept before its question was recorded' : curve.basis !== 'solved again at other caps' ? 'a corner of the curve: cap and value are sums of the steps that come in up to it, each for its money’s worth' : isExact ? null : 'the choice at this cap is not proved: the kernel searches longer and may reach more; it cannot pass the bound beside',
    worked: workedOut(point.value_cents, point.value_cents, ''), see: ['plan/value', ...curve.phases.map((p) => `limit/${part(p)}/next-dollar`)],
  };
}

/** Points of value against cap. */
export const curveFigures = (plan: Plan): Figure[] =>
  (plan.explanations?.curves ?? []).flatMap((curve) =>
    curve.points.map((point, i): Figure => {
      const about = { id: `curve/${part(curve.of)}/${String(i + 1)}`, title: `Value at a cap of ${dollars(point.cap_cents)}, ${curve.of}` };
      return { ...about, receipt: (at) => pointReceipt({ ...about, curve, point }, at) };
    }),
  );
