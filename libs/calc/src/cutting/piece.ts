import { ceilToEighthInch_ticks, inchesText, mmOfTicks, ticksOf_mm } from '../units/index.js';

/** Sight size of a pane and the crew's allowances. */
export interface PaneToCut {
  readonly width_mm: number;
  readonly height_mm: number;
  /** Film beyond the glass on EACH edge, trimmed on the pane. */
  readonly trimPerEdge_mm?: number;
  /** Bare glass left at each edge of the finished film. */
  readonly edgeGap_mm?: number;
}

/** Rough cut and finished size of the film of one pane. */
export interface PieceSize {
  /** Rough cut across the pane's width and along its height. */
  readonly width_mm: number;
  readonly length_mm: number;
  readonly widthText: string;
  readonly lengthText: string;
  readonly finishedWidth_mm: number;
  readonly finishedLength_mm: number;
  readonly finishedWidthText: string;
  readonly finishedLengthText: string;
}

/** Trim allowance per edge, 1/2 in: common practice, no source; the total of about 1 in is inferred from roll widths in an installers' article. */
export const TRIM_PER_EDGE_mm = 12.7;
/** Gap between film and gasket, 1/16 in: the wide end of the printed 1/32–1/16 in. */
export const EDGE_GAP_mm = 1.5875;

/**
 * Film piece of a pane: rough cut size and finished size.
 *
 *   cut = (sight + 2 × trim) rounded UP to 1/8 in, in whole ticks;   finished = sight − 2 × gap
 *
 * @param pane sight width and height in mm, > 0; trim per edge ≥ 0 (default 12.7); edge gap ≥ 0 (default 1.5875)
 * @returns sizes in mm with their text in inches and fractions; the rough cut is never below the sight size plus trim
 * @throws RangeError when a size is not positive, an allowance is negative, or the gap leaves nothing
 * @source common practice, no source: glass + total allowance, up to 1/8 in (35 1/2 × 47 3/8 → 36 1/2 × 48 3/8 → 35 3/8 × 47 1/4)
 */
export function pieceOfPane(pane: PaneToCut): PieceSize {
  const trim = allowance(pane.trimPerEdge_mm ?? TRIM_PER_EDGE_mm, 'trimPerEdge_mm');
  const gap = allowance(pane.edgeGap_mm ?? EDGE_GAP_mm, 'edgeGap_mm');
  const width = sideOf(pane.width_mm, 'width_mm', { trim, gap });
  const height = sideOf(pane.height_mm, 'height_mm', { trim, gap });
  return {
    width_mm: mmOfTicks(width.cut),
    length_mm: mmOfTicks(height.cut),
    widthText: inchesText(width.cut),
    lengthText: inchesText(height.cut),
    finishedWidth_mm: mmOfTicks(width.finished),
    finishedLength_mm: mmOfTicks(height.finished),
    finishedWidthText: inchesText(width.finished),
    finishedLengthText: inchesText(height.finished),
  };
}

function sideOf(sight_mm: number, name: string, by: { readonly trim: number; readonly gap: number }): { cut: number; finished: number } {
  if (!(sight_mm > 0 && Number.isFinite(sight_mm))) throw new RangeError(`${name} must be > 0, got ${String(sight_mm)}`);
  const sight = ticksOf_mm(sight_mm);
  const finished = sight - 2 * by.gap;
  if (finished <= 0) throw new RangeError(`${name} must be more than twice the edge gap, got ${String(sight_mm)}`);
  return { cut: ceilToEighthInch_ticks(sight + 2 * by.trim), finished };
}

function allowance(value_mm: number, name: string): number {
  if (!(value_mm >= 0 && Number.isFinite(value_mm))) throw new RangeError(`${name} must be ≥ 0, got ${String(value_mm)}`);
  return ticksOf_mm(value_mm);
}
