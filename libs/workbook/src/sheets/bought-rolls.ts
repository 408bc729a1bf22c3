import { FORMAT } from '../style.js';
import type { Column } from '../table.js';

const MM_PER_FT = 304.8;

/** A kind of roll bought in a year. */
export interface BoughtRoll {
  readonly phase: string;
  readonly film: string;
  readonly roll: string;
  readonly width: string;
  readonly length_mm: number;
  readonly count: number;
  readonly price_cents: number;
}

/** What rolls are bought: the first columns of both tables of rolls. */
export const boughtColumns = (): readonly Column<BoughtRoll>[] => [
  { head: 'Phase', unit: '', width: 18, value: (r) => r.phase },
  { head: 'Film', unit: '', width: 12, value: (r) => r.film },
  { head: 'Roll', unit: '', width: 32, value: (r) => r.roll },
  { head: 'Width', unit: 'in', width: 12, value: (r) => r.width },
  { head: 'Length', unit: 'ft', width: 12, format: FORMAT.one, value: (r) => r.length_mm / MM_PER_FT },
  { head: 'Rolls', unit: '', width: 12, format: FORMAT.whole, isSummed: true, value: (r) => r.count },
];
