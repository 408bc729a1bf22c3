import { type Lock, type Phase, type Portfolio, recalibrated, type RecalibratedTime, type Roll, type SiteRecord, type TimeModel } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionWindow } from '../options/option.js';
import type { Plan } from '../plan/plan.js';
import type { FilmCut } from '../rolls/cut-types.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import { cutFilm, type StockRoll } from '../rolls/cut-list.js';
import { type Happened, whatHappened } from './happened.js';
import { moneySpent } from './money-spent.js';
import { rollsLeft, rollsNow } from './rolls-left.js';
import type { RedoPane, SettledWork, SpentMoney } from './settled-work.js';

/** A plan to be made again after work was done on the one before. */
export interface AfterWork {
  /** The portfolio as a new plan may use it: done dwellings locked out, money spent off the caps, film left in the store room. */
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
}

/** Windows of panes to be done again, one row a window, as the cut list takes them. */
function redoWindows(plan: Plan, redo: readonly RedoPane[]): { readonly dwelling: string; readonly window: OptionWindow }[] {
  const byWindow = grouped(redo, (r) => r.window);
  return plan.lines.flatMap((line) => line.windows.flatMap((window) => (byWindow.get(window.window) ?? []).slice(0, 1).map(() => ({ dwelling: line.dwelling, window }))));
}

/** Film for panes to be done again, from what is left first; pieces keep the names of their panes. */
function redoCuts(request: AfterWorkRequest, redo: readonly RedoPane[], stock: readonly StockRoll[]): { readonly cuts: FilmCut[]; readonly left: readonly StockRoll[] } {
  const { plan, portfolio } = request;
  let left = stock;
  const cuts: FilmCut[] = [];
  const wanted = new Set(redo.map((r) => r.pane));
  for (const [film, panes] of grouped(sortedBy(redo, (r) => r.film), (r) => r.film)) {
    const phase = panes[0]!.phase;
    const mayRotate = plan.films.find((f) => f.film.id === film)?.film.mayRotate ?? false;
    const widths = panes.map((p) => plan.buildings.find((b) => b.id === p.dwelling.split('/')[0])?.widestRoll_mm ?? null).filter((w) => w !== null);
    const outcome = cutFilm({
      phase: `${phase} redo`, ownerEntity: plan.lines.find((l) => l.phase === phase)?.ownerEntity ?? '', film, mayRotate,
      windows: redoWindows(plan, panes), only: wanted,
      offers: portfolio.rolls.filter((r) => r.film === film), stock: left.filter((s) => s.film === film), terms: plan.terms,
      widest_mm: widths.length === 0 ? null : Math.min(...widths),
    });
    cuts.push(outcome.cut);
    left = [...left.filter((s) => s.film !== film), ...outcome.stockAfter];
  }
  return { cuts, left };
}

/** Caps less what is spent; a phase that is over buys nothing more. What the ledger says is taken off where the caps come into force, and not twice. */
function phasesLeft(phases: readonly Phase[], spent: readonly SpentMoney[], asOf: string): Phase[] {
  const gone = new Map(spent.filter((s) => s.basis !== 'ledger').map((s) => [s.phase, s.spent_cents]));
  return phases.map((p) => ({ ...p, cap_cents: p.lastDay < asOf ? 0 : Math.max(0, p.cap_cents - (gone.get(p.id) ?? 0)) }));
}

function locksAfter(locks: readonly Lock[], done: SettledWork['done'], asOf: string): Lock[] {
  const days = new Map(done.map((d) => [d.dwelling, d.lastDay]));
  const dwellingOf = (subject: string): string => subject.split('/').slice(0, 2).join('/');
  const outs = [...days].map(([subject, day]): Lock => ({ subject, direction: 'out', azimuth_deg: null, phase: null, film: null, reason: `done by ${day}`, role: 'site record', date: asOf }));
  return [...locks.filter((l) => !days.has(dwellingOf(l.subject))), ...outs];
}

function moneyFindings(spent: readonly SpentMoney[], phases: readonly Phase[], asOf: string): PlanFinding[] {
  return spent.flatMap((s): PlanFinding[] => {
    const phase = phases.find((p) => p.id === s.phase);
    if (phase === undefined) return [];
    const money = (cents: number): string => (cents / 100).toFixed(2);
    const over = s.spent_cents > phase.cap_cents;
    const text = `${money(s.spent_cents)} of the cap of ${money(phase.cap_cents)} is spent (${s.basis})${phase.lastDay < asOf ? '; the year is over' : ''}: this revision plans with the rest`;
    return [{ severity: over ? 'warning' : 'note', subject: s.phase, text, whatToDo: over ? 'more is spent than the cap: tell the owner' : 'nothing; compare with the books' }];
  });
}

const MINUTES_OF = (happened: Happened): { model_min: number; real_min: number }[] =>
  happened.done.flatMap((d) => (d.real_min !== null && d.real_min > 0 && d.planned_min > 0 && !happened.redo.some((r) => r.dwelling === d.dwelling) ? [{ model_min: d.planned_min, real_min: d.real_min }] : []));

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
  const again = redoCuts(request, happened.redo, left);
  const spent = moneySpent(plan, happened.done, portfolio.ledger).map((s): SpentMoney => {
    const film_cents = s.basis === 'ledger' ? 0 : again.cuts.filter((c) => c.phase === `${s.phase} redo`).reduce((sum, c) => sum + c.cost_cents, 0);
    return { ...s, spent_cents: s.spent_cents + film_cents };
  });
  const done = [...(plan.settled?.done ?? []), ...happened.done];
  const time = recalibrated(request.timeModel, MINUTES_OF(happened));
  const settled: SettledWork = {
    parent: plan.id, asOf, done, redo: happened.redo, redoCuts: again.cuts, noAccess: happened.noAccess, spent,
    rollsLeft: again.left.map(({ roll, film, width_mm, length_mm, lot }) => ({ roll, film, width_mm, length_mm, lot })),
    time: { factor: time.factor, recorded: time.recorded, visits: time.visits },
  };
  return {
    portfolio: { ...portfolio, phases: phasesLeft(portfolio.phases, spent, asOf), locks: locksAfter(portfolio.locks, done, asOf), rolls: rollsNow(stocked, { left: again.left, opened }) },
    settled,
    findings: [...happened.findings, ...moneyFindings(spent, portfolio.phases, asOf)],
    time,
  };
}
