import { inchesText, ticksOf_mm } from '#calc';
import type { FilmCut, PlacedPiece, Plan } from '#planning';
import type { Workbook } from 'exceljs';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { FORMAT } from '../style.js';
import type { TablePlace } from '../table.js';

interface PieceRow {
  readonly cut: FilmCut;
  readonly piece: PlacedPiece | null;
  readonly unplaced: string;
  readonly why: string;
}

const inches = (length_mm: number): string => inchesText(ticksOf_mm(length_mm));

function pieceRows(cut: FilmCut): PieceRow[] {
  const laid = [...cut.pieces].sort((a, b) => a.roll.localeCompare(b.roll, 'en', { numeric: true }) || a.y_mm - b.y_mm || a.x_mm - b.x_mm);
  return [
    ...laid.map((piece): PieceRow => ({ cut, piece, unplaced: '', why: '' })),
    ...cut.unplaced.map(({ piece, why }): PieceRow => ({ cut, piece: null, unplaced: piece, why })),
  ];
}

/** Pieces in the order they come off each roll. */
export function cutListSheet(book: Workbook, plan: Plan): TablePlace {
  return oneTableSheet<PieceRow>(book, {
    name: SHEET.cutList,
    about: `${plan.name}: every pane one piece, in the order it comes off its roll; measure the pane before cutting`,
    columns: [
      { head: 'Done', unit: '', width: 6, value: () => '☐' },
      { head: 'Phase', unit: '', width: 17, value: (r) => r.cut.phase },
      { head: 'Film', unit: '', width: 7, value: (r) => r.cut.film },
      { head: 'Roll', unit: '', width: 30, value: (r) => r.piece?.roll ?? `not laid: ${r.why}` },
      { head: 'Along the roll from', unit: 'in', width: 11, value: (r) => (r.piece === null ? '' : inches(r.piece.y_mm)) },
      { head: 'to', unit: 'in', width: 10, value: (r) => (r.piece === null ? '' : inches(r.piece.y_mm + r.piece.length_mm)) },
      { head: 'Across from', unit: 'in', width: 9, value: (r) => (r.piece === null ? '' : inches(r.piece.x_mm)) },
      { head: 'Cut width', unit: 'in', width: 10, value: (r) => r.piece?.cutWidth ?? '' },
      { head: 'Cut length', unit: 'in', width: 10, value: (r) => r.piece?.cutLength ?? '' },
      { head: 'Finished width', unit: 'in', width: 10, value: (r) => r.piece?.finishedWidth ?? '' },
      { head: 'Finished length', unit: 'in', width: 10, value: (r) => r.piece?.finishedLength ?? '' },
      { head: 'Dwelling', unit: '', width: 13, value: (r) => r.piece?.dwelling ?? '' },
      { head: 'Pane', unit: '', width: 18, value: (r) => r.piece?.piece ?? r.unplaced },
      { head: 'Pieces', unit: '', width: 7, format: FORMAT.whole, isSummed: true, value: () => 1 },
    ],
    rows: plan.cuts.flatMap(pieceRows),
    total: 'Total',
    none: 'Nothing is cut.',
  }).place;
}
