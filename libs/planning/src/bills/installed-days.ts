import type { SiteRecord } from '#calc';

/** First and last day on which film was put on something. */
export interface InstalledDays {
  readonly first: string;
  readonly last: string;
}

/** Dwelling of a record: as it says, or the one its window's id begins with. */
function dwellingOf(record: SiteRecord): string | null {
  if (record.dwelling !== null) return record.dwelling;
  return record.window === null ? null : record.window.slice(0, record.window.lastIndexOf('/'));
}

/** Days on which the dwellings were filmed, by what was noted on the spot. */
export function installedDays(records: readonly SiteRecord[]): ReadonlyMap<string, InstalledDays> {
  const found = new Map<string, InstalledDays>();
  for (const record of records) {
    const dwelling = record.kind === 'done' ? dwellingOf(record) : null;
    if (dwelling === null) continue;
    const before = found.get(dwelling);
    found.set(dwelling, before === undefined ? { first: record.day, last: record.day } : { first: record.day < before.first ? record.day : before.first, last: record.day > before.last ? record.day : before.last });
  }
  return found;
}
