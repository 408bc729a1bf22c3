import type { SiteRecord } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionWindow } from '../options/option.js';
import type { Plan, PlanLine } from '../plan/plan.js';
import { type PlanFinding, toldFinding } from '../plan/plan-finding.js';
import { told } from '../words/told.js';
import type { RedoPaneOf } from './redo-work.js';
import type { DoneLine, RedoWork } from './settled-work.js';

/** What the records say of a plan's lines. */
export interface Happened {
  readonly done: readonly DoneLine[];
  readonly redo: readonly RedoPaneOf[];
  /** Panes whose film is used up: done, spoilt or on a pane that broke. */
  readonly cutPanes: ReadonlySet<string>;
  readonly noAccess: readonly { readonly dwelling: string; readonly days: readonly string[] }[];
  readonly findings: readonly PlanFinding[];
}

interface PaneState {
  readonly state: 'open' | 'done' | 'defect' | 'broken pane';
  readonly day: string | null;
  readonly note: string | null;
}

const OPEN: PaneState = { state: 'open', day: null, note: null };

/** Dwelling of a record: as it says, or the one its window stands in. */
export const dwellingOf = (record: SiteRecord): string | null => record.dwelling ?? record.window?.split('/').slice(0, 2).join('/') ?? null;

interface OnePane {
  readonly pane: string;
  readonly window: string;
  readonly of: OptionWindow;
}

const panesOf = (windows: readonly OptionWindow[]): OnePane[] => windows.flatMap((of) => Array.from({ length: of.paneCount }, (_, i) => ({ pane: `${of.window}/${String(i + 1)}`, window: of.window, of })));

/** Whether a record speaks of a pane: of the pane itself, its window, or the whole dwelling. */
function isOf(record: SiteRecord, pane: { readonly pane: string; readonly window: string }): boolean {
  if (record.window === null) return true;
  return record.window === pane.window && (record.pane === null || pane.pane === `${pane.window}/${String(record.pane)}`);
}

/** State of each pane after all records in order of days; on one day "done" comes before what is found wrong with it. */
function statesOf(panes: readonly OnePane[], records: readonly SiteRecord[]): Map<string, PaneState> {
  const states = new Map(panes.map((p): [string, PaneState] => [p.pane, OPEN]));
  const order = { done: 0, defect: 1, 'broken-pane': 2 } as const;
  const told = records.filter((r): r is SiteRecord & { kind: keyof typeof order } => r.kind in order);
  for (const record of sortedBy(told, (r) => `${r.day}|${String(order[r.kind])}|${r.id}`)) {
    for (const pane of panes) {
      if (!isOf(record, pane)) continue;
      const state = record.kind === 'broken-pane' ? 'broken pane' : record.kind;
      states.set(pane.pane, { state, day: record.day, note: [record.defect, record.note].filter((t) => t !== null).join('; ') || null });
    }
  }
  return states;
}

function lineOf(line: PlanLine, { records, crew }: { readonly records: readonly SiteRecord[]; readonly crew: 'own' | 'contractor' }): { readonly done: DoneLine[]; readonly redo: RedoPaneOf[]; readonly cut: string[] } {
  const panes = panesOf(line.windows);
  const states = statesOf(panes, records);
  const touched = [...states].filter(([, s]) => s.state !== 'open');
  if (touched.length === 0) return { done: [], redo: [], cut: [] };
  const days = touched.map(([, s]) => s.day ?? '').sort();
  const minutes = records.filter((r) => r.personMinutes !== null);
  const done: DoneLine = {
    dwelling: line.dwelling, building: line.building, phase: line.phase, option: line.option.id, film: line.option.film,
    windows: line.windows.map(({ window, film }) => ({ window, film })),
    panesDone: touched.filter(([, s]) => s.state === 'done').length,
    firstDay: days[0] ?? '', lastDay: days.at(-1) ?? '',
    planned_min: line.option.minutes.best,
    real_min: minutes.length === 0 ? null : minutes.reduce((sum, r) => sum + (r.personMinutes ?? 0), 0),
    crew,
  };
  const redo = panes.flatMap(({ pane, window, of }): RedoPaneOf[] => {
    const { state, day, note } = states.get(pane) ?? OPEN;
    return state === 'done' ? [] : [{ pane, window, of, dwelling: line.dwelling, building: line.building, ownerEntity: line.ownerEntity, phase: line.phase, film: of.film, why: state === 'open' ? 'not reached' : state, note, day }];
  });
  return { done: [done], redo, cut: touched.map(([pane]) => pane) };
}

/** Panes the revision before had to do again and no record has done since; their state is that of all records. */
function stillToDo(work: RedoWork, records: readonly SiteRecord[]): RedoPaneOf[] {
  const panes = panesOf(work.windows);
  const states = statesOf(panes, records);
  return work.panes.flatMap((pane): RedoPaneOf[] => {
    const { state, day, note } = states.get(pane.pane) ?? OPEN;
    const of = panes.find((p) => p.pane === pane.pane)?.of;
    if (state === 'done' || of === undefined) return [];
    const now = state === 'open' ? {} : { why: state, day, note };
    return [{ ...pane, ...now, of, building: work.building, ownerEntity: work.ownerEntity }];
  });
}

function findingsOf(records: readonly SiteRecord[], known: ReadonlySet<string>): PlanFinding[] {
  const work = records.filter((r) => r.kind !== 'film-used' && r.kind !== 'field-size');
  const strange = [...new Set(work.map(dwellingOf).filter((d) => d !== null && !known.has(d)))].sort();
  const silent = records.filter((r) => r.kind === 'broken-pane' && r.note === null);
  return [
    ...strange.map((dwelling) => toldFinding({ severity: 'warning', subject: dwelling ?? '' }, told('record.noLine'), told('record.noLine.toDo'))),
    ...silent.map((r) => toldFinding({ severity: 'warning', subject: r.window ?? '' }, told('record.noNote', { day: r.day }), told('record.noNote.toDo'))),
  ];
}

/** Reads the records of site against a plan: which lines are done, which panes must be done again, where nobody opened. */
export function whatHappened(plan: Pick<Plan, 'lines' | 'settled' | 'buildings'>, records: readonly SiteRecord[]): Happened {
  const byDwelling = grouped(records, (r) => dwellingOf(r) ?? '');
  const hired = new Set(plan.buildings.filter((b) => b.crew === 'contractor').map((b) => b.id));
  const lines = plan.lines.map((line) => lineOf(line, { records: byDwelling.get(line.dwelling) ?? [], crew: hired.has(line.building) ? 'contractor' : 'own' }));
  const shut = grouped(sortedBy(records.filter((r) => r.kind === 'no-access'), (r) => r.day), (r) => dwellingOf(r) ?? '');
  const known = new Set([...plan.lines.map((l) => l.dwelling), ...(plan.settled?.done ?? []).map((d) => d.dwelling)]);
  return {
    done: lines.flatMap((l) => l.done),
    redo: [...(plan.settled?.redoWork ?? []).flatMap((w) => stillToDo(w, byDwelling.get(w.dwelling) ?? [])), ...lines.flatMap((l) => l.redo)],
    cutPanes: new Set(lines.flatMap((l) => l.cut)),
    noAccess: sortedBy([...shut], ([dwelling]) => dwelling).map(([dwelling, all]) => ({ dwelling, days: all.map((r) => r.day) })),
    findings: findingsOf(records, known),
  };
}
