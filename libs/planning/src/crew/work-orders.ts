import { type Building, type Film, inchesText, type MoveOut, ticksOf_mm } from '#calc';
import type { PricedPhase } from '../rolls/price-by-rolls.js';
import { pieceOf } from '../rolls/cut-list.js';
import { sideWord } from '../dwelling/facade-sets.js';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionWindow } from '../options/option.js';
import type { FilmCut, PlacedPiece } from '../rolls/cut-types.js';
import type { PlanTerms } from '../plan/terms.js';
import type { Candidate } from '../choice/candidate.js';
import type { CrewWords } from './crew-words.js';
import { kitList, type KitRates } from './kit-list.js';
import type { ShadeTime, WorkOrder, WorkPane } from './work-order-types.js';

export interface WorkOrderRequest {
  readonly buildings: ReadonlyMap<string, Building>;
  readonly films: ReadonlyMap<string, Film>;
  readonly moveOuts: readonly MoveOut[];
  /** ISO date; an empty time that is over by then is none. */
  readonly madeOn: string;
  readonly notice_h: (building: Building) => number;
  readonly terms: PlanTerms;
  readonly windowsOf: (candidate: Candidate) => readonly OptionWindow[];
  readonly shadeOn: (building: Building, azimuth_deg: number, day: string) => readonly ShadeTime[];
  readonly kit: KitRates;
  readonly words: CrewWords;
}

/** A work order with what the calendar needs of it; the day is still open. */
export interface OpenOrder {
  readonly order: WorkOrder;
  readonly building: Building;
  readonly ownerEntity: string;
  readonly facades: readonly number[];
  /** Days on which the dwelling is known to stand empty; null: somebody lives there. */
  readonly empty: { readonly from: string; readonly until: string | null } | null;
  /** First day it may be done with somebody living there. */
  readonly occupiedFrom: string;
  /** Some of its film goes on the outdoor face. */
  readonly isOutdoor: boolean;
  /** Why it can have no day yet; absent where it can. */
  readonly waits?: string;
}

export function cautionsOf(windows: readonly OptionWindow[], building: Building, words: CrewWords): string[] {
  const { cautions: says } = words;
  const flagged = (flag: string): boolean => windows.some((w) => w.flags.includes(flag));
  const asks: readonly (readonly [boolean, string])[] = [
    [building.builtYear === null || building.builtYear < 1978, says.leadPaint],
    [windows.some((w) => w.reach !== 'floor'), says.ladder],
    [flagged('escape'), says.escape],
    [flagged('tempered-mark-seen'), says.temperedMark],
    [flagged('fogged'), says.fogged],
    [windows.some((w) => w.existingFilm), says.oldFilm],
  ];
  return [...words.everyTime, ...asks.filter(([isAsked]) => isAsked).map(([, text]) => text), says.cold];
}

export function stepsOf(windows: readonly OptionWindow[], of: WorkOrderRequest): string[] {
  const { steps } = of.words;
  const films = [...new Set(windows.map((w) => `film ${w.film}`))].join(' and ');
  const gap = inchesText(ticksOf_mm(of.terms.edgeGap_mm));
  return [steps.measure, steps.cut(films), ...(windows.some((w) => w.existingFilm) ? [steps.oldFilm] : []), steps.clean, steps.hang, steps.trim(gap), steps.look, steps.record, steps.leave, steps.day30];
}

/** A dwelling that stands empty in the phase is done then; otherwise by appointment. */
export function accessOf(work: { readonly dwelling: string; readonly building: string; readonly from: string }, phase: PricedPhase['phase'], of: WorkOrderRequest): { readonly access: string; readonly earliest: string; readonly empty: OpenOrder['empty'] } {
  const building = of.buildings.get(work.building)!;
  const earliest = work.from > phase.firstDay ? work.from : phase.firstDay;
  const empty = sortedBy(of.moveOuts.filter((m) => m.dwelling === work.dwelling && m.out <= phase.lastDay && (m.in === null || (m.in > earliest && m.in > of.madeOn))), (m) => m.out)[0];
  if (empty === undefined) return { earliest, access: of.words.access.occupied(of.notice_h(building)), empty: null };
  return { earliest: empty.out > earliest ? empty.out : earliest, access: of.words.access.empty(empty.out, empty.in), empty: { from: empty.out, until: empty.in } };
}

const inches = (mm: number): string => inchesText(ticksOf_mm(mm));

export function panesOf(window: OptionWindow, of: WorkOrderRequest & { readonly pieces: ReadonlyMap<string, PlacedPiece>; readonly isMixed: boolean; readonly dwelling: string }): WorkPane[] {
  const { words } = of;
  const piece = pieceOf(window, of.terms);
  const notes = [...(of.isMixed ? [words.notes.filmOnSide(window.film)] : []), ...window.reasons, ...(window.fromPlanType === null ? [] : [words.notes.fromPlanType(window.fromPlanType)])];
  return Array.from({ length: window.paneCount }, (_, i): WorkPane => {
    const pane = `${window.window}/${String(i + 1)}`;
    const laid = of.pieces.get(pane);
    const cut = `${piece.widthText} × ${piece.lengthText}`;
    const roll = laid?.roll ?? words.notes.notLaid;
    return {
      pane,
      room: window.room,
      side: sideWord(window.azimuth_deg),
      sight: `${inches(window.width_mm)} × ${inches(window.height_mm)}`,
      cut,
      finished: `${piece.finishedWidthText} × ${piece.finishedLengthText}`,
      roll,
      rollPosition: laid === undefined ? '' : words.place(inches(laid.y_mm), inches(laid.x_mm)),
      reach: window.reach,
      outcome: window.outcome,
      consent: window.consent,
      notes,
      label: { dwelling: of.dwelling, room: window.room, pane, size: cut, up: words.up, film: window.film, roll },
    };
  });
}

