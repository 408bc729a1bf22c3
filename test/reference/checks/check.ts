import type { ReferenceRow, ReferenceTable } from '../reference-table.js';

export type Range = readonly [least: number, most: number];

/** One figure of a row beside ours. A range is met inside it; words and null are met when they are the same. */
export interface Figure {
  readonly what: string;
  readonly expected: number | string | Range | null;
  readonly ours: number | string | null;
  /** Its own tolerance where the table's is not for it. */
  readonly limit?: number;
}

export interface Compared extends Figure {
  readonly place: string;
  readonly given: string;
  readonly off: number;
  readonly limit: number;
  /** Why it stands on the page although it misses. */
  readonly reason?: string;
}

export interface CheckOf<Given, Expect> {
  readonly title: string;
  readonly table: ReferenceTable<Given, Expect>;
  /** Our figures for a row, each beside the one from outside: the only place where they are worked out. */
  readonly compare: (row: ReferenceRow<Given, Expect>) => readonly Figure[];
  /** The row's inputs in a few words, where the record itself is too long to print. */
  readonly told?: (given: Given) => string;
  /** Differences are shown, nothing must be met. */
  readonly isReport?: boolean;
  /** The page shows every figure, however many. */
  readonly isWhole?: boolean;
  /** Where the method is known to miss, by place and what. */
  readonly misses?: Readonly<Record<string, KnownMiss>>;
  /** A file that is not part of the project; false where it is not there. */
  readonly isHere?: () => boolean;
}

/** A figure known to miss: why, and how far off it may be at most, so that it cannot grow unseen. */
export interface KnownMiss {
  readonly why: string;
  readonly most: number;
}

/** A table with the way our figures for it are worked out, for the spec and for the validation page alike. */
export interface Check {
  readonly title: string;
  readonly table: Pick<ReferenceTable<unknown, unknown>, 'of' | 'source' | 'seen' | 'tolerance'> & { readonly rows: readonly { readonly place: string }[] };
  readonly isReport: boolean;
  readonly isWhole: boolean;
  readonly misses: Readonly<Record<string, KnownMiss>>;
  readonly isHere: () => boolean;
  readonly readsFiles: boolean;
  readonly row: (index: number) => readonly Compared[];
}

const isRange = (value: Figure['expected']): value is Range => Array.isArray(value);

/** How far ours is off: beyond the range, from the number; words are right or infinitely wrong. */
export function offOf({ expected, ours }: Figure): number {
  if (isRange(expected)) return typeof ours === 'number' && Number.isFinite(ours) ? Math.max(0, expected[0] - ours, ours - expected[1]) : Infinity;
  if (typeof expected === 'number') return typeof ours === 'number' && Number.isFinite(ours) ? Math.abs(ours - expected) : Infinity;
  return expected === ours ? 0 : Infinity;
}

function limitOf(figure: Figure, { abs = 0, rel = 0 }: { readonly abs?: number; readonly rel?: number }): number {
  return figure.limit ?? abs + (typeof figure.expected === 'number' ? rel * Math.abs(figure.expected) : 0);
}

const shown = (value: unknown): string => (typeof value === 'number' ? String(Number(value.toPrecision(6))) : typeof value === 'string' ? value : JSON.stringify(value));

/** Inputs in one line: names without their braces, cut where it grows long. */
export function toldGiven(given: unknown): string {
  const text = typeof given === 'object' && given !== null ? Object.entries(given).map(([name, value]) => `${name} ${shown(value)}`).join(', ') : shown(given);
  const plain = text.replaceAll('"', '').replaceAll('{', '').replaceAll('}', '');
  return plain.length > 110 ? `${plain.slice(0, 107)}…` : plain;
}

export const keyOf = ({ place, what }: { readonly place: string; readonly what: string }): string => (what === '' ? place : `${place}: ${what}`);
export const isMiss = ({ off, limit }: Pick<Compared, 'off' | 'limit'>): boolean => !(off <= limit);

/** Makes a check of a table and the way our figures are worked out. */
export function check<Given, Expect>({ title, table, compare, told = toldGiven, isReport = false, isWhole = false, misses = {}, isHere }: CheckOf<Given, Expect>): Check {
  const row = (index: number): Compared[] => {
    const at = table.rows[index];
    if (at === undefined) throw new RangeError(`index must be a row of ${title}, got ${index}`);
    return compare(at).map((figure) => {
      const reason = misses[keyOf({ place: at.place, what: figure.what })]?.why;
      return { ...figure, place: at.place, given: told(at.given), off: offOf(figure), limit: limitOf(figure, table.tolerance), ...(reason === undefined ? {} : { reason }) };
    });
  };
  return { title, table, isReport, isWhole, misses, isHere: isHere ?? (() => true), readsFiles: isHere !== undefined, row };
}

/** Figures of two records by their common names. */
export function byName<Wanted extends object>(wanted: Wanted, ours: { readonly [name in keyof Wanted]?: unknown }, limit?: number): Figure[] {
  return (Object.keys(wanted) as (keyof Wanted & string)[]).flatMap((what) => {
    const expected = wanted[what] as Figure['expected'] | undefined;
    return expected === undefined ? [] : [{ what, expected, ours: (ours[what] ?? null) as Figure['ours'], ...(limit === undefined ? {} : { limit }) }];
  });
}
