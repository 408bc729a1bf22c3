import { capCurve, type Phase, type SelectionProblem } from '#calc';
import { grouped } from '../grouped.js';
import type { PlanTerms } from '../plan/terms.js';
import type { Workers } from '../workers.js';
import type { CapCurve, CapCurvePoint } from './explanations.js';
import type { PosedSelection } from './selection-problem.js';

export interface CurveQuestion {
  readonly posed: PosedSelection;
  readonly phases: readonly Phase[];
  readonly terms: Pick<PlanTerms, 'contingencyShare'>;
  readonly choose: Workers['choose'];
}

/** Caps the choice is made again at, as multiples of the plan's. */
const MULTIPLES = [0.25, 0.5, 0.75, 0.9, 1, 1.1, 1.25, 1.5, 2] as const;
/** Counted seconds of work of each, and the guard of the clock. */
const WORK_S = 0.3;
const GUARD_S = 30;
/** Above this the choice is not made again for the curve. */
const MOST_OPTIONS = 20_000;

/** The part of the problem that lies in some phases, numbered from 0 again. */
function within(problem: SelectionProblem, keep: readonly number[]): SelectionProblem {
  const place = new Map(keep.map((t, i) => [t, i]));
  const groups = problem.groups.flatMap((group) => {
    const options = group.options.filter((o) => o.phases?.some((t) => place.has(t)) === true).map((o) => ({ ...o, phases: (o.phases ?? []).flatMap((t) => place.get(t) ?? []) }));
    return options.length === 0 ? [] : [{ ...group, options }];
  });
  const ids = new Set(groups.map((g) => g.id));
  const used = new Set(groups.map((g) => g.building));
  return {
    groups,
    phases: keep.map((t) => problem.phases[t]!),
    buildings: (problem.buildings ?? []).filter((b) => used.has(b.id)).map((b) => ({ ...b, visitPrice: keep.map((t) => b.visitPrice?.[t] ?? 0) })),
    must: (problem.must ?? []).filter((id) => ids.has(id)),
  };
}

/** Can the phases of an owner be looked at one by one: is every dwelling tied to one phase, and every one-film building too? */
function apart(problem: SelectionProblem): boolean {
  const phasesOf = (options: readonly { readonly phases?: readonly number[] }[]): Set<number> => new Set(options.flatMap((o) => o.phases ?? []));
  const oneFilm = new Set((problem.buildings ?? []).filter((b) => b.oneFamily === true).map((b) => b.id));
  if (problem.groups.some((g) => phasesOf(g.options).size > 1)) return false;
  return [...grouped(problem.groups, (g) => g.building ?? '')].every(([id, own]) => !oneFilm.has(id) || phasesOf(own.flatMap((g) => g.options)).size <= 1);
}

const dwellingsOf = (posed: PosedSelection, group: string): readonly string[] => {
  const lines = [...posed.candidates.values()].find((own) => own[0]?.bundle === group);
  return lines === undefined ? [group] : lines.map((l) => l.option.dwelling);
};

/** Corners of an exact curve in caps as they are given, contingency inside. */
function exactCurve(problem: SelectionProblem, at: { readonly of: string; readonly phases: readonly string[]; readonly ask: CurveQuestion }): CapCurve | null {
  const points = capCurve(problem);
  if ('why' in points) return null;
  const share = 1 + at.ask.terms.contingencyShare;
  return {
    of: at.of,
    phases: at.phases,
    basis: 'exact breakpoints',
    why: 'at each point a whole plan meets the bound; between two points no plan lies above the straight line. Film by the piece, before whole rolls.',
    points: points.map(({ cap_cents, value, steps }): CapCurvePoint => ({ cap_cents: Math.ceil(cap_cents * share), value_cents: value, bound_cents: value, changes: steps.flatMap((s) => dwellingsOf(at.ask.posed, s.group)) })),
  };
}

/** The choice made again at multiples of the caps. */
async function solvedCurve(problem: SelectionProblem, at: { readonly of: string; readonly phases: readonly string[]; readonly ask: CurveQuestion }): Promise<CapCurve> {
  const options = problem.groups.reduce((sum, g) => sum + g.options.length, 0);
  if (options > MOST_OPTIONS) return { of: at.of, phases: at.phases, basis: 'not drawn', why: `not drawn for ${String(options)} options: each point is a choice of its own`, points: [] };
  const points: CapCurvePoint[] = [];
  let before = new Set<string>();
  for (const multiple of MULTIPLES) {
    const phases = problem.phases.map((p) => ({ ...p, cap_cents: Math.floor(p.cap_cents * multiple) }));
    const answer = await at.ask.choose({ ...problem, phases, timeLimit_s: GUARD_S }, { work_s: WORK_S });
    if (answer.value === null) continue;
    const now = new Set(answer.chosen.flatMap((c) => dwellingsOf(at.ask.posed, c.group)));
    const changes = [...now].filter((id) => !before.has(id)).concat([...before].filter((id) => !now.has(id))).sort();
    points.push({ cap_cents: Math.round(phases.reduce((sum, p) => sum + p.cap_cents, 0) * (1 + at.ask.terms.contingencyShare)), value_cents: answer.value, bound_cents: answer.bound, changes });
    before = now;
  }
  return { of: at.of, phases: at.phases, basis: 'solved again at other caps', why: 'several caps share the dwellings, so all caps of the owner are raised and lowered together and the choice is made again, briefly; no plan passes the bound beside. Film by the piece, before whole rolls.', points };
}

/** Value against cap, phase by phase where the phases share no dwelling, otherwise for all phases of an owner together. */
export async function capCurves(ask: CurveQuestion): Promise<CapCurve[]> {
  const curves: CapCurve[] = [];
  const used = new Set(ask.posed.problem.groups.flatMap((g) => g.options.flatMap((o) => o.phases ?? [])));
  const owners = grouped(ask.phases.map((phase, t) => ({ phase, t })).filter(({ t }) => used.has(t)), ({ phase }) => phase.ownerEntity);
  for (const [owner, own] of owners) {
    const whole = within(ask.posed.problem, own.map(({ t }) => t));
    const pieces = apart(whole) ? own.map(({ phase, t }) => ({ of: phase.id, phases: [phase.id], problem: within(ask.posed.problem, [t]) })) : [{ of: owner, phases: own.map(({ phase }) => phase.id), problem: whole }];
    for (const { problem, ...name } of pieces) curves.push(exactCurve(problem, { ...name, ask }) ?? (await solvedCurve(problem, { ...name, ask })));
  }
  return curves;
}
