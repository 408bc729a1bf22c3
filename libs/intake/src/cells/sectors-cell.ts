import { bearingOf } from './compass-cell.js';
import { plainText } from './cell-text.js';
import { fault, known, type CellReader } from './reading.js';

/** Bearings from one to another, clockwise. */
export interface Sector {
  readonly from_deg: number;
  readonly to_deg: number;
}

const EXPECTED = 'compass words apart by ;, or ranges clockwise such as 45-315 or NE-NW';
const turned = (degrees: number): number => ((degrees % 360) + 360) % 360;

function end(text: string): number | null {
  if (/^\d{1,3}(\.\d+)?$/.test(text)) return Number(text) <= 360 ? Number(text) : null;
  return bearingOf(text);
}

/** A word stands for its part of the rose: N, E, S, W a quarter each, the eight and sixteen points an eighth. */
function around(word: string): Sector | null {
  const bearing = bearingOf(word);
  if (bearing === null) return null;
  const half = bearing % 90 === 0 ? 45 : 22.5;
  return { from_deg: turned(bearing - half), to_deg: turned(bearing + half) };
}

function sectorOf(part: string): Sector | null {
  const [from, to, ...more] = part.split(/\s*(?:-|to|…)\s*/);
  if (from === undefined || to === undefined || more.length > 0) return around(part);
  const [first, last] = [end(from), end(to)];
  return first === null || last === null ? around(part) : { from_deg: first, to_deg: last };
}

/** Sides that count: parts of the rose. */
export const sectorsCell: CellReader<readonly Sector[]> = (text) => {
  const parts = plainText(text).replace(/[°]/g, '').split(/[;|,]/).map((part) => part.trim()).filter((part) => part !== '');
  const sectors = parts.map(sectorOf);
  const all = sectors.filter((sector) => sector !== null);
  return all.length < sectors.length || all.length === 0 ? fault('not-sides', EXPECTED, 'correct the sides, or leave the cell blank for all') : known(all);
};
