import { type Building, type Film, inchesText, type MoveOut, ticksOf_mm } from '#calc';
import type { PricedPhase } from '../rolls/price-by-rolls.js';
import { pieceOf } from '../rolls/cut-list.js';
import { sideWord } from '../dwelling/facade-sets.js';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionWindow } from '../options/option.js';
import type { FilmCut, PlacedPiece } from '../rolls/cut-types.js';
import type { PlanTerms } from '../plan/terms.js';
import type { Candidate } from '../choice/candidate.js';
import { andOf, DEFECT_CODES, inEnglish, type PlanTextKey, told, type Told, toldWord } from '../words/told.js';
import { kitList, type KitRates } from './kit-list.js';
import type { DefectCode, ShadeTime, ToldOrder, WorkOrder, WorkPane } from './work-order-types.js';

export interface WorkOrderRequest {
  readonly buildings: ReadonlyMap<string, Building>;
  readonly films: ReadonlyMap<string, Film>;
  readonly moveOuts: readonly MoveOut[];
  /** ISO date; an empty time that is over by then is none. */
  readonly madeOn: string;
  readonly notice_h: (building: Building) => number;
  readonly terms: PlanTerms;
  readonly windowsOf: (candidate: Candidate) => readonly OptionWindow[];
  readonly shadeOn: ShadeOn;
  readonly kit: KitRates;
}

/** When the panes of a side of an order lie in shade on a day. */
export type ShadeOn = (open: Pick<OpenOrder, 'building' | 'windows'>, azimuth_deg: number, day: string) => readonly ShadeTime[];

/** A work order with what the calendar needs of it; the day is still open. */
export interface OpenOrder {
  readonly order: WorkOrder;
  readonly building: Building;
  readonly ownerEntity: string;
  readonly facades: readonly number[];
  /** Ids of the windows to be filmed. */
  readonly windows: readonly string[];
  /** Yearly saving that waits for it; absent for panes to be done again. */
  readonly yearlyCooling_cents?: number;
  /** Days on which the dwelling is known to stand empty; null: somebody lives there. */
  readonly empty: { readonly from: string; readonly until: string | null } | null;
  /** First day it may be done with somebody living there. */
  readonly occupiedFrom: string;
  /** Some of its film goes on the outdoor face. */
  readonly isOutdoor: boolean;
  /** Why it can have no day yet; absent where it can. */
  readonly waits?: Told;
}

const EVERY_TIME = [told('every.code'), told('every.glass'), told('every.shade')];
const NOT_LAID = inEnglish(told('note.notLaid'));

export const DEFECTS: readonly DefectCode[] = DEFECT_CODES.map((code) => ({ code, words: inEnglish(toldWord('defect', code)) }));

export function cautionsOf(windows: readonly OptionWindow[], building: Building): Told[] {
  const flagged = (flag: string): boolean => windows.some((w) => w.flags.includes(flag));
  const asks: readonly (readonly [boolean, PlanTextKey])[] = [
    [building.builtYear === null || building.builtYear < 1978, 'caution.leadPaint'],
    [windows.some((w) => w.reach !== 'floor'), 'caution.ladder'],
    [flagged('escape'), 'caution.escape'],
    [flagged('tempered-mark-seen'), 'caution.temperedMark'],
    [flagged('fogged'), 'caution.fogged'],
    [windows.some((w) => w.existingFilm), 'caution.oldFilm'],
  ];
  return [...EVERY_TIME, ...asks.filter(([isAsked]) => isAsked).map(([, key]) => ({ key })), told('caution.cold')];
}

export function stepsOf(windows: readonly OptionWindow[], of: WorkOrderRequest): Told[] {
  const films = andOf([...new Set(windows.map((w) => w.film))].map((film) => told('step.film', { film })));
  const gap = inchesText(ticksOf_mm(of.terms.edgeGap_mm));
  const first = [told('step.measure'), told('step.cut', { films }), ...(windows.some((w) => w.existingFilm) ? [told('step.oldFilm')] : [])];
  return [...first, told('step.clean'), told('step.hang'), told('step.trim', { gap }), told('step.look'), told('step.record'), told('step.leave'), told('step.day30')];
}