function openOrder(line: Candidate, phase: PricedPhase, of: WorkOrderRequest & { readonly pieces: ReadonlyMap<string, PlacedPiece> }): OpenOrder {
  const { words } = of;
  const windows = of.windowsOf(line);
  const building = of.buildings.get(line.option.building)!;
  const films = [...new Set(line.option.films)];
  const { access, earliest, empty } = accessOf(line.option, phase.phase, of);
  const notice_h = of.notice_h(building);
  const { dwelling, minutes, facades } = line.option;
  const order: WorkOrder = {
    id: `${phase.phase.name} ${dwelling}`,
    phase: phase.phase.id,
    building: building.id,
    dwelling,
    film: films.map((id) => `${id}, ${of.films.get(id)?.name ?? ''}`).join(' and '),
    earliest,
    latest: phase.phase.lastDay,
    day: null,
    access,
    notice_h,
    noticeText: words.notice({ dwelling, panes: line.option.paneCount, person_h: (minutes.best / 60).toFixed(1), notice_h, day: words.noDay }),
    minutes,
    steps: stepsOf(windows, of),
    shade: [],
    // Room by room, as one walks: the order of the survey within a room.
    panes: sortedBy(windows, (w) => `${w.room}|${w.window}`).flatMap((w) => panesOf(w, { ...of, isMixed: films.length > 1, dwelling })),
    cautions: cautionsOf(windows, building, words),
    defectCodes: words.defects,
    kit: kitList(windows, of.kit, words.kit),
  };
  const occupiedFrom = line.option.from > phase.phase.firstDay ? line.option.from : phase.phase.firstDay;
  return { order, building, ownerEntity: phase.phase.ownerEntity, facades, empty, occupiedFrom, isOutdoor: films.some((id) => of.films.get(id)?.side === 'outdoor') };
}

export const piecesOf = (cuts: readonly FilmCut[]): Map<string, PlacedPiece> => new Map(cuts.flatMap((c) => c.pieces.map((p): [string, PlacedPiece] => [p.piece, p])));

/** One work order a dwelling and phase, by building, empty dwellings first; the day is set by the calendar. */
export function openOrders(phases: readonly PricedPhase[], of: WorkOrderRequest): OpenOrder[] {
  return phases.flatMap((phase) => {
    const pieces = piecesOf(phase.cuts);
    const orders = phase.lines.map((line) => openOrder(line, phase, { ...of, pieces }));
    return [...grouped(sortedBy(orders, (o) => o.building.id), (o) => o.building.id).values()].flatMap((ofBuilding) =>
      sortedBy(ofBuilding, (o) => `${o.empty === null ? '1' : '0'}|${o.order.earliest}|${o.order.dwelling}`),
    );
  });
}

/** The day the calendar found, and whether the dwelling stands empty then. */
export interface DayFound {
  readonly day: string;
  readonly isEmpty: boolean;
}

/** How one gets in on the day itself; an empty time the calendar had no working day in is said, and not asked to be kept. */
function accessOn({ order, empty }: OpenOrder, found: DayFound | null, { access }: CrewWords): string {
  if (found === null || empty === null) return order.access;
  return found.isEmpty ? access.emptyThatDay(empty.from, empty.until) : access.occupiedThatDay(order.notice_h, { out: empty.from, until: empty.until });
}

/** The order on its day: access, notice and the shade of each side are those of the day; without a day, of the first day it may be done. */
export function orderOnDay(open: OpenOrder, found: DayFound | null, of: Pick<WorkOrderRequest, 'shadeOn' | 'words'>): WorkOrder {
  const { order, building, facades } = open;
  const day = found?.day ?? null;
  const { words } = of;
  const bySide = facades.map((azimuth_deg) => ({ azimuth_deg, shade: of.shadeOn(building, azimuth_deg, day ?? order.earliest) }));
  const sunny = bySide.filter((s) => s.shade.length === 0).map((s) => words.shade.allDaySun(sideWord(s.azimuth_deg)));
  return {
    ...order,
    day,
    access: accessOn(open, found, words),
    isEmpty: found?.isEmpty ?? false,
    earliest: found?.isEmpty === false ? open.occupiedFrom : order.earliest,
    noticeText: words.notice({ dwelling: order.dwelling, panes: order.panes.length, person_h: (order.minutes.best / 60).toFixed(1), notice_h: order.notice_h, day: day ?? words.noDay }),
    shade: bySide.flatMap((s) => s.shade),
    cautions: [...order.cautions, ...sunny, words.shade.clock],
  };
}
