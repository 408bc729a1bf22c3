import { words } from '../cells/cell-text.js';
import { unitNamed } from '../cells/quantity-cell.js';
import type { Column, Columns } from './column.js';

/** A column of the file that is known, with the unit its header names. */
export interface MatchedColumn {
  readonly index: number;
  readonly key: string;
  readonly header: string;
  readonly unit: string;
  /** True when the header names no unit and the column has one: the canonical unit is taken. */
  readonly unitAssumed: boolean;
}

/** What a header line says of its columns. */
export interface MatchedHeader {
  readonly columns: readonly MatchedColumn[];
  readonly unknown: readonly { readonly index: number; readonly header: string }[];
  /** Headers of the file that mean the same column. */
  readonly duplicates: readonly { readonly key: string; readonly headers: readonly string[] }[];
  readonly missing: readonly string[];
}

/** Every word a column answers to, with blanks between and no punctuation. */
const namesOf = (column: Column<unknown>): readonly string[] => [column.name, ...column.also].map(words);

/** Unit in brackets at the end of a header, and what stands before it: "Width (in)", "Area [sq ft]". */
function bracketed(header: string): { readonly before: string; readonly unit: string } | null {
  const match = /^(.*?)[([{]([^)\]}]*)[)\]}][^\p{L}\p{N}]*$/u.exec(header);
  return match === null ? null : { before: match[1] ?? '', unit: match[2] ?? '' };
}

function unitOf(column: Column<unknown>, header: string): { readonly unit: string; readonly assumed: boolean } | null {
  const names = namesOf(column);
  if (names.includes(words(header))) return { unit: column.unit, assumed: column.unit !== '' };
  const inBrackets = bracketed(header);
  if (inBrackets !== null && names.includes(words(inBrackets.before))) {
    if (column.quantity === '') return { unit: column.unit, assumed: false };
    const unit = unitNamed(column.quantity, inBrackets.unit);
    return unit === null ? { unit: column.unit, assumed: true } : { unit, assumed: false };
  }
  if (column.quantity === '') return null;
  const said = words(header).split(' ');
  for (let from = said.length - 1; from >= 1 && from >= said.length - 4; from--) {
    const unit = unitNamed(column.quantity, said.slice(from).join(' '));
    if (unit !== null && names.includes(said.slice(0, from).join(' '))) return { unit, assumed: false };
  }
  return null;
}

/** The column a header means, whatever its case, spaces, punctuation and unit; an exact name only, never a part of one. */
export function columnOf(columns: Columns, header: string): { readonly key: string; readonly unit: string; readonly assumed: boolean } | null {
  for (const [key, column] of Object.entries(columns)) {
    const unit = unitOf(column, header);
    if (unit !== null) return { key, ...unit };
  }
  return null;
}

/** Matches a whole header line. Of two headers for one column neither is taken. */
export function matchHeader(columns: Columns, headers: readonly string[]): MatchedHeader {
  const byKey = new Map<string, MatchedColumn[]>();
  const unknown: { index: number; header: string }[] = [];
  headers.forEach((header, index) => {
    if (words(header) === '') return;
    const found = columnOf(columns, header);
    if (found === null) unknown.push({ index, header });
    else byKey.set(found.key, [...(byKey.get(found.key) ?? []), { index, key: found.key, header, unit: found.unit, unitAssumed: found.assumed }]);
  });
  const all = [...byKey.values()];
  return {
    columns: all.filter((same) => same.length === 1).flat(),
    unknown,
    duplicates: all.filter((same) => same.length > 1).map((same) => ({ key: same[0]?.key ?? '', headers: same.map(({ header }) => header) })),
    missing: Object.entries(columns).filter(([key, { need }]) => need === 'needed' && !byKey.has(key)).map(([key]) => key),
  };
}
