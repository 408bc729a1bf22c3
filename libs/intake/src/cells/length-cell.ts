import { mmOf_in, mmOfTicks, ticksOf_mm, type EnteredLength } from '#calc';
import { looksDamaged, plainText, trimmed } from './cell-text.js';
import { numberIn } from './number-cell.js';
import { fault, known, lookAt, type CellContext, type CellReader, type DecimalMark, type Reading } from './reading.js';

const GLYPHS: Readonly<Record<string, string>> = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅓': '1/3', '⅔': '2/3' };
const METRIC_mm: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };
const EXPECTED = 'a length such as 35 1/2, 35.5 in, 2\'11 1/2", 902 mm or 0.902 m';

/** Inches with an optional fraction: "35 1/2", "35-1/2", "35.5", "1/2". */
function inches(text: string, decimal: DecimalMark): number | null {
  const mixed = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)$/.exec(text);
  if (mixed === null) return numberIn(text, decimal);
  const [, whole = '0', over, under] = mixed;
  const parts = Number(over);
  const of = Number(under);
  // 64ths are the finest marks of a tape; anything else is a slip or a date in disguise.
  return of > 0 && of <= 64 && parts < of ? Number(whole) + parts / of : null;
}

function feetAndInches(text: string, decimal: DecimalMark): number | null {
  const match = /^(\d+(?:[.,]\d+)?) ?(?:'|ft\.?|feet|foot)(?: |-)*(.*)$/.exec(text);
  if (match === null) return null;
  const feet = numberIn(match[1] ?? '', decimal);
  const rest = (match[2] ?? '').replace(/ ?("|''|inches|inch|in\.?)$/, '').trim();
  const over = rest === '' ? 0 : inches(rest, decimal);
  return feet === null || over === null ? null : feet * 12 + over;
}

/** The length in mm, whole ticks, or null when the text is no length. A unit in the text wins over the one given. */
export function lengthIn_mm(text: string, { unit, decimal }: Pick<CellContext, 'unit' | 'decimal'>): number | null {
  const plain = plainText(text)
    .replace(/\u2044/g, '/')
    .replace(/ ?([½¼¾⅛⅜⅝⅞⅓⅔])/g, (_, glyph: string) => ` ${GLYPHS[glyph] ?? glyph}`)
    .trim()
    .toLowerCase();
  const metric = /^(.*?) ?(mm|cm|m)$/.exec(plain);
  const onTicks = (mm: number | null): number | null => (mm === null ? null : mmOfTicks(ticksOf_mm(mm)));
  if (metric !== null) {
    const value = numberIn(metric[1] ?? '', decimal);
    return onTicks(value === null ? null : value * (METRIC_mm[metric[2] ?? ''] ?? NaN));
  }
  const feet = feetAndInches(plain, decimal);
  if (feet !== null) return onTicks(mmOf_in(feet));
  const inch = /^(.*?) ?("|''|inches|inch|in\.?)$/.exec(plain);
  const value = inches(inch?.[1] ?? plain, decimal);
  if (value === null) return null;
  if (inch !== null || unit === 'in') return onTicks(mmOf_in(value));
  if (unit === 'ft') return onTicks(mmOf_in(value * 12));
  const factor = METRIC_mm[unit];
  return factor === undefined || plain.includes('/') ? null : onTicks(value * factor);
}

/** What a length may be, in mm; outside `usual` a person is asked to look, outside the bounds the row is not taken. */
export interface LengthBounds {
  readonly min_mm: number;
  readonly max_mm: number;
  readonly usualMax_mm?: number;
}

function bounded(entered: string, mm: number, bounds: LengthBounds): Reading<EnteredLength> {
  if (mm < bounds.min_mm || mm > bounds.max_mm) {
    const range = `${(bounds.min_mm / 25.4).toFixed(0)}…${(bounds.max_mm / 25.4).toFixed(0)} in (${bounds.min_mm}…${bounds.max_mm} mm)`;
    return fault('size-implausible', range, 'measure again, or correct the unit');
  }
  if (bounds.usualMax_mm !== undefined && mm > bounds.usualMax_mm) {
    return known({ entered, mm }, lookAt('size-unusual', `usually up to ${bounds.usualMax_mm} mm`, 'check that width, height and unit are not mixed up'));
  }
  return known({ entered, mm });
}

/** A length with the text as it was entered. */
export const lengthCell =
  (bounds: LengthBounds): CellReader<EnteredLength> =>
  (text, context) => {
    if (looksDamaged(text)) {
      return fault('spreadsheet-damage', EXPECTED, 'a spreadsheet turned this into a date; type it again in a text cell');
    }
    const mm = lengthIn_mm(text, context);
    return mm === null ? fault('not-a-length', EXPECTED, 'write digits and a unit; leave the cell blank if it is not known') : bounded(trimmed(text), mm, bounds);
  };

/** The same as a bare number of mm, or of m. */
export const lengthCell_mm =
  (bounds: LengthBounds): CellReader<number> =>
  (text, context) => {
    const { value, remark } = lengthCell(bounds)(text, context);
    return { value: value?.mm ?? null, ...(remark && { remark }) };
  };
export const lengthCell_m =
  (bounds: LengthBounds): CellReader<number> =>
  (text, context) => {
    const { value, remark } = lengthCell(bounds)(text, context);
    return { value: value === null ? null : value.mm / 1000, ...(remark && { remark }) };
  };