/** Films of an order with their names. */
export const filmsOf = (films: readonly string[], of: WorkOrderRequest): Told | string => andOf(films.map((id) => `${id}, ${of.films.get(id)?.name ?? ''}`));

export const saidOf = (words: Told | string): string => (typeof words === 'string' ? words : inEnglish(words));

/** The sentences of an order in English beside their names. */
export const spoken = (sentences: ToldOrder): Pick<WorkOrder, 'film' | 'access' | 'noticeText' | 'steps' | 'cautions' | 'told'> => ({
  film: saidOf(sentences.film),
  access: inEnglish(sentences.access),
  noticeText: sentences.notice === null ? '' : inEnglish(sentences.notice),
  steps: sentences.steps.map(inEnglish),
  cautions: sentences.cautions.map(inEnglish),
  told: sentences,
});

/** A dwelling that stands empty in the phase is done then; otherwise by appointment. */
export function accessOf(work: { readonly dwelling: string; readonly building: string; readonly from: string }, phase: PricedPhase['phase'], of: WorkOrderRequest): { readonly access: Told; readonly earliest: string; readonly empty: OpenOrder['empty'] } {
  const building = of.buildings.get(work.building)!;
  const earliest = work.from > phase.firstDay ? work.from : phase.firstDay;
  const empty = sortedBy(of.moveOuts.filter((m) => m.dwelling === work.dwelling && m.out <= phase.lastDay && (m.in === null || (m.in > earliest && m.in > of.madeOn))), (m) => m.out)[0];
  if (empty === undefined) return { earliest, access: told('access.occupied', { hours: of.notice_h(building) }), empty: null };
  return { earliest: empty.out > earliest ? empty.out : earliest, access: empty.in === null ? told('access.empty', { out: empty.out }) : told('access.emptyUntil', { out: empty.out, until: empty.in }), empty: { from: empty.out, until: empty.in } };
}

const inches = (mm: number): string => inchesText(ticksOf_mm(mm));

export function panesOf(window: OptionWindow, of: WorkOrderRequest & { readonly pieces: ReadonlyMap<string, PlacedPiece>; readonly isMixed: boolean; readonly dwelling: string }): WorkPane[] {
  const piece = pieceOf(window, of.terms);
  const reasons = window.reasons.map((otherwise, i): Told => ({ key: `rule.${window.rules?.[i] ?? 'standing-advice'}`, otherwise }));
  const notes = [...(of.isMixed ? [told('note.filmOnSide', { film: window.film })] : []), ...reasons, ...(window.fromPlanType === null ? [] : [told('note.fromPlanType', { type: window.fromPlanType })])];
  return Array.from({ length: window.paneCount }, (_, i): WorkPane => {
    const pane = `${window.window}/${String(i + 1)}`;
    const laid = of.pieces.get(pane);
    const cut = `${piece.widthText} × ${piece.lengthText}`;
    const roll = laid?.roll ?? NOT_LAID;
    return {
      pane,
      room: window.room,
      side: sideWord(window.azimuth_deg),
      sight: `${inches(window.width_mm)} × ${inches(window.height_mm)}`,
      cut,
      finished: `${piece.finishedWidthText} × ${piece.finishedLengthText}`,
      roll,
      rollPosition: laid === undefined ? '' : inEnglish(told('piece.place', { along: inches(laid.y_mm), across: inches(laid.x_mm) })),
      reach: window.reach,
      outcome: window.outcome,
      consent: window.consent,
      notes: notes.map(inEnglish),
      told: { consent: window.consentTold ?? { key: 'consent' }, notes: notes.map(({ otherwise: _, ...named }) => named) },
      label: { dwelling: of.dwelling, room: window.room, pane, size: cut, up: inEnglish(told('piece.up')), film: window.film, roll },
    };
  });
}

