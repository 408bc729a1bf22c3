import { inchesText, ticksOf_mm } from '#calc';
import { type Plan, toldWord, type WorkOrder, type WorkPane } from '#planning';
import { numberedPieces, type NumberedPiece, pieceKey, rollText, shortRoll } from '../cuts/roll-sheets.js';
import { type CellPart, check, text } from '../page/cell.js';
import { boxed, dashed, factRows, heading, listed, numbered, runIn, signOff } from '../page/parts.js';
import type { PaperFile } from '../page/paper-bytes.js';
import type { Paper } from '../page/paper.js';
import { type PaperColumn, writeTable } from '../page/table.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';
import type { Say } from '../texts/texts.js';
import { kitText, paneNotes, roomOf, runsText, wordOf } from './pane-notes.js';
import { inDayOrder } from './day-order.js';
import { shadeText } from './shade-text.js';
import { visitOf } from './visit-day.js';

/** Nothing on a crew sheet is smaller; read at arm's length, on a sill. */
const TEXT = 12;
/** Sizes: sight and finished, and the one to cut by. */
const SIZE = 14;
const CUT = 16;

interface CrewSheet {
  readonly plan: Plan;
  readonly order: WorkOrder;
  readonly say: Say;
  readonly pieceOf: (pane: WorkPane) => NumberedPiece | undefined;
}

const whole = (minutes: number): string => minutes.toFixed(0);
const inches = (mm: number): string => inchesText(ticksOf_mm(mm));

function filmText({ told, film }: WorkOrder, say: Say): string {
  return typeof told?.film === 'object' ? say.told(told.film) : film;
}

function facts({ plan, order, say }: CrewSheet): [string, string][] {
  const building = plan.buildings.find((b) => b.id === order.building);
  const shade = shadeText(order.shade, say);
  const { day, earliest, latest } = order;
  const known = visitOf(plan, order);
  const isFirstDay = known?.visit.isFirstDay === true && known.visit.parts === 1;
  const { low, best, high } = isFirstDay ? known.visit.personMinutes : order.minutes;
  // Plans kept before access was that of the day: an empty time may have passed when the crew comes.
  const access = known !== null && !known.visit.isEmpty && order.isEmpty === undefined && order.access.startsWith('empty') ? say('crew.occupied') : order.told === undefined ? order.access : say.told(order.told.access);
  const when = known === null ? day : `${known.day}, ${known.visit.start}`;
  return [
    [say('crew.place'), say('crew.where', { building: order.building, name: building?.name ?? '' })],
    [say('crew.when'), when === null ? say('crew.window', { access, earliest, latest }) : say('crew.day', { day: when, access })],
    ...(building?.crew === 'contractor' ? [[say('crew.who'), say('calendar.byContractor')] satisfies [string, string]] : []),
    ...(known?.visit.isForMoveOut === true ? [['', say('crew.forMoveOut')] satisfies [string, string]] : []),
    [say('crew.notice'), say('crew.notice.hours', { hours: order.notice_h })],
    [say('crew.film'), filmText(order, say)],
    [say('crew.time'), say(isFirstDay ? 'crew.time.firstDay' : 'crew.time.range', { panes: say('count.panes', { count: order.panes.length }), best: whole(best), low: whole(low), high: whole(high) })],
    ...(shade === null ? [] : [[say('crew.shade'), shade] satisfies [string, string]]),
  ];
}

