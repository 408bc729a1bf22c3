import type { InventoryRow, Known, Portfolio } from '#calc';
import type { InventoryRecords } from './records-from.js';

export type RecordList = Exclude<keyof Portfolio, 'settings'>;

/** One field that would change, as text. */
export interface FieldChange {
  readonly field: string;
  readonly before: string;
  readonly after: string;
}

/** What taking in the files would do to one list. */
export interface ListChanges {
  readonly list: RecordList | 'settings';
  readonly created: readonly string[];
  readonly updated: readonly { readonly id: string; readonly fields: readonly FieldChange[] }[];
  readonly unchanged: number;
  /** Kept from earlier and not in the file that came; nothing is ever deleted for that. */
  readonly missing: readonly string[];
}

type AnyRecord = Readonly<Record<string, unknown>>;
type KeyOf = (record: AnyRecord) => string;

const joined = (...fields: readonly string[]): KeyOf => (record) => fields.map((field) => ((record[field] ?? '') as string | number).toString()).join(' ');
const KEYS: Readonly<Record<RecordList, KeyOf>> = {
  ownerEntities: joined('id'), phases: joined('id'), buildings: joined('id'), planTypes: joined('id'), dwellings: joined('id'), windows: joined('id'), meters: joined('id'),
  dwellingMeters: joined('dwelling', 'meter'), tariffs: joined('label'), consents: joined('id'), moveOuts: joined('dwelling', 'out'), films: joined('id'), rolls: joined('id'),
  readings: joined('building', 'azimuth_deg', 'glazing', 'film', 'taken', 'repeat'), locks: joined('subject', 'azimuth_deg', 'phase', 'film'),
  bills: joined('meter', 'firstDay', 'lastDay'), siteRecords: joined('id'), ledger: joined('id'), rebates: joined('id'),
};
const LISTS = Object.keys(KEYS) as readonly RecordList[];

/** Text that is the same for the same content, whatever the order of the fields. */
function contentText(value: unknown): string {
  return JSON.stringify(value, (_name, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part) ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1))) : part,
  );
}

/** Fields that differ, down into parts; the line of the file is not content. */
function fieldChanges(before: AnyRecord, after: AnyRecord, path = ''): readonly FieldChange[] {
  const changes: FieldChange[] = [];
  for (const field of new Set([...Object.keys(before), ...Object.keys(after)])) {
    if (field === 'inventoryRow') continue;
    const [old, now] = [before[field] ?? null, after[field] ?? null];
    if (contentText(old) === contentText(now)) continue;
    const parts = [old, now].every((part) => typeof part === 'object' && part !== null && !Array.isArray(part));
    if (parts) changes.push(...fieldChanges(old as AnyRecord, now as AnyRecord, `${path}${field}.`));
    else changes.push({ field: `${path}${field}`, before: contentText(old), after: contentText(now) });
  }
  return changes;
}

/** What came and what is kept of one list, with the records that have to be written. */
function compareList(list: RecordList, kept: readonly AnyRecord[], now: readonly AnyRecord[]): { readonly changes: ListChanges; readonly write: readonly AnyRecord[] } {
  const key = KEYS[list];
  const before = new Map(kept.map((record) => [key(record), record]));
  const created: string[] = [];
  const updated: { id: string; fields: readonly FieldChange[] }[] = [];
  const write: AnyRecord[] = [];
  let unchanged = 0;
  for (const record of now) {
    const id = key(record);
    const old = before.get(id);
    const fields = old === undefined ? [] : fieldChanges(old, record);
    if (old === undefined) created.push(id);
    else if (fields.length > 0) updated.push({ id, fields });
    else unchanged += 1;
    // A record that only moved to another line is written for its place, and counts as unchanged.
    if (old === undefined || contentText(old) !== contentText(record)) write.push(record);
    before.delete(id);
  }
  return { changes: { list, created, updated, unchanged, missing: now.length === 0 ? [] : [...before.keys()] }, write };
}

/** Everything the files would change, and the records to write for it. */
export interface Comparison {
  readonly lists: readonly ListChanges[];
  readonly write: { readonly [List in RecordList]?: readonly AnyRecord[] };
  readonly settings: boolean;
}

/** Compares what was read with what is kept. */
export function compareRecords(kept: Portfolio | null, records: InventoryRecords): Comparison {
  const compared = LISTS.map((list) => ({ list, ...compareList(list, (kept?.[list] ?? []) as readonly AnyRecord[], records[list] as readonly AnyRecord[]) }));
  const settings = settingsChanges(kept, records);
  return {
    lists: [...(settings === null ? [] : [settings]), ...compared.map(({ changes }) => changes)].filter((of) => of.created.length + of.updated.length + of.unchanged + of.missing.length > 0),
    write: Object.fromEntries(compared.filter(({ write }) => write.length > 0).map(({ list, write }) => [list, write])),
    settings: settings !== null && settings.unchanged === 0,
  };
}

function settingsChanges(kept: Portfolio | null, { settings }: InventoryRecords): ListChanges | null {
  if (settings === null) return null;
  const none = { list: 'settings' as const, created: [], updated: [], unchanged: 0, missing: [] };
  if (kept === null) return { ...none, created: [settings.name] };
  const fields = fieldChanges(kept.settings as unknown as AnyRecord, settings as unknown as AnyRecord);
  return fields.length === 0 ? { ...none, unchanged: 1 } : { ...none, updated: [{ id: settings.name, fields }] };
}

/** File a record came from. */
export function fileOfRecord(list: RecordList, record: { readonly inventoryRow?: Known<InventoryRow> }): string {
  return record.inventoryRow?.file ?? (list === 'tariffs' ? 'tariffs.json' : list === 'locks' ? 'locks.csv' : 'plan.json');
}
