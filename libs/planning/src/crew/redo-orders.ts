import type { Phase } from '#calc';
import type { RedoWork, SettledWork } from '../record/settled-work.js';
import { accessOf, cautionsOf, DEFECTS, filmsOf, type OpenOrder, panesOf, piecesOf, spoken, stepsOf, type WorkOrderRequest } from './work-orders.js';
import { kitList } from './kit-list.js';
import { inEnglish, told, type Told } from '../words/told.js';
import type { WorkOrder, WorkPane } from './work-order-types.js';

/** The year whose work order it is; panes without glass stand with the year their line was in. */
function phaseOf(work: RedoWork, phases: readonly Phase[]): Phase | undefined {
  return phases.find((p) => p.id === (work.phase ?? work.panes[0]?.phase));
}

/** Why a pane is done again, when that was seen and what was written. */
function whyOf({ why, day, note }: RedoWork['panes'][number]): Told {
  const plain = told(`redo.${why}`);
  const seen = day === null ? plain : told('redo.seen', { why: plain, day });
  return note === null ? seen : told('redo.noted', { why: seen, note });
}

function redoPanes(work: RedoWork, of: WorkOrderRequest & { readonly settled: SettledWork }): WorkPane[] {
  const pieces = piecesOf(of.settled.redoCuts);
  const why = new Map(work.panes.map((p) => [p.pane, whyOf(p)]));
  const all = work.windows.flatMap((w) => panesOf(w, { ...of, pieces, isMixed: new Set(work.windows.map((x) => x.film)).size > 1, dwelling: work.dwelling }));
  return all.flatMap((p): WorkPane[] => {
    const first = why.get(p.pane);
    return first === undefined ? [] : [{ ...p, notes: [inEnglish(first), ...p.notes], ...(p.told === undefined ? {} : { told: { ...p.told, notes: [first, ...p.told.notes] } }) }];
  });
}

function redoOrder(work: RedoWork, phase: Phase, of: WorkOrderRequest & { readonly settled: SettledWork }): OpenOrder {
  const building = of.buildings.get(work.building)!;
  const notice_h = of.notice_h(building);
  const films = [...new Set(work.windows.map((w) => w.film))];
  const counted = work.windows.map((w) => ({ ...w, paneCount: work.panes.filter((p) => p.window === w.window).length }));
  const { access, earliest, empty } = accessOf({ dwelling: work.dwelling, building: work.building, from: work.from }, phase, of);
  const hasDefect = work.panes.some((p) => p.why === 'defect');
  const isBroken = work.panes.some((p) => p.why === 'broken pane');
  const steps = stepsOf(counted.map((w) => ({ ...w, existingFilm: w.existingFilm || hasDefect })), of);
  const glass = work.waitsForGlass ? [told('redo.needsGlass')] : isBroken ? [told('redo.newGlass')] : [];
  const order: WorkOrder = {
    id: `${phase.name} ${work.dwelling} ${inEnglish(told(work.waitsForGlass ? 'redo.waits' : 'redo.again'))}${!work.waitsForGlass && isBroken ? ` ${work.from}` : ''}`,
    again: true,
    phase: phase.id,
    building: building.id,
    dwelling: work.dwelling,
    earliest,
    latest: phase.lastDay,
    day: null,
    notice_h,
    minutes: work.minutes,
    shade: [],
    panes: redoPanes(work, of),
    defectCodes: DEFECTS,
    kit: kitList(counted, of.kit),
    ...spoken({ film: filmsOf(films, of), access: work.waitsForGlass ? told('redo.needsGlass') : access, notice: null, steps: [...glass, ...steps], cautions: cautionsOf(work.windows, building) }),
  };
  return {
    order, building, ownerEntity: work.ownerEntity, empty, windows: work.windows.map((w) => w.window), facades: [...new Set(work.windows.map((w) => w.azimuth_deg))],
    occupiedFrom: work.from > phase.firstDay ? work.from : phase.firstDay,
    isOutdoor: films.some((id) => of.films.get(id)?.side === 'outdoor'),
    ...(work.waitsForGlass ? { waits: told('redo.needsGlass') } : {}),
  };
}

/** Work orders for panes to be done again; those whose glass is not there are orders without a day. */
export function redoOrders(phases: readonly Phase[], of: WorkOrderRequest & { readonly settled: SettledWork }): OpenOrder[] {
  return (of.settled.redoWork ?? []).flatMap((work) => {
    const phase = phaseOf(work, phases);
    return phase === undefined || !of.buildings.has(work.building) || (work.phase === null && !work.waitsForGlass) ? [] : [redoOrder(work, phase, of)];
  });
}
