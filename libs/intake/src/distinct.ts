import type { FindingList } from './finding.js';
import type { Placed } from './gathered.js';

const plain = (record: object): string => JSON.stringify({ ...record, inventoryRow: null });

/** What is alike about two records of one id. */
interface Distinct<R> {
  readonly id: (record: R) => string;
  /** "dwelling", for the message. */
  readonly what: string;
  /** What may be done where both rows are right, as "add them up in one row"; null where they cannot both be. */
  readonly both?: (record: R) => string | null;
}

/**
 * One record per id. A second row that says exactly the same is left out with a warning; one that says something else is
 * not taken, because only a person knows which of the two is right.
 */
export function distinct<R extends object>(list: readonly Placed<R>[], { id, what, both }: Distinct<R>, findings: FindingList): readonly Placed<R>[] {
  const kept = new Map<string, Placed<R>>();
  for (const placed of list) {
    const key = id(placed.record);
    const first = kept.get(key);
    if (first === undefined) {
      kept.set(key, placed);
      continue;
    }
    const line = `line ${first.row.row} of ${first.row.file}`;
    const way = both?.(placed.record) ?? null;
    const known = { ...placed.row, column: null, value: key, expected: `each ${what} once` };
    if (plain(first.record) === plain(placed.record)) {
      findings.add({ ...known, severity: 'warning', code: 'exact-duplicate', whatToDo: `the same as ${line}; left out${way === null ? '' : `; where both count, ${way}`}` });
    } else {
      findings.add({ ...known, severity: 'error', code: 'duplicate-id', whatToDo: `${line} has the same id and says something else; ${way === null ? '' : `where both count, ${way}, else `}keep the right one` });
    }
  }
  return [...kept.values()];
}

/** Ids of one building that may be the same written twice ("007" and "7", "A-1" and "A1"); they are never merged. */
export function warnAlike(list: readonly Placed<{ readonly id: string }>[], what: string, findings: FindingList): void {
  const loose = (id: string): string => id.toLowerCase().replace(/[^a-z0-9/]/g, '').replace(/(^|\/|[a-z])0+(?=\d)/g, '$1');
  const seen = new Map<string, string>();
  for (const { record, row } of list) {
    const other = seen.get(loose(record.id));
    if (other !== undefined && other !== record.id) {
      findings.add({ ...row, column: null, value: record.id, severity: 'warning', code: 'ids-alike', expected: `ids that cannot be mistaken for one another`, whatToDo: `"${other}" is there too; if it is the same ${what}, write it one way` });
    }
    seen.set(loose(record.id), record.id);
  }
}
