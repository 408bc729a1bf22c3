import type { Efficiency, EfficiencyScale } from '#calc';
import { plainText, words } from './cell-text.js';
import { numberIn } from './number-cell.js';
import { fault, known, type CellReader } from './reading.js';

const SCALES: Readonly<Record<string, EfficiencyScale>> = { seer: 'seer', seer2: 'seer2', 'seer 2': 'seer2', eer: 'eer', cop: 'cop', 'kw ton': 'kW_ton', 'kw per ton': 'kW_ton' };
// Widest figures seen on real machines, to catch slips only: from memory.
const LIMITS: Readonly<Record<EfficiencyScale, readonly [number, number]>> = { seer: [4, 45], seer2: [4, 45], eer: [4, 30], cop: [1, 12], kW_ton: [0.3, 3] };
const EXPECTED = 'a number with its scale: SEER, SEER2, EER, COP or kW/ton';

/** Scale of an efficiency by its name, or null. */
export const scaleOf = (text: string): EfficiencyScale | null => SCALES[words(text)] ?? null;

export const scaleCell: CellReader<EfficiencyScale> = (text) => {
  const scale = scaleOf(text);
  return scale === null ? fault('unknown-word', EXPECTED, 'name the scale') : known(scale);
};

/** A figure whose scale may stand in the cell ("SEER2 13.4") or in a column beside it. */
export interface StatedEfficiency {
  readonly value: number;
  readonly scale: EfficiencyScale | null;
}

export const efficiencyCell: CellReader<StatedEfficiency> = (text, { decimal }) => {
  const plain = plainText(text);
  const match = /^([a-z]+2?(?:\/ton)?)? ?=? ?([\d.,]+) ?(.*)$/i.exec(plain);
  const name = match?.[1] ?? match?.[3] ?? '';
  const value = match === null ? null : numberIn(match[2] ?? '', decimal);
  const scale = name === '' ? null : scaleOf(name);
  if (value === null || (name !== '' && scale === null)) return fault('not-an-efficiency', EXPECTED, 'write for example SEER 13, or 13 with the scale in its own column');
  return known({ value, scale });
};

/** Figure and scale together; scales are never mixed and never guessed. */
export function efficiencyOf(stated: StatedEfficiency | null, column: EfficiencyScale | null): Efficiency | null | { readonly why: string } {
  if (stated === null) return null;
  const scale = stated.scale ?? column;
  if (scale === null) return { why: 'the scale is missing' };
  if (stated.scale !== null && column !== null && stated.scale !== column) return { why: `the cell says ${stated.scale}, the scale column ${column}` };
  const [low, high] = LIMITS[scale];
  return stated.value >= low && stated.value <= high ? { scale, value: stated.value } : { why: `${scale} is usually ${low}…${high}` };
}
