import { inchesText, ticksOf_mm } from '#calc';
import type { CutReview, FilmCut, PlacedPiece, Plan } from '#planning';
import type { Book } from '../book.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';
import { markedCuts } from './film-again.js';
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

const lotText = ({ rule, extraArea_m2, extraCost_cents, why }: NonNullable<CutReview['oneLot']>): string => {
  const price = extraCost_cents === 0 && extraArea_m2 === 0 ? 'no film more' : `${(extraCost_cents / 100).toFixed(2)} more, ${extraArea_m2.toFixed(1)} m²`;
  return rule === 'any lot' ? `${why ?? ''}; one lot a side: ${price}` : `one lot a side, rolls ordered together being one: ${price} than cut freely; order them as one lot`;
};

/** Checks, near misses, ends and the price of keeping dwellings together, in sentences above the list. */
function notesOf(plan: Plan): string[] {
  return plan.cutReviews.flatMap((r) => {
    const at = `${r.phase}, film ${r.film}`;
    const rules = r.rules.map((p) => (p.why === null ? `${p.rule}: ${p.extraCost_cents === 0 ? 'no film more' : `${(p.extraCost_cents / 100).toFixed(2)} more, ${p.extraArea_m2.toFixed(1)} m²`}` : `${p.rule}: ${p.why}`));
    const ends = r.offCuts.map((o) => `${o.roll} ${inches(o.width_mm)} × ${inches(o.length_mm)}${o.usedIn === null ? '' : ` (used in ${o.usedIn})`}`);
    return [
      `${at}: layout ${r.check.ok ? 'passed its independent check' : `FAILS its check: ${r.check.faults.join('; ')}`}. Cut ${r.rule}; ${rules.join('; ')}.`,
      ...r.nearMisses.map((n) => `${at}, near miss: ${String(n.panes)} panes of ${n.size} are ${n.over} in too wide for the ${n.roll} in roll.`),
      ...(ends.length === 0 ? [] : [`${at}, ends to stock (in): ${ends.join('; ')}.`]),
      ...(r.oneLot === undefined ? [] : [`${at}, ${lotText(r.oneLot)}.`]),
      ...r.mixedLots.map((m) => `${at}: ${m.elevation} side comes from more than one lot: ${m.lots.join('; ')}.`),
    ];
  });
}

/** Pieces in the order they come off each roll. */
export function cutListSheet(book: Book, plan: Plan): TablePlace {
  return oneTableSheet<PieceRow>(book, {
    name: SHEET.cutList,
    about: `${plan.name}: every pane one piece, in the order it comes off its roll; measure the pane before cutting`,
    notes: notesOf(plan),
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
    rows: markedCuts(plan).flatMap(pieceRows),
    total: 'Total',
    none: 'Nothing is cut.',
  }).place;
}
