import type { Phase } from '#calc';
import type { RedoWork, SettledWork } from '../record/settled-work.js';
import { accessOf, cautionsOf, type OpenOrder, panesOf, piecesOf, stepsOf, type WorkOrderRequest } from './work-orders.js';
import { kitList } from './kit-list.js';
import type { WorkOrder, WorkPane } from './work-order-types.js';

/** The year whose work order it is; panes without glass stand with the year their line was in. */
function phaseOf(work: RedoWork, phases: readonly Phase[]): Phase | undefined {
  return phases.find((p) => p.id === (work.phase ?? work.panes[0]?.phase));
}

function redoPanes(work: RedoWork, of: WorkOrderRequest & { readonly settled: SettledWork }): WorkPane[] {
  const { notes } = of.words;
  const pieces = piecesOf(of.settled.redoCuts);
  const why = new Map(work.panes.map((p) => [p.pane, notes.redo({ why: p.why, day: p.day, note: p.note })]));
  const all = work.windows.flatMap((w) => panesOf(w, { ...of, pieces, isMixed: new Set(work.windows.map((x) => x.film)).size > 1, dwelling: work.dwelling }));
  return all.filter((p) => why.has(p.pane)).map((p) => ({ ...p, notes: [why.get(p.pane) ?? '', ...p.notes] }));
}

function redoOrder(work: RedoWork, phase: Phase, of: WorkOrderRequest & { readonly settled: SettledWork }): OpenOrder {
  const { words } = of;
  const building = of.buildings.get(work.building)!;
  const notice_h = of.notice_h(building);
  const films = [...new Set(work.windows.map((w) => w.film))];
  const counted = work.windows.map((w) => ({ ...w, paneCount: work.panes.filter((p) => p.window === w.window).length }));
  const { access, earliest, empty } = accessOf({ dwelling: work.dwelling, building: work.building, from: work.from }, phase, of);
  const hasDefect = work.panes.some((p) => p.why === 'defect');
  const isBroken = work.panes.some((p) => p.why === 'broken pane');
  const steps = stepsOf(counted.map((w) => ({ ...w, existingFilm: w.existingFilm || hasDefect })), of);
  const glass = work.waitsForGlass ? [words.redo.needsGlass] : isBroken ? [words.redo.newGlass] : [];
  const order: WorkOrder = {
    id: `${phase.name} ${work.dwelling} ${work.waitsForGlass ? words.redo.waits : words.redo.again}${!work.waitsForGlass && isBroken ? ` ${work.from}` : ''}`,
    again: true,
    phase: phase.id,
    building: building.id,
    dwelling: work.dwelling,
    film: films.map((id) => `${id}, ${of.films.get(id)?.name ?? ''}`).join(' and '),
    earliest,
    latest: phase.lastDay,
    day: null,
    access: work.waitsForGlass ? words.redo.needsGlass : access,
    notice_h,
    noticeText: '',
    minutes: work.minutes,
    steps: [...glass, ...steps],
    shade: [],
    panes: redoPanes(work, of),
    cautions: cautionsOf(work.windows, building, words),
    defectCodes: words.defects,
    kit: kitList(counted, of.kit, words.kit),
  };
  return {
    order, building, ownerEntity: work.ownerEntity, empty, facades: [...new Set(work.windows.map((w) => w.azimuth_deg))],
    occupiedFrom: work.from > phase.firstDay ? work.from : phase.firstDay,
    isOutdoor: films.some((id) => of.films.get(id)?.side === 'outdoor'),
    ...(work.waitsForGlass ? { waits: words.redo.needsGlass } : {}),
  };
}

/** Work orders for panes to be done again; those whose glass is not there are orders without a day. */
export function redoOrders(phases: readonly Phase[], of: WorkOrderRequest & { readonly settled: SettledWork }): OpenOrder[] {
  return (of.settled.redoWork ?? []).flatMap((work) => {
    const phase = phaseOf(work, phases);
    return phase === undefined || !of.buildings.has(work.building) || (work.phase === null && !work.waitsForGlass) ? [] : [redoOrder(work, phase, of)];
  });
}
