import { degCOf_degF, m2Of_ft2, W_m2Of_Btu_h_ft2, WOf_Btu_h, WOf_ton } from '#calc';
import { plainText } from './cell-text.js';
import { boundsText, numberIn, withinBounds, type Bounds } from './number-cell.js';
import { fault, type CellReader } from './reading.js';

type Convert = (value: number) => number;
const same: Convert = (value) => value;

/** Units a cell or a header may carry, by quantity; the first is the one kept. Headers and cells share the words. */
export const UNITS: Readonly<Record<string, Readonly<Record<string, { readonly also: readonly string[]; readonly convert: Convert }>>>> = {
  area: {
    m2: { also: ['m2', 'sq m', 'sqm', 'square metres', 'square meters'], convert: same },
    ft2: { also: ['ft2', 'sq ft', 'sqft', 'sf', 'square feet'], convert: m2Of_ft2 },
  },
  power: {
    W: { also: ['w', 'watts'], convert: same },
    kW: { also: ['kw'], convert: (value) => value * 1000 },
    tons: { also: ['tons', 'ton', 't', 'tr'], convert: WOf_ton },
    Btu_h: { also: ['btu h', 'btuh', 'btu', 'btu hr'], convert: WOf_Btu_h },
    kBtu_h: { also: ['kbtu h', 'kbtuh', 'kbtu', 'mbh'], convert: (value) => WOf_Btu_h(value * 1000) },
  },
  temperature: {
    degC: { also: ['degc', 'c', 'deg c', 'celsius'], convert: same },
    degF: { also: ['degf', 'f', 'deg f', 'fahrenheit'], convert: degCOf_degF },
  },
  flux: {
    W_m2: { also: ['w m2'], convert: same },
    Btu_h_ft2: { also: ['btu h ft2', 'btu hr ft2', 'btu ft2 h'], convert: W_m2Of_Btu_h_ft2 },
  },
  uFactor: {
    W_m2K: { also: ['w m2k', 'w m2 k', 'si'], convert: same },
    // One Btu/h·ft²·°F is 1.8 Btu/h·ft²·K.
    Btu_h_ft2F: { also: ['btu h ft2f', 'btu h ft2 f', 'us', 'ip'], convert: (value) => W_m2Of_Btu_h_ft2(value * 1.8) },
  },
  length: {
    mm: { also: ['mm', 'millimetres', 'millimeters'], convert: same },
    cm: { also: ['cm'], convert: same },
    m: { also: ['m', 'metres', 'meters'], convert: same },
    in: { also: ['in', 'inch', 'inches', 'ins'], convert: same },
    ft: { also: ['ft', 'feet', 'foot'], convert: same },
  },
  energy: {
    kWh: { also: ['kwh', 'kw h'], convert: same },
    Wh: { also: ['wh'], convert: (value) => value / 1000 },
    MWh: { also: ['mwh'], convert: (value) => value * 1000 },
  },
  demand: {
    kW: { also: ['kw'], convert: same },
    W: { also: ['w', 'watts'], convert: (value) => value / 1000 },
    MW: { also: ['mw'], convert: (value) => value * 1000 },
  },
  areaPrice: {
    per_m2: { also: ['per m2', 'm2', 'per sq m', 'per square metre', 'per square meter'], convert: same },
    // A price of a square foot, for a square metre.
    per_ft2: { also: ['per ft2', 'ft2', 'per sq ft', 'sq ft', 'per square foot', 'psf'], convert: (value) => value / m2Of_ft2(1) },
  },
  share: { pct: { also: ['pct', 'percent', 'per cent'], convert: same } },
};

/** The unit a piece of text names, among those of a quantity. */
export function unitNamed(quantity: string, text: string): string | null {
  const plain = text.normalize('NFKC').toLowerCase().replace(/°/g, '').replace(/[^\p{L}\p{N}]+/gu, ' ').trim();
  for (const [unit, { also }] of Object.entries(UNITS[quantity] ?? {})) if (also.includes(plain)) return unit;
  return null;
}

/** A number with a unit, converted to the first unit of its quantity; the cell's own unit wins over the header's. */
export const quantityCell =
  (quantity: 'area' | 'power' | 'temperature' | 'flux' | 'uFactor' | 'energy' | 'demand', bounds: Bounds): CellReader<number> =>
  (text, { unit, decimal }) => {
    const kept = Object.keys(UNITS[quantity] ?? {})[0] ?? '';
    const expected = `${boundsText(bounds)} in ${kept}, or with one of the units ${Object.keys(UNITS[quantity] ?? {}).join(', ')}`;
    const match = /^([-+\d.,]+(?: \d{3})*) ?(.*)$/.exec(plainText(text));
    const value = match === null ? null : numberIn(match[1] ?? '', decimal);
    const named = match === null || match[2] === '' ? unit : unitNamed(quantity, match[2] ?? '');
    const by = named === null ? undefined : UNITS[quantity]?.[named];
    if (value === null || by === undefined) return fault('not-a-quantity', expected, 'write a number, with the unit if it is not the header\'s');
    return withinBounds(by.convert(value), bounds);
  };
