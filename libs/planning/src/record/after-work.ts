import { type Building, dollarsText, type Phase, type Portfolio, recalibrated, type RecalibratedTime, type Roll, type SiteRecord, type TimeModel } from '#calc';
import type { Plan } from '../plan/plan.js';
import { type PlanFinding, toldFinding } from '../plan/plan-finding.js';
import { told } from '../words/told.js';
import { type Happened, whatHappened } from './happened.js';
import { moneySpent } from './money-spent.js';
import { rollsLeft, rollsNow } from './rolls-left.js';
import { locksAfter } from './locks-after.js';
import { redoFilm, redoMoney, redoSpent_cents } from './redo-cuts.js';
import { redoWork } from './redo-work.js';
import type { CapAfterWork, RedoMoney, RedoWork, SettledWork, SpentMoney } from './settled-work.js';

/** A plan to be made again after work was done on the one before. */
export interface AfterWork {
  /** The portfolio as a new plan may use it: windows that carry film locked out, money spent off the caps, film left in the store room. */
  readonly portfolio: Portfolio;
  readonly settled: SettledWork;
  readonly findings: readonly PlanFinding[];
  readonly time: RecalibratedTime;
}

export interface AfterWorkRequest {
  readonly portfolio: Portfolio;
  readonly plan: Plan;
  /** ISO date. */
  readonly asOf: string;
  readonly timeModel: TimeModel;
  /** As in the request for panes to be done again. */
  readonly contractorMakesGood?: boolean;
}

/** Lines the own crew filmed. A line of an earlier plan that does not say who did is its building's. */
function doneByOwnCrew(done: SettledWork['done'], buildings: readonly Building[]): SettledWork['done'] {
  const hired = new Set(buildings.filter((b) => b.crew === 'contractor').map((b) => b.id));
  return done.filter((d) => (d.crew ?? (hired.has(d.building) ? 'contractor' : 'own')) === 'own');
}

/** Own crew's minutes a year has lost: as recorded, or as planned where nobody wrote them down. */
const minutesGone = (ownDone: SettledWork['done'], phase: string): number => ownDone.filter((d) => d.phase === phase).reduce((sum, d) => sum + (d.real_min ?? d.planned_min), 0);

/** Caps and minutes less what is spent and what is kept for panes to be done again; a phase that is over buys nothing more. What the ledger says is taken off where the caps come into force, and not twice. */
function phasesLeft(phases: readonly Phase[], of: { readonly spent: readonly SpentMoney[]; readonly kept: readonly RedoMoney[]; readonly ownDone: SettledWork['done']; readonly asOf: string }): Phase[] {
  const gone = new Map(of.spent.filter((s) => s.basis !== 'ledger').map((s) => [s.phase, s.spent_cents]));
  return phases.map((p): Phase => {
    const kept = of.kept.find((k) => k.phase === p.id);
    const left_cents = p.cap_cents - (gone.get(p.id) ?? 0) - (kept === undefined ? 0 : kept.film_cents + kept.work_cents);
    const crewMinutes = p.crewMinutes === null ? null : Math.max(0, p.crewMinutes - minutesGone(of.ownDone, p.id) - (kept?.minutes ?? 0));
    return { ...p, crewMinutes, cap_cents: p.lastDay < of.asOf ? 0 : Math.max(0, left_cents) };
  });
}

/** How each cap something was spent or kept of came to what is left of it. */
function capsAfter(phases: readonly Phase[], of: { readonly spent: readonly SpentMoney[]; readonly kept: readonly RedoMoney[]; readonly asOf: string }): CapAfterWork[] {
  return phases.flatMap((p): CapAfterWork[] => {
    const spent_cents = of.spent.find((s) => s.phase === p.id)?.spent_cents ?? 0;
    const kept = of.kept.find((k) => k.phase === p.id);
    const kept_cents = Math.round(kept === undefined ? 0 : kept.film_cents + kept.work_cents);
    const isOver = p.lastDay < of.asOf;
    if (spent_cents === 0 && kept_cents === 0) return [];
    return [{ phase: p.id, cap_cents: p.cap_cents, spent_cents, kept_cents, left_cents: isOver ? 0 : Math.max(0, p.cap_cents - spent_cents - kept_cents), isOver }];
  });
}

/** A day to come is most often a slip of the pen. */
function aheadFindings(records: readonly SiteRecord[], asOf: string): PlanFinding[] {
  const ahead = records.filter((r) => r.day > asOf);
  const days = [...new Set(ahead.map((r) => r.day))].sort().join(', ');
  return ahead.length === 0 ? [] : [toldFinding({ severity: 'warning', subject: 'site records' }, told('record.ahead', { count: ahead.length, day: asOf }), told('record.ahead.toDo', { days }))];
}

function moneyFindings(spent: readonly SpentMoney[], phases: readonly Phase[], asOf: string): PlanFinding[] {
  return spent.flatMap((s): PlanFinding[] => {
    const phase = phases.find((p) => p.id === s.phase);
    if (phase === undefined) return [];
    const over = s.spent_cents > phase.cap_cents;
    const basis = told(s.basis === 'ledger' ? 'record.basis.ledger' : 'record.basis.plan');
    const text = told(phase.lastDay < asOf ? 'record.spentOver' : 'record.spent', { spent: dollarsText(s.spent_cents), cap: dollarsText(phase.cap_cents), basis });
    return [toldFinding({ severity: over ? 'warning' : 'note', subject: s.phase }, text, told(over ? 'record.over.toDo' : 'record.spent.toDo'))];
  });
}