/** The notice of entry; without a day it says so. */
const noticeOf = (of: Pick<WorkOrder, 'dwelling' | 'minutes' | 'notice_h'> & { readonly panes: number }, day: string | null): Told =>
  told('notice.text', { dwelling: of.dwelling, panes: told('count.windowPanes', { count: of.panes }), person_h: (of.minutes.best / 60).toFixed(1), notice_h: of.notice_h, day: day ?? told('notice.noDay') });

function openOrder(line: Candidate, phase: PricedPhase, of: WorkOrderRequest & { readonly pieces: ReadonlyMap<string, PlacedPiece> }): OpenOrder {
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
    earliest,
    latest: phase.phase.lastDay,
    day: null,
    notice_h,
    minutes,
    shade: [],
    // Room by room, as one walks: the order of the survey within a room.
    panes: sortedBy(windows, (w) => `${w.room}|${w.window}`).flatMap((w) => panesOf(w, { ...of, isMixed: films.length > 1, dwelling })),
    defectCodes: DEFECTS,
    kit: kitList(windows, of.kit),
    ...spoken({ film: filmsOf(films, of), access, notice: noticeOf({ dwelling, panes: line.option.paneCount, minutes, notice_h }, null), steps: stepsOf(windows, of), cautions: cautionsOf(windows, building) }),
  };
  const occupiedFrom = line.option.from > phase.phase.firstDay ? line.option.from : phase.phase.firstDay;
  return { order, building, ownerEntity: phase.phase.ownerEntity, facades, windows: windows.map((w) => w.window), yearlyCooling_cents: line.option.yearlyCooling_cents, empty, occupiedFrom, isOutdoor: films.some((id) => of.films.get(id)?.side === 'outdoor') };
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
function accessOn({ order, empty }: OpenOrder, found: DayFound | null, planned: Told): Told {
  if (found === null || empty === null) return planned;
  const [out, until, hours] = [empty.from, empty.until, order.notice_h];
  if (found.isEmpty) return until === null ? told('access.emptyThatDay', { out }) : told('access.emptyThatDayUntil', { out, until });
  return until === null ? told('access.occupiedThatDay', { hours, out }) : told('access.occupiedThatDayUntil', { hours, out, until });
}

/** Which clock the times of shade are by, and what counts as shade. */
function shadeCautions([first]: readonly ShadeTime[]): Told[] {
  if (first === undefined) return [];
  const { clock, tariff, isSurveyed } = first;
  const share = ((first.sunlitShare ?? 0) * 100).toFixed(0);
  if (isSurveyed === true) return [told(clock === 'daylight' ? 'caution.shadeDaylightHere' : 'caution.shadeStandardHere', { share })];
  return [tariff === undefined ? told('caution.shadeClock', { share }) : told(clock === 'daylight' ? 'caution.shadeDaylight' : 'caution.shadeStandard', { share, tariff })];
}

/** The order on its day: access, notice and the shade of each side are those of the day; without a day, of the first day it may be done. */
export function orderOnDay(open: OpenOrder, found: DayFound | null, of: Pick<WorkOrderRequest, 'shadeOn'>): WorkOrder {
  const { order, facades } = open;
  const day = found?.day ?? null;
  const sentences = order.told!; // every open order is made with them
  const bySide = facades.map((azimuth_deg) => ({ azimuth_deg, shade: of.shadeOn(open, azimuth_deg, day ?? order.earliest) }));
  const sunny = bySide.filter((s) => s.shade.length === 0).map((s) => told('caution.sunAllDay', { side: toldWord('side', sideWord(s.azimuth_deg)) }));
  return {
    ...order,
    day,
    isEmpty: found?.isEmpty ?? false,
    earliest: found?.isEmpty === false ? open.occupiedFrom : order.earliest,
    shade: bySide.flatMap((s) => s.shade),
    ...spoken({
      ...sentences,
      access: accessOn(open, found, sentences.access),
      notice: noticeOf({ dwelling: order.dwelling, panes: order.panes.length, minutes: order.minutes, notice_h: order.notice_h }, day),
      cautions: [...sentences.cautions, ...sunny, ...shadeCautions(bySide.flatMap((s) => s.shade))],
    }),
  };
}
