import { plainText, words } from './cell-text.js';
import { numberIn } from './number-cell.js';
import { fault, known, notKnown, type CellReader } from './reading.js';

const POINTS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'] as const;
const SPELT: Readonly<Record<string, string>> = { north: 'N', east: 'E', south: 'S', west: 'W', northern: 'N', eastern: 'E', southern: 'S', western: 'W' };
const FRONT: Readonly<Record<string, number>> = { front: 0, right: 90, back: 180, rear: 180, left: 270 };
const EXPECTED = 'N, north-west, SSW, or degrees clockwise from true north';

/** A side of a building (a true bearing) or of a plan type (measured from its front). */
export interface Facing {
  readonly azimuth_deg: number;
  readonly from: 'north' | 'front' | 'number';
}

/** Bearing of a compass word, or null. */
export function bearingOf(text: string): number | null {
  const letters = words(text)
    .replace(/\b(side|facing|facade|elevation)\b/g, ' ')
    .replace(/(north|south)(?=east|west|north|south)/g, '$1 ')
    .trim()
    .split(/ +/)
    .map((word) => SPELT[word] ?? word.toUpperCase())
    .join('');
  const at = POINTS.indexOf(letters as (typeof POINTS)[number]);
  return at < 0 ? null : at * 22.5;
}

/** The nearest of eight compass words, for marks and messages. */
export function compassWord(azimuth_deg: number): string {
  return POINTS[(Math.round(azimuth_deg / 45) * 2) % 16] ?? 'N';
}

/** A facade: compass word, degrees, or front/right/back/left of a plan type. A word nobody knows leaves the side unknown. */
export const facingCell: CellReader<Facing> = (text, { decimal, facadeWords }) => {
  const named = words(text);
  const front = FRONT[named.replace(/ side$/, '')];
  if (front !== undefined) return known({ azimuth_deg: front, from: 'front' });
  const given = Object.entries(facadeWords).find(([word]) => words(word) === named)?.[1];
  const bearing = bearingOf(given ?? text);
  if (bearing !== null) return known({ azimuth_deg: bearing, from: 'north' });
  const degrees = numberIn(plainText(given ?? text).replace(/ ?(°|deg|degrees)$/i, ''), decimal);
  if (degrees === null) {
    return notKnown('facade-word', EXPECTED, `say once in plan.json which way it looks: "facade_words": { "${plainText(text)}": "SW" }`);
  }
  if (degrees < 0 || degrees > 360) return fault('out-of-range', 'degrees 0…360', 'correct the bearing');
  return known({ azimuth_deg: degrees % 360, from: 'number' });
};

/** A true bearing only; front and back have no meaning here. */
export const bearingCell: CellReader<number> = (text, context) => {
  const { value, remark } = facingCell(text, context);
  if (value?.from === 'front') return fault('facade-word', EXPECTED, 'give the compass side');
  return { value: value?.azimuth_deg ?? null, ...(remark && { remark }) };
};