function redoFindings(work: readonly RedoWork[], kept: readonly RedoMoney[], terms: Plan['terms']): PlanFinding[] {
  const count = (some: readonly RedoWork[]): number => some.reduce((sum, w) => sum + w.panes.length, 0);
  const late = work.filter((w) => !w.waitsForGlass && w.phase === null);
  return [
    ...kept.map((k) => toldFinding({ severity: 'note', subject: k.phase }, told(terms.labourIsCash ? 'record.again' : 'record.againNoCash', { count: count(work.filter((w) => w.phase === k.phase)), film: dollarsText(k.film_cents), work: dollarsText(k.work_cents), minutes: k.minutes }), told('record.again.toDo'))),
    ...work.filter((w) => w.isMadeGood === true).map((w) => toldFinding({ severity: 'note', subject: w.dwelling }, told('record.contractor', { count: w.panes.filter((p) => p.why === 'defect').length }), told('record.contractor.toDo'))),
    ...work.filter((w) => w.waitsForGlass).map((w) => toldFinding({ severity: 'warning', subject: w.dwelling }, told('record.glass', { panes: w.panes.map((p) => p.pane).join(', ') }), told('record.glass.toDo'))),
    ...late.map((w) => toldFinding({ severity: 'warning', subject: w.dwelling }, told('record.late', { count: w.panes.length, from: w.from }), told('record.late.toDo'))),
  ];
}

/** What the own crew took for dwellings that are wholly done; a contractor's minutes say nothing of its pace. */
const MINUTES_OF = (happened: Happened): { model_min: number; real_min: number }[] =>
  happened.done.flatMap((d) => (d.crew === 'own' && d.real_min !== null && d.real_min > 0 && d.planned_min > 0 && !happened.redo.some((r) => r.dwelling === d.dwelling) ? [{ model_min: d.planned_min, real_min: d.real_min }] : []));

/**
 * What a new revision starts from: done work never moves and its money is spent; film left of opened rolls is stock; panes that failed or
 * were not reached are cut again from it first; minutes of the model move towards what was recorded.
 */
export function afterWork(request: AfterWorkRequest): AfterWork {
  const { portfolio, plan, asOf } = request;
  const records: readonly SiteRecord[] = portfolio.siteRecords.filter((r) => r.day <= asOf);
  const happened = whatHappened(plan, records);
  const phases = new Set(happened.done.map((d) => d.phase));
  const stocked = plan.settled === null ? portfolio.rolls : [...portfolio.rolls.map((r): Roll => ({ ...r, inStock: 0 })).filter((r) => r.price_cents !== null), ...plan.rolls.filter((r) => r.inStock > 0).map((r) => ({ ...r, price_cents: null }))];
  const { left, opened } = rollsLeft(plan, { phases, cutPanes: happened.cutPanes, records });
  const work = redoWork({ panes: happened.redo, records, consents: portfolio.consents, phases: portfolio.phases, timeModel: request.timeModel, terms: plan.terms, buildings: portfolio.buildings, ...(request.contractorMakesGood === undefined ? {} : { contractorMakesGood: request.contractorMakesGood }), asOf });
  const film = redoFilm(happened.redo, { plan, work, rolls: portfolio.rolls, stock: left });
  const kept = redoMoney(work, film, plan.terms);
  const open = new Set(happened.redo.map((r) => r.pane));
  const bySite = moneySpent(plan, happened.done, portfolio.ledger);
  const spent = plan.phases.flatMap(({ phase: { id } }): SpentMoney[] => {
    const known = bySite.find((s) => s.phase === id);
    const redone_cents = known?.basis === 'ledger' ? 0 : redoSpent_cents(plan, id, open);
    if (known === undefined && redone_cents === 0) return [];
    return [{ phase: id, basis: known?.basis ?? 'plan cost and recorded minutes', spent_cents: (known?.spent_cents ?? 0) + redone_cents }];
  });
  const done = [...(plan.settled?.done ?? []), ...happened.done];
  const time = recalibrated(request.timeModel, MINUTES_OF(happened));
  const settled: SettledWork = {
    parent: plan.id, asOf, done, redo: work.flatMap((w) => w.panes), redoWork: work, redoMoney: kept, redoCuts: film.cuts, noAccess: happened.noAccess, spent, caps: capsAfter(portfolio.phases, { spent, kept, asOf }),
    rollsLeft: film.left.map(({ roll, film, width_mm, length_mm, lot }) => ({ roll, film, width_mm, length_mm, lot })),
    time: { factor: time.factor, recorded: time.recorded, visits: time.visits },
  };
  return {
    portfolio: { ...portfolio, phases: phasesLeft(portfolio.phases, { spent, kept, ownDone: doneByOwnCrew(done, plan.buildings), asOf }), locks: locksAfter(portfolio.locks, done, asOf), rolls: rollsNow(stocked, { left: film.left, opened }) },
    settled,
    findings: [...aheadFindings(portfolio.siteRecords, asOf), ...happened.findings, ...moneyFindings(spent, portfolio.phases, asOf), ...redoFindings(work, kept, plan.terms)],
    time,
  };
}
