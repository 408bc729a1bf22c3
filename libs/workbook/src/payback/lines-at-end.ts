import { address, fixed, quoted } from '../cells.js';
import { SHEET } from '../sheet-names.js';
import type { MoneyModel } from './money-model.js';

/** Row of the heads of the lines, known before the sheet is written; a row of units follows. */
export const LINES_HEAD = 5;
export const firstLine = LINES_HEAD + 2;

/** Columns of the film that comes off at the end of its life: its area, the year of the study, and what it costs. */
export const AT_END = { area: 22, end: 23, off: 24 } as const;

/** Area of film that comes off and the years it does, as other sheets point at them. */
export function linesAtEnd({ lines }: MoneyModel): Readonly<Record<'area' | 'end', string>> & { readonly areaCell: (index: number) => string } {
  const sheet = quoted(SHEET.paybackLines);
  const run = (column: number): string => `${sheet}!${fixed(column, firstLine)}:${fixed(column, Math.max(firstLine, firstLine + lines.length - 1))}`;
  return { area: run(AT_END.area), end: run(AT_END.end), areaCell: (index) => `${sheet}!${address(AT_END.area, firstLine + index)}` };
}