function paneColumns({ order, say, pieceOf }: CrewSheet): PaperColumn<WorkPane>[] {
  const mark = (pane: WorkPane): string => {
    const own = pane.pane.startsWith(`${order.dwelling}/`) ? pane.pane.slice(order.dwelling.length + 1) : pane.pane;
    const at = own.lastIndexOf('/');
    return say('crew.pane', { mark: own.slice(0, at), pane: own.slice(at + 1) });
  };
  const place = (pane: WorkPane): CellPart[] => {
    const piece = pieceOf(pane);
    return piece === undefined ? [] : [text(say('crew.piece', { number: piece.number }), TEXT), text(say('crew.at', { along: inches(piece.y_mm) }), TEXT)];
  };
  return [
    { head: say('crew.col.done'), share: 44, cell: () => [check(20)] },
    {
      head: say('crew.col.pane'),
      share: 122,
      cell: (p, i) => [text(`${String(i + 1)}  ${roomOf(p.room, say)}`, TEXT, true), text(`${wordOf(say, 'side', p.side)}, ${wordOf(say, 'reach', p.reach)}`, TEXT), text(mark(p), TEXT)],
    },
    { head: say('crew.col.sight'), share: 122, cell: (p) => [text(p.sight, SIZE), { kind: 'field', height: 24, between: '×' }] },
    { head: say('crew.col.cut'), share: 142, cell: (p) => [text(p.cut, CUT, true), text(p.finished, SIZE)] },
    { head: say('crew.col.roll'), share: 80, cell: (p) => [text(rollText(shortRoll(p.roll, order.phase), say), TEXT), ...place(p)] },
    { head: say('crew.col.defect'), share: 52, cell: () => [] },
  ];
}

function writeNotes(paper: Paper, { order, say }: CrewSheet): void {
  heading(paper, say('crew.notes'), SIZE);
  const said = paneNotes(order, say).map(({ note, panes }) => (panes.length === order.panes.length ? say('crew.every', { note }) : say('crew.some', { panes: runsText(panes), note })));
  listed(paper, said, { size: TEXT, mark: dashed });
}

function writeSheet(paper: Paper, sheet: CrewSheet): void {
  const { order, say } = sheet;
  paper.section(() => {
    paper.write(say('crew.continued', { dwelling: order.dwelling, page: paper.pageOfSection, pages: paper.pagesOfSection }), { size: TEXT, bold: true });
    paper.y += 4;
  });
  const sheets = say('crew.sheet', { page: 1, pages: paper.pagesOfSection });
  paper.put(sheets, { size: TEXT, align: 'right' }, { x: paper.right, y: paper.y + 6 });
  paper.write(order.dwelling, { size: 20, bold: true });
  factRows(paper, facts(sheet), TEXT);
  boxed(paper, say('crew.stop'), { size: TEXT, bold: true });
  writeTable(paper, { columns: paneColumns(sheet), rows: order.panes, headSize: TEXT, leastHeight: 42 });
  paper.y += 4;
  paper.write(say('crew.size'), { size: TEXT, bold: true });
  writeNotes(paper, sheet);
  signOff(paper, [[say('crew.signed'), 0.3], [say('crew.by'), 0.25], [say('crew.minutes'), 0.45]], TEXT);
  signOff(paper, [[say('crew.left'), 1]], TEXT);
  const kit = kitText(order.kit, say);
  const codes = order.defectCodes.map(({ code, words }) => `${code} ${say.told({ ...toldWord('defect', code), otherwise: words })}`).join(' · ');
  heading(paper, say('crew.cautions'), SIZE);
  listed(paper, order.told?.cautions.map(say.told) ?? order.cautions, { size: TEXT, mark: dashed });
  heading(paper, say('crew.steps'), SIZE);
  listed(paper, order.told?.steps.map(say.told) ?? order.steps, { size: TEXT, mark: numbered });
  runIn(paper, { head: say('crew.kit'), text: kit }, TEXT);
  runIn(paper, { head: say('crew.defects'), text: codes }, TEXT);
  if (paper.pageOfSection > 1 && paper.pageOfSection % 2 === 1) {
    paper.newPage();
    paper.write(say('crew.empty'), { size: TEXT });
  }
}

/** Crew sheets in the order of the days: one dwelling a page, going on on a second page when it must, which is said. */
export function crewSheets(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  const pieces = numberedPieces(plan);
  return planPaper(plan, terms, {
    title: terms.texts.sentences['crew.file'],
    margin: 24,
    frameSize: TEXT,
    draw: (paper, say) => {
      if (plan.workOrders.length === 0) {
        paper.newPage();
        paper.write(say('crew.none'), { size: SIZE });
      }
      for (const order of inDayOrder(plan)) writeSheet(paper, { plan, order, say, pieceOf: (pane) => pieces.get(pieceKey(order.phase, pane.pane)) });
    },
  });
}
