import { inchesText, ticksOf_mm } from '#calc';
import { type RollSheet, rollText } from '../cuts/roll-sheets.js';
import type { CuttingOrder, RollStretch, StraightCut } from '../cuts/straight-cuts.js';
import type { Say } from '../texts/texts.js';
import type { Picture, Shape } from './picture.js';

export interface RollLayoutAsk {
  readonly sheet: RollSheet;
  readonly order: CuttingOrder;
  /** Room there is, points. */
  readonly width: number;
  readonly height: number;
  readonly say: Say;
}

/** Stretches drawn beside one another in a row, at one scale for the whole roll. */
interface Row {
  readonly from_mm: number;
  readonly to_mm: number;
}

const HEAD = 13;
const GAP = 12;
const LARGEST_points_mm = 0.14;
const inches = (mm: number): string => inchesText(ticksOf_mm(mm));

/** Rows end at cuts over the whole width, never inside a piece; the uncut end may be broken anywhere. */
function rowsOf(stretches: readonly RollStretch[], end_mm: number, longest_mm: number): Row[] {
  const rows: { from_mm: number; to_mm: number }[] = [];
  for (const { from_mm, to_mm } of stretches) {
    const row = rows[rows.length - 1];
    if (row !== undefined && to_mm - row.from_mm <= longest_mm) row.to_mm = to_mm;
    else rows.push({ from_mm, to_mm });
  }
  for (let at = rows[rows.length - 1]?.to_mm ?? 0; at < end_mm - 1; ) {
    const row = rows[rows.length - 1];
    const free = row === undefined ? 0 : row.from_mm + longest_mm - at;
    if (row !== undefined && free > 1) row.to_mm = at = Math.min(end_mm, at + free);
    else {
      rows.push({ from_mm: at, to_mm: Math.min(end_mm, at + longest_mm) });
      at = rows[rows.length - 1]!.to_mm;
    }
  }
  return rows;
}

/** The largest scale at which the roll fits, in points a millimetre. */
function fit(ask: RollLayoutAsk, end_mm: number): { readonly scale: number; readonly rows: readonly Row[] } {
  const longest = Math.max(1, ...ask.order.stretches.map((s) => s.to_mm - s.from_mm));
  for (let scale = Math.min(LARGEST_points_mm, ask.width / longest); ; scale *= 0.96) {
    const rows = rowsOf(ask.order.stretches, end_mm, ask.width / scale + 1e-6);
    if (rows.length * (ask.sheet.width_mm * scale + HEAD + GAP) <= ask.height) return { scale, rows };
  }
}

/** The number always; the cut size where there is room for it. */
function pieceShapes(ask: RollLayoutAsk, at: { readonly row: Row; readonly y: number; readonly scale: number }): Shape[] {
  const { row, y, scale } = at;
  return ask.sheet.pieces
    .filter((p) => p.y_mm >= row.from_mm - 0.5 && p.y_mm + p.length_mm <= row.to_mm + 0.5)
    .flatMap((p): Shape[] => {
      const box = { x: (p.y_mm - row.from_mm) * scale, y: y + p.x_mm * scale, width: p.length_mm * scale, height: p.width_mm * scale };
      const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      const size = Math.max(6, Math.min(12, box.height * 0.3, box.width * 0.35));
      const sizes = [p.cutWidth, `× ${p.cutLength}`];
      const small = Math.min(8, size * 0.7);
      const fits = box.width >= Math.max(...sizes.map((s) => s.length)) * small * 0.62 && box.height >= size + 3 * small;
      return [
        { kind: 'rect', ...box, fill: 'white', thickness: 0.8 },
        { kind: 'text', x: middle.x, y: fits ? middle.y - small * 0.5 : middle.y + size * 0.36, text: String(p.number), size, bold: true, align: 'middle' },
        ...(fits ? sizes.map((text, i): Shape => ({ kind: 'text', x: middle.x, y: middle.y + small * (0.7 + i * 1.1), text, size: small, align: 'middle' })) : []),
      ];
    });
}

