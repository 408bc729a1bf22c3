import { address, quoted } from './cells.js';
import type { TablePlace } from './table.js';

/** Which inputs of a sheet are no longer as run: a formula that counts them, null where the sheet has none. */
export interface ChangedInputs {
  readonly sheet: string;
  readonly count: string | null;
}

/** Counts the rows of a table in which an input differs from what the run had, column by column. */
export function changedInputs(sheet: string, place: TablePlace, pairs: readonly (readonly [input: number, asRun: number])[]): ChangedInputs {
  if (place.lastRow < place.firstRow) return { sheet, count: null };
  const run = (column: number): string => `${quoted(sheet)}!${address(column, place.firstRow)}:${address(column, place.lastRow)}`;
  return { sheet, count: pairs.map(([input, asRun]) => `SUMPRODUCT((${run(input)}<>${run(asRun)})*1)`).join('+') };
}
