import type { PaperFormat } from '../page/paper.js';

/** A sheet of labels, lengths in points. */
export interface LabelStock {
  readonly columns: number;
  readonly rows: number;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  /** From one label's left (upper) edge to the next one's. */
  readonly stepAcross: number;
  readonly stepDown: number;
}

const IN = 72;
const MM = 72 / 25.4;

/** Sizes sold everywhere: ten of 4 × 2 in on letter, fourteen of 99.1 × 38.1 mm on A4. From memory. */
export const LABEL_STOCK: Readonly<Record<PaperFormat, LabelStock>> = {
  letter: { columns: 2, rows: 5, width: 4 * IN, height: 2 * IN, left: 0.156 * IN, top: 0.5 * IN, stepAcross: 4.188 * IN, stepDown: 2 * IN },
  a4: { columns: 2, rows: 7, width: 99.1 * MM, height: 38.1 * MM, left: 4.65 * MM, top: 15.15 * MM, stepAcross: 101.6 * MM, stepDown: 38.1 * MM },
};