/** Numbers of cuts: those across below the roll's edge, those along inside their line's end. */
function cutShapes(cuts: readonly StraightCut[], at: { readonly row: Row; readonly y: number; readonly scale: number; readonly width_mm: number }): Shape[] {
  const { row, y, scale, width_mm } = at;
  const X = (mm: number): number => (mm - row.from_mm) * scale;
  return cuts.flatMap((cut): Shape[] => {
    const isAcross = cut.way === 'across';
    const along = isAcross ? cut.at_mm : cut.from_mm;
    if (along < row.from_mm + (isAcross ? 0.5 : -0.5) || along > row.to_mm + (isAcross ? 0.5 : -0.5)) return [];
    const number = String(cut.number);
    const isWhole = isAcross && cut.to_mm - cut.from_mm > width_mm - 1;
    const line: readonly (readonly [number, number])[] = isAcross ? [[X(cut.at_mm), y + cut.from_mm * scale], [X(cut.at_mm), y + cut.to_mm * scale]] : [[X(cut.from_mm), y + cut.at_mm * scale], [X(cut.to_mm), y + cut.at_mm * scale]];
    const label = isWhole ? { x: X(cut.at_mm), y: y + width_mm * scale + 8 } : isAcross ? { x: X(cut.at_mm) - 1.5, y: y + cut.to_mm * scale - 2 } : { x: X(cut.to_mm) - 1.5, y: y + cut.at_mm * scale - 1.5 };
    return [
      { kind: 'line', points: line, thickness: isWhole ? 1.6 : 0.8, dashed: !isWhole },
      { kind: 'text', ...label, text: number, size: 7, align: isWhole ? 'middle' : 'right' },
    ];
  });
}

/** A roll drawn to scale from its free end on: pieces with number and cut size, cuts in their order, lost film hatched, the end that is left. */
export function rollLayout(ask: RollLayoutAsk): Picture {
  const { sheet, order, say } = ask;
  const end_mm = sheet.length_mm ?? sheet.running_mm + sheet.leftover_mm;
  const { scale, rows } = fit(ask, end_mm);
  const high = sheet.width_mm * scale;
  const shapes = rows.flatMap((row, i): Shape[] => {
    const y = i * (high + HEAD + GAP) + HEAD;
    const cutEnd = Math.min(row.to_mm, sheet.running_mm);
    const left = row.to_mm - Math.max(row.from_mm, sheet.running_mm);
    const at = { row, y, scale, width_mm: sheet.width_mm };
    const from = (Math.max(row.from_mm, sheet.running_mm) - row.from_mm) * scale;
    return [
      { kind: 'text', x: 0, y: y - 3, text: say('cuts.from', { along: inches(row.from_mm) }), size: 8 },
      { kind: 'text', x: (row.to_mm - row.from_mm) * scale, y: y - 3, text: inches(row.to_mm), size: 8, align: 'right' },
      ...(cutEnd > row.from_mm ? [{ kind: 'rect', x: 0, y, width: (cutEnd - row.from_mm) * scale, height: high, fill: 'hatch', thickness: 0.8 } satisfies Shape] : []),
      ...(left > 1 ? leftShapes(ask, { x: from, y, width: left * scale, height: high }) : []),
      ...pieceShapes(ask, at),
      ...cutShapes(order.cuts, at),
    ];
  });
  return { width: ask.width, height: rows.length * (high + HEAD + GAP), title: say('cuts.picture', { roll: rollText(sheet.shortName, say) }), shapes };
}

/** The end of the roll: kept where it is worth it, else lost. */
function leftShapes({ sheet, say }: RollLayoutAsk, box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }): Shape[] {
  const isKept = sheet.leftover_mm > 0;
  const words = say(isKept ? 'cuts.kept' : 'cuts.lost');
  return [
    { kind: 'rect', ...box, fill: isKept ? 'white' : 'hatch', thickness: 0.8 },
    ...(isKept ? [{ kind: 'text', x: box.x + box.width / 2 + 3, y: box.y + box.height / 2 + (box.width < 60 ? 0 : 3), text: words, size: 8, align: 'middle', turned: box.width < 60 } satisfies Shape] : []),
  ];
}
