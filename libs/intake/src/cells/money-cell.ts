import { plainText } from './cell-text.js';
import { numberIn } from './number-cell.js';
import { UNITS } from './quantity-cell.js';
import { fault, known, lookAt, type CellReader } from './reading.js';

/** Money in whole cents: "$1,250.00", "(40.00)" and "40-" for less than nothing, "free" for nothing. */
export const moneyCell =
  ({ min_cents = 0 }: { readonly min_cents?: number } = {}): CellReader<number> =>
  (text, { decimal }) => {
    const expected = `an amount, ${min_cents / 100} or more`;
    const plain = plainText(text);
    if (/^(free|no charge|nil)$/i.test(plain)) {
      return known(0, lookAt('read-as-zero', expected, 'taken as an amount of 0; correct it if that is not meant'));
    }
    const bare = plain.replace(/^(us\$|usd|\$|€|£)|( ?)(usd|us\$|\$|€|£)$/gi, '').trim();
    const negative = /^\(.*\)$/.test(bare) || /-$/.test(bare);
    const digits = bare.replace(/^\(|\)$|-$/g, '').replace(/^(us\$|\$|€|£) ?/i, '').trim();
    const value = numberIn(digits, decimal);
    if (value === null) return fault('not-an-amount', expected, 'write digits, with or without the currency sign');
    const size = Math.floor(Math.abs(value) * 100 + 0.5 + 1e-9);
    const cents = negative || value < 0 ? -size : size;
    return cents >= min_cents ? known(cents) : fault('out-of-range', expected, 'correct the amount');
  };

/** Money per area, in cents per square metre; the header says whether the area is a square metre or a square foot. */
export const areaPriceCell: CellReader<number> = (text, context) => {
  const { value, remark } = moneyCell()(text, context);
  const by = UNITS['areaPrice']?.[context.unit];
  if (by === undefined) throw new RangeError(`unit must be one of areaPrice, got ${context.unit}`);
  return { value: value === null ? null : by.convert(value), ...(remark && { remark }) };
};
