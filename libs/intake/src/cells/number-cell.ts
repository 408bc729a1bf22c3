import { plainText } from './cell-text.js';
import { fault, known, type CellReader, type DecimalMark, type Reading } from './reading.js';

/**
 * A number as written, or null. Thousands may be grouped in threes by the other mark or by spaces; where only one reading
 * is possible ("35,5" in a file of decimal points) that one is taken.
 */
export function numberIn(text: string, decimal: DecimalMark): number | null {
  let plain = plainText(text).replace(/^\+/, '');
  if (/^-?\d{1,3}( \d{3})+([.,]\d+)?$/.test(plain)) plain = plain.replace(/ /g, '');
  if (/^-?(\d+|\d*\.\d+)$/.test(plain) && (decimal === '.' || !/^-?\d{1,3}\.\d{3}$/.test(plain))) return Number(plain);
  const group = decimal === '.' ? ',' : '.';
  const grouped = new RegExp(`^-?\\d{1,3}(\\${group}\\d{3})+(\\${decimal}\\d+)?$`);
  if (grouped.test(plain)) return Number(plain.split(group).join('').replace(decimal, '.'));
  if (/^-?\d*[.,]\d+$/.test(plain)) return Number(plain.replace(',', '.'));
  if (/^-?\d+(\.\d+)?e-?\d{1,2}$/i.test(plain)) return Number(plain);
  return null;
}

/** Smallest and largest value that can be true. */
export interface Bounds {
  readonly min?: number;
  readonly max?: number;
  readonly whole?: boolean;
}

/** "0…1", "0 or more": the bounds as a person reads them. */
export function boundsText({ min, max, whole }: Bounds): string {
  const kind = whole === true ? 'a whole number' : 'a number';
  if (min !== undefined && max !== undefined) return `${kind} ${min}…${max}`;
  if (min !== undefined) return `${kind}, ${min} or more`;
  return max === undefined ? kind : `${kind}, ${max} or less`;
}

/** Checks a number against its bounds. */
export function withinBounds(value: number, bounds: Bounds): Reading<number> {
  const { min = -Infinity, max = Infinity, whole = false } = bounds;
  if (value >= min && value <= max && (!whole || Number.isInteger(value))) return known(value);
  return fault('out-of-range', boundsText(bounds), 'correct the figure, or leave the cell blank if it is not known');
}

/** A plain number within bounds. */
export const numberCell =
  (bounds: Bounds = {}): CellReader<number> =>
  (text, { decimal }) => {
    const value = numberIn(text, decimal);
    if (value === null) return fault('not-a-number', boundsText(bounds), 'write digits only, or leave the cell blank if it is not known');
    return withinBounds(value, bounds);
  };

/** A share 0…1; "25 %" and a header in per cent are divided by 100. */
export const shareCell: CellReader<number> = (text, { decimal, unit }) => {
  const plain = plainText(text);
  const inPercent = /%$/.test(plain) || unit === 'pct';
  const value = numberIn(plain.replace(/ ?%$/, ''), decimal);
  const expected = 'a share 0…1, or a percentage with its sign';
  if (value === null) return fault('not-a-number', expected, 'write 0.25 or 25 %');
  const share = inPercent ? value / 100 : value;
  if (share >= 0 && share <= 1) return known(share);
  return fault('out-of-range', expected, 'write 0.25 or 25 %');
};
