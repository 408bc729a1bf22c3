import { type Building, type Film, inchesText, type MoveOut, ticksOf_mm } from '#calc';
import type { PricedPhase } from '../rolls/price-by-rolls.js';
import { pieceOf } from '../rolls/cut-list.js';
import { sideWord } from '../dwelling/facade-sets.js';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionWindow } from '../options/option.js';
import type { FilmCut, PlacedPiece, PlanTerms, WorkOrder, WorkPane } from '../plan/plan.js';
import type { Candidate } from '../choice/candidate.js';

export interface WorkOrderRequest {
  readonly buildings: ReadonlyMap<string, Building>;
  readonly films: ReadonlyMap<string, Film>;
  readonly moveOuts: readonly MoveOut[];
  readonly notice_h: (building: Building) => number;
  readonly terms: PlanTerms;
  readonly windowsOf: (candidate: Candidate) => readonly OptionWindow[];
}

/** Cautions printed on every work order. */
const EVERY_TIME: readonly string[] = [
  'Follow local code, the limits of the glass and film makers and licensed practice. Stop and call when a pane is cracked, loose or not as listed.',
  'Glass and blades cut: gloves and eye protection; keep people clear below; leave a broken pane where it is and report it.',
  'Work on facades that lie in shade; hot glass dries the solution and cracks more easily.',
];

function cautionsOf(windows: readonly OptionWindow[], building: Building): string[] {
  const cautions = [...EVERY_TIME];
  if (building.builtYear === null || building.builtYear < 1978) {
    cautions.push('Building from before 1978, or of unknown year: treat paint at the frame as lead paint; more than 6 square feet inside or 20 outside disturbed needs a certified firm (40 CFR 745).');
  }
  if (windows.some((w) => w.reach !== 'floor')) cautions.push('Ladder at 4 to 1, tied or footed, three points of contact, never on the top steps; fall protection by the local rule from 4 or 6 ft up.');
  if (windows.some((w) => w.flags.includes('escape'))) cautions.push('Escape window: its hardware must stay free and working.');
  if (windows.some((w) => w.flags.includes('tempered-mark-seen'))) cautions.push('Keep the tempered mark in the corner of the glass visible.');
  if (windows.some((w) => w.existingFilm)) cautions.push('Old film comes off first; look at the bare glass again for scratches and edge damage before filming.');
  return cautions;
}

/** A dwelling that stands empty in the phase is done then; otherwise by appointment. */
function accessOf(line: Candidate, phase: PricedPhase['phase'], of: WorkOrderRequest): { readonly access: string; readonly earliest: string } {
  const building = of.buildings.get(line.option.building)!;
  const earliest = line.option.from > phase.firstDay ? line.option.from : phase.firstDay;
  const empty = sortedBy(of.moveOuts.filter((m) => m.dwelling === line.option.dwelling && m.out <= phase.lastDay && (m.in === null || m.in >= earliest)), (m) => m.out)[0];
  if (empty === undefined) return { earliest, access: `occupied: written notice ${String(of.notice_h(building))} h before, or as the lease says` };
  return { earliest: empty.out > earliest ? empty.out : earliest, access: `empty from ${empty.out}${empty.in === null ? '' : ` until ${empty.in}`}: do it then` };
}

function panesOf(window: OptionWindow, of: { readonly terms: PlanTerms; readonly pieces: ReadonlyMap<string, PlacedPiece>; readonly isMixed: boolean }): WorkPane[] {
  const piece = pieceOf(window, of.terms);
  const inches = (mm: number): string => inchesText(ticksOf_mm(mm));
  return Array.from({ length: window.paneCount }, (_, i): WorkPane => {
    const pane = `${window.window}/${String(i + 1)}`;
    const laid = of.pieces.get(pane);
    return {
      pane,
      room: window.room,
      side: sideWord(window.azimuth_deg),
      sight: `${inches(window.width_mm)} × ${inches(window.height_mm)}`,
      cut: `${piece.widthText} × ${piece.lengthText}`,
      finished: `${piece.finishedWidthText} × ${piece.finishedLengthText}`,
      roll: laid?.roll ?? 'not laid: see the cut list',
      rollPosition: laid === undefined ? '' : `${inches(laid.y_mm)} along, ${inches(laid.x_mm)} across`,
      reach: window.reach,
      outcome: window.outcome,
      consent: window.consent,
      notes: [...(of.isMixed ? [`film ${window.film} on this side`] : []), ...window.reasons, ...(window.fromPlanType === null ? [] : [`size from plan type ${window.fromPlanType}: measure before cutting`])],
    };
  });
}

function workOrder(line: Candidate, phase: PricedPhase, of: WorkOrderRequest & { readonly pieces: ReadonlyMap<string, PlacedPiece> }): WorkOrder {
  const windows = of.windowsOf(line);
  const building = of.buildings.get(line.option.building)!;
  const films = [...new Set(line.option.films)];
  const { access, earliest } = accessOf(line, phase.phase, of);
  return {
    id: `${phase.phase.name} ${line.option.dwelling}`,
    phase: phase.phase.id,
    building: building.id,
    dwelling: line.option.dwelling,
    film: films.map((id) => `${id}, ${of.films.get(id)?.name ?? ''}`).join(' and '),
    earliest,
    latest: phase.phase.lastDay,
    access,
    notice_h: of.notice_h(building),
    minutes: line.option.minutes,
    // Room by room, as one walks: the order of the survey within a room.
    panes: sortedBy(windows, (w) => `${w.room}|${w.window}`).flatMap((w) => panesOf(w, { ...of, isMixed: films.length > 1 })),
    cautions: cautionsOf(windows, building),
  };
}

const piecesOf = (cuts: readonly FilmCut[]): Map<string, PlacedPiece> => new Map(cuts.flatMap((c) => c.pieces.map((p): [string, PlacedPiece] => [p.piece, p])));

/** One work order a dwelling and phase, by building, empty dwellings first. */
export function workOrders(phases: readonly PricedPhase[], of: WorkOrderRequest): WorkOrder[] {
  return phases.flatMap((phase) => {
    const pieces = piecesOf(phase.cuts);
    const orders = phase.lines.map((line) => workOrder(line, phase, { ...of, pieces }));
    return [...grouped(sortedBy(orders, (o) => o.building), (o) => o.building).values()].flatMap((ofBuilding) =>
      sortedBy(ofBuilding, (o) => `${o.access.startsWith('empty') ? '0' : '1'}|${o.earliest}|${o.dwelling}`),
    );
  });
}
