import { inchesText, ticksOf_mm } from '#calc';
import type { FilmCut, Plan } from '#planning';
import { check, text } from '../page/cell.js';
import { drawPicture } from '../page/draw-picture.js';
import type { PaperFile } from '../page/paper-bytes.js';
import type { Paper } from '../page/paper.js';
import { factRows, heading } from '../page/parts.js';
import { type PaperColumn, writeTable } from '../page/table.js';
import { english, type PaperTerms, planPaper } from '../paper-terms.js';
import { rollLayout } from '../pictures/roll-layout.js';
import type { Say } from '../texts/texts.js';
import { allCuts, type NumberedPiece, phaseText, type RollSheet, rollSheets, rollText } from './roll-sheets.js';
import { type CuttingOrder, cuttingOrder } from './straight-cuts.js';

const WHY_NOT_LAID = ['cuts.unplaced.noRoll', 'cuts.unplaced.long', 'cuts.unplaced.used', 'cuts.unplaced.allUsed', 'cuts.unplaced.group'] as const;
const TEXT = 11;
const SIZE = 14;
const MM_PER_FT = 304.8;
const inches = (mm: number): string => inchesText(ticksOf_mm(mm));
const feet = (mm: number): string => (mm / MM_PER_FT).toFixed(1);

/** Share of what was cut off that is no piece. */
function lostShare(sheet: RollSheet): string {
  const used = sheet.running_mm * sheet.width_mm;
  const pieces = sheet.pieces.reduce((sum, p) => sum + p.width_mm * p.length_mm, 0);
  return `${((1 - pieces / used) * 100).toFixed(1)} %`;
}

function restText(sheet: RollSheet, say: Say): string {
  if (sheet.leftover_mm > 0) return say('cuts.rest.kept', { length: inches(sheet.leftover_mm) });
  const rest_mm = sheet.length_mm === null ? 0 : sheet.length_mm - sheet.running_mm;
  return rest_mm > 1 ? say('cuts.rest.lost', { length: inches(rest_mm) }) : say('cuts.rest.none');
}

function facts(sheet: RollSheet, order: CuttingOrder, say: Say): [string, string][] {
  const width = inches(sheet.width_mm);
  const roll = sheet.length_mm === null ? say('cuts.roll.unknown', { width }) : say(sheet.isStock ? 'cuts.roll.stock' : 'cuts.roll.bought', { width, length: `${feet(sheet.length_mm)} ft` });
  return [
    [say('cuts.phase'), phaseText(sheet.phase, say)],
    [say('cuts.roll'), roll],
    [say('cuts.use'), say('cuts.use.said', { running: inches(sheet.running_mm), feet: feet(sheet.running_mm), pieces: say('count.pieces', { count: sheet.pieces.length }), cuts: say('count.cuts', { count: order.cuts.length }) })],
    [say('cuts.rest'), restText(sheet, say)],
    [say('cuts.waste'), say('cuts.waste.said', { share: lostShare(sheet) })],
  ];
}

/** Why a piece is not laid, in the language of the papers; as the cutting says it where the table does not know it. */
function whyText(why: string, say: Say): string {
  const key = WHY_NOT_LAID.find((each) => english.sentences[each] === why);
  return key === undefined ? why : say(key);
}

/** A piece lies turned where its pane's width runs along the roll. */
const isTurned = (p: NumberedPiece): boolean => p.cutWidth !== p.cutLength && inches(p.width_mm) === p.cutLength && inches(p.length_mm) === p.cutWidth;

function columns(order: CuttingOrder, say: Say): PaperColumn<NumberedPiece>[] {
  const span = (from_mm: number, length_mm: number): string => say('cuts.span', { from: inches(from_mm), to: inches(from_mm + length_mm) });
  return [
    { head: say('cuts.col.done'), share: 30, cell: () => [check(13)] },
    { head: say('cuts.col.piece'), share: 38, cell: (p) => [text(String(p.number), SIZE, true)] },
    { head: say('cuts.col.size'), share: 128, cell: (p) => [text(`${p.cutWidth} × ${p.cutLength}`, SIZE, true)] },
    { head: say('cuts.col.along'), share: 124, cell: (p) => [text(span(p.y_mm, p.length_mm), TEXT)] },
    { head: say('cuts.col.across'), share: 84, cell: (p) => [text(span(p.x_mm, p.width_mm) + (isTurned(p) ? `, ${say('cuts.turned')}` : ''), TEXT)] },
    { head: say('cuts.col.free'), share: 44, cell: (p) => [text(String(order.freeAfter.get(p.number) ?? ''), TEXT)] },
    { head: say('cuts.col.pane'), share: 110, cell: (p) => [text(p.piece, TEXT)] },
  ];
}

function writeRoll(paper: Paper, sheet: RollSheet, say: Say): void {
  const order = cuttingOrder(sheet.pieces, sheet.width_mm);
  const words = { film: sheet.film, roll: rollText(sheet.shortName, say) };
  paper.section(() => {
    paper.write(say('cuts.continued', words), { size: TEXT, bold: true });
    paper.y += 4;
  });
  paper.write(say('cuts.head', words), { size: 18, bold: true });
  factRows(paper, facts(sheet, order, say), TEXT);
  paper.write(say('cuts.how'), { size: 10 });
  paper.y += 6;
  drawPicture(paper, rollLayout({ sheet, order, width: paper.width, height: paper.room - 2, say }));
  paper.newPage();
  writeTable(paper, { columns: columns(order, say), rows: sheet.pieces, headSize: TEXT });
}

function writeBuying(paper: Paper, cuts: readonly FilmCut[], say: Say): void {
  paper.section();
  paper.write(say('cuts.buy'), { size: 18, bold: true });
  paper.y += 6;
  const rows = cuts.flatMap((c) => c.bought.map((b) => ({ ...b, phase: c.phase })));
  writeTable(paper, {
    columns: [
      { head: say('cuts.buy.col.phase'), share: 3, cell: (r) => [text(phaseText(r.phase, say), TEXT)] },
      { head: say('cuts.buy.col.roll'), share: 3, cell: (r) => [text(r.roll, TEXT)] },
      { head: say('cuts.buy.col.width'), share: 2, cell: (r) => [text(r.width, TEXT)] },
      { head: say('cuts.buy.col.length'), share: 2, cell: (r) => [text(feet(r.length_mm), TEXT)] },
      { head: say('cuts.buy.col.count'), share: 1, cell: (r) => [text(String(r.count), SIZE, true)] },
    ],
    rows,
    headSize: TEXT,
  });
  const unplaced = cuts.flatMap((c) => c.unplaced);
  if (unplaced.length > 0) heading(paper, say('cuts.title'), SIZE);
  for (const { piece, why } of unplaced) paper.write(say('cuts.unplaced', { piece, why: whyText(why, say) }), { size: TEXT });
}

/** What to buy, then each roll: drawn to scale, and its pieces in cutting order. */
export function cutListPaper(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  return planPaper(plan, terms, {
    title: terms.texts.sentences['cuts.title'],
    draw: (paper, say) => {
      const cuts = allCuts(plan);
      if (cuts.length === 0) {
        paper.section();
        paper.write(say('cuts.none'), { size: SIZE });
        return;
      }
      writeBuying(paper, cuts, say);
      for (const sheet of cuts.flatMap(rollSheets)) writeRoll(paper, sheet, say);
    },
  });
}
