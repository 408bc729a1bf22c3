import type { Plan, WorkPane } from '#planning';
import { roomOf, wordOf } from '../crew/pane-notes.js';
import { allRollSheets, type NumberedPiece, phaseText, pieceKey, type RollSheet, rollText } from '../cuts/roll-sheets.js';
import type { PaperFile } from '../page/paper-bytes.js';
import { type Box, LEADING, type Paper, type TextStyle } from '../page/paper.js';
import { formatOf, type PaperTerms, planPaper } from '../paper-terms.js';
import type { Say } from '../texts/texts.js';
import { LABEL_STOCK, type LabelStock } from './label-stock.js';

interface Label {
  readonly sheet: RollSheet;
  readonly piece: NumberedPiece;
  readonly pane: WorkPane | undefined;
}

const PAD = 9;

/** Labels in the order in which the pieces come off the rolls: the next label goes on the piece just cut. */
function labelsOf(plan: Plan): Label[] {
  const panes = new Map(plan.workOrders.flatMap((o) => o.panes.map((p): [string, WorkPane] => [pieceKey(o.phase, p.pane), p])));
  return allRollSheets(plan).flatMap((sheet) => sheet.pieces.map((piece): Label => ({ sheet, piece, pane: panes.get(pieceKey(sheet.phase, piece.piece)) })));
}

/** The largest size at which a line fits, so that a long name is small rather than cut off. */
function fitting(paper: Paper, words: string, of: { readonly style: TextStyle; readonly width: number }): TextStyle {
  const width = paper.widthOf(of.style)(words);
  return width <= of.width ? of.style : { ...of.style, size: Math.max(4, Math.floor(of.style.size * (of.width / width) * 10) / 10) };
}

function drawArrow(paper: Paper, box: Box): void {
  const x = box.x + box.width / 2;
  paper.path([[x, box.y + box.height], [x, box.y]], { thickness: 2, dashed: false, colour: 'black' });
  paper.path([[x - 6, box.y + 9], [x, box.y], [x + 6, box.y + 9]], { thickness: 2, dashed: false, colour: 'black' });
}

function drawLabel(paper: Paper, label: Label, at: { readonly box: Box; readonly say: Say }): void {
  const { sheet, piece, pane } = label;
  const { box, say } = at;
  const small = box.height < 120 ? 9 : 12;
  paper.box(box, 0.3);
  const arrow = 34;
  drawArrow(paper, { x: box.x + box.width - arrow - PAD + 6, y: box.y + PAD + 12, width: arrow, height: box.height - 2 * PAD - 16 });
  paper.put(say('label.up'), { size: 10, bold: true, align: 'middle' }, { x: box.x + box.width - PAD - arrow / 2 + 6, y: box.y + PAD - 2 });
  const lines: [string, TextStyle][] = [
    [piece.dwelling, { size: small * 1.5, bold: true }],
    [pane === undefined ? '' : `${roomOf(pane.room, say)}, ${wordOf(say, 'side', pane.side)}`, { size: small }],
    [say('label.pane', { pane: piece.piece }), { size: small }],
    [`${piece.cutWidth} × ${piece.cutLength}`, { size: small * 1.65, bold: true }],
    [say('label.finished', { size: `${piece.finishedWidth} × ${piece.finishedLength}` }), { size: small }],
    [say('label.roll', { film: sheet.film, roll: rollText(sheet.shortName, say), number: piece.number }), { size: small }],
    [say('label.phase', { phase: phaseText(sheet.phase, say) }), { size: small * 0.8 }],
  ];
  let y = box.y + PAD - 2;
  for (const [words, style] of lines) {
    const room = fitting(paper, words, { style, width: box.width - 2 * PAD - arrow - 4 });
    paper.put(words, room, { x: box.x + PAD, y });
    y += style.size * LEADING;
  }
}

function boxOf(stock: LabelStock, place: number): Box {
  return {
    x: stock.left + (place % stock.columns) * stock.stepAcross,
    y: stock.top + Math.floor(place / stock.columns) * stock.stepDown,
    width: stock.width,
    height: stock.height,
  };
}

/** Labels for all pieces, on label stock or to be cut apart on plain paper. */
export function pieceLabels(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  const format = terms.format ?? formatOf(plan);
  const stock = LABEL_STOCK[format];
  const onSheet = stock.columns * stock.rows;
  return planPaper(plan, { ...terms, format }, {
    title: terms.texts.sentences['label.title'],
    margin: 10,
    frameSize: null,
    draw: (paper, say) => {
      const labels = labelsOf(plan);
      if (labels.length === 0) {
        paper.section();
        paper.write(say('cuts.none'), { size: 14 });
      }
      labels.forEach((label, i) => {
        if (i % onSheet === 0) paper.section();
        drawLabel(paper, label, { box: boxOf(stock, i % onSheet), say });
      });
    },
  });
}
